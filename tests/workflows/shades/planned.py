"""A studio in which sets of swatches can be planned."""

from shadewright.records.models import (
    Auxiliary,
    Base,
    Dye,
)
from shadewright.records.models.swatches import PlanKind
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import (
    write_recipe,
)
from shadewright.workflows.shades.plan_wishes import PlanWish
from shadewright.workflows.stamps import today
from tests.workflows.bench import entered, founded, now
from tests.workflows.shades.swatch_rows import kept_singles


def standing() -> Base:
    """Return a yarn; six dyes of which two stand on the shelf, and a palette."""
    founded()
    row = Base.objects.create(name="Hollow 4-ply")
    kept_singles(row)
    for name in ("Gorse", "Sloe"):
        entered(dye(name))
    return row


def dye(name: str) -> int:
    return Dye.objects.get(name=name).pk


def ladder(base: Base, **said: object) -> PlanWish:
    begun: dict[str, object] = {
        "kind": PlanKind.LADDER,
        "base_id": base.pk,
        "dyed_on": today(),
        "dye_ids": (dye("Gorse"), dye("Sloe")),
        "rungs": 5,
    }
    return PlanWish(**(begun | said))  # type: ignore[arg-type]


def soured() -> None:
    """Write a recipe with acid, which sets then follow."""
    acid = Auxiliary.objects.create(name="Citric acid")
    text = RecipeText(
        doses=(DoseLine(dye_id=dye("Gorse"), dye_name="Gorse", depth_percent=1.0),),
        helpers=(HelperLine(auxiliary_id=acid.pk, amount=2.0),),
        start_c=40.0,
        rise_c_per_min=1.0,
        top_c=90.0,
        hold_min=30.0,
    )
    write_recipe(name="Low Tide", text=text, stamp=now())
