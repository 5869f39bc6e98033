"""What the palette foretold of a bath, kept before it is dyed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from shadewright.core.mixing import Mix, Palette, Told, told_mixes
from shadewright.core.mixing.spreads import as_lots_differ, spread_of
from shadewright.core.mixing.swatches import DOSE_ERROR, MOST_DEPTH_PERCENT
from shadewright.core.recipes import Wishes
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.ranking import dosing_covariance
from shadewright.core.uncertainty import Value
from shadewright.records.models import Bath, Prediction, SwatchPlan
from shadewright.workflows.shades.evidence import dose_error_of
from shadewright.workflows.shades.palettes import PaletteNow, palette_now

Depths = Sequence[tuple[str, Value]]
"""Dyes by name with their depths, as sure as is known. [%]"""


@dataclass(frozen=True, kw_only=True)
class Foresight:
    """What is foretold of a mix that is planned, how its doses are measured included.

    ``dose_error`` is the relative standard error of all its doses as one number; each
    dye counts by its own.
    """

    fit_id: int
    told: Told
    dose_error: float


def foresight(
    *, base_name: str, depths: Depths, holds: PaletteNow | None
) -> Foresight | None:
    """Return what is foretold; None where the base or a dye is not in the palette."""
    doses = _summed(depths)
    if holds is None or not is_known(base_name, doses, holds):
        return None
    dose_error = dose_error_of([depth for _dye, depth in depths]) or DOSE_ERROR
    mix = Mix(base=base_name, doses=tuple(doses.items()))
    told = _as_dosed(mix, holds.palette, _errors(depths))
    return Foresight(fit_id=holds.fit_id, told=told, dose_error=dose_error)


def keep_prediction(*, bath: Bath, depths: Depths, **_signal: object) -> None:
    """Keep what is foretold of a bath that was just planned, if anything is.

    The receiver of ``bath_planned``. A set of swatches says which stocks to have first,
    so that its doses are measured as is usual, whatever stands on the shelf today.
    """
    if SwatchPlan.objects.filter(recipe=bath.version.recipe_id).exists():
        depths = [(dye, replace(depth, terms=())) for dye, depth in depths]
    found = foresight(base_name=bath.base.name, depths=depths, holds=palette_now())
    if found is None:
        return
    told = found.told
    light, a, b = map(float, told.lab[0])
    Prediction.objects.create(
        bath=bath,
        fit_id=found.fit_id,
        doses=[list(dose) for dose in _summed(depths).items()],
        colour_l=light,
        colour_a=a,
        colour_b=b,
        covariance=[float(part) for part in told.covariance[0].ravel()],
        expected=float(told.expected[0]),
        within_90=float(told.de_90[0]),
        evidence=str(told.evidence[0]),
        dose_error=found.dose_error,
        made_at=bath.created_at,
    )


def _as_dosed(mix: Mix, palette: Palette, errors: Mapping[str, float]) -> Told:
    """Return what is foretold of a mix, each dose off by as much as its own error."""
    dyes = tuple(errors)
    exact = told_mixes([mix], palette=replace(palette, repeats=0.0))
    dosing = dosing_covariance(
        [mix.doses],
        curves_of(palette, mix.base, dyes),
        dyes,
        Wishes(dose_errors=errors),
    )
    lot = exact.lot + dosing
    covariance = as_lots_differ(exact.covariance + dosing, lot, repeats=palette.repeats)
    spread = spread_of(exact.lab, covariance)
    return replace(
        exact,
        covariance=covariance,
        lot=lot,
        expected=spread.expected,
        de_90=spread.de_90,
    )


def _errors(depths: Depths) -> dict[str, float]:
    """Return the relative error of each dye’s dose; never less than usual."""
    found = dict.fromkeys(_summed(depths), DOSE_ERROR)
    for dye, depth in depths:
        if depth.value > 0.0:
            found[dye] = max(found[dye], depth.u_rel)
    return found


def _summed(depths: Depths) -> dict[str, float]:
    doses: dict[str, float] = {}
    for dye, depth in depths:
        if depth.value > 0.0:
            doses[dye] = doses.get(dye, 0.0) + depth.value
    return doses


def is_known(base_name: str, doses: Mapping[str, float], holds: PaletteNow) -> bool:
    """Whether a palette can foretell a mix: it has its base and every dye."""
    names = holds.palette.names
    return (
        bool(doses)
        and base_name in names.bases
        and all(dye in names.dyes for dye in doses)
        and max(doses.values()) <= MOST_DEPTH_PERCENT
    )
