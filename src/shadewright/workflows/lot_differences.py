"""Two lots side by side: all that is written of both baths, and what differs.

A list, not a verdict: nothing here says what moved the colour. What nobody wrote
down is unknown, and two unknowns are not the same.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from shadewright.core.baths.rounds import StepKind
from shadewright.core.quantities import amount_text, counted, number_text
from shadewright.records import lot_reads, recipe_reads
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import shaped_bath
from shadewright.workflows.bath_shapes import BathNow, DoneLine
from shadewright.workflows.lot_lines import held
from shadewright.workflows.poured import Poured, PouredBath, poured_bath

Facts = Mapping[str, str]
NOT_IN_IT = "not in this bath"
_COLOUR = "Colour noted"


@dataclass(frozen=True, kw_only=True)
class Compared:
    """One thing that is said of both lots; empty where nobody wrote it down."""

    name: str
    first: str
    second: str

    @property
    def is_known(self) -> bool:
        """Whether it is written down of both."""
        return bool(self.first and self.second)


@dataclass(frozen=True, kw_only=True)
class Comparison:
    """Two lots: what differs, what cannot be told, and what is the same.

    ``neither`` names what is written down of none of the two.
    """

    first: str
    second: str
    differ: tuple[Compared, ...]
    untold: tuple[Compared, ...]
    neither: tuple[str, ...]
    same: tuple[Compared, ...]


def compare_lots(first: str, second: str) -> Comparison:
    """Lay two lots side by side, the order that of a bath from recipe to lot."""
    one, other = facts_of(first), facts_of(second)
    names = [*one, *(name for name in other if name not in one)]
    rows = [
        Compared(name=name, first=_of(one, name), second=_of(other, name))
        for name in names
    ]
    return Comparison(
        first=first,
        second=second,
        differ=tuple(x for x in rows if x.is_known and x.first != x.second),
        untold=tuple(x for x in rows if bool(x.first) != bool(x.second)),
        neither=tuple(x.name for x in rows if not (x.first or x.second)),
        same=tuple(x for x in rows if x.is_known and x.first == x.second),
    )


def _of(facts: Facts, name: str) -> str:
    """Return what is said; a dye or helper of the other recipe was not in this bath."""
    return facts.get(name, "" if name == _COLOUR else NOT_IN_IT)


def facts_of(number: str) -> dict[str, str]:
    """Return everything that is written of a lot and its bath, by name, in words."""
    lot = lot_reads.lot_row(number)
    row = recipe_reads.bath_row(number)
    bath, poured = shaped_bath(row), poured_bath(row)
    said = held(lot.lines.all())
    facts = dict(_planned(row, bath))
    for name in poured.dyes:
        facts |= _dose(name, poured, row.dyed_on)
    facts |= dict(_added(bath))
    facts |= _heat(bath)
    facts |= _around(bath)
    facts["Grade"] = "" if said.grade is None else said.grade.label
    facts["Dry weight"] = "" if said.grams is None else amount_text(said.grams, "g")
    if said.colour is not None:
        facts[_COLOUR] = f"{said.colour.words}, {said.colour.evidence}"
    return facts


def _planned(row: Bath, bath: BathNow) -> Iterator[tuple[str, str]]:
    load = 1000 / bath.liquor_ratio if bath.liquor_ratio else 0.0
    yield "Recipe", bath.recipe_name
    yield "Version of the recipe", str(bath.version_number)
    yield "Base", bath.base_name
    yield "Mill lot", bath.mill_lot
    yield "Yarn", amount_text(bath.fibre_g, "g")
    yield "Skeins planned", "" if bath.skeins is None else str(bath.skeins)
    yield "Pot", bath.pot_name
    yield "Burner", bath.source_name
    yield "Pot’s material", "" if row.pot is None else row.pot.get_material_display()
    yield "Liquor ratio", f"1:{number_text(bath.liquor_ratio, digits=3)}"
    yield "Yarn in a litre", amount_text(load, "g/l")
    yield "Water filled in", _read(bath, StepKind.FILL)


def _dose(name: str, poured: PouredBath, dyed_on: date) -> dict[str, str]:
    doses = [dose for dose in poured.of(name) if dose.is_told and not dose.is_missed]
    depth = poured.depth_percent(name)
    left_out = any(dose.is_missed for dose in poured.of(name)) and not doses
    return {
        f"{name}, depth given": "left out" if left_out else _percent(depth),
        f"{name}, bottle": _list(dose.bottle for dose in doses),
        f"{name}, strength used": _list(_percent(x.strength_percent) for x in doses),
        f"{name}, age of the bottle": _list(_age(dose, dyed_on) for dose in doses),
        f"{name}, jar": _list(_jars(dose, poured) for dose in doses),
    }


def _percent(value: float | None) -> str:
    return "" if value is None else amount_text(value, "%")


def _age(dose: Poured, dyed_on: date) -> str:
    if dose.made_on is None:
        return ""
    days = (dyed_on - dose.made_on).days
    return counted(days, "day") if days else "made that day"


def _jars(dose: Poured, poured: PouredBath) -> str:
    """Return the jars behind a dose; nothing where one of them is not known."""
    if dose.bottle_id is None:
        return ""
    shares = poured.ledgers.shares(dose.bottle_id, dose.until)
    codes = [poured.ledgers.jars[pk].code for pk in shares if pk is not None]
    return "" if None in shares else " and ".join(sorted(codes))


def _list(words: Iterator[str]) -> str:
    """Return words with commas between; nothing where one of them is not known."""
    every = list(words)
    return ", ".join(dict.fromkeys(every)) if all(every) else ""


def _added(bath: BathNow) -> Iterator[tuple[str, str]]:
    begun = _first(bath.standing)
    for each in bath.steps:
        if each.step.kind is not StepKind.ADD:
            continue
        tick = each.ticks[0] if each.ticks else None
        amount = "" if tick is None or tick.value is None else _amount(tick)
        yield f"{each.step.title}, amount", amount
        yield f"{each.step.title}, after the start", _minutes(begun, tick)


def _heat(bath: BathNow) -> dict[str, str]:
    ticks = {each.step.kind: each.ticks[0] for each in bath.steps if each.ticks}
    heat, top = ticks.get(StepKind.HEAT), ticks.get(StepKind.TOP)
    read = [x for x in bath.standing if x.act == BathAct.TEMPERATURE and x.value]
    highest = max((x.value for x in read if x.value is not None), default=None)
    return {
        "Rise, heat on to the top": _minutes(heat, top),
        "Highest temperature read": (
            "" if highest is None else amount_text(highest, "°C")
        ),
        "Held, the top to heat off": _minutes(top, ticks.get(StepKind.OFF)),
    }


def _around(bath: BathNow) -> dict[str, str]:
    lines = bath.standing[::-1]
    problems = [line for line in lines if line.act == BathAct.PROBLEM]
    notes = [line.note for line in lines if line.note and line not in problems]
    acidity = [_amount(line) for line in lines if line.act == BathAct.PH]
    left = [_amount(line) for line in lines if line.act == BathAct.LEFTOVER]
    rinses = [line.act for line in lines].count(BathAct.RINSED)
    return {
        "pH read": ", ".join(acidity),
        "Dye left in the bath": ", ".join(left),
        "Rinses": str(rinses or ""),
        "Who": ", ".join(sorted({line.by for line in lines if line.by})),
        "Notes at the pot": "; ".join([bath.notes, *notes] if bath.notes else notes),
        "Problems": "; ".join(line.note or "not said which" for line in problems),
    }


def _read(bath: BathNow, kind: StepKind) -> str:
    ticks = [t for each in bath.steps if each.step.kind is kind for t in each.ticks]
    return next((_amount(tick) for tick in ticks if tick.value is not None), "")


def _amount(line: DoneLine) -> str:
    return "" if line.value is None else amount_text(line.value, line.unit)


def _first(lines: Sequence[DoneLine]) -> DoneLine | None:
    return min(lines, key=lambda line: line.at, default=None)


def _minutes(begun: DoneLine | None, ended: DoneLine | None) -> str:
    """Return whole minutes between two ticks; nothing where one is missing."""
    if begun is None or ended is None or ended.at < begun.at:
        return ""
    return amount_text(round((ended.at - begun.at).total_seconds() / 60), "min")
