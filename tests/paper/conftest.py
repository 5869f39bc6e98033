import datetime as dt

import pytest

from shadewright.paper import BottleLabel

DAY = dt.date(2026, 11, 25)


@pytest.fixture
def day() -> dt.date:
    return DAY


@pytest.fixture
def slate() -> BottleLabel:
    return BottleLabel(
        code="T7K",
        qr_text="SHADEWRIGHT:BOTTLE:T7K",
        dye_name="Slate",
        strength_percent=1.04,
        strength_words="1.04\N{NO-BREAK SPACE}%",
        spread_words="±\N{NO-BREAK SPACE}0.02",
        made_on=DAY,
        made_by="Ada",
        jar_lot="J-14",
        hazard_words="May irritate eyes and skin",
    )


@pytest.fixture
def peat() -> BottleLabel:
    """A label with all there is to say."""
    return BottleLabel(
        code="W9XY",
        qr_text="SHADEWRIGHT:BOTTLE:W9XY",
        dye_name="Peat black of the northern moor, second grinding",
        strength_percent=2.0,
        strength_words="2.00\N{NO-BREAK SPACE}%",
        spread_words="±\N{NO-BREAK SPACE}0.04",
        made_on=DAY,
        made_by="Bob",
        jar_lot="J-3, lot 88",
        discard_by=dt.date(2027, 5, 25),
        hazard_words="Metal-complex dye: collect unused stock",
        water="rain water",
        mix_note="re-warm and stir",
        is_demo=True,
    )


@pytest.fixture
def gorse() -> BottleLabel:
    """A bottle that stood on the shelf: no jar, no date, a guess."""
    return BottleLabel(
        code="A3C",
        qr_text="SHADEWRIGHT:BOTTLE:A3C",
        dye_name="Gorse",
        strength_percent=1.0,
        strength_words="about 1\N{NO-BREAK SPACE}%",
        spread_words="±\N{NO-BREAK SPACE}0.2",
        is_strength_guess=True,
    )


@pytest.fixture
def shelf(
    slate: BottleLabel, peat: BottleLabel, gorse: BottleLabel
) -> list[BottleLabel]:
    return [slate, peat, gorse]
