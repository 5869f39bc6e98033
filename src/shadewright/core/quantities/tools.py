"""Scales and measuring ware, as they are named in words.

``cylinder 500ml B ASTM`` is a kind, a size, perhaps a class, perhaps the
standard whose tolerance it keeps. ``0.1g+-0.2g`` is a scale that shows tenths
of a gram and may itself be off by 0.2 g.
"""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from shadewright.core.quantities.amounts import mass_g, volume_ml
from shadewright.core.quantities.guards import require_mass, require_volume
from shadewright.core.quantities.ranges import require_above_zero
from shadewright.core.quantities.reading import MOST_CHARACTERS, Asked
from shadewright.errors import MissingError, UnitError

KINDS = ("cylinder", "flask", "pipette", "syringe", "beaker", "jug", "bottle-mark")
CLASSED = frozenset({"cylinder", "flask", "pipette"})
STANDARDS = ("ISO", "ASTM")

_TOOL = (
    f"KIND SIZE [CLASS] [STANDARD], such as “cylinder 500ml B”; "
    f"kinds: {', '.join(KINDS)}; standards: {', '.join(STANDARDS)}"
)
_CLASS = "KIND SIZE alone: only a cylinder, a flask or a pipette has a class A or B"


@dataclass(frozen=True, kw_only=True)
class MeasuringTool:
    """A piece of measuring ware: kind, size, class (A, B or none) and standard.

    ``error_ml`` is how far this very piece may be off when full, a half-width,
    where its sheet or a check says so; else its standard does.
    """

    kind: str
    size_ml: float
    accuracy_class: str
    standard: str
    error_ml: float | None = None


@dataclass(frozen=True, kw_only=True)
class Balance:
    """A scale: the step that it shows, and how far it may itself be off.

    ``error_g`` holds at any load. What a check weight found grows with the load
    besides: by ``slope`` a gram, up to ``slope_most_g``. Beyond the heaviest check
    weight, ``checked_to_g``, it says less and less: from twice of it on the scale is
    off by ``beyond_g`` again, as if nobody had checked it.
    """

    step_g: float
    error_g: float | None
    slope: float = 0.0
    slope_most_g: float = 0.0
    checked_to_g: float | None = None
    beyond_g: float = 0.0

    def own_error_g(self, mass_g: float) -> float:
        """Return how far the scale itself may be off at a load, a half-width. [g]."""
        found_g = (self.error_g or 0.0) + min(self.slope * mass_g, self.slope_most_g)
        if self.checked_to_g is None:
            return found_g
        beyond = min(max(mass_g / self.checked_to_g - 1.0, 0.0), 1.0)
        return found_g + beyond * max(self.beyond_g - found_g, 0.0)


def measuring_tool(text: str, *, name: str, argument: str = "") -> MeasuringTool:
    """Return a measuring tool from its words.

    Parameters
    ----------
    text : str
        ``KIND SIZE [CLASS] [STANDARD]``, as ``cylinder 500ml B``. [-]
    name : str
        The tool in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    MeasuringTool
        The tool; without words for them class B (where the kind has classes)
        and the ISO standard. [-]

    Raises
    ------
    UnitError
        If the words do not name a tool.
    OutOfRangeError
        If its size is not above zero.

    Notes
    -----
    What each is worth as a tolerance belongs to the chapter on uncertainty.

    Examples
    --------
    >>> measuring_tool("cylinder 500ml", name="Vessel").accuracy_class
    'B'
    """
    asked = Asked(name=name, example=_TOOL, argument=argument)
    kind, *words = text.casefold().split() or [""]
    if len(text) > MOST_CHARACTERS or kind not in KINDS or not words:
        raise asked.refusal(text)
    size, rest = _size_and_rest(words)
    letter = rest.pop(0).upper() if rest and rest[0] in {"a", "b"} else ""
    standard = rest.pop(0).upper() if rest else STANDARDS[0]
    if rest or standard not in STANDARDS:
        raise asked.refusal(text)
    if letter and kind not in CLASSED:
        raise asked.refusal(text, allowed=_CLASS)
    return MeasuringTool(
        kind=kind,
        size_ml=_size_ml(size, text, asked),
        accuracy_class=letter or ("B" if kind in CLASSED else ""),
        standard=standard,
    )


def _size_ml(size: str, text: str, asked: Asked) -> float:
    """Return the size; what is no volume is told as the whole tool is written."""
    try:
        return volume_ml(
            size, name=asked.name, argument=asked.argument, guard=require_volume
        )
    except (UnitError, MissingError):
        raise asked.refusal(text) from None


def _size_and_rest(words: list[str]) -> tuple[str, list[str]]:
    """Split ``500 ml b astm`` into ``500 ml`` and the words behind it."""
    known = {"a", "b", *(standard.casefold() for standard in STANDARDS)}
    for place, word in enumerate(words):
        if word in known:
            return " ".join(words[:place]), words[place:]
    return " ".join(words), []


def balance(text: str, *, name: str, argument: str = "") -> Balance:
    """Return a scale from its step, and its own error where that is known.

    Parameters
    ----------
    text : str
        ``0.1g``, or ``0.1g+-0.2g`` (± does as well). [-]
    name : str
        The scale in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    Balance
        The scale. [-]

    Raises
    ------
    MissingError
        If nothing was written, or nothing behind the ±.
    UnitError
        If it is no weight.
    OutOfRangeError
        If the step is not above zero.

    Notes
    -----
    The error is a half-width: the scale is off by no more than that.

    Examples
    --------
    >>> kitchen = balance("0.1g+-0.2g", name="Balance")
    >>> kitchen.step_g, kitchen.error_g
    (0.1, 0.2)
    """
    step, sign, error = text.replace("±", "+-").partition("+-")
    own = f"{name}’s own error"
    return Balance(
        step_g=mass_g(step, name=name, argument=argument, guard=require_mass),
        error_g=mass_g(error, name=own, argument=argument) if sign else None,
    )


def rounded_to_step(value: float, *, step: float) -> float:
    """Return the multiple of a step that lies nearest to a value.

    Parameters
    ----------
    value : float
        The number to round. [any]
    step : float
        The step of the scale; above zero. [as value]

    Returns
    -------
    float
        The nearest multiple; halves go away from zero. [as value]

    Raises
    ------
    OutOfRangeError
        If the step is not above zero.

    Notes
    -----
    Reckoned in decimals, so that 5.37 on a scale of 0.1 g is 5.4 and not
    5.4000000000000004. No source: a definition.

    Examples
    --------
    >>> rounded_to_step(5.37, step=0.1)
    5.4
    """
    require_above_zero(step, most=1e6, unit="", name="Step", argument="step")
    exact_step = Decimal(repr(float(step)))
    steps = Decimal(repr(float(value))) / exact_step
    return float(steps.to_integral_value(ROUND_HALF_UP) * exact_step)
