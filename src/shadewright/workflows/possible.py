"""What is possible instead, where a stock cannot be made as it was wanted."""

from dataclasses import dataclass
from math import floor, log10

from shadewright.core.solutions.rescue import make_up_to_ml
from shadewright.core.solutions.strength import true_strength_percent
from shadewright.errors import StudioError
from shadewright.records import reads
from shadewright.records.models import Dye, PowderJar
from shadewright.records.shapes import jar_left_g
from shadewright.workflows.stocks import plan_stock


@dataclass(frozen=True, kw_only=True)
class PossibleStock:
    """A weaker or a smaller stock than was wanted, that can be made."""

    volume_ml: float
    strength_percent: float


def possible_stock(
    *, dye_id: int, jar_id: int | None, volume_ml: float, strength_percent: float
) -> PossibleStock | None:
    """Return the nearest stock that can be made, if the one wanted cannot."""
    dye = reads.dye_row(dye_id)
    jar = None if jar_id is None else reads.jar_row(jar_id)
    try:
        strength = min(strength_percent, _strongest_percent(dye, jar))
        volume = min(volume_ml, _largest_ml(jar, strength))
        plan_stock(
            dye_id=dye_id, jar_id=jar_id, volume_ml=volume, strength_percent=strength
        )
    except StudioError:
        return None
    if (volume, strength) == (volume_ml, strength_percent):
        return None
    return PossibleStock(volume_ml=volume, strength_percent=strength)


def _strongest_percent(dye: Dye, jar: PowderJar | None) -> float:
    """Return the strength at which all that dissolves is dissolved."""
    if dye.solubility_g_per_l is None:
        return float("inf")
    strength = true_strength_percent(
        powder_g=dye.solubility_g_per_l,
        volume_ml=1000.0,
        powder_strength_percent=_factor(jar),
    )
    return _rounded_down(strength, digits=2)


def _largest_ml(jar: PowderJar | None, strength_percent: float) -> float:
    """Return the volume that all the powder in the jar is good for."""
    if jar is None:
        return float("inf")
    volume = make_up_to_ml(
        powder_g=jar_left_g(reads.jar_ledger_rows(jar)),
        strength_percent=strength_percent,
        powder_strength_percent=_factor(jar),
    )
    return _rounded_down(volume, digits=2)


def _factor(jar: PowderJar | None) -> float:
    return 100.0 if jar is None else jar.strength_percent


def _rounded_down(value: float, *, digits: int) -> float:
    """Return the value in so many digits and never above it."""
    step = 10.0 ** (floor(log10(value)) + 1 - digits)
    return round(floor(value / step + 1e-9) * step, 9)
