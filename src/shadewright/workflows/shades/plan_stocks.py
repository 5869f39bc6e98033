"""The stocks that a set of swatches is drawn from: bottles at hand, and new ones."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.baths import Candidate, weighed_mass_g
from shadewright.core.baths.doses import LEAST_DOSE_ML, LEAST_SCALE_STEPS
from shadewright.core.baths.new_stocks import Bench, DrawnFrom, NewStock
from shadewright.core.baths.small_doses import least_weighed_ml, small_doses
from shadewright.core.quantities import amount_text
from shadewright.workflows.levers_at_hand import soluble_strengths
from shadewright.workflows.tools_at_hand import AtHand

_A_DOSE_ML = 10.0
_FIRST_PLACE = 1
_USUAL_STEP_G = 0.01  # common practice: what powder is weighed on, if nobody says


@dataclass(frozen=True, kw_only=True)
class WantedDose:
    """A dose that is wanted: of which swatch, of which dye, how much."""

    swatch: int
    dye_id: int
    dye_name: str
    depth_percent: float
    dye_g: float


@dataclass(frozen=True, kw_only=True)
class PlannedDraw:
    """A dose with the stock that it is drawn from; ``code`` is empty for a new one."""

    dye_id: int
    dye_name: str
    depth_percent: float
    dye_g: float
    code: str
    strength_percent: float
    volume_ml: float
    mass_g: float
    is_suiting: bool

    @property
    def stock(self) -> str:
        """What it is drawn from, in words: ``G4R 1 %`` or ``the new 0.1 %``."""
        return f"{self.code or 'the new'} {amount_text(self.strength_percent, '%')}"


@dataclass(frozen=True, kw_only=True)
class StockFirst:
    """A stock of a dye to be had before the set is dyed."""

    dye_id: int
    dye_name: str
    new: NewStock

    @property
    def words(self) -> str:
        """How it is had: ``25 ml of G4R 1 % made up to 250 ml gives 0.1 %``."""
        new = self.new
        gives = (
            f"made up to {amount_text(new.volume_ml, 'ml')} "
            f"gives {amount_text(new.strength_percent, '%')}"
        )
        if new.from_percent is None:
            return f"{amount_text(new.powder_g, 'g')} of powder {gives}"
        taken = f"{amount_text(new.taken_ml, 'ml')} of"
        whose = new.from_code or "the new"
        return f"{taken} {whose} {amount_text(new.from_percent, '%')} {gives}"


@dataclass(frozen=True, kw_only=True)
class Lined:
    """Every dose with its stock, in the order asked for, and what is had first."""

    draws: tuple[PlannedDraw, ...]
    first: tuple[StockFirst, ...]


def lined_up(
    wanted: Sequence[WantedDose],
    *,
    liquor_ml: float,
    bottles: Mapping[int, Sequence[Candidate]],
    tools: AtHand,
) -> Lined:
    """Return the stocks of a set, dye by dye, the first dye of the set first."""
    draws: dict[tuple[int, int], PlannedDraw] = {}
    first: list[StockFirst] = []
    names = {each.dye_id: each.dye_name for each in wanted}
    for dye_id, dye_name in names.items():
        own = [each for each in wanted if each.dye_id == dye_id]
        found = small_doses(
            dyes_g=[each.dye_g for each in own],
            liquor_ml=liquor_ml,
            bottles=bottles.get(dye_id, ()),
            bench=_bench(dye_id, tools),
        )
        for each, drawn in zip(own, found.drawn, strict=True):
            draws[each.swatch, dye_id] = _planned(each, drawn)
        first += [
            StockFirst(dye_id=dye_id, dye_name=dye_name, new=new) for new in found.first
        ]
    ordered = (draws[each.swatch, each.dye_id] for each in wanted)
    return Lined(draws=tuple(ordered), first=tuple(first))


def _planned(each: WantedDose, drawn: DrawnFrom) -> PlannedDraw:
    return PlannedDraw(
        dye_id=each.dye_id,
        dye_name=each.dye_name,
        depth_percent=each.depth_percent,
        dye_g=each.dye_g,
        code=drawn.code,
        strength_percent=drawn.strength_percent,
        volume_ml=drawn.volume_ml,
        mass_g=weighed_mass_g(
            volume_ml=drawn.volume_ml, strength_percent=drawn.strength_percent
        ),
        is_suiting=drawn.is_suiting,
    )


def _bench(dye_id: int, tools: AtHand) -> Bench:
    scale = tools.dry_scale
    step_g = _USUAL_STEP_G if scale is None else scale.step_g or _USUAL_STEP_G
    return Bench(
        least_ml=least_dose_ml(tools),
        least_powder_g=LEAST_SCALE_STEPS * step_g,
        strengths_percent=soluble_strengths(dye_id),
    )


def least_dose_ml(tools: AtHand) -> float:
    """Return the least dose that this studio can measure: by volume, or by weight."""
    scale = tools.dose_tool(_FIRST_PLACE, _A_DOSE_ML) if tools.is_by_weight else None
    if scale is None or not scale.step_g:
        return LEAST_DOSE_ML
    return least_weighed_ml(step_g=scale.step_g)
