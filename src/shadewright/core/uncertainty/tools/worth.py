"""What a tool is worth: how far it may be off, at one amount and from which on.

The same millilitre is a fiftieth of 50 ml and a fifth of 5 ml: nearly every tool
grows poor toward the low end of its scale.
"""

from dataclasses import dataclass

from shadewright.core.quantities import Balance, MeasuringTool, require_above_zero
from shadewright.core.tables.check_weights import CHECK_WEIGHTS
from shadewright.core.uncertainty.coverage import half_width
from shadewright.core.uncertainty.tools.scales import mass_read
from shadewright.core.uncertainty.tools.ware import half_width_ml

GOOD_SHARE = 0.02
"""Share within which a reading counts as good: a choice of this project. [-]"""

_SHARES_OF_WARE = (1.0, 0.5, 0.2, 0.1)
_STEPS_OF_SCALE = (5000, 1000, 200, 50, 10)
_MOST = 1e6
_HALVINGS = 40


@dataclass(frozen=True, kw_only=True)
class Worth:
    """An amount, how far it may be off either way, and the share that this is."""

    amount: float
    half_width: float

    @property
    def share(self) -> float:
        """Half-width as a share of the amount."""
        return self.half_width / self.amount


def worth_at(tool: Balance | MeasuringTool, *, amount: float) -> Worth:
    """Return what a tool is worth at one amount.

    Parameters
    ----------
    tool : Balance or MeasuringTool
        The tool, as narrowed by its checks. [-]
    amount : float
        What is measured; above zero. [g or mL]

    Returns
    -------
    Worth
        Of ware the whole tolerance; of a scale the half-width that holds a tared
        reading 19 times in 20. [g or mL]

    Raises
    ------
    OutOfRangeError
        If the amount is not above zero.

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> cylinder = measuring_tool("cylinder 50ml B", name="Measure")
    >>> [worth_at(cylinder, amount=ml).share for ml in (50.0, 5.0)]
    [0.02, 0.2]
    """
    require_above_zero(amount, most=_MOST, unit="", name="Amount", argument="amount")
    if isinstance(tool, Balance):
        read = mass_read(tool, amount, role="worth", key="tool")
        return Worth(amount=amount, half_width=half_width(read))
    return Worth(amount=amount, half_width=half_width_ml(tool=tool, volume_ml=amount))


def worth_along(
    tool: Balance | MeasuringTool, *, largest: float | None = None
) -> tuple[Worth, ...]:
    """Return what a tool is worth along its scale, the largest amount first.

    Parameters
    ----------
    tool : Balance or MeasuringTool
        The tool. [-]
    largest : float or None
        The most that a scale carries, where that is known. [g]

    Returns
    -------
    tuple of Worth
        Ware full, half, a fifth and a tenth full, a flask full alone; a scale at
        10 to 5000 of its steps. [g or mL]

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> syringe = measuring_tool("syringe 20ml", name="Measure")
    >>> [round(each.half_width, 2) for each in worth_along(syringe)]
    [0.8, 0.4, 0.34, 0.32]
    """
    if isinstance(tool, Balance):
        amounts = [steps * tool.step_g for steps in _STEPS_OF_SCALE]
        amounts = [each for each in amounts if largest is None or each <= largest]
    elif tool.kind == "flask":
        amounts = [tool.size_ml]
    else:
        amounts = [share * tool.size_ml for share in _SHARES_OF_WARE]
    return tuple(worth_at(tool, amount=round(each, 9)) for each in amounts)


def good_from(
    tool: Balance | MeasuringTool, *, largest: float, share: float = GOOD_SHARE
) -> float | None:
    """Return the least amount that a tool measures to within a share of it.

    Parameters
    ----------
    tool : Balance or MeasuringTool
        The tool. [-]
    largest : float
        The most that it measures in one go. [g or mL]
    share : float
        The share; above zero and at most one. [-]

    Returns
    -------
    float or None
        The least amount, or None where even the largest is off by more. [g or mL]

    Raises
    ------
    OutOfRangeError
        If the share is not above zero.

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> cylinder = measuring_tool("cylinder 500ml B", name="Measure")
    >>> round(good_from(cylinder, largest=500.0), 6)
    250.0
    """
    require_above_zero(share, most=1.0, unit="", name="Share", argument="share")
    if worth_at(tool, amount=largest).share > share * (1.0 + 1e-9):
        return None
    poor, good = 0.0, largest
    for _ in range(_HALVINGS):
        middle = (poor + good) / 2.0
        is_good = worth_at(tool, amount=middle).share <= share
        poor, good = (poor, middle) if is_good else (middle, good)
    return good


def weight_to_check_with(
    *, step_g: float, largest_g: float | None = None
) -> tuple[float, float]:
    """Return a weight to check a scale with, and how far it may itself be off.

    Parameters
    ----------
    step_g : float
        The step of the scale. [g]
    largest_g : float or None
        The most that it carries. [g]

    Returns
    -------
    tuple of float
        Nominal mass, at most a thousand steps, and the error of class M3. [g]

    Raises
    ------
    OutOfRangeError
        If the step is not above zero.

    References
    ----------
    .. [oimlr111] table 1 (from memory)

    Examples
    --------
    >>> weight_to_check_with(step_g=0.1)
    (100.0, 0.05)
    """
    require_above_zero(step_g, most=_MOST, unit="g", name="Step", argument="step_g")
    most_g = min(1000.0 * step_g, largest_g or _MOST)
    fitting = [grams for grams in CHECK_WEIGHTS if grams <= most_g * (1.0 + 1e-9)]
    nominal_g = max(fitting, default=min(CHECK_WEIGHTS))
    return nominal_g, CHECK_WEIGHTS[nominal_g][2] / 1000.0
