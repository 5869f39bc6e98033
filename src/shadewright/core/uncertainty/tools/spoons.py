"""Spoons: no measure for powder, and why."""

from shadewright.errors import OutOfRangeError

SPOON_REASON = (
    "A spoon holds a different weight of each dye, and of the same dye when it lies "
    "fluffy or packed: weigh powder on a scale."
)


def require_scale_for_powder(kind: str, *, argument: str = "") -> str:
    """Return the kind of tool that powder is measured with, if it is a scale.

    Parameters
    ----------
    kind : str
        Kind of tool: balance, spoon, cylinder. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    str
        The kind, unchanged. [-]

    Raises
    ------
    OutOfRangeError
        If the tool measures a volume.

    Notes
    -----
    Common practice: the bulk density of a dye powder differs from dye to dye and
    with how it lies. No figure for it was found that could be used.

    Examples
    --------
    >>> require_scale_for_powder("balance")
    'balance'
    """
    if kind == "balance":
        return kind
    raise OutOfRangeError(
        name="The tool for powder",
        given=f"a {kind.replace('bottle-mark', 'mark on a bottle')}",
        allowed="a scale",
        advice=SPOON_REASON,
        argument=argument,
    )
