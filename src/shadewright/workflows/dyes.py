"""The dyes on the shelf, for whoever has to choose one."""

from dataclasses import dataclass

from shadewright.records import reads


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
    return tuple(
        ShelfDye(
            id=row.pk,
            name=row.name,
            chart_hex=row.chart_hex,
            is_mix_fresh=row.is_mix_fresh,
            is_metal_complex=row.is_metal_complex,
            has_data_sheet=bool(row.data_sheet_link or row.data_sheet_file),
        )
        for row in reads.dye_rows()
    )
