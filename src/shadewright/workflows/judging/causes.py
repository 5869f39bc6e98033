"""Why a lot does not match: what was different, likeliest first, in plain words."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.quality import (
    Cause,
    Drift,
    Factor,
    LotCauses,
    lot_causes,
    repeat_test,
)
from shadewright.core.quality.causes import NUMBERS
from shadewright.core.quantities import number_text
from shadewright.workflows.judging.histories import (
    TOGETHER,
    DyeThen,
    History,
    LotThen,
    history_up_to,
)
from shadewright.workflows.judging.moved import DoseOff, doses_off, usual_colour

CALLED = {
    Factor.JAR: "Jar",
    Factor.BOTTLE: "Bottle",
    Factor.BOTTLE_AGE: "Bottle’s age",
    Factor.MILL_LOT: "Mill lot",
    Factor.WATER: "Water",
    Factor.POT: "Pot",
    Factor.LOAD: "Yarn in a litre",
    Factor.RAMP: "Rise",
    Factor.HOLD: "Hold",
    Factor.ACID_AFTER: "Acid after",
    Factor.PERSON: "Person",
}
"""What a page calls each factor."""

UNITS = {
    Factor.BOTTLE_AGE: "days",
    Factor.LOAD: "g/l",
    Factor.RAMP: "°C/min",
    Factor.HOLD: "min",
    Factor.ACID_AFTER: "min",
}

_AXES = {"L": "Light or dark", "a": "Red or green", "b": "Yellow or blue"}
_DOES_LITTLE = {
    True: "So much of it should do next to nothing by what is known",
    False: "In the lots before it did nothing that is seen",
}
_LEAST_SEEN = 0.5


@dataclass(frozen=True, kw_only=True)
class CauseTold:
    """A factor that may have moved the colour: its chance, and what it should do.

    ``now`` is nothing where nobody wrote it down; ``which`` names the dyes where a jar
    or a bottle is another; ``difference`` is in CIEDE2000, None where no lot tells.
    """

    name: str
    was: str
    now: str
    which: str
    chance_percent: float
    does: str
    difference: float | None


@dataclass(frozen=True, kw_only=True)
class Why:
    """A lot beside those before it.

    ``usual`` is the mean of the lots in control, ``unwritten_percent`` the chance that
    nobody wrote the cause down; ``signals`` are the run rules it meets; ``notes`` what
    is to be known of the reckoning.
    """

    history: History
    found: LotCauses
    usual: Lab | None
    causes: tuple[CauseTold, ...]
    unwritten_percent: float
    test: str
    signals: tuple[str, ...]
    doses: tuple[DoseOff, ...]
    notes: tuple[str, ...]

    @property
    def lot(self) -> LotThen:
        """The lot that is asked about."""
        return self.history.lots[-1]

    @property
    def is_off(self) -> bool:
        """Whether it drifted."""
        return self.found.verdict is Drift.DRIFTED


def why(number: str) -> Why:
    """Return what was different in a lot, likeliest first."""
    history = history_up_to(number)
    found = lot_causes(history.past)
    usual = usual_colour(history)
    return Why(
        history=history,
        found=found,
        usual=usual,
        causes=tuple(_told(cause, history, usual) for cause in found.causes),
        unwritten_percent=100.0 * found.unknown,
        test=repeat_test(
            replace(
                found, causes=tuple(_narrowed(each, history) for each in found.causes)
            )
        ),
        signals=signals_told(found),
        doses=doses_off(history),
        notes=tuple(_notes(history)),
    )


def signals_told(found: LotCauses) -> tuple[str, ...]:
    """Return the run rules that are met, in words."""
    pairs = (signal.partition(": ") for signal in found.signals)
    return tuple(f"{_AXES[axis]}: {says}" for axis, _, says in pairs)


def fact_text(factor: Factor, value: str | float | None) -> str:
    """Return a name or a number of a factor with its unit; nothing if it is unknown."""
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    return f"{number_text(value, digits=3)}\u00a0{UNITS[factor]}"


def which_dyes(factor: Factor, *, was: LotThen, now: LotThen) -> str:
    """Return which dyes of two lots had another jar or bottle; else nothing."""
    before = {dye.name: _part(factor, dye) for dye in was.dyes}
    return " and ".join(
        dye.name
        for dye in now.dyes
        if before.get(dye.name) != _part(factor, dye) is not None
    )


def _part(factor: Factor, dye: DyeThen) -> str | None:
    parts = {Factor.JAR: dye.jar, Factor.BOTTLE: dye.bottle}
    return parts.get(factor)


def _told(cause: Cause, history: History, usual: Lab | None) -> CauseTold:
    does, difference = _does(cause, usual)
    narrow = _narrowed(cause, history)
    return CauseTold(
        name=CALLED[cause.factor],
        was=fact_text(cause.factor, narrow.was),
        now=fact_text(cause.factor, narrow.now),
        which=_which(cause, history),
        chance_percent=100.0 * cause.score,
        does=does,
        difference=difference,
    )


def _which(cause: Cause, history: History) -> str:
    now = history.lots[-1]
    if cause.factor is Factor.BOTTLE_AGE:
        return now.dyes[0].name if now.dyes else ""
    was = _lot_before(cause, history)
    if was is None or cause.now is None or len(now.dyes) == 1:
        return ""
    return which_dyes(cause.factor, was=was, now=now)


def _narrowed(cause: Cause, history: History) -> Cause:
    """Return a jar or a bottle without those of the dyes that are as before."""
    was = _lot_before(cause, history)
    if was is None or TOGETHER not in str(cause.now):
        return cause
    olds, news = str(cause.was).split(TOGETHER), str(cause.now).split(TOGETHER)
    gone = [name for name in olds if name not in news]
    new = [name for name in news if name not in olds]
    if not gone or not new:
        return cause
    return replace(cause, was=TOGETHER.join(gone), now=TOGETHER.join(new))


def _lot_before(cause: Cause, history: History) -> LotThen | None:
    """Return the newest lot that had the jar or the bottle before."""
    if cause.factor not in {Factor.JAR, Factor.BOTTLE}:
        return None
    known = (x for x in reversed(history.lots[:-1]) if _name(cause, x) == cause.was)
    return next(known, None)


def _name(cause: Cause, lot: LotThen) -> str | None:
    return lot.past.name(cause.factor)


def _does(cause: Cause, usual: Lab | None) -> tuple[str, float | None]:
    """Return what a cause should do to the colour by the lots before, in words."""
    if cause.now is None:
        return "Ask whoever dyed it", None
    if cause.expected is None or usual is None:
        return "New here: no lot before tells what it does", None
    if hypot(*cause.expected) < _LEAST_SEEN:
        return _DOES_LITTLE[cause.factor in NUMBERS], None
    moved = Lab(*(x + y for x, y in zip(usual, cause.expected, strict=True)))
    words = cause.words or "a shift"
    return f"By the lots before it should be: {words}", ciede2000(usual, moved)


def _notes(history: History) -> Iterator[str]:
    # What is not in the reckoning.
    many, last = len(history.lots), history.lots[-1]
    unread = sum(lot.colour is None for lot in history.lots)
    if unread:
        yield f"Without a colour: {unread} of {many} lots."
    by_eye = sum(x.colour is not None for x in history.lots) - len(history.shown)
    if by_eye:
        yield f"Not read by a meter, so not counted: {by_eye} of {many} lots."
    others = [lot for lot in history.shown if lot.planned != last.planned]
    if others:
        versions = ", ".join(f"{x}" for x in sorted({lot.version for lot in others}))
        yield (
            f"Dyed with other doses, by version {versions} of the recipe, so not "
            f"counted: {len(others)} of {many} lots."
        )
