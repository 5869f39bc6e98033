"""A recipe that was carried to another base, kept as its next version."""

from dataclasses import replace

from django.db import transaction

from shadewright.core.recipes.matching import USUAL_TOLERANCE
from shadewright.records.models import FoundFor
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.recipe_shapes import DoseLine, Version
from shadewright.workflows.recipes import write_version
from shadewright.workflows.shades.carrying import CarriedNow, CarryNow, carried_now
from shadewright.workflows.shades.palettes import PaletteNow
from shadewright.workflows.stamps import Stamp

_MOST_NAME = 60


@transaction.atomic
def keep_carried(
    now: PaletteNow, *, to_id: int, shown: CarryNow, stamp: Stamp
) -> Version:
    """Write a recipe for another base down as its next version, and what it is for."""
    found = carried_now(now, shown, to_id=to_id)
    lines = tuple(
        DoseLine(dye_id=dye.id, dye_name=dye.name, depth_percent=dye.depth_percent)
        for dye in found.doses
    )
    base = found.to.base.words
    text = replace(
        shown.version.text,
        doses=lines,
        why_changed=f"carried to {base} from {shown.made_for.base.words}",
    )
    made = write_version(parent_id=shown.version.id, text=text, stamp=stamp)
    _keep_what_for(now, shown, found, made)
    return made


def _keep_what_for(
    now: PaletteNow, shown: CarryNow, found: CarriedNow, made: Version
) -> None:
    """Keep the colour that a carried version is for: the one foretold where it was."""
    origin = shown.made_for.told
    if origin is None or FoundFor.objects.filter(version_id=made.id).exists():
        return
    where = f"version {shown.version.number} on {shown.made_for.base.words}, foretold"
    FoundFor.objects.create(
        version_id=made.id,
        fit_id=now.fit_id,
        name=where[:_MOST_NAME],
        base_name=found.to.base.words,
        read_by=ReadBy.SPECTRUM,
        labs={str(light): list(lab) for light, lab in origin.labs.items()},
        spectrum=list(origin.reflectance),
        foretold=list(found.told.lab),
        difference=found.after,
        expected=found.expected,
        within_90=found.within_90,
        tolerance=USUAL_TOLERANCE,
        chance=found.chance,
    )
