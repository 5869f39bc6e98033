"""Swatches that stand in the store: six invented dyes, each at one depth."""

from uuid import uuid4

from shadewright.records.models import Base, ColourReading, Dye, Swatch, SwatchDose
from shadewright.records.models.swatches import ReadBy

SINGLES = {
    "Gorse": (1.0, (76.0, 6.0, 62.0)),
    "Rosehip": (1.0, (48.0, 52.0, 28.0)),
    "Foxglove": (1.0, (45.0, 50.0, -6.0)),
    "Sloe": (1.0, (38.0, 4.0, -32.0)),
    "Kelp": (1.0, (50.0, -24.0, 12.0)),
    "Peat": (1.0, (32.0, 6.0, 12.0)),
}


def kept_swatch(
    base: Base,
    doses: dict[str, float],
    lab: tuple[float, float, float],
    *,
    read_by: ReadBy = ReadBy.METER,
    is_wet: bool = False,
) -> Swatch:
    """Keep a swatch that no bath of the studio tells of, with one reading."""
    label = " + ".join(f"{dye} {depth:g} %" for dye, depth in doses.items()) or "bare"
    row = Swatch.objects.create(deed=uuid4(), label=label, base=base)
    for position, (dye, depth) in enumerate(doses.items(), start=1):
        SwatchDose.objects.create(
            swatch=row,
            position=position,
            dye=Dye.objects.get_or_create(name=dye)[0],
            depth_percent=depth,
        )
    ColourReading.objects.create(
        deed=uuid4(), swatch=row, read_by=read_by, labs={"D65": lab}, is_wet=is_wet
    )
    return row


def kept_singles(base: Base, *, read_by: ReadBy = ReadBy.METER) -> list[Swatch]:
    """Keep bare yarn and one swatch of each dye."""
    bare = kept_swatch(base, {}, (91.0, -0.5, 9.0), read_by=read_by)
    rows = [
        kept_swatch(base, {dye: depth}, lab, read_by=read_by)
        for dye, (depth, lab) in SINGLES.items()
    ]
    return [bare, *rows]
