"""Yarn put on a day: split into baths by what the pots take."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from math import inf

from shadewright.core.baths import dye_mass_g, liquor_ml
from shadewright.core.baths.in_turn import DoseInTurn, chosen_in_turn, enough_for
from shadewright.core.planning.loads import SplitPot
from shadewright.core.planning.sharing import allotted, filled_up
from shadewright.core.planning.side_by_side import split_side_by_side
from shadewright.core.planning.splits import SplitBath, even_parts_g, split_skeins
from shadewright.core.quantities import number_text
from shadewright.core.solutions.keeping import Purpose
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records import day_reads, recipe_reads
from shadewright.records.models import OrderLine, Pot
from shadewright.workflows.bath_wishes import BathWish, check_wish
from shadewright.workflows.baths import BathPlan, plan_bath
from shadewright.workflows.days.scale_check import ScaleCheck, scale_check
from shadewright.workflows.recipe_shapes import Version, shaped_version
from shadewright.workflows.stamps import today

_MOST_NAMED = 60


class SplitWay(StrEnum):
    """How a wish is split: into baths that are alike, or over pots side by side."""

    ALIKE = "alike"
    SIDE_BY_SIDE = "side by side"


@dataclass(frozen=True, kw_only=True)
class SplitWish:
    """What is to be dyed on a day, before it is split.

    The yarn is ``skeins_g``, what each skein weighs, or ``loose_g``. Without ``pots``
    all pots in use may be taken. ``for_lines`` are lines of orders with their skeins,
    the most urgent first: where the yarn is too little, the last ones go without.
    """

    version_id: int
    base_id: int
    dyed_on: date
    skeins_g: tuple[float, ...] = ()
    loose_g: float | None = None
    pots: tuple[int, ...] = ()
    liquor_ratio: float | None = None
    way: SplitWay = SplitWay.ALIKE
    least_baths: int = 1
    is_whole_pots: bool = False
    mill_lot_id: int | None = None
    water_id: int | None = None
    purpose: Purpose | None = None
    notes: str = ""
    for_lines: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, kw_only=True)
class DyeOfSplit:
    """A dye of a split: what all its baths want, and for how many the bottles do."""

    dye_id: int
    dye_name: str
    wanted_g: float
    short_g: float
    enough_for: int


@dataclass(frozen=True, kw_only=True)
class SplitPlan:
    """The baths that a wish becomes; ``heaviest`` is the plan of the first of them.

    ``more`` counts the skeins that whole pots take besides, ``room_for`` those that
    they could take. ``shares`` has a row a bath: lines of orders with the skeins that
    it dyes for them.
    """

    wish: SplitWish
    version: Version
    liquor_ratio: float
    baths: tuple[SplitBath, ...]
    more: int
    room_for: int
    pot_ids: Mapping[str, int]
    shares: tuple[tuple[tuple[int, int], ...], ...]
    heaviest: BathPlan
    dyes: tuple[DyeOfSplit, ...]
    scale: ScaleCheck

    @property
    def fibre_g(self) -> float:
        """All the yarn, in g."""
        return sum(bath.fibre_g for bath in self.baths)

    @property
    def is_counted(self) -> bool:
        """Whether the yarn is in skeins."""
        return self.wish.loose_g is None


def split_wish(wish: SplitWish) -> SplitPlan:
    """Return the baths that a wish becomes; refused where something stands in its way.

    Pots that a plan uses count too: a pot is filled more than once a day.
    """
    version = shaped_version(recipe_reads.version_row(wish.version_id))
    _check(wish, version)
    ratio = wish.liquor_ratio or version.text.liquor_ratio or 0.0
    pots = _pots(wish)
    baths, more, room_for = _split(wish, ratio, pots)
    pot_ids = {pot.name: pot.pk for pot in pots}
    heaviest = plan_bath(bath_of_split(wish, baths[0], ratio, pot_ids), is_shown=False)
    return SplitPlan(
        wish=wish,
        version=version,
        liquor_ratio=ratio,
        baths=baths,
        more=more,
        room_for=room_for,
        pot_ids=pot_ids,
        shares=_shares(wish, baths),
        heaviest=heaviest,
        dyes=tuple(_dyes(heaviest, baths)),
        scale=scale_check(heaviest),
    )


def skeins_words(bath: SplitBath) -> str:
    """Return which skeins a bath takes, where they do not all weigh the same."""
    differing = len({round(each, 1) for each in bath.skeins_g})
    if differing == 1 or len(bath.skeins_g) > _MOST_NAMED:
        return ""
    weights = ", ".join(number_text(each, digits=4) for each in bath.skeins_g)
    return f"The skeins of {weights}\u00a0g."


def _check(wish: SplitWish, version: Version) -> None:
    day = wish.dyed_on
    if day < today():
        raise OutOfRangeError(
            name="The day",
            given=f"{day.day} {day:%B} {day.year}",
            allowed="today or later",
            advice="What was dyed already is written down as a bath of its own.",
            argument="dyed_on",
        )
    if not wish.skeins_g and wish.loose_g is None:
        raise MissingError(
            name="The yarn",
            advice="Say how many skeins there are, or weigh the loose yarn.",
            argument="skeins",
        )
    fibre_g = wish.loose_g or sum(wish.skeins_g)
    check_wish(
        BathWish(
            version_id=wish.version_id,
            base_id=wish.base_id,
            fibre_g=fibre_g,
            dyed_on=day,
            mill_lot_id=wish.mill_lot_id,
        ),
        version,
    )
    _check_lines(wish, version)


def _check_lines(wish: SplitWish, version: Version) -> None:
    """Refuse an order's line of another colourway or base: a slip is soon made."""
    ids = [line_id for line_id, _ in wish.for_lines]
    for line in OrderLine.objects.filter(pk__in=ids).select_related("order"):
        if (line.recipe_id, line.base_id) != (version.recipe_id, wish.base_id):
            raise ConflictError(
                why=f"Order {line.order.number} asks for {line.recipe} on {line.base}.",
                advice="Choose that recipe and base, or dye this for the shelf.",
                argument="version",
            )


