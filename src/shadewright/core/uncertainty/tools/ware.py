"""Ware that holds a volume: its tolerance, and what filling it is worth.

The tolerance of one piece of ware is one error. Filled three times it is off three
times in the same direction, so the error adds up and does not average out.
"""

from dataclasses import dataclass
from math import ceil

from shadewright.core.quantities import MeasuringTool, amount_text, require_volume
from shadewright.core.tables.glassware import (
    LOWEST_MARK_SHARE,
    SHARES,
    STANDARD_NAMES,
    SYRINGES,
    SYRINGES_READ_ML,
    TABLES,
    Row,
    Share,
)
from shadewright.core.tables.water import EXPANSION_PER_C
from shadewright.core.uncertainty.shapes import Shape
from shadewright.core.uncertainty.tools.syringes import syringe_half_width_ml
from shadewright.core.uncertainty.values import Value, bounded, exact

_HAIR = 1e-9
_POURED = {"syringe", "pipette"}


@dataclass(frozen=True, kw_only=True)
class Basis:
    """What a tolerance rests on: the standard, its key, and the size of the row.

    ``row_ml`` is None where the tolerance is a share and no row.
    """

    standard: str
    source: str
    is_from_memory: bool
    row_ml: float | None


def basis(*, tool: MeasuringTool) -> Basis:
    """Return what the tolerance of a piece of ware rests on.

    Parameters
    ----------
    tool : MeasuringTool
        Kind, size, class and standard. [-]

    Returns
    -------
    Basis
        The standard in words, its bibliography key, and the row. [-]

    Notes
    -----
    A size between two rows takes the row above; a size above all rows the share of
    the largest. Where no ASTM table is held here the ISO one is taken and named.

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> basis(tool=measuring_tool("cylinder 400ml", name="Vessel")).row_ml
    500.0
    """
    found: Row | Share
    if tool.kind == "syringe":
        return Basis(
            standard=STANDARD_NAMES[SYRINGES[0].source],
            source=SYRINGES[0].source,
            is_from_memory=tool.size_ml not in SYRINGES_READ_ML,
            row_ml=None,
        )
    share = _share(tool)
    found = share or _row(tool)
    return Basis(
        standard=STANDARD_NAMES[found.source],
        source=found.source,
        is_from_memory=found.is_from_memory,
        row_ml=None if isinstance(found, Share) else found.size_ml,
    )


def half_width_ml(*, tool: MeasuringTool, volume_ml: float) -> float:
    """Return how far a volume measured with a piece of ware may be off.

    a = (n − 1) a(size) + a(rest)

    Parameters
    ----------
    tool : MeasuringTool
        Kind, size, class and standard; ``error_ml`` where it was checked. [-]
    volume_ml : float
        The volume, in as many fills as it takes. [mL]

    Returns
    -------
    float
        Half-width of the error, a; of all fills together. [mL]

    Raises
    ------
    OutOfRangeError
        If the volume is not above zero.

    Notes
    -----
    A cylinder and a graduated pipette carry the whole tolerance at any point. The
    marks of a beaker, a jug and a bottle are off by a share of what is read, the
    lowest mark taken as a fifth of the size. A flask has one mark: a rest that does
    not fill it is as unsure as in a beaker. A tool that was checked keeps the shape
    of its kind and takes the size of its own error.

    References
    ----------
    .. [iso4788] largest error at any point of the scale (from memory)

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> cylinder = measuring_tool("cylinder 100ml B", name="Measure")
    >>> half_width_ml(tool=cylinder, volume_ml=10.0)
    1.0
    >>> half_width_ml(tool=cylinder, volume_ml=210.0)
    3.0
    """
    require_volume(volume_ml, name="Volume", argument="volume_ml")
    full = fills(tool=tool, volume_ml=volume_ml) - 1
    rest_ml = min(volume_ml - full * tool.size_ml, tool.size_ml)
    said = full * _one_fill_ml(tool, tool.size_ml) + _one_fill_ml(tool, rest_ml)
    if tool.error_ml is None:
        return said
    return said * tool.error_ml / _one_fill_ml(tool, tool.size_ml)


def fills(*, tool: MeasuringTool, volume_ml: float) -> int:
    """Return how often a tool is filled for a volume.

    Parameters
    ----------
    tool : MeasuringTool
        The tool. [-]
    volume_ml : float
        The volume; zero or more. [mL]

    Returns
    -------
    int
        Fills, the last of them perhaps not full; at least one. [-]

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> fills(tool=measuring_tool("syringe 20ml", name="Measure"), volume_ml=45.0)
    3
    """
    return max(1, ceil(volume_ml / tool.size_ml - _HAIR))


