"""Doses as the bottles and tools at hand can measure them."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import floor, log10

from shadewright.core.baths import chosen_bottles, dye_mass_g
from shadewright.core.mixing import Palette
from shadewright.core.recipes import rounded, step_percent, target_of_spectrum
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.dosing import share_g
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.shades.find_wishes import USUAL_RATIO
from shadewright.workflows.shades.mixing_page import DyeInMix, ToldMix
from shadewright.workflows.shelf import shelf
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.tools_at_hand import AtHand, at_hand

READ_OF_SIZE = 0.01
"""What can be read off ware, as a share of its size (common practice)."""
TOO_MUCH_ROUNDED = 0.1
"""Rounding that is said aloud, as a share of the dose (our choice). [1]"""
DRY = 100.0
"""Dye as powder, as a strength. [%]"""


@dataclass(frozen=True, kw_only=True)
class Measured:
    """A dose that can be measured: of a bottle in ml or g, or dry where none holds it.

    ``step`` is what the tool shows, in its own unit; 0 where no tool is known.
    ``wanted_percent`` is the depth before it was rounded.
    """

    dye_id: int
    dye_name: str
    depth_percent: float
    wanted_percent: float
    amount: float
    unit: str
    code: str
    strength_percent: float
    tool: str
    step: float

    @property
    def is_too_small(self) -> bool:
        """Whether rounding it took or gave more than a tenth."""
        away = abs(self.depth_percent - self.wanted_percent)
        return away > TOO_MUCH_ROUNDED * self.wanted_percent


@dataclass(frozen=True, kw_only=True)
class Bench:
    """The bottles and tools at hand for so much yarn."""

    offer: Offer
    tools: AtHand
    yarn_g: float


def bench_now(yarn_g: float) -> Bench:
    """Return what stands ready, less what planned baths will take."""
    offer = Offer(bottles=shelf(), taken_ml=promised_ml())
    return Bench(offer=offer, tools=at_hand(fibre_g=yarn_g), yarn_g=yarn_g)


def measured_mix(
    palette: Palette,
    *,
    base: str,
    dyes: tuple[DyeInMix, ...],
    told: ToldMix,
    bench: Bench,
) -> tuple[Measured, ...]:
    """Return doses in steps of the tools, nearest together to the colour foretold."""
    ways = {dye.name: _way(dye, bench) for dye in dyes if dye.depth_percent}
    steps = {name: way.step_percent for name, way in ways.items() if way.step}
    doses = tuple((dye.name, dye.depth_percent) for dye in dyes if dye.name in ways)
    if steps:
        aim = target_of_spectrum(told.reflectance)
        found = rounded(
            palette, base=base, doses=doses, steps_percent=steps, target=aim
        )
        doses = found.doses
    return _in_amounts(dict(doses), dyes, ways, yarn_g=bench.yarn_g)


@dataclass(frozen=True, kw_only=True)
class _Way:
    code: str
    strength_percent: float
    grams_a_ml: float
    unit: str
    tool: str
    step: float
    step_percent: float


def _way(dye: DyeInMix, bench: Bench) -> _Way:
    tools, yarn_g = bench.tools, bench.yarn_g
    dye_g = dye_mass_g(fibre_mass_g=yarn_g, depth_percent=dye.depth_percent)
    chosen = chosen_bottles(
        dye_g=dye_g,
        liquor_ml=USUAL_RATIO * yarn_g,
        bottles=bench.offer.candidates(dye.id),
    )
    whole = None if chosen.missing_g or len(chosen.shares) != 1 else chosen.shares[0]
    if whole is None:
        return _worded("", DRY, 1.0, tools.dry_scale, yarn_g, is_by_weight=True)
    tool = tools.dose_tool(0, whole.volume_ml)
    density = share_g(whole) / whole.volume_ml if tools.is_by_weight else 1.0
    return _worded(
        whole.code,
        whole.strength_percent,
        density,
        tool,
        yarn_g,
        is_by_weight=tools.is_by_weight,
    )


def _worded(
    code: str,
    strength_percent: float,
    grams_a_ml: float,
    tool: ToolNow | None,
    yarn_g: float,
    *,
    is_by_weight: bool,
) -> _Way:
    step = 0.0 if tool is None else step_of(tool)
    return _Way(
        code=code,
        strength_percent=strength_percent,
        grams_a_ml=grams_a_ml,
        unit="g" if is_by_weight else "ml",
        tool="" if tool is None else tool.name,
        step=step,
        step_percent=step_percent(
            step_ml=step / grams_a_ml,
            strength_percent=strength_percent,
            fibre_g=yarn_g,
        ),
    )


def step_of(tool: ToolNow) -> float:
    """Return the step that a tool shows, in its own unit; ware is read to a hundredth.

    A hundredth of the size, down to 1, 2 or 5 of its decade.
    """
    if tool.balance is not None:
        return tool.balance.step_g
    if tool.ware is None:
        return 0.0
    fine = READ_OF_SIZE * tool.ware.size_ml
    decade = 10.0 ** floor(log10(fine))
    return max(n for n in (1.0, 2.0, 5.0) if n * decade <= fine * (1 + 1e-9)) * decade


def _in_amounts(
    depths: Mapping[str, float],
    dyes: tuple[DyeInMix, ...],
    ways: Mapping[str, _Way],
    *,
    yarn_g: float,
) -> tuple[Measured, ...]:
    found = []
    for dye in dyes:
        way = ways.get(dye.name)
        if way is None:
            continue
        depth = depths.get(dye.name, 0.0)
        volume = depth * yarn_g / way.strength_percent
        found.append(
            Measured(
                dye_id=dye.id,
                dye_name=dye.name,
                depth_percent=depth,
                wanted_percent=dye.depth_percent,
                amount=volume * way.grams_a_ml,
                unit=way.unit,
                code=way.code,
                strength_percent=way.strength_percent,
                tool=way.tool,
                step=way.step,
            )
        )
    return tuple(found)
