"""What the round of a bath is made from, and what a step of it says."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from shadewright.core.baths.programme import Programme


class StepKind(StrEnum):
    """What a step asks of the hands."""

    FILL = "fill"
    DOSE = "dose"
    ADD = "add"
    YARN = "yarn"
    HEAT = "heat"
    LOOK = "look"
    TOP = "top"
    HOLD = "hold"
    OFF = "off"
    FINISH = "finish"


class Moment(StrEnum):
    """When an auxiliary goes in."""

    START = "start"
    AFTER_DYE = "after dye"
    ON_THE_WAY = "on the way"
    AT_TOP = "at top"
    TWO_HALVES = "two halves"


@dataclass(frozen=True, kw_only=True)
class DoseWanted:
    """A dose from one bottle, or weighed dry where ``code`` is empty.

    Stock that goes on the scale is in g, with what that is in ``volume_ml``.
    """

    dye: str
    code: str
    amount: float
    unit: str
    scale_g: float | None = None
    volume_ml: float | None = None


@dataclass(frozen=True, kw_only=True)
class HelperWanted:
    """An acid or another auxiliary: how much, in g or ml, and when.

    ``at_c`` is the temperature at which what goes in on the way up goes in.
    """

    name: str
    amount: float
    unit: str
    moment: Moment
    is_acid: bool
    at_c: float | None = None


@dataclass(frozen=True, kw_only=True)
class RoundWanted:
    """Everything that the round of a bath is made from.

    ``heating`` says how long the way to the top takes on the bath's source.
    """

    water_ml: float
    doses: Sequence[DoseWanted]
    helpers: Sequence[HelperWanted]
    programme: Programme
    heating: str = ""
    look_at_15: str = ""
    ties: str = ""
    stirring: str = ""
    pot_kg: float = 0.0
    is_metal_complex: bool = False


@dataclass(frozen=True, kw_only=True)
class RoundStep:
    """One step: what the screen and the card say, and the number on it.

    ``amount`` with its ``unit`` is the one number of the step, None where it
    has none; ``timer_min`` is how long the clock runs once the step is done. What
    goes in on the way up goes in at ``at_c``, which the recipe's pace reaches
    ``heated_min`` after the heat is on.
    """

    key: str
    kind: StepKind
    title: str
    text: str = ""
    code: str = ""
    amount: float | None = None
    unit: str = ""
    scale_g: float | None = None
    volume_ml: float | None = None
    timer_min: float | None = None
    at_c: float | None = None
    heated_min: float | None = None
    caution: str = ""
