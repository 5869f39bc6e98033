"""What to mind before a set of swatches is dyed: powder, acid, heat, metal."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from shadewright.core.baths.programme import HOT_BATH
from shadewright.core.baths.rounds import ACID_CARE
from shadewright.core.baths.sums import POWDER_CAUTION
from shadewright.records.models import Auxiliary, Dye
from shadewright.workflows.bath_cautions import metal_caution
from shadewright.workflows.recipe_shapes import RecipeText
from shadewright.workflows.rounds import ACIDS


@dataclass(frozen=True, kw_only=True)
class SetCaution:
    """A danger in a word, and what to do about it."""

    title: str
    text: str


def set_cautions(
    *, dyes: Collection[str], text: RecipeText, is_powder_weighed: bool
) -> tuple[SetCaution, ...]:
    """Return what to mind, in the order in which the hands come to it."""
    return tuple(_cautions(dyes, text, is_powder_weighed=is_powder_weighed))


def no_acid_caution(text: RecipeText) -> tuple[SetCaution, ...]:
    """Warn that a set has no acid: what is not soured stays in the bath."""
    if _is_soured(text):
        return ()
    why = "No acid goes in. Without one most of an acid dye stays in the bath."
    return (SetCaution(title="No acid", text=why),)


def _cautions(
    dyes: Collection[str], text: RecipeText, *, is_powder_weighed: bool
) -> Iterator[SetCaution]:
    if is_powder_weighed:
        yield SetCaution(title="Powder", text=POWDER_CAUTION)
    if _is_soured(text):
        yield SetCaution(title="Acid", text=ACID_CARE)
    yield SetCaution(title="Heat", text=HOT_BATH)
    metal = metal_caution(Dye.objects.filter(name__in=dyes).order_by("name"))
    if metal:
        yield SetCaution(title="Metal", text=metal)


def _is_soured(text: RecipeText) -> bool:
    helpers = [each.auxiliary_id for each in text.helpers]
    return Auxiliary.objects.filter(pk__in=helpers, kind__in=ACIDS).exists()
