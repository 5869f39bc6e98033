"""One dose and the ways to measure it: which stock, in what.

A way is a stock and the thing that it is measured in. What it is worth is the depth
that it gives, with its terms. Not every way can be gone: the dose must fit the tool
in a few fills, the bottle must hold it, and the pot must have room for it.
"""

from dataclasses import dataclass

from shadewright.core.baths.choosing import LARGEST_SHARE_OF_BATH
from shadewright.core.baths.depth import dye_mass_g
from shadewright.core.baths.measures import stock_volume_ml
from shadewright.core.baths.sureness import Drawn, depth_value, stock_density
from shadewright.core.quantities import Balance, MeasuringTool, is_more
from shadewright.core.uncertainty import Value, exact, half_width
from shadewright.core.uncertainty.tools import fills, mass_read, volume_read

MOST_FILLS = 4
"""More fills of one tool than this nobody wants to do. [-] (our choice)"""

LEAST_STEPS = 5
"""Fewer steps of a scale than this are not worth weighing. [-] (our choice)"""

DOSING_WARE = frozenset({"cylinder", "pipette", "syringe", "beaker", "jug"})
"""Ware with a scale of marks; a flask has one mark and measures no dose."""


@dataclass(frozen=True, kw_only=True)
class Ware:
    """A piece of measuring ware; ``key`` names the very piece."""

    name: str
    key: str
    tool: MeasuringTool


@dataclass(frozen=True, kw_only=True)
class Scale:
    """A scale; ``key`` names the very scale, ``most_g`` what it carries, if known."""

    name: str
    key: str
    balance: Balance
    is_checked: bool = False
    most_g: float | None = None

    def carries(self, mass_g: float) -> bool:
        """Whether a weight is neither too small for its step nor too much for it."""
        least_g = LEAST_STEPS * self.balance.step_g
        is_too_much = self.most_g is not None and is_more(mass_g, than=self.most_g)
        return not is_too_much and not is_more(least_g, than=mass_g)


Device = Ware | Scale


@dataclass(frozen=True, kw_only=True)
class Stock:
    """Stock of one dye: a bottle that stands there, or one that could be made.

    ``how`` says how it would be made, and is empty for a bottle. ``code`` is the
    bottle's own, or that of the bottle that is thinned; ``thinned_with`` measures what
    is taken from that one.
    """

    name: str
    strength: Value
    usable_ml: float
    how: str = ""
    code: str = ""
    thinned_with: Device | None = None

    @property
    def is_there(self) -> bool:
        """Whether it stands on the shelf."""
        return not self.how


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """A dose that is wanted: a depth of one dye on weighed yarn in a pot."""

    dye: str
    depth_percent: float
    yarn_g: float
    liquor_ml: float
    yarn_scale: Scale | None = None


@dataclass(frozen=True, kw_only=True)
class Way:
    """How a dose is measured: a stock, and what it is measured in."""

    stock: Stock
    device: Device

    @property
    def is_by_weight(self) -> bool:
        """Whether the dose is weighed."""
        return isinstance(self.device, Scale)


def dose_ml(*, wanted: Wanted, stock: Stock) -> float:
    """Return the volume of a stock that gives a dose.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    stock : Stock
        The stock. [-]

    Returns
    -------
    float
        Volume. [mL]

    Raises
    ------
    OutOfRangeError
        If depth, yarn or strength is out of range.

    Examples
    --------
    >>> pale = Wanted(dye="Gorse", depth_percent=0.006, yarn_g=100.0, liquor_ml=3000.0)
    >>> one = Stock(name="bottle T7KK", strength=exact(1.0), usable_ml=400.0)
    >>> dose_ml(wanted=pale, stock=one)
    0.6
    """
    dye_g = dye_mass_g(fibre_mass_g=wanted.yarn_g, depth_percent=wanted.depth_percent)
    return stock_volume_ml(dye_mass_g=dye_g, strength_percent=stock.strength.value)


def dose_g(*, wanted: Wanted, stock: Stock) -> float:
    """Return the weight of a stock that gives a dose.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    stock : Stock
        The stock. [-]

    Returns
    -------
    float
        Weight of the stock. [g]

    Raises
    ------
    OutOfRangeError
        If depth, yarn or strength is out of range.

    Examples
    --------
    >>> pale = Wanted(dye="Gorse", depth_percent=0.006, yarn_g=100.0, liquor_ml=3000.0)
    >>> one = Stock(name="bottle T7KK", strength=exact(1.0), usable_ml=400.0)
    >>> round(dose_g(wanted=pale, stock=one), 3)
    0.605
    """
    return dose_ml(wanted=wanted, stock=stock) * _density(stock).value