def _pots(wish: SplitWish) -> list[Pot]:
    rows = day_reads.pot_rows().exclude(pk__in=_out_all_day(wish.dyed_on))
    return list(rows.filter(pk__in=wish.pots) if wish.pots else rows)


def _out_all_day(day: date) -> set[int]:
    row = day_reads.day_row(day)
    outages = () if row is None else row.outages.all()
    return {x.pot_id for x in outages if x.pot_id and x.starts_at is None}


def _split(
    wish: SplitWish, ratio: float, pots: list[Pot]
) -> tuple[tuple[SplitBath, ...], int, int]:
    rooms = [SplitPot(name=pot.name, volume_l=pot.volume_l) for pot in pots]
    skeins_g = wish.skeins_g
    if wish.loose_g is not None:
        skeins_g = even_parts_g(
            fibre_g=wish.loose_g,
            pots=rooms,
            liquor_ratio=ratio,
            least_baths=wish.least_baths,
        )
    is_beside = wish.way is SplitWay.SIDE_BY_SIDE and wish.loose_g is None
    split = split_side_by_side if is_beside else split_skeins
    baths = split(
        skeins_g=skeins_g,
        pots=rooms,
        liquor_ratio=ratio,
        least_baths=wish.least_baths,
    )
    if wish.loose_g is not None:
        return baths, 0, 0
    whole, more = filled_up(
        baths=baths,
        skein_g=sum(skeins_g) / len(skeins_g),
        most_g=inf if is_beside else min(bath.load_g for bath in baths),
    )
    return (whole, more, 0) if wish.is_whole_pots else (baths, 0, more)


def bath_of_split(
    wish: SplitWish, bath: SplitBath, ratio: float, pot_ids: Mapping[str, int]
) -> BathWish:
    """Return one bath of a split as it is planned."""
    said = (skeins_words(bath) if wish.loose_g is None else "", wish.notes.strip())
    return BathWish(
        version_id=wish.version_id,
        base_id=wish.base_id,
        fibre_g=bath.fibre_g,
        dyed_on=wish.dyed_on,
        mill_lot_id=wish.mill_lot_id,
        pot_id=pot_ids[bath.pot],
        water_id=wish.water_id,
        skeins=len(bath.skeins_g) if wish.loose_g is None else None,
        liquor_ratio=ratio,
        purpose=wish.purpose,
        notes="\n".join(filter(None, said)),
    )


def _shares(
    wish: SplitWish, baths: tuple[SplitBath, ...]
) -> tuple[tuple[tuple[int, int], ...], ...]:
    """Return for which lines each bath is; loose yarn is for none."""
    if wish.loose_g is not None:
        return ((),) * len(baths)
    places = [len(bath.skeins_g) for bath in baths]
    rows = allotted(places=places, wanted=tuple(_within(sum(places), wish.for_lines)))
    return tuple(
        tuple(
            (line_id, row[place])
            for (line_id, _), row in zip(wish.for_lines, rows, strict=True)
            if row[place]
        )
        for place in range(len(baths))
    )


def _within(skeins: int, lines: tuple[tuple[int, int], ...]) -> Iterator[int]:
    for _, wanted in lines:
        taken = min(wanted, skeins)
        skeins -= taken
        yield taken


def _dyes(plan: BathPlan, baths: tuple[SplitBath, ...]) -> Iterator[DyeOfSplit]:
    for dose in plan.doses:
        doses = [_in_turn(bath, dose.depth_percent, plan) for bath in baths]
        chosen = chosen_in_turn(doses=doses, bottles=plan.offer.candidates(dose.dye_id))
        yield DyeOfSplit(
            dye_id=dose.dye_id,
            dye_name=dose.dye_name,
            wanted_g=sum(each.dye_g for each in doses),
            short_g=sum(each.missing_g for each in chosen),
            enough_for=enough_for(chosen),
        )


def _in_turn(bath: SplitBath, depth_percent: float, plan: BathPlan) -> DoseInTurn:
    return DoseInTurn(
        dye_g=dye_mass_g(fibre_mass_g=bath.fibre_g, depth_percent=depth_percent),
        liquor_ml=liquor_ml(fibre_mass_g=bath.fibre_g, liquor_ratio=plan.liquor_ratio),
    )
