"""The dyes on the shelf, for whoever has to choose one."""

from dataclasses import dataclass

from shadewright.errors import MissingError
from shadewright.records import reads
from shadewright.records.models import Dye
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.stamps import Stamp


@dataclass(frozen=True, kw_only=True)
class ShelfDye:
    """A dye in use: what must be known before it is opened."""

    id: int
    name: str
    chart_hex: str
    is_mix_fresh: bool
    is_metal_complex: bool
    has_data_sheet: bool


def dyes() -> tuple[ShelfDye, ...]:
    """Return the dyes in use, by name."""
    return tuple(_shaped(row) for row in reads.dye_rows())


def named_dye(name: str) -> ShelfDye | None:
    """Return the dye of that name, in use or retired; capitals do not matter."""
    row = Dye.objects.filter(name__iexact=_tidy(name)).first()
    return None if row is None else _shaped(row)


def add_dye(name: str, stamp: Stamp) -> ShelfDye:
    """Add a dye by its name alone; the rest can be filled in later."""
    wanted = _tidy(name)
    if not wanted:
        raise MissingError(
            name="The dye’s name", advice="Write the name on its jar.", argument="dye"
        )
    row = Dye(name=wanted)
    keep_item(row, stamp)
    return _shaped(row)


def _tidy(name: str) -> str:
    return " ".join(name.split())


def _shaped(row: Dye) -> ShelfDye:
    return ShelfDye(
        id=row.pk,
        name=row.name,
        chart_hex=row.chart_hex,
        is_mix_fresh=row.is_mix_fresh,
        is_metal_complex=row.is_metal_complex,
        has_data_sheet=bool(row.data_sheet_link or row.data_sheet_file),
    )
