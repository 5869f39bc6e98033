"""How sure a recipe is at a batch, and at smaller and larger ones.

A swatch of 20 g takes a fifth of the dye of a 100 g skein, from the same syringe. What
it is off by is dyed into everything that is scaled up from it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from shadewright.core.baths.levers.ways import (
    MOST_FILLS,
    Device,
    Stock,
    Wanted,
    Way,
    can_be_done,
    reach_rel,
    way_depth,
)
from shadewright.core.uncertainty import Value


@dataclass(frozen=True, kw_only=True)
class DyeAtHand:
    """A dye of a recipe: its depth, and the bottles that it is measured from."""

    dye: str
    depth_percent: float
    stocks: tuple[Stock, ...]


@dataclass(frozen=True, kw_only=True)
class DoseSureness:
    """How sure one dye is at a batch: way, depth, reach; None where there is no way."""

    dye: str
    way: Way | None
    depth: Value | None
    reach: float | None


@dataclass(frozen=True, kw_only=True)
class BatchSureness:
    """How sure a recipe is at a batch; ``worst`` is its least sure dye."""

    yarn_g: float
    doses: tuple[DoseSureness, ...]

    @property
    def worst(self) -> DoseSureness | None:
        """The dye that is least sure; None where one dye cannot be measured at all."""
        if not self.doses or any(dose.reach is None for dose in self.doses):
            return None
        return max(self.doses, key=lambda dose: dose.reach or 0.0)


def batch_sureness(
    *,
    dyes: Sequence[DyeAtHand],
    devices: Sequence[Device],
    wanted: Wanted,
) -> BatchSureness:
    """Return how sure each dye of a recipe is at a batch, by the surest way there is.

    Parameters
    ----------
    dyes : sequence of DyeAtHand
        The recipe's dyes with their bottles. [-]
    devices : sequence of Ware or Scale
        What doses are measured in. [-]
    wanted : Wanted
        The batch: yarn, liquor, yarn scale; dye and depth are set in turn. [-]

    Returns
    -------
    BatchSureness
        Each dye, and the least sure. [-]

    Raises
    ------
    OutOfRangeError
        If a depth, the yarn or a strength is out of range.

    Examples
    --------
    >>> batch = Wanted(dye="", depth_percent=1.0, yarn_g=100.0, liquor_ml=3000.0)
    >>> batch_sureness(dyes=[], devices=[], wanted=batch).worst is None
    True
    """
    doses = tuple(_sureness(each, devices, wanted) for each in dyes)
    return BatchSureness(yarn_g=wanted.yarn_g, doses=doses)


def _sureness(dye: DyeAtHand, devices: Sequence[Device], batch: Wanted) -> DoseSureness:
    wanted = Wanted(
        dye=dye.dye,
        depth_percent=dye.depth_percent,
        yarn_g=batch.yarn_g,
        liquor_ml=batch.liquor_ml,
        yarn_scale=batch.yarn_scale,
    )
    found = surest_way(wanted=wanted, stocks=dye.stocks, devices=devices)
    if found is None:
        return DoseSureness(dye=dye.dye, way=None, depth=None, reach=None)
    depth = way_depth(wanted=wanted, way=found)
    return DoseSureness(dye=dye.dye, way=found, depth=depth, reach=reach_rel(depth))


def surest_way(
    *, wanted: Wanted, stocks: Sequence[Stock], devices: Sequence[Device]
) -> Way | None:
    """Return the surest pair of stock and tool for a dose.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    stocks : sequence of Stock
        Stocks of its dye. [-]
    devices : sequence of Ware or Scale
        What it could be measured in. [-]

    Returns
    -------
    Way or None
        The way with the smallest standard uncertainty; None where none can be gone.

    Raises
    ------
    OutOfRangeError
        If depth, yarn or a strength is out of range.

    Notes
    -----
    Four fills of a tool are enough where any way needs no more; where none does, the
    tool is filled as often as it takes, as a bath's plan has it.

    Examples
    --------
    >>> pale = Wanted(dye="Gorse", depth_percent=0.2, yarn_g=100.0, liquor_ml=3000.0)
    >>> surest_way(wanted=pale, stocks=[], devices=[]) is None
    True
    """
    ways = [Way(stock=stock, device=device) for stock in stocks for device in devices]
    for most_fills in (MOST_FILLS, inf):
        can = [
            way
            for way in ways
            if can_be_done(wanted=wanted, way=way, most_fills=most_fills)
        ]
        if can:
            return min(can, key=lambda way: way_depth(wanted=wanted, way=way).u_rel)
    return None
