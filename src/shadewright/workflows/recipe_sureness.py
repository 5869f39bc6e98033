"""How well a recipe is known: its least sure dye at a swatch, a bath, a large bath."""

from dataclasses import dataclass, replace
from math import inf

from shadewright.core.baths import liquor_ml
from shadewright.core.baths.levers.scaling import (
    BatchSureness,
    DyeAtHand,
    batch_sureness,
)
from shadewright.core.baths.levers.ways import Device, Stock, Wanted
from shadewright.records import lever_reads
from shadewright.workflows.bath_wishes import SWATCH_MOST_G
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.levers_at_hand import (
    device_of,
    devices_of,
    scale_of,
    stocks_of,
)
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.shelf import shelf
from shadewright.workflows.tools_at_hand import AtHand, at_hand

_ONE_SKEIN_G = 100.0
_LARGER = 4.0


@dataclass(frozen=True, kw_only=True)
class RecipeSureness:
    """A recipe at its usual batch, at a swatch and at four times as much.

    ``usual_g`` is the batch that was dyed most often, or one skein.
    """

    usual_g: float
    is_dyed: bool
    batches: tuple[BatchSureness, ...]

    @property
    def usual(self) -> BatchSureness:
        """The usual batch."""
        return next(each for each in self.batches if each.yarn_g == self.usual_g)


def recipe_sureness(version: Version) -> RecipeSureness | None:
    """Return how sure a version is from the bottles and tools that stand here.

    None where a depth or the liquor is not known, or no tool is.
    """
    ratio, tools = version.text.liquor_ratio, at_hand()
    devices = devices_in_use(tools)
    if not version.is_complete or ratio is None or not devices:
        return None
    often = lever_reads.batches_of_recipe(version.recipe_id)
    usual_g = often[0] if often else _ONE_SKEIN_G
    offer = Offer(bottles=shelf(), purpose=version.text.purpose)
    dyes = tuple(
        DyeAtHand(
            dye=line.dye_name,
            depth_percent=line.depth_percent or 0.0,
            stocks=_enough(stocks_of(offer, line.dye_id or 0)),
        )
        for line in version.text.doses
    )
    batches = tuple(
        batch_sureness(dyes=dyes, devices=devices, wanted=_batch(yarn_g, ratio, tools))
        for yarn_g in sorted({SWATCH_MOST_G, usual_g, _LARGER * usual_g})
    )
    return RecipeSureness(usual_g=usual_g, is_dyed=bool(often), batches=batches)


def devices_in_use(tools: AtHand) -> tuple[Device, ...]:
    """Return what doses are usually measured in: the usual tool, or any that suits."""
    if tools.is_by_weight:
        scale = device_of(tools.usual.dose_scale)
        if scale is not None:
            return (scale,)
    usual = tools.usual.dose_tool
    if usual is not None and usual.ware is not None:
        return devices_of([usual])
    return devices_of(tools.ware)


def _enough(stocks: tuple[Stock, ...]) -> tuple[Stock, ...]:
    """Return bottles as if each held enough: how sure they are is asked."""
    return tuple(replace(stock, usable_ml=inf) for stock in stocks)


def _batch(yarn_g: float, ratio: float, tools: AtHand) -> Wanted:
    return Wanted(
        dye="",
        depth_percent=0.0,
        yarn_g=yarn_g,
        liquor_ml=liquor_ml(fibre_mass_g=yarn_g, liquor_ratio=ratio),
        yarn_scale=scale_of(replace(tools, fibre_g=yarn_g).yarn_scale),
    )
