"""What stands on the shelf and hangs on the wall, as the levers of core know it."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from operator import attrgetter

from shadewright.core.baths.doses import STRENGTH_SERIES_PERCENT
from shadewright.core.baths.levers.makeable import (
    USUAL_STOCK_ML,
    Making,
    stocks_to_make,
)
from shadewright.core.baths.levers.ways import (
    DOSING_WARE,
    Device,
    Scale,
    Stock,
    Ware,
)
from shadewright.core.uncertainty.tools import half_width_ml
from shadewright.records import reads
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.jars import jars
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.tools_at_hand import AtHand

_MOST_OF_SOLUBLE = 0.5
_NOT_POURED_INTO = {"syringe", "pipette"}


def device_of(tool: ToolNow | None) -> Device | None:
    """Return a tool as what a dose is measured in; None where it measures none."""
    return scale_of(tool) or ware_of(tool)


def scale_of(tool: ToolNow | None) -> Scale | None:
    """Return a tool as a scale."""
    if tool is None or tool.balance is None:
        return None
    return Scale(
        name=tool.name,
        key=tool.key,
        balance=tool.balance,
        is_checked=tool.is_checked,
        most_g=tool.size,
    )


def ware_of(tool: ToolNow | None) -> Ware | None:
    """Return a tool as ware, a flask too."""
    if tool is None or tool.ware is None:
        return None
    return Ware(name=tool.name, key=tool.key, tool=tool.ware)


def devices_of(tools: Iterable[ToolNow]) -> tuple[Device, ...]:
    """Return what doses can be measured in."""
    found = (device_of(tool) for tool in tools)
    return tuple(
        each
        for each in found
        if isinstance(each, Scale) or (each and each.tool.kind in DOSING_WARE)
    )


def stock_of(bottle: ShelfBottle, *, usable_ml: float) -> Stock:
    """Return a bottle as stock that could give so much."""
    return Stock(
        name=f"bottle {bottle.code}",
        strength=bottle.strength,
        usable_ml=usable_ml,
        code=bottle.code,
    )


def stocks_of(offer: Offer, dye_id: int) -> tuple[Stock, ...]:
    """Return the bottles of a dye that a job may draw on."""
    bottles = {each.code: each for each in offer.bottles}
    return tuple(
        stock_of(bottles[each.code], usable_ml=each.usable_ml)
        for each in offer.candidates(dye_id)
        if each.is_good and each.usable_ml > 0
    )


def making_of(tools: AtHand) -> Making:
    """Return what this studio makes its stock with."""
    scale = tools.usual.powder_scale or min(
        tools.scales, key=attrgetter("step_g"), default=None
    )
    return Making(
        powder_scale=scale_of(scale),
        vessel=ware_of(tools.usual.fill_tool) or _best_vessel(tools.ware),
    )


def makeable(
    dye_id: int, making: Making, *, standing: Sequence[Stock], devices: Sequence[Device]
) -> tuple[Stock, ...]:
    """Return the stocks of a dye that could be made from its jars and bottles."""
    jar = max(jars(dye_id=dye_id), key=lambda each: each.left_g, default=None)
    if jar is None:
        own = replace(making, powder_scale=None)
    else:
        strength, left_g = jar.strength_percent, jar.left_g
        own = replace(making, powder_strength_percent=strength, powder_left_g=left_g)
    return stocks_to_make(
        making=own,
        standing=standing,
        devices=devices,
        strengths_percent=soluble_strengths(dye_id),
    )


def soluble_strengths(dye_id: int) -> tuple[float, ...]:
    """Return the usual strengths that a dye dissolves to with room to spare."""
    row = reads.dye_rows().filter(pk=dye_id).first()
    most = None if row is None else row.solubility_g_per_l
    return tuple(
        each
        for each in STRENGTH_SERIES_PERCENT
        if most is None or 10 * each <= _MOST_OF_SOLUBLE * most
    )


def _best_vessel(tools: Iterable[ToolNow]) -> Ware | None:
    """Return what a stock is surest made up in, in one filling."""
    fit = [
        ware
        for tool in tools
        if (ware := ware_of(tool)) is not None
        and ware.tool.kind not in _NOT_POURED_INTO
        and ware.tool.size_ml >= USUAL_STOCK_ML
    ]
    return min(fit, key=_off_ml, default=None)


def _off_ml(ware: Ware) -> float:
    return half_width_ml(tool=ware.tool, volume_ml=USUAL_STOCK_ML)