def way_depth(*, wanted: Wanted, way: Way) -> Value:
    """Return the depth that a way gives, with its terms.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    way : Way
        Stock and what it is measured in. [-]

    Returns
    -------
    Value
        Depth of shade; its value is the depth wanted. [%]

    Raises
    ------
    OutOfRangeError
        If depth, yarn or strength is out of range.

    Notes
    -----
    To first order: see ``depth_value``.

    Examples
    --------
    >>> pale = Wanted(dye="Gorse", depth_percent=0.2, yarn_g=100.0, liquor_ml=3000.0)
    >>> one = Stock(name="bottle T7KK", strength=exact(1.0), usable_ml=400.0)
    >>> kitchen = Scale(
    ...     name="kitchen scale",
    ...     key="tool 1",
    ...     balance=Balance(step_g=0.1, error_g=None),
    ... )
    >>> found = way_depth(wanted=pale, way=Way(stock=one, device=kitchen))
    >>> round(found.u_rel, 4)
    0.0061
    """
    return depth_value(yarn=_yarn(wanted), stock=[_drawn(wanted, way)])


def reach_rel(value: Value) -> float:
    """Return how far a value may be off, 19 times in 20, as a share of it.

    Parameters
    ----------
    value : Value
        A value other than nought. [any]

    Returns
    -------
    float
        Half of the 95 % interval by the value. [-]

    Examples
    --------
    >>> reach_rel(exact(1.0))
    0.0
    """
    return half_width(value) / abs(value.value)


def can_be_done(*, wanted: Wanted, way: Way, most_fills: float = MOST_FILLS) -> bool:
    """Return whether a dose can be measured in a way at all.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    way : Way
        Stock and what it is measured in. [-]
    most_fills : float
        More fills of one tool than this are not counted as a way. [-]

    Returns
    -------
    bool
        Whether the bottle holds it, the tool takes it in so many fills or the
        scale can weigh it, and it is no more than a quarter of the bath. [-]

    Raises
    ------
    OutOfRangeError
        If depth, yarn or strength is out of range.

    Notes
    -----
    A quarter of the bath is the rule of ``chosen_bottles``. Common practice.

    Examples
    --------
    >>> deep = Wanted(dye="Gorse", depth_percent=2.0, yarn_g=100.0, liquor_ml=3000.0)
    >>> weak = Stock(name="bottle G4RR", strength=exact(0.1), usable_ml=5000.0)
    >>> jug = MeasuringTool(kind="jug", size_ml=1000, accuracy_class="", standard="ISO")
    >>> way = Way(stock=weak, device=Ware(name="jug", key="tool 2", tool=jug))
    >>> can_be_done(wanted=deep, way=way)
    False
    """
    volume_ml = dose_ml(wanted=wanted, stock=way.stock)
    most_ml = min(way.stock.usable_ml, LARGEST_SHARE_OF_BATH * wanted.liquor_ml)
    if is_more(volume_ml, than=most_ml):
        return False
    if isinstance(way.device, Scale):
        return way.device.carries(dose_g(wanted=wanted, stock=way.stock))
    tool = way.device.tool
    return tool.kind in DOSING_WARE and (
        fills(tool=tool, volume_ml=volume_ml) <= most_fills
    )


def _yarn(wanted: Wanted) -> Value:
    scale = wanted.yarn_scale
    if scale is None:
        return exact(wanted.yarn_g)
    return mass_read(scale.balance, wanted.yarn_g, role="yarn", key=scale.key)


def _drawn(wanted: Wanted, way: Way) -> Drawn:
    stock, device = way.stock, way.device
    if isinstance(device, Scale):
        weighed_g = dose_g(wanted=wanted, stock=stock)
        return Drawn(
            strength=stock.strength,
            amount=mass_read(
                device.balance, weighed_g, role=wanted.dye, key=device.key
            ),
            density=_density(stock),
        )
    volume_ml = dose_ml(wanted=wanted, stock=stock)
    return Drawn(
        strength=stock.strength,
        amount=volume_read(device.tool, volume_ml, role=wanted.dye, key=device.key),
    )


def _density(stock: Stock) -> Value:
    return stock_density(strength=stock.strength, key=stock.name)
