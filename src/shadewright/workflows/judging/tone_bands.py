"""How uneven a colourway is wanted: a tonal yarn is not held against nought."""

from django.db import transaction

from shadewright.core.quality import Band
from shadewright.core.quantities import require_between
from shadewright.errors import OutOfRangeError
from shadewright.records import judging_reads
from shadewright.records.models import ToneBand

__all__ = ["Band", "keep_tone_band", "tone_band"]

_MOST = 50.0


def tone_band(recipe_id: int) -> Band | None:
    """Return the band that a colourway is scored against; None where it is level."""
    row = judging_reads.tone_band_row(recipe_id)
    return None if row is None else Band(least=row.least_de, most=row.most_de)


@transaction.atomic
def keep_tone_band(recipe_id: int, band: Band | None) -> None:
    """Say how uneven a colourway is wanted; None says that it is to be level."""
    if band is None:
        ToneBand.objects.filter(recipe_id=recipe_id).delete()
        return
    for value, name, argument in (
        (band.least, "The least unevenness", "least"),
        (band.most, "The most unevenness", "most"),
    ):
        require_between(
            value, least=0.0, most=_MOST, unit="", name=name, argument=argument
        )
    if band.most <= band.least:
        raise OutOfRangeError(
            name="The most unevenness",
            given=f"{band.most:g}",
            allowed=f"above the least, {band.least:g}",
            argument="most",
        )
    ToneBand.objects.update_or_create(
        recipe_id=recipe_id,
        defaults={"least_de": band.least, "most_de": band.most},
    )
