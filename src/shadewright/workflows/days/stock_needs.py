"""The stock that a day wants: what the bottles give, what is short, what to make."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from uuid import uuid5

from django.db import transaction

from shadewright.core.baths.day_stocks import StockToMake, stock_to_make
from shadewright.core.baths.in_turn import DoseInTurn
from shadewright.core.quantities import is_more
from shadewright.core.solutions.keeping import Purpose
from shadewright.workflows.bath_cautions import metal_caution
from shadewright.workflows.bath_shapes import called
from shadewright.workflows.bottle_choice import Offer, Refused
from shadewright.workflows.days.doses_served import (
    ServedDose,
    Shelf,
    doses_served,
    shelf_for,
)
from shadewright.workflows.days.room import room_now
from shadewright.workflows.levers_at_hand import soluble_strengths
from shadewright.workflows.planned_baths import change_bottle
from shadewright.workflows.stamps import Stamp


@dataclass(frozen=True, kw_only=True)
class BottleOfDay:
    """A bottle that the day draws on: what the day finds in it, and takes."""

    code: str
    strength_percent: float
    there_ml: float
    taken_ml: float


@dataclass(frozen=True, kw_only=True)
class DyeNeed:
    """What a day wants of one dye, and how far the bottles go.

    ``enough_for`` of ``baths`` have it all; ``first_short`` is the first that has not.
    ``spare_g`` is what the room wants to have besides, ``left_g`` what will be left.
    """

    dye_id: int
    dye_name: str
    is_mix_fresh: bool
    wanted_g: float
    baths: int
    enough_for: int
    first_short: str
    short_g: float
    spare_g: float
    left_g: float
    bottles: tuple[BottleOfDay, ...]
    kept_out: tuple[Refused, ...]
    make: StockToMake | None

    @property
    def is_short(self) -> bool:
        """Whether some bath lacks dye."""
        return self.enough_for < self.baths


@dataclass(frozen=True, kw_only=True)
class Redraw:
    """A dose without a good bottle that can now be drawn from one."""

    number: str
    step: str
    dye_name: str
    code: str


@dataclass(frozen=True, kw_only=True)
class StockNeeds:
    """What a day wants of the shelf; what is short comes first."""

    day: date
    baths: int
    dyes: tuple[DyeNeed, ...]
    redraws: tuple[Redraw, ...]
    metal: str

    @property
    def is_enough(self) -> bool:
        """Whether every bath has all its dye."""
        return not any(each.is_short for each in self.dyes)


def stock_needs(day: date) -> StockNeeds:
    """Return what the baths of a day will still take, against the bottles."""
    before, standing = shelf_for(day), shelf_for(day)
    served = doses_served(day, standing)
    by_dye: dict[int, list[ServedDose]] = {}
    for each in served:
        by_dye.setdefault(each.awaited.row.dye_id, []).append(each)
    needs = [_need(own, before, standing) for own in by_dye.values()]
    dyes = {each.awaited.row.dye_id: each.awaited.row.dye for each in served}
    return StockNeeds(
        day=day,
        baths=len({each.awaited.bath.pk for each in served}),
        dyes=tuple(sorted(needs, key=lambda x: (not x.is_short, x.dye_name))),
        redraws=tuple(_redraws(served)),
        metal=metal_caution(dyes.values()),
    )


@transaction.atomic
def take_new_bottles(day: date, stamp: Stamp) -> int:
    """Draw the doses without a bottle from those that stand there now; count them."""
    found = tuple(_redraws(doses_served(day, shelf_for(day))))
    for each in found:
        change_bottle(
            number=each.number,
            step=each.step,
            code=each.code,
            stamp=replace(stamp, deed=uuid5(stamp.deed, f"{each.number} {each.step}")),
        )
    return len(found)


def _redraws(served: Sequence[ServedDose]) -> Iterator[Redraw]:
    for each in served:
        if each.new_code:
            yield Redraw(
                number=each.awaited.bath.number,
                step=each.awaited.step,
                dye_name=each.awaited.row.dye.name,
                code=each.new_code,
            )


def _need(own: Sequence[ServedDose], before: Shelf, after: Shelf) -> DyeNeed:
    dye = own[0].awaited.row.dye
    wanted_g = sum(each.awaited.row.dye_g for each in own)
    short = [each for each in own if each.chosen.missing_g]
    numbers = list(dict.fromkeys(each.awaited.bath.number for each in own))
    lacking = {each.awaited.bath.number for each in short}
    spare_g = wanted_g * room_now().spare_percent / 100
    left_g = _held_g(after, dye.pk)
    offer = Offer(bottles=before.bottles, purpose=_strictest(own))
    return DyeNeed(
        dye_id=dye.pk,
        dye_name=dye.name,
        is_mix_fresh=dye.is_mix_fresh,
        wanted_g=wanted_g,
        baths=len(numbers),
        enough_for=next(
            (n for n, x in enumerate(numbers) if x in lacking), len(numbers)
        ),
        first_short=_called(short[0]) if short else "",
        short_g=sum(each.chosen.missing_g for each in short),
        spare_g=spare_g,
        left_g=left_g,
        bottles=tuple(_bottles(own, before)),
        kept_out=offer.kept_out(dye.pk),
        make=_make(dye.pk, own, short, spare_g=spare_g, left_g=left_g),
    )


def _called(each: ServedDose) -> str:
    bath = each.awaited.bath
    return called(bath.number, bath.version.recipe.name)


def _strictest(own: Sequence[ServedDose]) -> Purpose:
    """Return the purpose that lets the fewest bottles be used."""
    said = {Purpose(each.awaited.bath.purpose) for each in own}
    strict = (Purpose.MUST_REPEAT, Purpose.USUAL, Purpose.PLAY)
    return next(each for each in strict if each in said)


def _held_g(standing: Shelf, dye_id: int) -> float:
    """Return the dye in good bottles as they then stand."""
    good = (x for x in standing.candidates(dye_id, Purpose.USUAL) if x.is_good)
    return sum(x.usable_ml * x.strength_percent / 100 for x in good)


def _bottles(own: Sequence[ServedDose], before: Shelf) -> Iterator[BottleOfDay]:
    taken: dict[str, float] = {}
    for each in own:
        for share in each.chosen.shares:
            taken[share.code] = taken.get(share.code, 0.0) + share.volume_ml
    dye_id = own[0].awaited.row.dye_id
    there = {x.code: x for x in before.candidates(dye_id, Purpose.PLAY)}
    for code, taken_ml in taken.items():
        yield BottleOfDay(
            code=code,
            strength_percent=there[code].strength_percent,
            there_ml=there[code].usable_ml,
            taken_ml=taken_ml,
        )


def _make(
    dye_id: int,
    own: Sequence[ServedDose],
    short: Sequence[ServedDose],
    *,
    spare_g: float,
    left_g: float,
) -> StockToMake | None:
    """Return the stock for what is short, or for what is spare where that lacks."""
    if short:
        doses = [_in_turn(each, each.chosen.missing_g) for each in short]
    elif is_more(spare_g, than=left_g):
        largest = max(own, key=lambda each: each.liquor_ml)
        doses, spare_g = [_in_turn(largest, spare_g - left_g)], 0.0
    else:
        return None
    strengths = soluble_strengths(dye_id)
    return stock_to_make(
        doses=doses,
        spare_g=spare_g,
        **({"strengths_percent": strengths} if strengths else {}),
    )


def _in_turn(each: ServedDose, dye_g: float) -> DoseInTurn:
    return DoseInTurn(dye_g=dye_g, liquor_ml=each.liquor_ml)
