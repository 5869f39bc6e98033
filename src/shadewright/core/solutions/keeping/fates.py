"""What a bottle asks for next: nothing, a look, warmth, a test, or to be let go."""

from enum import StrEnum

from shadewright.core.solutions.keeping.purpose import Purpose, Standing, refusal


class Fate(StrEnum):
    """The one next step with a bottle."""

    KEEP = "keep"
    LOOK = "look"
    REWARM = "re-warm"
    TEST = "test or pour"
    POUR = "pour away"


def fate(
    standing: Standing, *, is_empty: bool, is_rewarmed: bool, is_due: bool
) -> Fate:
    """Return what a bottle asks for next.

    Parameters
    ----------
    standing : Standing
        What is known of the bottle.
    is_empty : bool
        Nothing more can be drawn.
    is_rewarmed : bool
        It was re-warmed since it was seen settled.
    is_due : bool
        Its look-by day has come and nobody has looked since.

    Returns
    -------
    Fate
        One step. [-]

    Notes
    -----
    Common practice. A stock that has settled and is past its time is let go: what
    comes back by warming may have lost strength.

    Examples
    --------
    >>> settled = Standing(is_settled=True, is_fresh=True, is_past=False)
    >>> fate(settled, is_empty=False, is_rewarmed=False, is_due=False).value
    're-warm'
    """
    if is_empty or (standing.is_settled and standing.is_past):
        return Fate.POUR
    if standing.is_settled:
        return Fate.LOOK if is_rewarmed else Fate.REWARM
    if refusal(standing, purpose=Purpose.USUAL):
        return Fate.TEST
    return Fate.LOOK if is_due else Fate.KEEP