def volume_read(
    tool: MeasuringTool,
    volume_ml: float,
    *,
    role: str,
    key: str,
    shape: Shape = Shape.RECTANGULAR,
) -> Value:
    """Return a volume with the tolerance of the ware that it was measured in.

    Parameters
    ----------
    tool : MeasuringTool
        The ware, as narrowed by its checks. [-]
    volume_ml : float
        What was read. [mL]
    role : str
        What it was read for, in the dyer's words: the stock, a dye. [-]
    key : str
        Names the very tool: ``tool 3``. [-]
    shape : Shape
        Rectangular where nothing else is known. [-]

    Returns
    -------
    Value
        The volume; one term, shared by all fills. Nought is nought for sure. [mL]

    Notes
    -----
    Reading the line and the liquid's warmth are left out: ``warmth_read`` adds one.

    Examples
    --------
    >>> from shadewright.core.quantities import measuring_tool
    >>> syringe = measuring_tool("syringe 10ml", name="Measure")
    >>> round(volume_read(syringe, 4.0, role="Gorse", key="tool 2").u, 4)
    0.1097
    """
    if not volume_ml:
        return exact(0.0)
    return bounded(
        volume_ml,
        half_width=half_width_ml(tool=tool, volume_ml=volume_ml),
        shape=shape,
        name=_name(tool),
        source=f"{key} {role} mark",
    )


def warmth_read(
    volume_ml: float,
    *,
    within_c: float,
    role: str,
    key: str,
    expansion_per_c: float = EXPANSION_PER_C,
) -> Value:
    """Return nought with the spread that an unsure temperature gives a volume.

    a = V β ΔT

    Parameters
    ----------
    volume_ml : float
        The volume, V. [mL]
    within_c : float
        How far from the mark's 20 °C the liquid may be, either way, ΔT. [°C]
    role : str
        What the volume is for. [-]
    key : str
        Names the very tool. [-]
    expansion_per_c : float
        Expansion of the liquid, β. [1/°C]

    Returns
    -------
    Value
        To be added to the volume: 0 with one rectangular term. [mL]

    Raises
    ------
    OutOfRangeError
        If the product is negative or not a number.

    References
    ----------
    .. [quam2012] example A1 (from memory)

    Examples
    --------
    >>> round(warmth_read(100.0, within_c=4.0, role="stock", key="tool 1").u, 4)
    0.0485
    """
    return bounded(
        0.0,
        half_width=volume_ml * expansion_per_c * within_c,
        shape=Shape.RECTANGULAR,
        name=f"warmth of the liquid, {role}",
        source=f"{key} {role} warmth",
    )


def _one_fill_ml(tool: MeasuringTool, volume_ml: float) -> float:
    """Return the standard's half-width for one fill."""
    if tool.kind == "syringe":
        return syringe_half_width_ml(size_ml=tool.size_ml, volume_ml=volume_ml)
    if share := _share(tool):
        return _marks_ml(share, tool, volume_ml)
    if tool.kind == "flask" and volume_ml < tool.size_ml * (1.0 - _HAIR):
        return _marks_ml(SHARES["beaker", "ISO"], tool, volume_ml)
    return _tabled_ml(tool)


def _marks_ml(share: Share, tool: MeasuringTool, volume_ml: float) -> float:
    return share.share * max(volume_ml, LOWEST_MARK_SHARE * tool.size_ml)


def _tabled_ml(tool: MeasuringTool) -> float:
    row = _row(tool)
    half_width = row.a_ml if tool.accuracy_class == "A" else row.b_ml
    return half_width * max(1.0, tool.size_ml / row.size_ml)


def _row(tool: MeasuringTool) -> Row:
    """Return the row of a size: its own, the one above, or the last."""
    rows = TABLES.get((tool.kind, tool.standard)) or TABLES[tool.kind, "ISO"]
    return next((row for row in rows if row.size_ml >= tool.size_ml), rows[-1])


def _share(tool: MeasuringTool) -> Share | None:
    return SHARES.get((tool.kind, tool.standard)) or SHARES.get((tool.kind, "ISO"))


def _name(tool: MeasuringTool) -> str:
    size = amount_text(tool.size_ml, "ml")
    if tool.kind in _POURED:
        return f"each pour of the {size} {tool.kind}"
    return f"mark of the {size} {tool.kind.removesuffix('-mark')}"
