"""What is left blank on a bath's card beside each step, and asked when it is typed in.

Printed card and form share this list, so that paper is typed back line by line.
"""

from enum import StrEnum

from shadewright.core.baths.rounds import RoundStep, StepKind


class Blank(StrEnum):
    """A blank to write on; its value is the words beside it."""

    AMOUNT = "really"
    TIME = "at"
    BOTTLE = "other bottle"
    TEMPERATURE = "bath at"
    PH = "pH"
    LOOKED = "looked like"
    RINSES = "rinses"
    RACK = "hung at"


_BLANKS = {
    StepKind.FILL: (Blank.AMOUNT, Blank.TIME),
    StepKind.DOSE: (Blank.AMOUNT, Blank.TIME, Blank.BOTTLE),
    StepKind.ADD: (Blank.AMOUNT, Blank.TEMPERATURE, Blank.TIME, Blank.PH),
    StepKind.YARN: (Blank.TIME,),
    StepKind.HEAT: (Blank.TEMPERATURE, Blank.TIME),
    StepKind.LOOK: (Blank.TEMPERATURE, Blank.TIME, Blank.LOOKED),
    StepKind.TOP: (Blank.TEMPERATURE, Blank.TIME),
    StepKind.HOLD: (Blank.PH, Blank.TIME, Blank.LOOKED),
    StepKind.OFF: (Blank.TIME,),
    StepKind.FINISH: (Blank.RINSES, Blank.RACK),
}
_UNITS = {Blank.TEMPERATURE: "°C"}


def blanks_of(step: RoundStep) -> tuple[Blank, ...]:
    """Return the blanks beside a step, in the order in which they are written.

    Parameters
    ----------
    step : RoundStep
        A step of the round. [-]

    Returns
    -------
    tuple of Blank
        Beside the last step only what comes before the lot: that has a page of its
        own. [-]

    Notes
    -----
    Common practice; no source.

    Examples
    --------
    >>> step = RoundStep(key="off", kind=StepKind.OFF, title="Heat off")
    >>> [str(blank) for blank in blanks_of(step)]
    ['at']
    """
    return tuple(blank for blank in _BLANKS[step.kind] if _is_wanted(blank, step))


def blank_unit(blank: Blank, step: RoundStep) -> str:
    """Return the unit that stands after a blank.

    Parameters
    ----------
    blank : Blank
        What is written there. [-]
    step : RoundStep
        The step that it stands beside. [-]

    Returns
    -------
    str
        The unit; empty where there is none. [-]

    Notes
    -----
    A real amount has the unit of the planned one.

    Examples
    --------
    >>> step = RoundStep(key="fill", kind=StepKind.FILL, title="Fill", unit="l")
    >>> blank_unit(Blank.AMOUNT, step), blank_unit(Blank.TEMPERATURE, step)
    ('l', '°C')
    """
    return step.unit if blank is Blank.AMOUNT else _UNITS.get(blank, "")


def _is_wanted(blank: Blank, step: RoundStep) -> bool:
    """Whether a step has a bottle, an acid to read the pH after, a temperature."""
    if blank is Blank.BOTTLE:
        return bool(step.code)
    if step.kind is not StepKind.ADD:
        return True
    wanted = {Blank.PH: bool(step.caution), Blank.TEMPERATURE: step.at_c is not None}
    return wanted.get(blank, True)
