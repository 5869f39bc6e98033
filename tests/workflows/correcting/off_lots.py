"""A lot that came out beside its colour, on a yarn whose palette is known."""

from shadewright.records.models import Base, Recipe
from shadewright.records.models.lots import ColourEvidence
from shadewright.workflows.lots import note_colour
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.stamps import stamp_now
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready
from tests.workflows.shades.swatch_rows import kept_swatch

OFF = (62.0, -3.5, 21.5)
"""Paler than 0.6 % Slate and 0.3 % Gorse give by the palette below."""


def learned(pot: Ready) -> None:
    """Fit swatches of both dyes on the yarn of the bath."""
    base = Base.objects.get(pk=pot.base)
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    for depth, lab in ((0.3, (60.0, -2.5, -9.0)), (1.0, (40.0, -2.0, -10.0))):
        kept_swatch(base, {"Slate": depth}, lab)
    for depth, lab in ((0.3, (83.0, 2.0, 45.0)), (1.0, (76.0, 6.0, 62.0))):
        kept_swatch(base, {"Gorse": depth}, lab)
    fit_now(why="first swatches")


def off_lot(*, lab: tuple[float, float, float] = OFF) -> tuple[Ready, str]:
    """Return a pot and its lot of four skeins, whose colour was read."""
    pot = ready(bottle_ml=5000.0)
    learned(pot)
    number = finished(dyed(pot), skeins=4)
    note(number, lab)
    return pot, number


def note(number: str, lab: tuple[float, float, float]) -> None:
    """Note a lot’s colour as a meter read it."""
    colour = ", ".join(f"{part:g}" for part in lab)
    note_colour(
        number=number,
        colour=colour,
        evidence=ColourEvidence.METER,
        stamp=stamp_now(by=None),
    )


def deeper_recipe(pot: Ready) -> int:
    """Write a recipe that is twice as deep, and return its number."""
    doses = (
        DoseLine(dye_id=pot.slate_dye, dye_name="Slate", depth_percent=1.4),
        DoseLine(dye_id=pot.gorse_dye, dye_name="Gorse", depth_percent=0.7),
    )
    made = write_recipe(
        name="Dark Tide", text=RecipeText(doses=doses), stamp=stamp_now(by=None)
    )
    return Recipe.objects.get(pk=made.recipe_id).pk
