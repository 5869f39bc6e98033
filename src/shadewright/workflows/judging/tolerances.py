"""How far a lot may be off before something is done; the studio's own to set."""

from dataclasses import dataclass

from django.db import transaction

from shadewright.core.quality import Formula, Tolerances
from shadewright.core.quantities import require_between
from shadewright.errors import NotFoundError, OutOfRangeError
from shadewright.records import judging_reads, reads
from shadewright.records.models import Tolerances as TolerancesRow

__all__ = ["Formula", "StudioTolerances", "keep_tolerances", "tolerances_now"]

_MOST = 50.0
_USUAL = Tolerances()


@dataclass(frozen=True, kw_only=True)
class StudioTolerances:
    """The distances of the verdicts, and the formula that they are counted by."""

    formula: Formula = Formula.CIEDE2000
    steps: Tolerances = _USUAL

    @property
    def words(self) -> str:
        """The three distances, as a check keeps them."""
        steps = self.steps
        return f"tolerances {steps.match:g}, {steps.alternate:g}, {steps.new_lot:g}"


def tolerances_now() -> StudioTolerances:
    """Return what the studio said, or what is usual."""
    row = judging_reads.tolerances_row()
    if row is None:
        return StudioTolerances()
    return StudioTolerances(
        formula=Formula(row.formula),
        steps=Tolerances(
            match=row.match_de, alternate=row.alternate_de, new_lot=row.mend_de
        ),
    )


@transaction.atomic
def keep_tolerances(said: StudioTolerances) -> None:
    """Keep other distances; verdicts that were given stay as they are."""
    steps = said.steps
    _check(steps)
    studio = reads.studio_row()
    if studio is None:
        raise NotFoundError(kind="studio", key="", advice="Found it first.")
    TolerancesRow.objects.update_or_create(
        studio=studio,
        defaults={
            "formula": said.formula,
            "match_de": steps.match,
            "alternate_de": steps.alternate,
            "mend_de": steps.new_lot,
        },
    )


def _check(steps: Tolerances) -> None:
    least = 0.0
    for value, name, argument in (
        (steps.match, "What matches", "match"),
        (steps.alternate, "What is alternated", "alternate"),
        (steps.new_lot, "What is a lot of its own", "new_lot"),
    ):
        require_between(
            value, least=0.0, most=_MOST, unit="", name=name, argument=argument
        )
        if value <= least:
            raise OutOfRangeError(
                name=name,
                given=f"{value:g}",
                allowed=f"above {least:g}, the distance before it",
                argument=argument,
            )
        least = value
