"""Downhill to the best recipe of each set, all sets side by side.

Levenberg and Marquardt's way: a step that improves a set is taken and its damping
eased, one that does not is thrown away and its damping raised. Sets that have arrived
leave, so that the work shrinks. With a bar to reach, a set is given up when what is
left to gain will not reach it, but never before its third step: first steps mislead.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.recipes.search.evaluating import jacobian_of
from shadewright.core.recipes.search.problem import Aim, Dyes, Mixed
from shadewright.core.recipes.search.stepping import Box, stepped

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Bools = NDArray[np.bool_]
    Whole = NDArray[np.signedinteger]

CHUNK = 2048
"""Sets that go through the processor's cache together. [-]"""
_FIRST_DAMPING, _LEAST_DAMPING, _MOST_DAMPING = 1e-4, 1e-9, 1e5
_TRUSTED_AFTER = 2


@dataclass(frozen=True, kw_only=True)
class Patience:
    """When a set has arrived: after so many steps, or when it gains too little.

    ``bar`` is a value that must be in reach, or the set is given up.
    """

    steps: int = 12
    gain: float = 1e-4
    enough: float = 1e-7
    bar: float | None = None


USUAL = Patience()


@dataclass(kw_only=True, eq=False)
class _Walkers:
    """Sets on their way; ``place`` is where each stands among all."""

    place: "Whole"
    mixed: Mixed
    box: Box
    amounts: "Floats"
    value: "Floats"
    rows: "Floats"
    jacobian: "Floats"
    damping: "Floats"

    def some(self, which: "Whole") -> "_Walkers":
        return _Walkers(
            place=self.place[which],
            mixed=self.mixed.some(which),
            box=self.box.some(which),
            amounts=self.amounts[:, which],
            value=self.value[which],
            rows=self.rows[:, which],
            jacobian=self.jacobian[:, :, which],
            damping=self.damping[which],
        )


def descended(
    aim: Aim, mixed: Mixed, start: "Floats", box: Box, patience: Patience = USUAL
) -> "tuple[Floats, Floats]":
    """Return the best amounts of each set that lie downhill of a start.

    Parameters
    ----------
    aim : Aim
        What is wanted. [-]
    mixed : Mixed
        The dyes of each set. [-]
    start : ndarray, shape (dyes, sets)
        Amounts to begin with, within the limits. [%]
    box : Box
        Limits. [%]
    patience : Patience
        When a set has arrived. [-]

    Returns
    -------
    tuple of (ndarray, shape (dyes, sets); ndarray, shape (sets,))
        Amounts in %, and f. [1]

    References
    ----------
    .. [marquardt1963] the rule for the damping, in factors of ten
    """
    import numpy as np

    amounts, values = start.copy(), np.empty(start.shape[1])
    if not len(values):
        return amounts, values
    found, jacobian = jacobian_of(aim, mixed, amounts)
    walkers = _Walkers(
        place=np.arange(len(values)),
        mixed=mixed,
        box=box,
        amounts=amounts,
        value=found.value,
        rows=found.rows,
        jacobian=jacobian,
        damping=np.full(len(values), _FIRST_DAMPING),
    )
    for step in range(patience.steps):
        goes_on = _walked(aim, walkers, patience, step)
        if step == patience.steps - 1:
            goes_on[:] = False
        if goes_on.all():
            continue
        arrived = walkers.place[~goes_on]
        amounts[:, arrived] = walkers.amounts[:, ~goes_on]
        values[arrived] = walkers.value[~goes_on]
        if not goes_on.any():
            break
        walkers = walkers.some(np.flatnonzero(goes_on))
    return amounts, values


def _walked(aim: Aim, walkers: _Walkers, patience: Patience, step: int) -> "Bools":
    """Take one step, in place; return which sets go on."""
    import numpy as np

    before = walkers.value
    tried = stepped(
        walkers.amounts, walkers.rows, walkers.jacobian, walkers.damping, walkers.box
    )
    found, jacobian = jacobian_of(aim, walkers.mixed, tried)
    is_better = found.value < before
    moved = np.abs(tried - walkers.amounts) > 1e-9 + 1e-7 * walkers.amounts
    eased = np.maximum(walkers.damping * 0.1, _LEAST_DAMPING)
    if is_better.all():
        walkers.amounts, walkers.value, walkers.rows = tried, found.value, found.rows
        walkers.jacobian, walkers.damping = jacobian, eased
    else:
        raised = np.maximum(walkers.damping * 10.0, 1e-3)
        walkers.amounts = np.where(is_better, tried, walkers.amounts)
        walkers.value = np.where(is_better, found.value, before)
        walkers.rows = np.where(is_better, found.rows, walkers.rows)
        walkers.jacobian = np.where(is_better, jacobian, walkers.jacobian)
        walkers.damping = np.where(is_better, eased, raised)
    gained = before - found.value
    pays = gained > patience.gain * (walkers.value + 1e-4)
    may_yet = moved.any(0) & (walkers.damping < _MOST_DAMPING)
    goes_on: Bools = np.where(is_better, pays, may_yet)
    goes_on &= walkers.value > patience.enough
    if patience.bar is not None and step >= _TRUSTED_AFTER:
        goes_on &= ~is_better | (walkers.value - 4.0 * gained < patience.bar)
    return goes_on


@dataclass(frozen=True, kw_only=True, eq=False)
class Sought:
    """A search: the dyes, what is wanted, the most of each dye and of all."""

    dyes: Dyes
    aim: Aim
    each: "Floats"
    total: float

    def box_of(self, sets: "Whole") -> Box:
        """Return the limits of sets of dyes.

        Parameters
        ----------
        sets : ndarray, shape (dyes, sets)
            Places of dyes. [-]

        Returns
        -------
        Box
            From nothing to the most of each. [%]
        """
        import numpy as np

        most = self.each[sets]
        return Box(least=np.zeros_like(most), most=most, total=self.total)


def descended_in_chunks(
    sought: Sought, sets: "Whole", start: "Floats", patience: Patience = USUAL
) -> "tuple[Floats, Floats]":
    """Return the same for any number of sets, a chunk at a time.

    Parameters
    ----------
    sought : Sought
        The search. [-]
    sets : ndarray, shape (dyes, sets)
        Places of dyes. [-]
    start : ndarray, shape (dyes, sets)
        Amounts to begin with. [%]
    patience : Patience
        When a set has arrived. [-]

    Returns
    -------
    tuple of (ndarray, shape (dyes, sets); ndarray, shape (sets,))
        Amounts in %, and f. [1]
    """
    import numpy as np

    amounts, values = np.empty_like(start), np.empty(start.shape[1])
    for chunk in chunks(len(values)):
        some = sets[:, chunk]
        amounts[:, chunk], values[chunk] = descended(
            sought.aim,
            sought.dyes.of(some),
            start[:, chunk],
            sought.box_of(some),
            patience,
        )
    return amounts, values


def chunks(count: int, *, size: int = CHUNK) -> list[slice]:
    """Return even chunks of so many sets.

    Parameters
    ----------
    count : int
        Sets. [-]
    size : int
        Most in a chunk. [-]

    Returns
    -------
    list of slice
        Chunks, in order. [-]
    """
    if not count:
        return []
    even = -(-count // -(-count // size))
    return [slice(first, first + even) for first in range(0, count, even)]
