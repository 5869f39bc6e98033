"""A tool as its checks found it: no longer what its kind may be, but what it is."""

from collections.abc import Mapping
from dataclasses import replace

from shadewright.core.quantities import Balance, MeasuringTool, require_mass
from shadewright.core.uncertainty.tools.checks import Finding
from shadewright.core.uncertainty.tools.scales import unchecked_balance
from shadewright.core.uncertainty.tools.ware import half_width_ml


def checked_balance(
    *,
    step_g: float,
    findings: Mapping[float, Finding],
    own_error_g: float | None = None,
) -> Balance:
    """Return a scale as its checks found it.

    a(m) = max(a − |c|) + min(m max(|c|/M), max |c|)

    Parameters
    ----------
    step_g : float
        The step that it shows. [g]
    findings : mapping of float to Finding
        The newest check at each weight M, with its correction c and half-width a; the
        worst of them counts. [g]
    own_error_g : float or None
        Half-width by the scale's own sheet, for want of a check. [g]

    Returns
    -------
    Balance
        The scale; unchecked and without a sheet it is off by two steps. [-]

    Raises
    ------
    OutOfRangeError
        If the step is not above zero.

    Notes
    -----
    A check beats the sheet. Each reading began at nought, so what was found off is
    laid to the load and counts in proportion below the check weight. Above the
    heaviest weight the doubt grows back, to that of the unchecked scale at twice the
    weight: check with a weight near what is weighed. Our choice, no source.

    Examples
    --------
    >>> checked_balance(step_g=0.1, findings={}).error_g
    0.2
    """
    step = require_mass(step_g, name="Step", argument="step_g")
    plain = unchecked_balance(step_g=step)
    if own_error_g is not None:
        plain = replace(plain, error_g=own_error_g)
    return _found(plain, findings) if findings else plain


def checked_ware(
    *, tool: MeasuringTool, findings: Mapping[float, Finding]
) -> MeasuringTool:
    """Return a piece of ware as its checks found it.

    Parameters
    ----------
    tool : MeasuringTool
        The ware, by its standard or its sheet. [-]
    findings : mapping of float to Finding
        The newest check at each mark; the worst of them, as a share of what its
        kind may be off there, counts for the whole scale of marks. [mL]

    Returns
    -------
    MeasuringTool
        The ware with ``error_ml``, its half-width at full size. [-]

    Raises
    ------
    OutOfRangeError
        If a mark is not above zero.

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> jug = measuring_tool("jug 1000ml", name="Vessel")
    >>> found = Finding(correction=-8.0, u=1.0, half_width=10.0)
    >>> checked_ware(tool=jug, findings={500.0: found}).error_ml
    20.0
    """
    if not findings:
        return tool
    by_table = replace(tool, error_ml=None)
    share = max(
        found.half_width / half_width_ml(tool=by_table, volume_ml=mark_ml)
        for mark_ml, found in findings.items()
    )
    whole = half_width_ml(tool=by_table, volume_ml=tool.size_ml)
    return replace(tool, error_ml=share * whole)


def _found(plain: Balance, findings: Mapping[float, Finding]) -> Balance:
    off = {grams: abs(found.correction) for grams, found in findings.items()}
    doubts = (found.half_width - off[grams] for grams, found in findings.items())
    return Balance(
        step_g=plain.step_g,
        error_g=max(doubts),
        slope=max(error / grams for grams, error in off.items()),
        slope_most_g=max(off.values()),
        checked_to_g=max(findings),
        beyond_g=plain.error_g or 0.0,
    )
