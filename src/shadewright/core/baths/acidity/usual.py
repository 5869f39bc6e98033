"""The acid that a recipe starts from: by the group of its dyes and their depth."""

from dataclasses import dataclass

from shadewright.core.baths.depth import MOST_DEPTH_PERCENT
from shadewright.core.quantities import require_above_zero
from shadewright.core.tables.acid_doses import (
    DEEP_ABOVE_PERCENT,
    HABITS,
    MEDIUM_FROM_PERCENT,
    AcidHabit,
)
from shadewright.core.tables.acids import Acid


@dataclass(frozen=True, kw_only=True)
class UsualAcid:
    """An acid and how much of it, to begin with; ``source`` says what it rests on."""

    acid: Acid
    percent_owf: float
    source: str


def usual_acid(*, habit: AcidHabit, total_depth_percent: float) -> UsualAcid:
    """Return the acid that a group of dyes usually starts with at a depth.

    Parameters
    ----------
    habit : AcidHabit
        Group of the dyes. [-]
    total_depth_percent : float
        All dyes together; above zero. [%]

    Returns
    -------
    UsualAcid
        Acid, amount of the pure acid on weight of fibre, and its source. [-]

    Raises
    ------
    OutOfRangeError
        If the depth is out of range.

    Notes
    -----
    To be edited by the dyer. Never sulphuric, glacial acetic or strong formic.

    Examples
    --------
    >>> found = usual_acid(habit=AcidHabit.HALF_MILLING, total_depth_percent=1.0)
    >>> found.acid.key, found.percent_owf
    ('vinegar5', 2.0)
    """
    require_above_zero(
        total_depth_percent,
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name="Depth of all dyes",
        argument="total_depth_percent",
    )
    facts = HABITS[habit]
    pale, medium, deep = facts.percent_owf
    if total_depth_percent > DEEP_ABOVE_PERCENT:
        amount = deep
    else:
        amount = medium if total_depth_percent >= MEDIUM_FROM_PERCENT else pale
    return UsualAcid(acid=facts.acid, percent_owf=amount, source=facts.dose_source)
