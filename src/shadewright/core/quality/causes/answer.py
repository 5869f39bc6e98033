"""Is the last lot off, and by what? The answer, with its chances."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import starmap
from math import fsum, hypot, sqrt
from typing import Final

from shadewright.core.colour import Lab, ciede2000, difference_words
from shadewright.core.quality.causes.case import Case
from shadewright.core.quality.causes.features import (
    Feature,
    Features,
    Scale,
    features_of,
    numbers_of,
    scales_of,
)
from shadewright.core.quality.causes.history import Factor, PastLot
from shadewright.core.quality.causes.hotelling import chance_of, t_squared
from shadewright.core.quality.causes.hypotheses import hypotheses, unwritten_weight
from shadewright.core.quality.causes.learning import (
    learned_from,
    paler_than,
)
from shadewright.core.quality.causes.matrices import (
    UNIT,
    Three,
    combined,
    three,
)
from shadewright.core.quality.causes.noise import Noise, expected_distance, noise_of
from shadewright.core.quality.causes.runs import rules_met
from shadewright.core.quality.causes.usual import FEWEST, Usual, usual_of
from shadewright.errors import MissingError

DRIFTED: Final = 0.02
"""A lot that noise alone throws so far out this seldom has drifted. [-]"""

DOUBTFUL: Final = 0.03
"""Up to this chance it cannot be told. [-]"""

LEAST_SCORE: Final = 0.05
"""A cause less probable than this is not named. [-]"""

LEAST_SAID: Final = 0.5
"""An expected shift smaller than this is not put into words. [1]"""

MOST_LOTS: Final = 60
"""Older lots than so many are not looked at. [-]"""


class Drift(StrEnum):
    """Whether a lot lies with the others."""

    WITHIN = "within"
    DRIFTED = "drifted"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, kw_only=True)
class Cause:
    """A factor that may have moved the colour, and how probable that is.

    ``now`` is None where nobody wrote it down for this lot. ``expected`` is the shift
    in L, a, b that it should give by what it did before, and ``words`` say it if it can
    be seen; None where no lot tells.
    """

    factor: Factor
    was: str | float
    now: str | float | None
    score: float
    expected: Three | None
    words: str = ""


@dataclass(frozen=True, kw_only=True)
class LotCauses:
    """The last lot against those before it.

    ``de`` is CIEDE2000 to the mean of the lots in control, ``expected_de`` what noise
    alone gives on average, ``words`` how the lot looks beside them, ``unknown`` the
    chance that nobody wrote the cause down, ``why`` what stands in the way of telling.
    """

    verdict: Drift
    de: float | None
    expected_de: float
    causes: tuple[Cause, ...] = ()
    unknown: float = 0.0
    signals: tuple[str, ...] = ()
    words: str = ""
    why: str = ""


def lot_causes(lots: Sequence[PastLot]) -> LotCauses:
    """Return whether the last lot is off, and the likeliest causes.

    P(f) = w_f p(d | f) / (w_0 p(d | nobody wrote it down) + Σ w_g p(d | g))    (12)

    Parameters
    ----------
    lots : sequence of PastLot
        A recipe's lots on one base, oldest first; the last is asked about. [-]

    Returns
    -------
    LotCauses
        Verdict, distance, causes with the likeliest first. [-]

    Raises
    ------
    MissingError
        If there is no lot.

    Notes
    -----
    d is the shift from the mean of the lots in control, less what ordinary ages, holds
    and loads explain. w and p are told in ``hypotheses``. A lot has drifted where
    noise alone throws one in 50 so far out. Widths and limits are our choice, tried
    on invented studios of several laws.

    Examples
    --------
    >>> level = [
    ...     PastLot(number=f"{n}", colour=Lab(50 + n % 2 / 5, 9, 9)) for n in range(9)
    ... ]
    >>> lot_causes(level).verdict.value
    'within'
    """
    if not lots:
        raise MissingError(name="A lot", argument="lots")
    last = lots[-1]
    past = [lot for lot in lots[:-1] if lot.colour is not None][-MOST_LOTS:]
    colours = [lot.colour for lot in past if lot.colour is not None]
    if last.colour is None:
        return _untold(colours, why="its colour was not read")
    if not colours:
        return _untold(colours, why="no lot before it was read")
    usual = usual_of(colours)
    return _told(last, last.colour, past, colours, usual)


def _untold(colours: Sequence[Lab], *, why: str) -> LotCauses:
    noise = noise_of(colours)
    mean = colours[-1] if colours else Lab(50.0, 0.0, 0.0)
    return LotCauses(
        verdict=Drift.CANNOT_TELL,
        de=None,
        expected_de=expected_distance(mean, noise.covariance),
        why=why,
    )


def _told(
    last: PastLot,
    colour: Lab,
    past: Sequence[PastLot],
    colours: Sequence[Lab],
    usual: Usual,
) -> LotCauses:
    mean = usual.mean(colours)
    scales = scales_of(past, [bool(weight) for weight in usual.weights])
    learned = learned_from(
        [features_of(lot, scales) for lot in past],
        [_less(colour, mean) for colour in colours],
        variance=noise_of(usual.kept(colours)).variance,
        paler=paler_than(mean),
    )
    ordinary = [_ordinary(lot, scales) for lot in past]
    plain = [
        _less(each, learned.effect(numbers).shift)
        for each, numbers in zip(colours, ordinary, strict=True)
    ]
    numbers = _ordinary(last, scales)
    now = _less(colour, learned.effect(numbers).shift)
    noise = noise_of(list(starmap(Lab, usual.kept(plain))))
    by_noise = combined((1.0 + usual.scatter, noise.covariance))
    doubt = learned.effect(_beside(numbers, ordinary, usual)).variance
    case = Case(
        last=last,
        lots=tuple(past),
        usual=usual,
        scales=scales,
        learned=learned,
        shift=_less(now, usual.mean(plain)),
        covariance=combined((1.0, by_noise), (doubt, UNIT)),
    )
    verdict, why = _verdict(case, noise)
    standard = Lab(*mean)
    found = _causes(case, standard) if verdict is Drift.DRIFTED else ((), 0.0)
    return LotCauses(
        verdict=verdict,
        de=ciede2000(standard, colour),
        expected_de=expected_distance(standard, by_noise),
        causes=found[0],
        unknown=found[1],
        signals=_signals(case, noise, [*plain, now]),
        words=difference_words(standard, colour),
        why=why,
    )


def _verdict(case: Case, noise: Noise) -> tuple[Drift, str]:
    """Return the verdict, and what stands in its way."""
    chance = chance_of(t_squared(case.shift, case.covariance), freedom=noise.freedom)
    if len(case.usual.kept(case.lots)) < FEWEST:
        return Drift.CANNOT_TELL, f"fewer than {FEWEST} lots before it were read"
    if DRIFTED <= chance < DOUBTFUL:
        return Drift.CANNOT_TELL, "it lies at the edge of the noise: read it again"
    return (Drift.DRIFTED if chance < DRIFTED else Drift.WITHIN), ""


def _causes(case: Case, standard: Lab) -> tuple[tuple[Cause, ...], float]:
    """Return the causes, likeliest first, and the chance that none was written down."""
    found = sorted(hypotheses(case), key=lambda each: -each.weight)
    unknown = unwritten_weight(case)
    whole = fsum(each.weight for each in found) + unknown
    causes = (
        Cause(
            factor=each.factor,
            was=each.was,
            now=each.now,
            score=each.weight / whole,
            expected=each.expected,
            words=_words(standard, each.expected),
        )
        for each in found
    )
    named = tuple(cause for cause in causes if cause.score >= LEAST_SCORE)
    return named, unknown / whole


def _words(standard: Lab, shift: Three | None) -> str:
    if shift is None or hypot(*shift) < LEAST_SAID:
        return ""
    moved = Lab(*(x + y for x, y in zip(standard, shift, strict=True)))
    return difference_words(standard, moved)


def _ordinary(lot: PastLot, scales: dict[Factor, Scale]) -> dict[Feature, float]:
    """Return a lot’s numbers, as far as they are usual."""
    return {
        (factor, name): steps - scales[factor].beyond(lot.number_of(factor))
        for (factor, name), steps in numbers_of(lot, scales).items()
        if factor is not None
    }


def _beside(one: Features, others: Sequence[Features], usual: Usual) -> Features:
    """Return by how much a lot’s numbers differ from the usual ones."""
    return {
        each: x
        - fsum(
            weight * other[each]
            for weight, other in zip(usual.weights, others, strict=True)
        )
        for each, x in one.items()
    }


def _signals(case: Case, noise: Noise, plain: Sequence[Three]) -> tuple[str, ...]:
    """Return the run rules that the last lot meets, number by number."""
    mean = case.usual.mean(plain[:-1])
    found: list[str] = []
    for axis, name in enumerate(("L", "a", "b")):
        sigma = sqrt(noise.covariance[axis][axis])
        places = [(each[axis] - mean[axis]) / sigma for each in plain]
        found += [f"{name}: {says}" for says in rules_met(places)]
    return tuple(found)


def _less(one: Sequence[float], two: Sequence[float]) -> Three:
    return three([x - y for x, y in zip(one, two, strict=True)])
