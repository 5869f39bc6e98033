"""The acid that a recipe may start from, out of those on the shelf."""

from dataclasses import dataclass

from shadewright.core.baths.acidity import UsualAcid, usual_acid
from shadewright.core.tables.acids import ACETIC, CITRIC, CITRIC_MONO, VINEGAR5, Acid
from shadewright.records.models import Auxiliary, Dye
from shadewright.workflows.bath_cautions import sum_of
from shadewright.workflows.bath_ph import habits_of
from shadewright.workflows.known_acids import acid_of

_ALIKE = {VINEGAR5.key: (VINEGAR5, ACETIC), CITRIC.key: (CITRIC, CITRIC_MONO)}


@dataclass(frozen=True, kw_only=True)
class ToBegin:
    """An acid to begin with: from the shelf, or why there is none to name."""

    auxiliary_id: int | None
    name: str
    percent_owf: float | None
    words: str


def acid_to_begin(depths_percent: dict[int, float]) -> ToBegin:
    """Return the usual acid for some dyes, each with its depth in %."""
    habits = habits_of(Dye.objects.filter(pk__in=depths_percent))
    if not habits:
        return _none("Choose a dye whose class is written down, and its depth, first.")
    if len(habits) > 1:
        said = " and ".join(habits)
        return _none(f"The dyes are {said}: each wants its own acid. Choose yourself.")
    depth = sum_of(tuple(depths_percent.values()))
    usual = usual_acid(habit=habits[0], total_depth_percent=depth)
    row = _on_the_shelf(usual.acid)
    return _wanting(usual) if row is None else _from(row, usual)


def _from(row: Auxiliary, usual: UsualAcid) -> ToBegin:
    acid = acid_of(row) or usual.acid
    percent = usual.percent_owf
    if acid is CITRIC_MONO:  # its crystals hold water
        percent *= CITRIC_MONO.molar_mass_g_per_mol / CITRIC.molar_mass_g_per_mol
    return ToBegin(
        auxiliary_id=row.pk,
        name=row.name,
        percent_owf=round(percent, 2),
        words=f"Source: {usual.source}. A place to start: change it as you like.",
    )


def _wanting(usual: UsualAcid) -> ToBegin:
    return _none(
        f"The usual is {usual.percent_owf:g} % of {usual.acid.name} "
        f"({usual.source}); none of your acids is called so."
    )


def _none(words: str) -> ToBegin:
    return ToBegin(auxiliary_id=None, name="", percent_owf=None, words=words)


def _on_the_shelf(acid: Acid) -> Auxiliary | None:
    rows = [row for row in Auxiliary.objects.filter(is_retired=False) if _is_mild(row)]
    fit = _ALIKE.get(acid.key, (acid,))
    return next((row for each in fit for row in rows if acid_of(row) is each), None)


def _is_mild(row: Auxiliary) -> bool:
    """Whether an acid may be offered: none that burns or of unknown strength."""
    acid, strength = acid_of(row), row.strength_g_per_100_ml
    burns_from = None if acid is None else acid.corrosive_from_g_per_100ml
    return burns_from is None or (strength is not None and strength < burns_from)
