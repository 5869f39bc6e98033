"""After a dye day: each bath as planned beside as it really went, and what differed."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from shadewright.core.baths.exhaustion import CLEAR_PERCENT
from shadewright.core.planning import Stage
from shadewright.core.quantities import NO_BREAK, amount_text
from shadewright.records import day_reads
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import shaped_baths
from shadewright.workflows.bath_shapes import MORE, BathNow, BathStatus, DoneLine
from shadewright.workflows.days.day_ledger import DayLedger, day_ledger
from shadewright.workflows.days.rack import Hung, rack_now
from shadewright.workflows.days.schedules import BathAt, Schedule, schedule_of
from shadewright.workflows.days.stage_times import StageTimes, stage_minutes
from shadewright.workflows.days.used import DayUse, day_use
from shadewright.workflows.deviations import deviations
from shadewright.workflows.rescaling import ACCEPTED, RESCALED

ON_TIME = timedelta(minutes=5)
"""What is no later, and no earlier, than so much was on time (our choice)."""
_BY_THE_PLAN = "as planned"


@dataclass(frozen=True, kw_only=True)
class Moment:
    """Something with a time: planned and real, None where it is not known."""

    what: str
    planned: datetime | None
    real: datetime | None

    @property
    def differs(self) -> str:
        """How far the two lie apart, in words; empty where one is not known."""
        if self.planned is None or self.real is None:
            return ""
        return _apart(self.real - self.planned, more="later", less="earlier")


@dataclass(frozen=True, kw_only=True)
class Lasted:
    """Something that lasts: planned and real, None where it is not known."""

    what: str
    planned: timedelta | None
    real: timedelta | None

    @property
    def differs(self) -> str:
        """How far the two lie apart, in words; empty where one is not known."""
        if self.planned is None or self.real is None:
            return ""
        return _apart(self.real - self.planned, more="longer", less="shorter")

    def words(self, value: timedelta | None) -> str:
        """Return one of the two in words; empty where it is not known."""
        return "" if value is None else _length(value)


@dataclass(frozen=True, kw_only=True)
class BathWent:
    """A bath: its times and lengths side by side, and what differed in sentences."""

    number: str
    called: str
    status: BathStatus
    moments: tuple[Moment, ...]
    lengths: tuple[Lasted, ...]
    differs: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class DayAfter:
    """A day as it went; ``last_off`` is its last heat off, planned and real.

    What was planned is that of the baths whose heat was really on.
    """

    day: date
    is_planned: bool
    baths: tuple[BathWent, ...]
    last_off: Moment
    times: StageTimes
    hung: tuple[Hung, ...]
    use: DayUse
    ledger: DayLedger


def day_after(day: date) -> DayAfter:
    """Return how a day went, as far as its ledgers say."""
    plan = schedule_of(day)
    of_day = tuple(day_reads.baths_of_day(day))
    rows = list(zip(of_day, shaped_baths(of_day), strict=True))
    baths = tuple(_bath(row, bath, plan) for row, bath in rows)
    numbers = {each.number for each in baths}
    return DayAfter(
        day=day,
        is_planned=plan is not None,
        baths=baths,
        last_off=_last_off(baths),
        times=stage_minutes(),
        hung=tuple(each for each in rack_now().hung if each.number in numbers),
        use=day_use(day, rows),
        ledger=day_ledger(day),
    )


def _bath(row: Bath, bath: BathNow, plan: Schedule | None) -> BathWent:
    planned = None if plan is None else plan.bath(bath.number)
    moments = tuple(_moments(bath, planned))
    return BathWent(
        number=bath.number,
        called=bath.called,
        status=bath.status,
        moments=moments,
        lengths=tuple(_lengths(moments)),
        differs=tuple(_differs(row, bath, planned)),
    )


def _moments(bath: BathNow, planned: BathAt | None) -> Iterator[Moment]:
    said = (
        ("Heat on", _starts(planned, Stage.RAMP), _first(bath, BathAct.HEAT_ON)),
        ("At the top", _starts(planned, Stage.HOLD), _first(bath, BathAct.AT_TOP)),
        ("Heat off", _ends(planned, Stage.CHECK), _first(bath, BathAct.HEAT_OFF)),
        ("First rinse", _starts(planned, Stage.RINSE), _first(bath, BathAct.RINSED)),
        ("On the rack", _ends(planned, Stage.RINSE), _first(bath, BathAct.HUNG)),
    )
    for what, when, real in said:
        yield Moment(what=what, planned=when, real=real)


def _lengths(moments: Sequence[Moment]) -> Iterator[Lasted]:
    on, top, off, *_later = moments
    for what, begins, ends in (
        ("Way to the top", on, top),
        ("Hold and look", top, off),
    ):
        yield Lasted(
            what=what,
            planned=_between(begins.planned, ends.planned),
            real=_between(begins.real, ends.real),
        )


def _between(begins: datetime | None, ends: datetime | None) -> timedelta | None:
    if begins is None or ends is None or ends < begins:
        return None
    return ends - begins


def _differs(row: Bath, bath: BathNow, planned: BathAt | None) -> Iterator[str]:
    # In sentences, what the ledger says besides the times.
    if bath.status is BathStatus.PLANNED:
        yield "It was not begun."
    if planned is not None:
        yield from _elsewhere(row, planned)
    yield from (each.words for each in deviations(bath))
    for each in bath.steps:
        if each.is_missed and each.dose is None:
            yield f"{each.step.title}: left out."
        if each.is_double:
            yield f"{each.step.title}: ticked twice."
        for line in (*each.parts, *each.ticks):
            if line.bottle and each.step.code and line.bottle != each.step.code:
                yield f"{each.step.title}: from {line.bottle}, not {each.step.code}."
    yield from _noted(bath)


def _elsewhere(row: Bath, planned: BathAt) -> Iterator[str]:
    pot = "" if row.pot is None else row.pot.name
    source = "" if row.source is None else row.source.name
    for what, now, was in (
        ("pot", pot, planned.pot),
        ("burner", source, planned.source),
    ):
        if now and was and now != was:
            yield f"In another {what}: {now}, not {was}."


def _noted(bath: BathNow) -> Iterator[str]:
    looked = [line for line in bath.standing if line.act == BathAct.LEFTOVER]
    left = looked[0].value if looked else None
    if left is not None and left > CLEAR_PERCENT:
        yield f"About {amount_text(left, '%')} of the dye was left at the last look."
    for line in reversed(bath.standing):
        words = _line_words(line)
        if words:
            yield f"{words}{f': {line.note}' if line.note else ''}."


def _line_words(line: DoneLine) -> str:
    """Return what a line says that no plan had; empty for all others."""
    if line.step.endswith(MORE) and line.value is not None:
        return f"Held {amount_text(line.value, line.unit or 'min')} more"
    if line.step.startswith(RESCALED):
        return "The doses still to come were rescaled"
    if line.step.startswith(ACCEPTED):
        return "A dose was left as it went in"
    said = {
        BathAct.PROBLEM: "Problem",
        BathAct.GIVEN_UP: "Given up",
        BathAct.PHOTO: "A photo was kept",
    }
    if line.act == BathAct.NOTE and line.note and not line.step:
        return "Note"
    return said.get(line.act, "")


def _last_off(baths: Sequence[BathWent]) -> Moment:
    offs = [x for each in baths if (x := each.moments[2]).real is not None]
    return Moment(
        what="Last heat off",
        planned=max((x.planned for x in offs if x.planned is not None), default=None),
        real=max((x.real for x in offs if x.real is not None), default=None),
    )


def _first(bath: BathNow, act: BathAct) -> datetime | None:
    return min((line.at for line in bath.standing if line.act == act), default=None)


def _starts(planned: BathAt | None, which: Stage) -> datetime | None:
    stage = None if planned is None else planned.stage(which)
    return None if stage is None else stage.starts_at


def _ends(planned: BathAt | None, which: Stage) -> datetime | None:
    stage = None if planned is None else planned.stage(which)
    return None if stage is None else stage.ends_at


def _apart(gap: timedelta, *, more: str, less: str) -> str:
    if abs(gap) <= ON_TIME:
        return _BY_THE_PLAN
    return f"{_length(abs(gap))} {more if gap > timedelta(0) else less}"


def _length(span: timedelta) -> str:
    """Return a span as the clock on the wall tells it."""
    minutes = round(span.total_seconds() / 60)
    if minutes < 100:
        return f"{minutes}{NO_BREAK}min"
    hours, rest = divmod(minutes, 60)
    return f"{hours}{NO_BREAK}h {rest}{NO_BREAK}min" if rest else f"{hours}{NO_BREAK}h"
