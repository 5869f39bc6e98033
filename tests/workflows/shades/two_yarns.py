"""A palette of six invented dyes on wool, and of three of them on silk."""

from dataclasses import dataclass

from shadewright.records.models import Base, Dye
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText, Version
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.palettes import PaletteNow
from shadewright.workflows.stamps import stamp_now
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch


@dataclass(frozen=True)
class TwoYarns:
    """What a test asks of them; nobody dyed a swatch on the nylon."""

    now: PaletteNow
    wool: int
    silk: int
    nylon: int

    def dye(self, name: str) -> int:
        """Return a dye's number."""
        return Dye.objects.get(name=name).pk

    def mix(self, **depths: float) -> tuple[tuple[int, float], ...]:
        """Return a mix by the numbers of its dyes."""
        return tuple((self.dye(name), depth) for name, depth in depths.items())

    def recipe(self, name: str = "Low Tide", **depths: float) -> Version:
        """Write a recipe."""
        lines = tuple(
            DoseLine(dye_id=self.dye(dye), dye_name=dye, depth_percent=depth)
            for dye, depth in depths.items()
        )
        return write_recipe(
            name=name, text=RecipeText(doses=lines), stamp=stamp_now(by=None)
        )


def two_yarns() -> TwoYarns:
    """Keep the swatches and fit them."""
    wool = Base.objects.create(name="Hollow 4-ply", fibres="wool")
    silk = Base.objects.create(name="Drift silk", fibres="silk")
    nylon = Base.objects.create(name="Moss nylon", fibres="nylon")
    kept_singles(wool)
    kept_swatch(wool, {"Gorse": 0.2}, (84.0, 1.0, 40.0))
    for doses, lab in (
        ({}, (90.0, 0.0, 6.0)),
        ({"Gorse": 1.0}, (72.0, 9.0, 70.0)),
        ({"Sloe": 1.0}, (33.0, 5.0, -35.0)),
        ({"Kelp": 1.0}, (44.0, -27.0, 13.0)),
    ):
        kept_swatch(silk, doses, lab)
    now = fit_now(why="two yarns")
    return TwoYarns(now=now, wool=wool.pk, silk=silk.pk, nylon=nylon.pk)
