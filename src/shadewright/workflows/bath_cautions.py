"""What to mind before a recipe is dyed: its dyes together, its salt, its base."""

from collections.abc import Iterable, Iterator

from shadewright.core.baths import (
    WaterBalance,
    class_caution,
    depth_caution,
    depth_on_dyeable_percent,
    excess_caution,
    salt_caution,
    total_depth_percent,
)
from shadewright.core.baths.sums import POWDER_CAUTION
from shadewright.core.quantities import amount_text
from shadewright.core.tables.dye_classes import DyeClass
from shadewright.records import recipe_reads
from shadewright.records.models import Base, Dye, RecipeDose, RecipeVersion
from shadewright.records.models.catalogue import AuxiliaryKind

METAL = (
    "{} holds a metal: powder and unused stock are collected and handed in. The spent "
    "bath goes only where your sewer authority allows, never to a storm drain or a "
    "septic tank, and no bleach on residues. Follow the dye’s safety data sheet and "
    "your local rules."
)
NO_ACID = (
    "No acid stands in this recipe: without one most of an acid dye stays in the bath. "
    "Write it into a new version."
)
_CLASSES = {each.value: each for each in DyeClass}


def recipe_cautions(version_id: int) -> tuple[str, ...]:
    """Return what to mind about a version, whatever it is dyed on."""
    return cautions_of(recipe_reads.version_row(version_id))


def cautions_of(version: RecipeVersion) -> tuple[str, ...]:
    """Return the same of a version that is at hand."""
    return tuple(_of_recipe(version))


def base_notes(base: Base, version: RecipeVersion) -> tuple[str, ...]:
    """Return what a base does to a recipe: fibre that stays bare, no trial yet."""
    return tuple(_of_base(base, version))


def bath_cautions(*, water: WaterBalance, is_dry_dye: bool) -> tuple[str, ...]:
    """Return what to mind about the amounts of one bath."""
    said = (POWDER_CAUTION if is_dry_dye else None, excess_caution(water=water))
    return tuple(each for each in said if each)


def _of_recipe(version: RecipeVersion) -> Iterator[str]:
    doses = _doses(version)
    known = [dose.dye for dose in doses if dose.dye is not None]
    classes = [_CLASSES.get(dye.dye_class) for dye in known]
    depths = tuple(dose.depth_percent or 0.0 for dose in doses)
    said = [class_caution(dye_classes=classes)]
    if _has(version, AuxiliaryKind.SALT):
        said += [salt_caution(dye_class=each) for each in dict.fromkeys(classes)]
    is_known = all(dose.dye and dose.depth_percent for dose in doses)
    if is_known and not _has(version, AuxiliaryKind.ACID, AuxiliaryKind.ACID_SALT):
        said.append(NO_ACID)
    said.append(depth_caution(total_depth_percent=sum_of(depths)))
    said.append(metal_caution(known))
    yield from (each for each in said if each)


def sum_of(depths: tuple[float, ...]) -> float:
    """Return the depth of all dyes together."""
    return total_depth_percent(depths_percent=depths)


def metal_caution(dyes: Iterable[Dye]) -> str:
    """Return where the waste of dyes that hold a metal goes; empty if none does."""
    metals = [dye.name for dye in dyes if dye.is_metal_complex]
    return METAL.format(" and ".join(metals)) if metals else ""


def _of_base(base: Base, version: RecipeVersion) -> Iterator[str]:
    share = base.undyeable_percent
    if share:
        depth = sum_of(tuple(dose.depth_percent or 0.0 for dose in _doses(version)))
        yield _bare_words(base.name, share, depth)
    tried = [
        number
        for _, name, number in recipe_reads.tries(version.recipe_id)
        if name == base.name
    ]
    if version.number not in tried:
        yield _untried_words(base.name, version.number, tried)


def _bare_words(name: str, share: float, depth: float) -> str:
    bare = f"{amount_text(share, '%')} of {name} takes no acid dye and stays bare."
    if share > 99:
        return bare
    on_rest = depth_on_dyeable_percent(
        depth_percent=depth, undyeable_share_percent=share
    )
    return (
        f"{bare} The doses are reckoned on the whole yarn, so the rest is dyed to "
        f"{amount_text(on_rest, '%')}, and the yarn still looks paler than one "
        "without such fibre."
    )


def _untried_words(name: str, number: int, tried: list[int]) -> str:
    if not tried:
        return f"Not tried on {name} yet: dye a swatch first, bases differ."
    known = ", ".join(str(each) for each in sorted(tried))
    return f"On {name} only version {known} was tried, not version {number}."


def _doses(version: RecipeVersion) -> list[RecipeDose]:
    return [dose for part in version.parts.all() for dose in part.doses.all()]


def _has(version: RecipeVersion, *kinds: AuxiliaryKind) -> bool:
    return any(row.auxiliary.kind in kinds for row in version.auxiliaries.all())
