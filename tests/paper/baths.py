"""Baths to print, with rounds that core made."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

from shadewright.core.baths.programme import Programme
from shadewright.core.baths.rounds import (
    DoseWanted,
    HelperWanted,
    Moment,
    RoundWanted,
    bath_round,
)
from shadewright.paper import BathCard, SwatchTag

DYES = (
    ("Slate", "T7K", 60.0, 60.5),
    ("Gorse", "A3C", 12.5, 12.6),
    ("Peat black of the moor", "W9XY", 125.0, 127.3),
    ("Sloe", "", 0.24, None),
    ("Heather", "H3C", 3.2, 3.2),
    ("Rowan", "R6T", 41.0, 41.3),
)


def card(
    *, doses: int = 2, number: str = "261125-B2", text: str = "", pot_kg: float = 14.0
) -> BathCard:
    """Return a card with so many doses; ``text`` stands wherever words were typed."""
    wanted = [
        DoseWanted(
            dye=text or name,
            code=code,
            amount=amount,
            unit="ml" if code else "g",
            scale_g=scale,
        )
        for name, code, amount, scale in (DYES * 3)[:doses]
    ]
    acid = HelperWanted(
        name=text or "Citric acid",
        amount=8.0,
        unit="g",
        moment=Moment.AFTER_DYE,
        is_acid=True,
    )
    steps = bath_round(
        RoundWanted(
            water_ml=11_540.0,
            doses=wanted,
            helpers=[acid],
            programme=Programme(
                start_c=40.0, rise_c_per_min=1.0, top_c=90.0, hold_min=30.0
            ),
            ties=text or "4 loose ties",
            stirring=text or "Turn gently every 5 minutes.",
            look_at_15=text or "Grey-green with yellow tips.",
            pot_kg=pot_kg,
            is_metal_complex=doses > 2,
        )
    )
    return BathCard(
        number=number,
        qr_text=f"SHADEWRIGHT:BATH:{number}",
        recipe_name=text or "Low Tide",
        version_number=3,
        base_name=text or "Fell DK",
        mill_lot=text or "F-118",
        fibre_g=400.0,
        skeins=4,
        pot_name=text or "Big pot",
        liquor_ratio=30.0,
        dyed_on=dt.date(2026, 11, 25),
        steps=steps,
        strengths_percent={"dose-1": 1.04},
        notes=(text or "Paler at the ends is wanted.", ""),
    )


def cards(*doses: int) -> Sequence[BathCard]:
    """Return a card for each number of doses."""
    return [
        replace(card(doses=count), number=f"261125-B{place}")
        for place, count in enumerate(doses, start=1)
    ]


def tag(number: int = 1, *, text: str = "") -> SwatchTag:
    """Return the tag of a swatch."""
    return SwatchTag(
        number=f"261125-S{number}",
        qr_text=f"SHADEWRIGHT:BATH:261125-S{number}",
        recipe=text or "Low Tide, version 3",
        base_name=text or "Fell DK",
        depths_percent={text or "Slate": 0.6, "Gorse": 0.3},
        dyed_on=dt.date(2026, 11, 25),
    )
