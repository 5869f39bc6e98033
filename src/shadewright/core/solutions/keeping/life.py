"""How long the stocks of a dye keep, from the studio's own checks.

Sources disagree on how long a stock of acid dye keeps, and no published test was
found. A studio's own looks are better than any of them, once there are enough: five
bottles watched, two of them settled (our choice). The curve of the bottles that are
still clear then gives two days. Up to the *look-by* day nine in ten are clear; by the
*discard-by* day half are not. Where a fall of the curve lies between two looks, its
first day counts.

With less to go by common practice stands, shortened to the middle of the gap in which
the first bottle settled: one bottle is no law, but a reason to look.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.solutions.keeping.turnbull import LifeStep, Watch, still_clear
from shadewright.core.tables.stock_age import MIX_FRESH_DAYS, OLD_DAYS, PAST_DAYS

LEAST_WATCHED = 5  # our choice
LEAST_SETTLED = 2  # our choice
LOOK_SHARE = 0.9  # our choice: nine in ten are clear
DISCARD_SHARE = 0.5  # our choice


@dataclass(frozen=True, kw_only=True)
class DyeLife:
    """How long a dye's stocks keep, in days of their age, and what that rests on.

    ``look_by_range`` is the 95 % interval of the look-by day; its end is None where
    the bottles were not watched long enough to say.
    """

    watched: int
    settled: int
    longest_clear_days: float
    look_by_days: int
    discard_by_days: int
    is_from_checks: bool
    look_by_range: tuple[int, int | None] | None = None
    curve: tuple[LifeStep, ...] = ()

    @property
    def words(self) -> str:
        """What is known, in a sentence for the dyer."""
        if not self.watched:
            return "No bottle has been watched yet: common practice stands."
        return f"{self._seen} {self._known}"

    @property
    def _seen(self) -> str:
        bottles = "1 bottle" if self.watched == 1 else f"{self.watched} bottles"
        if not self.settled:
            return f"{bottles} watched, none settled by day {self._longest}:"
        return f"{self.settled} of {bottles} settled:"

    @property
    def _longest(self) -> str:
        return f"{self.longest_clear_days:.0f}"

    @property
    def _known(self) -> str:
        if not self.is_from_checks:
            return "too few to say."
        return f"nine in ten are clear up to day {self.look_by_days}{self._spread}."

    @property
    def _spread(self) -> str:
        if self.look_by_range is None:
            return ""
        first, last = self.look_by_range
        until = "or later" if last is None else f"to {last}"
        return f" (with so few bottles, day {first} {until})"


def dye_life(watches: Sequence[Watch], *, is_mix_fresh: bool = False) -> DyeLife:
    """Return how long a dye's stocks keep.

    Parameters
    ----------
    watches : sequence of Watch
        What was seen of each bottle of the dye; may be empty. [d]
    is_mix_fresh : bool
        The dye is known to settle on cooling and is made for the day.

    Returns
    -------
    DyeLife
        Days to look by and to discard by, with their grounds. [d]

    Notes
    -----
    Common practice where the checks are too few, or the dye is mixed fresh.
    The shares are our choice.

    References
    ----------
    .. [turnbull1976] section 3

    Examples
    --------
    >>> life = dye_life([Watch(clear_days=60), Watch(clear_days=40)])
    >>> life.look_by_days, life.is_from_checks
    (91, False)
    >>> life.words
    '2 bottles watched, none settled by day 60: too few to say.'
    """
    settled = [each for each in watches if each.settled_days is not None]
    longest = max((each.clear_days for each in watches), default=0.0)
    is_known = len(watches) >= LEAST_WATCHED and len(settled) >= LEAST_SETTLED
    if is_known and not is_mix_fresh:
        return _from_checks(watches, settled=len(settled), longest=longest)
    look_by, discard_by = _common(settled, is_mix_fresh=is_mix_fresh)
    return DyeLife(
        watched=len(watches),
        settled=len(settled),
        longest_clear_days=longest,
        look_by_days=look_by,
        discard_by_days=discard_by,
        is_from_checks=False,
    )


def _common(settled: Sequence[Watch], *, is_mix_fresh: bool) -> tuple[int, int]:
    if is_mix_fresh:
        return MIX_FRESH_DAYS, MIX_FRESH_DAYS
    middles = (each.clear_days + (each.settled_days or 0.0) for each in settled)
    soonest = min((int(both / 2) for both in middles), default=OLD_DAYS)
    return min(OLD_DAYS, soonest), PAST_DAYS


def _from_checks(watches: Sequence[Watch], *, settled: int, longest: float) -> DyeLife:
    curve = still_clear(watches)
    look_by = _day(curve, LOOK_SHARE)
    discard_by = _day(curve, DISCARD_SHARE)
    look_days = int(longest if look_by is None else look_by)
    discard_days = PAST_DAYS if discard_by is None else int(discard_by)
    return DyeLife(
        watched=len(watches),
        settled=settled,
        longest_clear_days=longest,
        look_by_days=look_days,
        discard_by_days=max(discard_days, look_days),
        is_from_checks=True,
        look_by_range=_range(curve),
        curve=curve,
    )


def _day(curve: Sequence[LifeStep], share: float) -> float | None:
    """Return the day up to which the curve is surely not below a share."""
    below = (step.after_days for step in curve if step.share_clear < share)
    return next(below, None)


def _range(curve: Sequence[LifeStep]) -> tuple[int, int | None]:
    """Return the days at which the curve's own bounds pass the share."""
    first = next((s.after_days for s in curve if s.bounds[0] < LOOK_SHARE), 0.0)
    last = next((s.by_days for s in curve if s.bounds[1] < LOOK_SHARE), None)
    return int(first), None if last is None else int(last)
