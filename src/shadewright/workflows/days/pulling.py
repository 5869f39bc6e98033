"""The pull list of a day: bottles off the shelf, how much of each, for which baths."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date

from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.baths.sums import POWDER_CAUTION
from shadewright.core.quantities import amount_text
from shadewright.paper.tick_lists import DayList, ListColumn, ListPart, day_list_pdf
from shadewright.workflows.bath_shapes import BathNow, BathStatus, StepNow
from shadewright.workflows.days.day_order import day_in_order
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio

_BOTTLES = (
    ListColumn(head="Bottle", share=0.1, is_large=True),
    ListColumn(head="Dye and strength", share=0.18),
    ListColumn(head="Takes", share=0.16, is_large=True),
    ListColumn(head="Holds", share=0.11),
    ListColumn(head="Baths", share=0.29),
    ListColumn(head="Mind", share=0.16),
)
_LOOSE = (
    ListColumn(head="What", share=0.35),
    ListColumn(head="In all", share=0.2, is_large=True),
    ListColumn(head="Baths", share=0.45),
)
NOTHING_TO_MIND = "–"
_BEFORE_OFF = {BathStatus.PLANNED, BathStatus.GOING}


@dataclass(kw_only=True)
class _Pull:
    """What is wanted of one thing: the sum, and each bath's own share in words."""

    total: float = 0.0
    baths: list[str] = field(default_factory=list)

    def add(self, amount: float, words: str) -> None:
        self.total += amount
        self.baths.append(words)


def pull_list(day: date, *, paper: str = "a4") -> bytes:
    """Return the pull list of a day as a PDF: what still has to go in."""
    here = studio()
    wanted = list(_wanted(day))
    dry = tuple(_loose_rows(wanted, is_dye=True))
    what = DayList(
        name="Pull list",
        day=day,
        parts=(
            ListPart(
                name="Bottles",
                said="Shake or stir each before the first draw.",
                columns=_BOTTLES,
                rows=tuple(_bottle_rows(wanted)),
            ),
            ListPart(name="Weighed dry", said="", columns=_LOOSE, rows=dry),
            ListPart(
                name="Acid and what else goes in",
                said="",
                columns=_LOOSE,
                rows=tuple(_loose_rows(wanted, is_dye=False)),
            ),
        ),
        cautions=(POWDER_CAUTION,) if dry else (),
        is_demo=here is not None and here.is_demo,
    )
    return day_list_pdf(what, paper=paper, printed_on=today())


def _wanted(day: date) -> Iterator[tuple[BathNow, StepNow]]:
    baths = day_in_order(day).baths
    for each in (x for x in baths if x.bath.status in _BEFORE_OFF):
        for step in each.bath.steps:
            if step.step.kind in {StepKind.DOSE, StepKind.ADD} and not step.is_done:
                yield each.bath, step


def _bottle_rows(wanted: list[tuple[BathNow, StepNow]]) -> Iterator[tuple[str, ...]]:
    pulls: dict[str, _Pull] = {}
    for bath, each in wanted:
        if each.step.code:
            pull = pulls.setdefault(each.step.code, _Pull())
            pull.add(_ml(each.step), _share(bath, each.step))
    bottles = {bottle.code: bottle for bottle in shelf()}
    codes = sorted(pulls, key=lambda code: (_dye(bottles, code), code))
    for code in codes:
        yield _bottle_row(code, pulls[code], bottles.get(code))


def _dye(bottles: Mapping[str, ShelfBottle], code: str) -> str:
    return bottles[code].dye_name if code in bottles else ""


def _bottle_row(code: str, pull: _Pull, bottle: ShelfBottle | None) -> tuple[str, ...]:
    takes = amount_text(pull.total, "ml")
    if bottle is None:
        mind = "Not on the shelf: choose another on the bath’s page"
        return code, "–", takes, "–", ", ".join(pull.baths), mind
    strength = amount_text(bottle.strength_percent, "%")
    return (
        code,
        f"{bottle.dye_name} {strength}",
        takes,
        amount_text(bottle.volume_ml, "ml"),
        ", ".join(pull.baths),
        _mind(pull, bottle) or NOTHING_TO_MIND,
    )


def _mind(pull: _Pull, bottle: ShelfBottle) -> str:
    """Return what is the matter with a bottle for this day, in words."""
    short = pull.total - bottle.usable_ml
    said = [bottle.trouble] if bottle.trouble else []
    if short > 0.01 * pull.total:
        said.append(f"short by {amount_text(short, 'ml')}")
    return ", ".join(said)


def _loose_rows(
    wanted: list[tuple[BathNow, StepNow]], *, is_dye: bool
) -> Iterator[tuple[str, ...]]:
    pulls: dict[tuple[str, str], _Pull] = {}
    for bath, each in wanted:
        step = each.step
        if step.code or (step.kind is StepKind.DOSE) is not is_dye:
            continue
        name = step.title.removeprefix("First half: ").removeprefix("Second half: ")
        pull = pulls.setdefault((name, step.unit), _Pull())
        pull.add(step.amount or 0.0, _share(bath, step))
    for (name, unit), pull in sorted(pulls.items()):
        yield name, amount_text(pull.total, unit), ", ".join(pull.baths)


def _ml(step: RoundStep) -> float:
    said = step.amount if step.unit == "ml" else step.volume_ml
    return said or 0.0


def _share(bath: BathNow, step: RoundStep) -> str:
    short = bath.number.rpartition("-")[2]
    return f"{short} {amount_text(step.amount or 0.0, step.unit)}"
