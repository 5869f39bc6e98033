"""Each dye's K/S at any depth: the palette's own curves, made ready for a search.

    K/S = c exp u(λ, c),  d(K/S)/dc = exp u (1 + du/d ln c)          (1)

and u bends smoothly with ln c. At twenty depths u is asked of the palette; between them
it is Chebyshev's polynomial, which differs by less than 0.0001 in CIEDE2000, and its
slope comes with it. Below the least depth a dye adds in proportion.
"""

from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING

from shadewright.core.mixing.model.entries import Dyed, entries
from shadewright.core.mixing.model.forward import grounds_of, surface_of, unit_ks
from shadewright.core.mixing.palette import Palette

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Whole = NDArray[np.signedinteger]

LEAST_PERCENT, MOST_PERCENT = 0.005, 20.0
"""Depths between which a curve bends. [%]"""
_NODES = 20


@dataclass(frozen=True, kw_only=True, eq=False)
class Curves:
    """Dyes of a palette on one base.

    ``rows`` (n + 1, 20, 31) are Chebyshev's coefficients of u, the last dye none;
    ``ground`` (31,) is K/S of the bare yarn, ``surface`` the surface term.
    """

    rows: "Floats"
    ground: "Floats"
    surface: float

    @property
    def count(self) -> int:
        """How many dyes, n."""
        return len(self.rows) - 1

    def of(self, sets: "Whole") -> "Curved":
        """Return the dyes of sets.

        Parameters
        ----------
        sets : ndarray, shape (dyes, sets)
            Places of dyes; n for none. [-]

        Returns
        -------
        Curved
            Their curves. [-]
        """
        import numpy as np

        rows = self.rows[sets].transpose(0, 2, 3, 1)
        return Curved(rows=np.ascontiguousarray(rows), is_dye=sets < self.count)

    def logs(self, depths: "Floats") -> "Floats":
        """Return u of every dye at some depths.

        Parameters
        ----------
        depths : ndarray, shape (m,)
            Depths, c. [%]

        Returns
        -------
        ndarray, shape (n, m, 31)
            Natural logarithm of the K/S that 1 % adds. [1]
        """
        import numpy as np

        shapes, _slopes = _chebyshev(_place(depths))
        found: Floats = np.einsum("tm,ntb->nmb", shapes, self.rows[:-1])
        return found

    def first_drop(self) -> "Floats":
        """Return K/S that 1 % of each dye would add, judged by its first drop.

        Returns
        -------
        ndarray, shape (n, 31)
            exp u at the least depth. [1]
        """
        import numpy as np

        return np.exp(self.logs(np.array([LEAST_PERCENT]))[:, 0])


@dataclass(frozen=True, kw_only=True, eq=False)
class Curved:
    """Sets of dyes by their curves: ``rows`` (dyes, 20, 31, sets)."""

    rows: "Floats"
    is_dye: "NDArray[np.bool_]"

    def alone(self, amounts: "Floats") -> "tuple[Floats, Floats]":
        """Return what each dye adds, and its slopes.

        Both by equation 1.

        Parameters
        ----------
        amounts : ndarray, shape (dyes, sets)
            Depths, c. [%]

        Returns
        -------
        tuple of (ndarray, shape (dyes, 31, sets); the same)
            K/S, and its slope by the depth. [1]
        """
        import numpy as np

        is_bent = amounts > LEAST_PERCENT
        place = _place(np.maximum(amounts, LEAST_PERCENT))
        shapes, bends = _chebyshev(place)
        logs = np.einsum("ktbm,tkm->kbm", self.rows, shapes)
        bend = np.einsum("ktbm,tkm->kbm", self.rows, bends) / _half_range()
        unit = np.exp(logs) * self.is_dye[:, None]
        slope = unit * (1.0 + bend * is_bent[:, None])
        return unit * amounts[:, None], slope

    def added(self, amounts: "Floats") -> "tuple[Floats, Floats]":
        """Return K/S that the dyes of each set add together, and its slopes.

        Parameters
        ----------
        amounts : ndarray, shape (dyes, sets)
            Depths, c. [%]

        Returns
        -------
        tuple of (ndarray, shape (31, sets); ndarray, shape (dyes, 31, sets))
            K/S and slopes. [1]
        """
        each, slopes = self.alone(amounts)
        return each.sum(0), slopes

    def some(self, which: "Whole") -> "Curved":
        """Return some of the sets.

        Parameters
        ----------
        which : ndarray, shape (some,)
            Places of sets. [-]

        Returns
        -------
        Curved
            Those. [-]
        """
        return Curved(rows=self.rows[..., which], is_dye=self.is_dye[:, which])


def curves_of(palette: Palette, base: str, dyes: tuple[str, ...]) -> Curves:
    """Return the curves of some dyes of a palette on a base.

    Parameters
    ----------
    palette : Palette
        What was learned. [-]
    base : str
        The yarn; one that the palette holds. [-]
    dyes : tuple of str
        The dyes, of those that it holds. [-]

    Returns
    -------
    Curves
        Their curves, in the order asked for. [1]
    """
    import numpy as np

    known, names = palette.known, palette.names
    angles = np.pi * (np.arange(_NODES) + 0.5) / _NODES
    nodes = np.exp(_middle() + _half_range() * np.cos(angles))
    places = [names.dyes.index(dye) for dye in dyes]
    depths = np.zeros((len(places), _NODES, len(names.dyes)))
    for row, place in enumerate(places):
        depths[row, :, place] = nodes
    dyed = Dyed(
        depths=depths.reshape(-1, len(names.dyes)),
        bases=np.full(len(places) * _NODES, names.bases.index(base)),
        sessions=np.full(len(places) * _NODES, -1),
    )
    rows = entries(dyed, structure=known.structure, sizes=known.sizes)
    unit = unit_ks(known.parameters, rows, known.structure) / rows.depth[:, None]
    logs = np.log(unit).reshape(len(places), _NODES, -1)
    waves = np.cos(np.arange(_NODES)[:, None] * angles) * (2.0 / _NODES)
    waves[0] *= 0.5
    found = np.zeros((len(places) + 1, _NODES, logs.shape[2]))
    found[:-1] = waves @ logs
    return Curves(
        rows=found,
        ground=grounds_of(known.parameters, known.structure)[names.bases.index(base)],
        surface=surface_of(known.parameters, start=known.start_surface),
    )


def _half_range() -> float:
    return 0.5 * log(MOST_PERCENT / LEAST_PERCENT)


def _middle() -> float:
    return 0.5 * log(MOST_PERCENT * LEAST_PERCENT)


def _place(depths: "Floats") -> "Floats":
    """Return ln c from −1 to 1."""
    import numpy as np

    found: Floats = (np.log(depths) - _middle()) / _half_range()
    return np.minimum(found, 1.0)


def _chebyshev(place: "Floats") -> "tuple[Floats, Floats]":
    """Return Chebyshev's polynomials and their slopes, (20, dyes, sets) each."""
    import numpy as np

    shapes, slopes = np.zeros((2, _NODES, *place.shape))
    shapes[0], shapes[1], slopes[1] = 1.0, place, 1.0
    for order in range(2, _NODES):
        shapes[order] = 2.0 * place * shapes[order - 1] - shapes[order - 2]
        slopes[order] = (
            2.0 * shapes[order - 1]
            + 2.0 * place * slopes[order - 1]
            - slopes[order - 2]
        )
    return shapes, slopes
