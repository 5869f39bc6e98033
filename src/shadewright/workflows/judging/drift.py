"""Drift: how far each lot lies from the standard, and what was new with it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from shadewright.core.colour import Lab, ciede2000, difference_words
from shadewright.core.quality import Factor, lot_causes
from shadewright.core.quality.causes import NUMBERS
from shadewright.core.quality.causes.features import LEAST_STEP
from shadewright.core.quality.causes.usual import usual_of
from shadewright.core.quality.dry_check import Formula
from shadewright.workflows.judging.causes import (
    CALLED,
    fact_text,
    signals_told,
    which_dyes,
)
from shadewright.workflows.judging.histories import (
    TOGETHER,
    History,
    LotThen,
    history_of,
)
from shadewright.workflows.judging.standards import standard_of
from shadewright.workflows.judging.tolerances import tolerances_now
from shadewright.workflows.shades.lot_colours import LotColour

MOST_DRAWN = 24
"""Older lots are in the table that is taken away, not in the picture. [-]"""

COVERAGE = 1.96
"""A normal error stays within so many of its standard uncertainties in 95 %. [-]"""

_STAYS = (Factor.JAR, Factor.MILL_LOT, Factor.WATER, Factor.POT, Factor.PERSON)
_FEWEST = 3


@dataclass(frozen=True, kw_only=True)
class DriftMark:
    """What was new with a lot, under a number."""

    number: int
    lot: str
    words: str


@dataclass(frozen=True, kw_only=True)
class DriftLot:
    """A lot on the chart: how far from the middle, which way, how surely.

    ``lighter`` is the step in lightness; ``u`` the standard uncertainty of the
    difference, the same as at its dry check.
    """

    number: str
    dyed_on: date
    difference: float
    u: float | None
    words: str
    lighter: float
    mark: DriftMark | None

    @property
    def spread(self) -> float | None:
        """How far its reading may be off, 19 times in 20."""
        return None if self.u is None else COVERAGE * self.u


@dataclass(frozen=True, kw_only=True)
class DriftNow:
    """All lots of a recipe on a base that were read, and what they say.

    ``beside`` says what the distance is from, ``noise`` what noise alone gives,
    ``tolerance`` up to where the studio calls it a match, ``signals`` the run rules
    that the newest meets.
    """

    history: History
    beside: str
    lots: tuple[DriftLot, ...]
    older: int
    noise: float
    tolerance: float | None
    signals: tuple[str, ...]

    @property
    def marks(self) -> tuple[DriftMark, ...]:
        """What was new, in the order of the lots."""
        return tuple(lot.mark for lot in self.lots if lot.mark is not None)


def drift(*, recipe_id: int, base_id: int) -> DriftNow:
    """Return how the lots of a recipe on a base lie, the oldest first."""
    history = history_of(recipe_id=recipe_id, base_id=base_id)
    standard = standard_of(recipe_id=recipe_id, base_id=base_id)
    middle = None if standard is None else standard.lab
    beside = "the standard" if middle is not None else "the mean of lots in control"
    middle = middle or _mean(history)
    found = lot_causes(history.past) if history.lots else None
    lots = () if middle is None else tuple(drift_lots(history, middle))
    return DriftNow(
        history=history,
        beside=beside,
        lots=lots[-MOST_DRAWN:],
        older=max(len(lots) - MOST_DRAWN, 0),
        noise=0.0 if found is None else found.expected_de,
        tolerance=_tolerance() if beside == "the standard" else None,
        signals=() if found is None else signals_told(found),
    )


def _mean(history: History) -> Lab | None:
    colours = [lot.past.colour for lot in history.read if lot.past.colour is not None]
    return Lab(*usual_of(colours).mean(colours)) if colours else None


def _tolerance() -> float | None:
    now = tolerances_now()
    return now.steps.match if now.formula is Formula.CIEDE2000 else None


def drift_lots(history: History, middle: Lab) -> Iterator[DriftLot]:
    """Return the lots that can be drawn, each with what was new with it.

    Yields
    ------
    DriftLot
        A lot, the oldest first.
    """
    number, shown = 0, {lot.number for lot in history.shown}
    waiting: list[str] = []
    for place, lot in enumerate(history.lots):
        news = "; ".join(_news(history.lots[:place], lot))
        if lot.colour is None or lot.number not in shown:
            # What was new with a lot that cannot be drawn stands at the next one.
            waiting += [f"{news}, since {lot.number}"] if news else []
            continue
        words = "; ".join([*waiting, news] if news else waiting)
        number, waiting = number + bool(words), []
        mark = DriftMark(number=number, lot=lot.number, words=words) if words else None
        yield _lot(lot, lot.colour, middle, mark)


def _lot(
    lot: LotThen, colour: LotColour, middle: Lab, mark: DriftMark | None
) -> DriftLot:
    return DriftLot(
        number=lot.number,
        dyed_on=lot.dyed_on,
        difference=ciede2000(middle, colour.lab),
        u=colour.u,
        words=difference_words(middle, colour.lab),
        lighter=colour.lab.L - middle.L,
        mark=mark,
    )


def _news(before: Sequence[LotThen], lot: LotThen) -> Iterator[str]:
    # What no lot before had: of the first nothing is news.
    if not before:
        return
    for factor in _STAYS:
        yield from _new_name(factor, before, lot)
    for factor in NUMBERS:
        if factor is not Factor.BOTTLE_AGE:
            yield from _far_out(factor, before, lot)
    if lot.version not in {each.version for each in before}:
        yield f"version {lot.version} of the recipe"


def _new_name(factor: Factor, before: Sequence[LotThen], lot: LotThen) -> Iterator[str]:
    name = lot.past.name(factor)
    known = [x for x in before if x.past.name(factor) is not None]
    if name is None or not known or name in {x.past.name(factor) for x in known}:
        return
    dyes = which_dyes(factor, was=known[-1], now=lot) if len(lot.dyes) > 1 else ""
    before_it = str(known[-1].past.name(factor)).split(TOGETHER)
    new = [part for part in name.split(TOGETHER) if part not in before_it]
    named = TOGETHER.join(new or [name])
    yield f"{CALLED[factor].lower()} {named}" + (f" ({dyes})" if dyes else "")


def _far_out(factor: Factor, before: Sequence[LotThen], lot: LotThen) -> Iterator[str]:
    value = lot.past.number_of(factor)
    known = [x for each in before if (x := each.past.number_of(factor)) is not None]
    if value is None or len(known) < _FEWEST:
        return
    inside = min(max(value, min(known)), max(known))
    if abs(value - inside) >= LEAST_STEP[factor]:
        usual = fact_text(factor, inside)
        yield f"{CALLED[factor].lower()} {fact_text(factor, value)}, not {usual}"
