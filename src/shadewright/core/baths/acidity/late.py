"""A measured pH that is not where the dyes want it: what to do, in which order.

Acid that comes late drives dye on fast. How fast hangs on the class: a levelling
dye can still move and even out, a milling or a 1:2 dye stays where it strikes.
"""

from typing import Final

from shadewright.core.quantities import number_text, require_between
from shadewright.core.tables.acid_doses import HABITS, AcidHabit

SLACK_PH: Final = 0.3
"""How far a paper strip or a meter in a hot bath may be off; common practice."""

_TIME_FIRST: Final = (
    "Give it time and temperature first: {} dyes strike at once where acid meets "
    "them and do not move any more."
)
_ONLY_THEN: Final = (
    "Only if dye is still in the bath at the end of the hold, add acid, like this:"
)
_HOW: Final = (
    "Turn the heat down and let it stop simmering.",
    (
        "Add a quarter of the recipe’s acid to at least ten times as much cold water, "
        "never water to acid. Lift the yarn or push it aside, and pour away from it."
    ),
    "Stir, wait ten minutes, measure again, and only then heat slowly.",
)
_SOUR: Final = (
    "Add no more acid: the dye goes on faster than it should. Heat slowly and move "
    "the yarn, so that it lies even."
)


def wanted_ph_text(*, habit: AcidHabit) -> str:
    """Return the pH that a group of dyes wants, in words.

    Parameters
    ----------
    habit : AcidHabit
        Group of the dyes. [-]

    Returns
    -------
    str
        As "pH 4 to 6". [-]

    Notes
    -----
    From ``HABITS``, where the source stands.

    Examples
    --------
    >>> wanted_ph_text(habit=AcidHabit.HALF_MILLING)
    'pH 4 to 6'
    """
    facts = HABITS[habit]
    least, most = (number_text(ph, digits=2) for ph in (facts.ph_from, facts.ph_to))
    return f"pH {least} to {most}"


def late_acid(*, habit: AcidHabit, measured_ph: float) -> tuple[str, ...]:
    """Return what to do about a measured pH, in order; nothing where it is right.

    Parameters
    ----------
    habit : AcidHabit
        Group of the dyes. [-]
    measured_ph : float
        pH that was read of the bath; 0 to 14. [-]

    Returns
    -------
    tuple of str
        Sentences. [-]

    Raises
    ------
    OutOfRangeError
        If the pH lies outside.

    Notes
    -----
    A reading within 0.3 of the range is let pass. The order, the quarter and the
    ten minutes are common practice; that fast dyes do not move is
    [broadbent2001]_, Table 13.1 (migration).

    Examples
    --------
    >>> late_acid(habit=AcidHabit.MILLING, measured_ph=7.8)[0]
    'The bath is at pH 7.8, and milling dyes want pH 5 to 7.'
    >>> late_acid(habit=AcidHabit.MILLING, measured_ph=7.2)
    ()
    """
    require_between(
        measured_ph, least=0.0, most=14.0, unit="", name="pH", argument="measured_ph"
    )
    facts = HABITS[habit]
    wants = wanted_ph_text(habit=habit)
    read = number_text(measured_ph, digits=2)
    first = f"The bath is at pH {read}, and {habit} dyes want {wants}."
    if measured_ph < facts.ph_from - SLACK_PH:
        return (first, _SOUR)
    if measured_ph <= facts.ph_to + SLACK_PH:
        return ()
    if facts.takes_time_first:
        return (first, _TIME_FIRST.format(habit), _ONLY_THEN, *_HOW)
    return (first, *_HOW)
