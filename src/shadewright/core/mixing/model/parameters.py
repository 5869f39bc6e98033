"""What is to be learned of a palette, and how large each part is thought to be.

All parameters are counted in their own prior standard deviation, so that each is a
plain N(0, 1) before anything is dyed; the sizes stand here, and are learned again
from all dyes together (see ``fitting``).
"""

from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.shapes import ShapePrior, leading_factor, nearness

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

MODES = 4
"""Smooth ways in which a shape may bend. [-]"""

KNOTS_PERCENT = (0.03, 0.15, 0.6, 2.0)
"""Depths at which strength and shape may each go their own way. [%]"""

SURFACE_LOG_SD = 0.8
"""How unsure the surface term is, in natural logarithms. [1]"""

COMMON = ("common_gain", "common_slope", "common_saturation")


@dataclass(frozen=True, kw_only=True)
class Sizes:
    """Prior standard deviations, all of the natural logarithm of unit K/S.

    ``gain`` is a dye's strength, ``slope`` how it grows with the logarithm of the
    depth, ``saturation`` how it flags; ``strength``, ``drift`` and ``deviation`` are
    what no law says: strength and shape at each depth. ``base_factor`` and
    ``base_shape`` belong to a further base, ``session`` to a day's dyeing.
    """

    common_gain: float = 0.7
    common_slope: float = 0.06
    common_saturation: float = 0.4
    shape: float = 1.0
    gain: float = 0.5
    slope: float = 0.08
    saturation: float = 0.3
    strength: float = 0.05
    drift: float = 0.05
    deviation: float = 0.036
    base_factor: float = 0.2
    base_shape: float = 0.05
    session: float = 0.1


@dataclass(frozen=True, kw_only=True)
class Group:
    """A run of a dye's parameters that share a size."""

    name: str
    start: int
    stop: int


@dataclass(frozen=True, kw_only=True, eq=False)
class Structure:
    """How many dyes, bases and sessions; the prior of shapes; where things stand.

    The vector of parameters begins with what all dyes share (surface, three common
    ones, the ground of each base); then come the dyes, ``per_dye`` each.
    """

    dyes: int
    bases: int
    sessions: int
    prior: ShapePrior
    ground_rank: int = 10

    @property
    def shared(self) -> int:
        """Parameters that all dyes share."""
        return 1 + len(COMMON) + self.bases * self.ground_rank

    @property
    def groups(self) -> tuple[Group, ...]:
        """A dye's own parameters, in order."""
        widths = (
            ("shape", int(self.prior.factor.shape[-1])),
            ("gain", 1),
            ("slope", 1),
            ("saturation", 1),
            ("strength", len(KNOTS_PERCENT)),
            ("drift", MODES),
            ("deviation", len(KNOTS_PERCENT) * MODES),
            ("base_factor", self.bases - 1),
            ("base_shape", (self.bases - 1) * MODES),
            ("session", self.sessions),
        )
        found, start = [], 0
        for name, width in widths:
            found.append(Group(name=name, start=start, stop=start + width))
            start += width
        return tuple(found)

    @property
    def per_dye(self) -> int:
        """Parameters of one dye."""
        return self.groups[-1].stop

    @property
    def total(self) -> int:
        """All parameters."""
        return self.shared + self.dyes * self.per_dye

    def of_dye(self, dye: int) -> slice:
        """Return where a dye's parameters stand."""
        start = self.shared + dye * self.per_dye
        return slice(start, start + self.per_dye)


def smooth_modes(nm: "Floats") -> "Floats":
    """Return the smooth ways in which a spectrum may bend.

    Parameters
    ----------
    nm : ndarray, shape (31,)
        Wavelengths. [nm]

    Returns
    -------
    ndarray, shape (31, 4)
        The four leading directions of a smoothness of 80 nm. [1]
    """
    return leading_factor(nearness(nm, nm, length=80.0), rank=MODES)


def ground_prior(nm: "Floats", *, rank: int) -> "tuple[Floats, Floats]":
    """Return mean and factor of the logarithm of bare yarn's K/S.

    Parameters
    ----------
    nm : ndarray, shape (31,)
        Wavelengths. [nm]
    rank : int
        Directions kept. [-]

    Returns
    -------
    tuple of (ndarray, shape (31,); ndarray, shape (31, rank))
        Mean: R = 0.7 in the red, yellower towards the blue. Factor: smooth over
        80 nm, a little free over 25. [1]

    Notes
    -----
    Our choice: undyed wool, silk and nylon are pale and more or less cream.
    """
    import numpy as np

    mean = np.log(0.3**2 / 1.4) + np.exp(-(nm - 400.0) / 60.0)
    spread = (
        0.25 * nearness(nm, nm, length=80.0)
        + 0.25
        + 0.0025 * nearness(nm, nm, length=25.0)
        + 1e-5 * np.eye(len(nm))
    )
    return mean, leading_factor(spread, rank=rank)


def sizes_by_name(sizes: Sizes) -> dict[str, float]:
    """Return sizes as a table, in their order.

    Parameters
    ----------
    sizes : Sizes
        The sizes. [1]

    Returns
    -------
    dict of str to float
        Name and size. [1]
    """
    return {field.name: getattr(sizes, field.name) for field in fields(sizes)}
