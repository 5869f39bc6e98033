"""Run rules: what a row of lots says that no single lot does.

Lots are drawn in their order on a chart with a middle and with bands of one, two and
three standard deviations. Some patterns are rare while nothing is wrong.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final


@dataclass(frozen=True, kw_only=True)
class RunRule:
    """A rule, in words; ``meets`` is asked of the lots up to the last."""

    says: str
    meets: Callable[[Sequence[float]], bool]


def _beyond(*, count: int, of: int, sigmas: float) -> Callable[[Sequence[float]], bool]:
    """Return whether so many of the last lots lie beyond a band on one side."""

    def meets(places: Sequence[float]) -> bool:
        last = places[-of:]
        outer = abs(places[-1]) > sigmas
        sides = (sum(way * x > sigmas for x in last) for way in (1.0, -1.0))
        return outer and len(last) == of and max(sides) >= count

    return meets


def _trend(places: Sequence[float]) -> bool:
    last = places[-6:]
    steps = [two - one for one, two in pairwise(last)]
    return len(last) == 6 and (min(steps) > 0.0 or max(steps) < 0.0)


RULES: Final = (
    RunRule(
        says="one lot beyond three standard deviations",
        meets=_beyond(count=1, of=1, sigmas=3.0),
    ),
    RunRule(
        says="nine lots in a row on one side of the mean",
        meets=_beyond(count=9, of=9, sigmas=0.0),
    ),
    RunRule(says="six lots in a row going one way", meets=_trend),
    RunRule(
        says="two of three lots beyond two standard deviations on one side",
        meets=_beyond(count=2, of=3, sigmas=2.0),
    ),
    RunRule(
        says="four of five lots beyond one standard deviation on one side",
        meets=_beyond(count=4, of=5, sigmas=1.0),
    ),
)
"""Tests 1, 2, 3, 5 and 6 of eight; the others look at how a chart was made."""


def rules_met(places: Sequence[float]) -> tuple[str, ...]:
    """Return the rules that a row of lots meets with its last lot.

    Parameters
    ----------
    places : sequence of float
        Each lot's distance from the mean in standard deviations, with its sign,
        oldest first; at least one. [1]

    Returns
    -------
    tuple of str
        The rules in words; most often none. [-]

    Notes
    -----
    The older handbook has four rules, with eight lots on one side for nine. Each rule
    is met by about one lot in 300 while nothing is wrong, all five by one in 100.

    References
    ----------
    .. [nelson1984] tests 1, 2, 3, 5 and 6
    .. [westernelectric1956] section B, tests for unnatural patterns

    Examples
    --------
    >>> rules_met([0.2, -0.4, 2.3, 0.1, 2.2])
    ('two of three lots beyond two standard deviations on one side',)
    """
    return tuple(rule.says for rule in RULES if rule.meets(places))
