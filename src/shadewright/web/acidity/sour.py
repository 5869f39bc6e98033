"""How sour a bath is, as a recipe, a plan and a bath show it."""

from dataclasses import dataclass

from django.urls import reverse

from shadewright.core.baths.acidity import ph_text
from shadewright.web.pages import Link
from shadewright.web.templatetags.house import moment
from shadewright.workflows.bath_pages import BathNow, BathStatus
from shadewright.workflows.bath_ph import (
    BathPh,
    late_advice,
    measured_ph,
    ph_of_bath,
    ph_of_recipe,
    ph_of_wish,
)
from shadewright.workflows.baths import BathPlan

_OPEN = {BathStatus.PLANNED, BathStatus.GOING, BathStatus.COOLING}
_NO_WATER = "No water is chosen: reckoned as if it took up no acid."
_NOT_LOOKED_UP = "{}: its alkalinity is not known, reckoned as if it took up no acid."


@dataclass(frozen=True, kw_only=True)
class Sour:
    """The reckoned pH with what it rests on, what the dyes want, what was measured."""

    ph: str
    note: str
    water: str
    water_way: Link | None
    wants: tuple[str, ...]
    measured: str
    advice: tuple[str, ...]
    spent_address: str


def sour_recipe(version_id: int) -> Sour:
    """Return how sour a recipe's bath is in the usual water."""
    return _shown(ph_of_recipe(version_id))


def sour_plan(plan: BathPlan) -> Sour:
    """Return how sour a bath is that could be dyed."""
    wish = plan.wish
    return _shown(
        ph_of_wish(
            version_id=wish.version_id,
            fibre_g=wish.fibre_g,
            liquor_ratio=plan.liquor_ratio,
            water_id=wish.water_id,
        )
    )


def sour_bath(bath: BathNow) -> Sour:
    """Return how sour a bath was planned, and what was measured in it."""
    found = ph_of_bath(bath)
    read = measured_ph(bath)
    is_open = bath.status in _OPEN
    return _shown(
        found,
        measured="" if read is None else f"pH {read.value:g}, {moment(read.at)}",
        advice=late_advice(bath, found) if is_open else (),
        spent_address=reverse("pour-away", args=[bath.number]) if found.acids else "",
    )


def _shown(
    found: BathPh,
    *,
    measured: str = "",
    advice: tuple[str, ...] = (),
    spent_address: str = "",
) -> Sour:
    acidity = found.acidity
    return Sour(
        ph="" if acidity is None else ph_text(acidity=acidity),
        note=found.why_not if acidity is None else acidity.note,
        water="" if acidity is None else _water(found),
        water_way=None if acidity is None else _water_way(found),
        wants=found.wants,
        measured=measured,
        advice=advice,
        spent_address=spent_address,
    )


def _water(found: BathPh) -> str:
    water = found.water
    if water is None:
        return _NO_WATER
    if water.alkalinity_mg_per_l is None:
        return _NOT_LOOKED_UP.format(water.name)
    return f"{water.words}."


def _water_way(found: BathPh) -> Link | None:
    """Return the way to what is missing: a water, or its alkalinity."""
    water = found.water
    if water is None:
        return Link(words="Your waters", address=reverse("waters"))
    if water.alkalinity_mg_per_l is None:
        at = reverse("edit-water", args=[water.id])
        return Link(words="Write its alkalinity down", address=at)
    return None
