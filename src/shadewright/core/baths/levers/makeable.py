"""Stocks that could be made with what is at hand, and how sure they would be.

A weak stock is made in one of two ways: its powder is weighed, or a stronger bottle
is thinned. Half a gram on a kitchen scale is a poor start; 50 ml of a good 1 % stock
made up to 500 ml is a fine one. Of the ways that can be gone the surest is taken.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain

from shadewright.core.baths.doses import STRENGTH_SERIES_PERCENT
from shadewright.core.baths.levers.ways import (
    DOSING_WARE,
    MOST_FILLS,
    Device,
    Scale,
    Stock,
    Ware,
)
from shadewright.core.baths.sureness import Drawn, drawn_dye, stock_density
from shadewright.core.quantities import amount_text, is_more
from shadewright.core.solutions import powder_mass_g
from shadewright.core.solutions.sureness import made_strength, of_stock
from shadewright.core.uncertainty import Value, quotient, scaled
from shadewright.core.uncertainty.tools import fills, mass_read, volume_read

USUAL_STOCK_ML = 500.0
"""What a stock is made up to where nothing else is said. [mL]"""


@dataclass(frozen=True, kw_only=True)
class Making:
    """What a stock is made with; ``powder_left_g`` is None where nobody counts it."""

    powder_scale: Scale | None
    vessel: Ware | None
    volume_ml: float = USUAL_STOCK_ML
    powder_strength_percent: float = 100.0
    powder_left_g: float | None = None


def stocks_to_make(
    *,
    making: Making,
    standing: Sequence[Stock] = (),
    devices: Sequence[Device] = (),
    strengths_percent: Sequence[float] = STRENGTH_SERIES_PERCENT,
) -> tuple[Stock, ...]:
    """Return the stocks that could be made, the surest way for each strength.

    Parameters
    ----------
    making : Making
        What powder is weighed on and the stock made up in. [-]
    standing : sequence of Stock
        Bottles of the same dye that could be thinned. [-]
    devices : sequence of Ware or Scale
        What could measure the stock that is thinned. [-]
    strengths_percent : sequence of float
        The strengths that are asked for. [%]

    Returns
    -------
    tuple of Stock
        One for each strength that can be made; none without a vessel.

    Raises
    ------
    OutOfRangeError
        If a strength or the volume is out of range.

    Notes
    -----
    Powder is weighed from five steps of the scale upwards. Two ways that are equally
    sure: the one that needs no powder. Both are our choice.

    Examples
    --------
    >>> stocks_to_make(making=Making(powder_scale=None, vessel=None))
    ()
    """
    ways = (
        min(
            chain(_thinned(s, making, standing, devices), _weighed(s, making)),
            key=lambda stock: stock.strength.u_rel,
            default=None,
        )
        for s in strengths_percent
    )
    return tuple(way for way in ways if way is not None)


def _weighed(strength_percent: float, making: Making) -> Iterator[Stock]:
    scale, vessel = making.powder_scale, making.vessel
    if scale is None or vessel is None:
        return
    powder_g = powder_mass_g(
        volume_ml=making.volume_ml,
        strength_percent=strength_percent,
        powder_strength_percent=making.powder_strength_percent,
    )
    left_g = making.powder_left_g
    if not scale.carries(powder_g) or (left_g is not None and powder_g > left_g):
        return
    strength = made_strength(
        powder=mass_read(scale.balance, powder_g, role="powder", key=scale.key),
        volume=_made_up(making, vessel),
        powder_strength_percent=making.powder_strength_percent,
    )
    yield _new(
        strength, making, f"{amount_text(powder_g, 'g')} of powder to {_to(making)}"
    )


def _thinned(
    strength_percent: float,
    making: Making,
    standing: Sequence[Stock],
    devices: Sequence[Device],
) -> Iterator[Stock]:
    if making.vessel is None:
        return
    for stock in standing:
        have = stock.strength.value
        volume_ml = strength_percent * making.volume_ml / have
        if not is_more(have, than=strength_percent):
            continue
        if is_more(volume_ml, than=stock.usable_ml):
            continue
        for device in devices:
            if not _holds(device, volume_ml):
                continue
            dye = drawn_dye(drawn=_taken(stock, device, volume_ml))
            strength = scaled(quotient(dye, _made_up(making, making.vessel)), by=100.0)
            taken = f"{amount_text(volume_ml, 'ml')} of {stock.name}"
            weighed = ", weighed," if isinstance(device, Scale) else ""
            yield replace(
                _new(strength, making, f"{taken}{weighed} to {_to(making)}"),
                code=stock.code,
                thinned_with=device,
            )


def _made_up(making: Making, vessel: Ware) -> Value:
    return volume_read(vessel.tool, making.volume_ml, role="stock", key=vessel.key)


def _taken(stock: Stock, device: Device, volume_ml: float) -> Drawn:
    role = "stock thinned"
    if isinstance(device, Ware):
        amount = volume_read(device.tool, volume_ml, role=role, key=device.key)
        return Drawn(strength=stock.strength, amount=amount)
    density = stock_density(strength=stock.strength, key=stock.name)
    weight = mass_read(
        device.balance, volume_ml * density.value, role=role, key=device.key
    )
    return Drawn(strength=stock.strength, amount=weight, density=density)


def _holds(device: Device, volume_ml: float) -> bool:
    if isinstance(device, Scale):
        return device.carries(volume_ml)
    is_marked = device.tool.kind in DOSING_WARE
    return is_marked and fills(tool=device.tool, volume_ml=volume_ml) <= MOST_FILLS


def _to(making: Making) -> str:
    return amount_text(making.volume_ml, "ml")


def _new(strength: Value, making: Making, how: str) -> Stock:
    name = f"new {amount_text(strength.value, '%')} stock"
    return Stock(
        name=name,
        strength=of_stock(strength, key=name),
        usable_ml=making.volume_ml,
        how=how,
    )
