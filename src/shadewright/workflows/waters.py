"""The waters that baths are filled with, and the one that is usual."""

from dataclasses import dataclass

from shadewright.core.quantities import amount_text
from shadewright.errors import NotFoundError
from shadewright.records import reads
from shadewright.records.models import Studio, Water


@dataclass(frozen=True, kw_only=True)
class ShelfWater:
    """A water in use; its alkalinity is None where nobody has looked it up."""

    id: int
    name: str
    alkalinity_mg_per_l: float | None

    @property
    def words(self) -> str:
        """Its name, and how much acid it takes up."""
        if self.alkalinity_mg_per_l is None:
            return f"{self.name}, alkalinity not known"
        return (
            f"{self.name}, alkalinity {amount_text(self.alkalinity_mg_per_l, 'mg/l')}"
        )


def waters() -> tuple[ShelfWater, ...]:
    """Return the waters in use, by name."""
    return tuple(_shaped(row) for row in Water.objects.filter(is_retired=False))


def water(water_id: int) -> ShelfWater:
    """Return one water, in use or retired."""
    row = Water.objects.filter(pk=water_id).first()
    if row is None:
        raise NotFoundError(kind="water", key=str(water_id), argument="water")
    return _shaped(row)


def usual_water() -> ShelfWater | None:
    """Return the water that a bath is filled with where nothing else is said."""
    studio = reads.studio_row()
    chosen = None if studio is None else studio.usual_water
    if chosen is not None and not chosen.is_retired:
        return _shaped(chosen)
    known = waters()
    return known[0] if len(known) == 1 else None


def make_usual(water_id: int) -> ShelfWater:
    """Let baths be filled with this water where nothing else is said."""
    chosen = water(water_id)
    Studio.objects.update(usual_water_id=chosen.id)
    return chosen


def _shaped(row: Water) -> ShelfWater:
    return ShelfWater(
        id=row.pk, name=row.name, alkalinity_mg_per_l=row.alkalinity_mg_per_l
    )
