"""What to dye: orders and the shelf, less what is there and what is planned."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from shadewright.core.planning.demand import (
    LineWanted,
    StillToDye,
    in_order_of_need,
    is_same_skein,
    still_to_dye,
)
from shadewright.records import order_reads
from shadewright.records.models import (
    Base,
    Order,
    OrderLine,
    ParLevel,
    Recipe,
    RecipeVersion,
)
from shadewright.workflows.days.room import room_now
from shadewright.workflows.days.yields import BathYield, still_wanted, yields_of


@dataclass(frozen=True, kw_only=True)
class ToDye:
    """One colourway on one base that is to be dyed, in skeins of so many grams.

    ``skeins`` holds the spare ones for seconds too; ``for_lines`` are lines of orders
    with their skeins, the most urgent first, the rest is for the shelf. ``trouble``
    says in a sentence what stands in the way of planning it, or is empty; ``mend``
    whether it is the recipe’s or the base’s.
    """

    recipe_id: int
    recipe_name: str
    base_id: int
    base_name: str
    skeins: int
    skein_g: float
    due_on: date | None
    for_lines: tuple[tuple[int, int], ...]
    why: str
    for_shelf: int
    spare: int
    trouble: str = ""
    mend: Literal["", "recipe", "base"] = ""


@dataclass(frozen=True, kw_only=True)
class Demand:
    """What is to be dyed, what baths give, and which free skeins go to which line.

    ``allotted`` is by line and bath: nobody promised these yet, but the most urgent
    line would have them, what lies on the shelf first.
    """

    to_dye: tuple[ToDye, ...]
    yields: tuple[BathYield, ...]
    allotted: Mapping[int, Mapping[str, int]]


@dataclass(kw_only=True)
class _Wanted:
    """All that is wanted of one colourway on one base in one size of skein."""

    recipe: Recipe
    base: Base
    skein_g: float
    lines: list[OrderLine] = field(default_factory=list)
    par_skeins: int = 0
    free: list[BathYield] = field(default_factory=list)


def to_dye() -> tuple[ToDye, ...]:
    """Return what is still to be dyed, what is due soonest first."""
    return demand_now().to_dye


def demand_now() -> Demand:
    """Return what is wanted against what is there and what is planned."""
    groups = _groups(order_reads.open_lines(), order_reads.par_rows())
    yields = yields_of(
        recipe_ids={each.recipe.pk for each in groups},
        base_ids={each.base.pk for each in groups},
    )
    for each in yields:
        _give_away(each, groups)
    seconds = room_now().seconds_percent
    newest = order_reads.newest_versions({each.recipe.pk for each in groups})
    found = [
        _to_dye(each, yields, seconds, _trouble(newest[each.recipe.pk], each.base))
        for each in groups
    ]
    allotted: dict[int, Mapping[str, int]] = {}
    for group in groups:
        allotted |= _allotted(group, yields)
    return Demand(
        to_dye=tuple(
            sorted(
                (each for each in found if each.skeins),
                key=lambda one: (one.due_on or date.max, not one.for_lines, one.why),
            )
        ),
        yields=yields,
        allotted=allotted,
    )


def wanted_by(order: Order) -> date | None:
    """Return the day by which an order must be there: the sooner of its two days."""
    days = [day for day in (order.promised_on, order.due_on) if day is not None]
    return min(days, default=None)


def kept_for(line_id: int, yields: Iterable[BathYield]) -> int:
    """Return how many skeins baths and lots really hold for a line."""
    return sum(each.kept.get(line_id, 0) for each in yields)


@dataclass(frozen=True, kw_only=True)
class _Trouble:
    words: str = ""
    mend: Literal["", "recipe", "base"] = ""


def _trouble(version: RecipeVersion, base: Base) -> _Trouble:
    """Return what stands in the way of planning a recipe on a base, if anything."""
    name = version.recipe.name
    if version.what_is_missing:
        return _Trouble(
            words=f"{name} is incomplete ({version.what_is_missing}): write a version "
            "with dyes and depths before it is planned.",
            mend="recipe",
        )
    kinds: tuple[tuple[bool, str, Literal["recipe", "base"]], ...] = (
        (version.recipe.is_retired, name, "recipe"),
        (base.is_retired, base.name, "base"),
    )
    for is_retired, called, mend in kinds:
        if is_retired:
            words = f"{called} is retired: take it into use again, or offer another."
            return _Trouble(words=words, mend=mend)
    return _Trouble()


def _groups(lines: Iterable[OrderLine], pars: Iterable[ParLevel]) -> list[_Wanted]:
    groups: list[_Wanted] = []
    for line in lines:
        _group(line, groups).lines.append(line)
    for par in pars:
        _group(par, groups).par_skeins += par.skeins
    return groups


def _group(row: OrderLine | ParLevel, groups: list[_Wanted]) -> _Wanted:
    key = (row.recipe_id, row.base_id)
    for each in groups:
        is_same = is_same_skein(skein_g=each.skein_g, other_g=row.skein_g)
        if is_same and (each.recipe.pk, each.base.pk) == key:
            return each
    groups.append(_Wanted(recipe=row.recipe, base=row.base, skein_g=row.skein_g))
    return groups[-1]


def _give_away(one: BathYield, groups: Sequence[_Wanted]) -> None:
    """Give what is free of a bath to those who want such skeins, the nearest size."""
    if one.skein_g is None or one.free <= 0:
        return
    key, skein_g = (one.recipe_id, one.base_id), one.skein_g
    fitting = [
        each
        for each in groups
        if (each.recipe.pk, each.base.pk) == key
        and is_same_skein(skein_g=each.skein_g, other_g=skein_g)
    ]
    if fitting:
        nearest = min(fitting, key=lambda each: abs(each.skein_g - skein_g))
        nearest.free.append(one)


def _wanted_lines(group: _Wanted, yields: Sequence[BathYield]) -> list[LineWanted]:
    return in_order_of_need([
        LineWanted(
            line_id=line.pk,
            skeins=max(0, still_wanted(line) - kept_for(line.pk, yields)),
            due_on=wanted_by(line.order),
        )
        for line in group.lines
    ])


def _allotted(
    group: _Wanted, yields: Sequence[BathYield]
) -> dict[int, Mapping[str, int]]:
    """Give free skeins to lines, the most urgent first, from the shelf first."""
    left = {each.number: each.free for each in _shelf_first(group.free)}
    given: dict[int, Mapping[str, int]] = {}
    for line in _wanted_lines(group, yields):
        shares: dict[str, int] = {}
        for number, free in left.items():
            taken = min(free, line.skeins - sum(shares.values()))
            left[number] = free - taken
            shares |= {number: taken} if taken else {}
        given[line.line_id] = shares
    return given


def _shelf_first(free: Iterable[BathYield]) -> list[BathYield]:
    return sorted(free, key=lambda each: (not each.is_on_shelf, each.dyed_on))


def _to_dye(
    group: _Wanted,
    yields: Sequence[BathYield],
    seconds_percent: float,
    trouble: _Trouble,
) -> ToDye:
    found = still_to_dye(
        wanted=_wanted_lines(group, yields),
        par_skeins=group.par_skeins,
        free_skeins=sum(each.free for each in group.free),
        seconds_percent=seconds_percent,
    )
    return ToDye(
        recipe_id=group.recipe.pk,
        recipe_name=group.recipe.name,
        base_id=group.base.pk,
        base_name=group.base.name,
        skeins=found.skeins,
        skein_g=group.skein_g,
        due_on=found.due_on,
        for_lines=found.for_lines,
        why=_why(found, group.lines),
        for_shelf=found.for_shelf,
        spare=found.spare,
        trouble=trouble.words,
        mend=trouble.mend,
    )


def _why(found: StillToDye, lines: Sequence[OrderLine]) -> str:
    orders = {line.pk: line.order.number for line in lines}
    parts = [f"{skeins} for order {orders[pk]}" for pk, skeins in found.for_lines]
    if found.for_shelf:
        parts.append(f"{found.for_shelf} for the shelf")
    if found.spare:
        parts.append(f"{found.spare} besides, as some turn out seconds")
    return ", ".join(parts)
