"""The outline of what is filled in a plane of small cells.

Walk along the border with the filled cells at the left hand until the start comes
round again; then cut the corners, for the cells are ours and not the colours'.
"""

from collections import defaultdict
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Bools = NDArray[np.bool_]
    Floats = NDArray[np.float64]

Outline = tuple[tuple[float, float], ...]
"""Points (a*, b*) in order; the last is joined to the first. [1]"""

CELL = 1
"""Width of a cell. [1]"""
HALF_WIDTH = 128
"""The plane goes from minus this to this, both ways. [1]"""
_SPECK_CELLS = 12
_SMOOTH, _EVERY = 5, 2

Corner = tuple[int, int]


def outlines_of(cells: "Bools") -> tuple[Outline, ...]:
    """Return the outlines of filled cells, the largest first.

    Parameters
    ----------
    cells : ndarray, shape (256, 256)
        True where filled; a* down, b* across. [-]

    Returns
    -------
    tuple of tuple
        Points a*, b*; small specks and small holes are left out. [1]
    """
    loops = sorted(_loops(closed(cells)), key=_area, reverse=True)
    kept = [each for each in loops[1:] if _area(each) >= _SPECK_CELLS]
    return tuple(_smoothed(each) for each in [*loops[:1], *kept])


def closed(cells: "Bools") -> "Bools":
    """Return cells with every gap of one cell filled.

    Parameters
    ----------
    cells : ndarray, shape (n, n)
        True where filled; the border is empty. [-]

    Returns
    -------
    ndarray, shape (n, n)
        Grown by one cell all round, then shrunk again. [-]
    """
    return ~_grown(~_grown(cells))


def _grown(cells: "Bools") -> "Bools":
    found = cells.copy()
    found[1:] |= cells[:-1]
    found[:-1] |= cells[1:]
    across = found.copy()
    found[:, 1:] |= across[:, :-1]
    found[:, :-1] |= across[:, 1:]
    return found


def _loops(cells: "Bools") -> list[list[Corner]]:
    """Return the borders as corners in order, filled cells at the left."""
    ways = _ways(cells)
    loops = []
    while ways:
        start = next(iter(ways))
        loop, here = [start], _step(ways, start)
        while here != start:
            loop.append(here)
            here = _step(ways, here)
        loops.append(loop)
    return loops


def _ways(cells: "Bools") -> dict[Corner, list[Corner]]:
    """Return from each corner of the border where it goes on."""
    import numpy as np

    padded = np.pad(cells, 1)
    ways: dict[Corner, list[Corner]] = defaultdict(list)
    sides = (
        ((-1, 0), (0, 1), (0, 0)),
        ((1, 0), (1, 0), (1, 1)),
        ((0, -1), (0, 0), (1, 0)),
        ((0, 1), (1, 1), (0, 1)),
    )
    for (down, across), start, end in sides:
        beside = np.roll(padded, (-down, -across), (0, 1))
        for x, y in (np.argwhere(padded & ~beside) - 1).tolist():
            ways[x + start[0], y + start[1]].append((x + end[0], y + end[1]))
    return ways


def _step(ways: dict[Corner, list[Corner]], here: Corner) -> Corner:
    there = ways[here].pop()
    if not ways[here]:
        del ways[here]
    return there


def _area(loop: list[Corner]) -> float:
    """Return the area inside a loop, in cells."""
    turned = [*loop[1:], loop[0]]
    return abs(
        sum(x * v - u * y for (x, y), (u, v) in zip(loop, turned, strict=True)) / 2
    )


def _smoothed(loop: list[Corner]) -> Outline:
    """Return a loop through the middles of its steps, its corners cut."""
    import numpy as np

    corners = np.array(loop, dtype=float)
    middles = (corners + np.roll(corners, -1, 0)) / 2.0
    ring = [np.roll(middles, turn - _SMOOTH // 2, 0) for turn in range(_SMOOTH)]
    smooth = np.mean(ring, 0) * CELL - HALF_WIDTH
    return tuple((float(a), float(b)) for a, b in smooth[::_EVERY])
