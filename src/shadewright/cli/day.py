"""``shadewright day``: plan a dye day from a file."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from time import monotonic

import click

from shadewright.cli.answers import Rows, as_json, say
from shadewright.cli.colour_files import text_of
from shadewright.cli.commands import SumGroup
from shadewright.cli.lots import Lots
from shadewright.core.planning import (
    Day,
    DayPlan,
    PlaceBefore,
    PlannedBath,
    Stage,
    Tried,
    plan_of,
    searched_for,
)
from shadewright.exchange.day_file import plan_answer, read_before, read_day

_MOST_SECONDS = 3600.0


@click.group(cls=SumGroup)
def day() -> None:
    """Plan a dye day: pots, sources, circuits, hands and the rack."""


@day.command()
@click.argument("day_file", metavar="DAY.json", type=click.Path(path_type=Path))
@click.option(
    "--seconds",
    type=click.FloatRange(0.1, _MOST_SECONDS),
    default=2.0,
    show_default=True,
    help="How long to look for a better plan.",
)
@as_json
def plan(*, day_file: Path, seconds: float, as_json: bool) -> None:
    """Plan a day as early and as calm as it goes, and say what does not fit."""
    text = text_of(day_file, name="The day file")
    wanted, before = read_day(text), read_before(text)
    tried, is_stopped = _searched(wanted, seconds, before)
    found = plan_of(tried, wanted)
    say(
        plan_answer(found, is_stopped=is_stopped),
        as_json=as_json,
        rows=_rows(found, wanted),
        warnings=[
            *(f"{each.name} is left out: {each.why}" for each in found.left_out),
            *(f"{each.name}: {each.why}" for each in found.conflicts),
        ],
    )


@dataclass(frozen=True, kw_only=True)
class _Clock:
    """The day’s own clock: a time after its start as people read it."""

    opens_min: int

    def said(self, minutes: float) -> str:
        hours, rest = divmod(self.opens_min + int(minutes // 1), 60)
        return f"{hours:02d}:{rest:02d}"


def _searched(
    wanted: Day, seconds: float, before: Mapping[str, PlaceBefore]
) -> tuple[Tried, bool]:
    """Return the best plan within a budget; the clock stops it only if it must."""
    until = monotonic() + 1.1 * seconds + 0.5
    return searched_for(
        wanted,
        seconds=seconds,
        draws=Lots(),
        before=before,
        goes_on=lambda _tried: monotonic() <= until,
    )


def _rows(found: DayPlan, wanted: Day) -> Rows:
    """Return the day's sums, then each bath and each pot washed out, by the clock."""
    at = _Clock(opens_min=wanted.opens_min)
    return [
        ("ends", at.said(found.end_min)),
        ("cannot end before", at.said(found.bound_min)),
        ("hands", f"{found.hands_min:g}\u00a0min"),
        *(
            (f"circuit {name}", f"{kw:.3g}\u00a0kW at most")
            for name, kw in found.peak_kw
        ),
        *((bath.name, _said(bath, at)) for bath in found.baths),
        *(
            (f"wash out {each.pot}", f"{at.said(each.start_min)}, before {each.before}")
            for each in found.washouts
        ),
        *(
            (f"{each.name} before", _stood(each.was, wanted, at))
            for each in found.changes
        ),
    ]


def _stood(was: PlaceBefore, wanted: Day, at: _Clock) -> str:
    return f"{_on(was)}, fill {at.said(was.start / wanted.ticks_per_min)}"


def _on(place: PlannedBath | PlaceBefore) -> str:
    return f"{place.pot} on {place.source}" if place.pot else f"in {place.source}"


def _said(bath: PlannedBath, at: _Clock) -> str:
    starts = {each.stage: each.start_min for each in bath.stages}
    said = _on(bath)
    for stage in (Stage.FILL, Stage.HEAT, Stage.CHECK, Stage.RINSE):
        if stage in starts:
            said += f", {stage} {at.said(starts[stage])}"
    return said
