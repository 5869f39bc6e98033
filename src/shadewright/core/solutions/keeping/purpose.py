"""What a bottle may be used for: a colour that must repeat, the usual, play.

Common practice: months old stock can still serve play and colour mixing; for work
that must repeat it is mixed fresh. What has settled is drawn for nothing, until it was
re-warmed and looked at: its top is weaker than its label says.
"""

from dataclasses import dataclass
from enum import StrEnum

from shadewright.core.tables.stock_age import FRESH_DAYS


class Purpose(StrEnum):
    """How well a colour must come out."""

    MUST_REPEAT = "must repeat"
    USUAL = "usual"
    PLAY = "play"


@dataclass(frozen=True, kw_only=True)
class Standing:
    """What is known of a bottle, as far as its use hangs on it.

    ``tested_days`` is how long ago its strength was tested, None if it never was;
    ``is_guess`` a strength that nobody weighed or tested.
    """

    is_settled: bool
    is_fresh: bool
    is_past: bool
    is_guess: bool = False
    tested_days: int | None = None

    @property
    def is_tested(self) -> bool:
        """Whether a test of its strength still holds."""
        return self.tested_days is not None and self.tested_days <= FRESH_DAYS


def refusal(standing: Standing, *, purpose: Purpose) -> str:
    """Return why a bottle may not be used; empty where it may.

    Parameters
    ----------
    standing : Standing
        What is known of the bottle.
    purpose : Purpose
        What it is for. [-]

    Returns
    -------
    str
        A few words to follow the bottle's code, or nothing. [-]

    Notes
    -----
    Common practice. A test holds for four weeks (our choice), as long as a stock
    counts as fresh.

    Examples
    --------
    >>> old = Standing(is_settled=False, is_fresh=False, is_past=False)
    >>> refusal(old, purpose=Purpose.USUAL)
    ''
    >>> refusal(old, purpose=Purpose.MUST_REPEAT)
    'neither fresh nor tested'
    """
    if standing.is_settled:
        return "settled"
    if purpose is Purpose.PLAY or standing.is_tested:
        return ""
    if standing.is_past:
        return "past its time"
    if purpose is Purpose.USUAL:
        return ""
    if standing.is_guess:
        return "of a strength that nobody weighed or tested"
    return "" if standing.is_fresh else "neither fresh nor tested"
