"""The burners of the room, to look at before it is left."""

from shadewright.records import day_reads


def source_names() -> tuple[tuple[str, float], ...]:
    """Return each burner in use by its name, with its power in kW."""
    return tuple((row.name, row.power_kw) for row in day_reads.source_rows())
