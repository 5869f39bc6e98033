"""What a recipe that is looked for may hold, and what the shelf says to that."""

from collections.abc import Mapping
from dataclasses import dataclass

from shadewright.core.baths import (
    ChosenBottles,
    chosen_bottles,
    dye_mass_g,
    liquor_ml,
)
from shadewright.core.colour import Light
from shadewright.core.mixing import Palette
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.core.quantities import require_mass
from shadewright.core.recipes import Wishes
from shadewright.core.recipes.matching import USUAL_TOLERANCE
from shadewright.core.recipes.search.sets import MOST_DYES
from shadewright.core.recipes.wishes import MOST_DEPTH_PERCENT
from shadewright.errors import NotFoundError
from shadewright.records.models import Base, Dye
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import PlannedDose, planned_dose
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.recipe_shapes import DoseLine
from shadewright.workflows.shades.palettes import gone_dyes
from shadewright.workflows.shades.wanted import Wanted
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import today
from shadewright.workflows.tools_at_hand import AtHand, at_hand

USUAL_BATCH_G = 100.0
USUAL_RATIO = 30.0
"""Litres of bath to a kilogram of yarn where no recipe says (common practice)."""
_MIDDLING_PERCENT = 0.5
_ROUNDING = 0.005


@dataclass(frozen=True, kw_only=True)
class FindWish:
    """A colour that is wanted on a base, and what its recipes may hold.

    ``lights`` count beside daylight where the colour is known as a spectrum;
    ``with_dyes`` are in every recipe and ``without_dyes`` in none, by their numbers.
    """

    wanted: Wanted
    base_id: int
    batch_g: float = USUAL_BATCH_G
    tolerance: float = USUAL_TOLERANCE
    most_dyes: int = MOST_DYES
    most_depth_percent: float = MOST_DEPTH_PERCENT
    is_on_shelf: bool = False
    is_without_metal: bool = False
    with_dyes: tuple[int, ...] = ()
    without_dyes: tuple[int, ...] = ()
    lights: tuple[Light, ...] = (Light.A,)


@dataclass(frozen=True, kw_only=True, eq=False)
class AtShelf:
    """The dyes of a palette with the bottles and tools for one bath."""

    dyes: Mapping[str, Dye]
    offer: Offer
    tools: AtHand
    bath: BathWish

    @property
    def liquor_ml(self) -> float:
        """How much bath the batch takes, at the usual ratio."""
        return liquor_ml(fibre_mass_g=self.bath.fibre_g, liquor_ratio=USUAL_RATIO)

    def dose(
        self, name: str, depth_percent: float, *, place: int = 1, is_shown: bool = True
    ) -> PlannedDose:
        """Return which bottles give a dose of the batch, and how sure it is."""
        line = DoseLine(
            dye_id=self.dyes[name].pk, dye_name=name, depth_percent=depth_percent
        )
        return planned_dose(
            line,
            self.offer,
            self.tools,
            place=place,
            wish=self.bath,
            bath_ml=self.liquor_ml,
            is_shown=is_shown,
        )

    def bottles(self, name: str, depth_percent: float) -> ChosenBottles:
        """Return only which bottles give a dose, which is sooner said."""
        dye_g = dye_mass_g(fibre_mass_g=self.bath.fibre_g, depth_percent=depth_percent)
        return chosen_bottles(
            dye_g=dye_g,
            liquor_ml=self.liquor_ml,
            bottles=self.offer.candidates(self.dyes[name].pk),
        )

    def most_percent(self, name: str) -> float:
        """Return the depth that the good bottles of a dye are enough for. [%]."""
        bottles = self.offer.candidates(self.dyes[name].pk)
        grams = (x.usable_ml * x.strength_percent / 100 for x in bottles if x.is_good)
        return 100 * sum(grams) / self.bath.fibre_g

    def dose_error(self, name: str, depth_percent: float) -> float:
        """Return how far a dose is off, as a share; never less than usual.

        It is measured as it is shown: what no bottle holds is weighed dry. Where
        nobody said with what, it counts as usual.
        """
        dose = self.dose(name, depth_percent, is_shown=False)
        sure = dose.dosed.how_sure.sure
        return DOSE_ERROR if sure is None else max(sure.depth.u_rel, DOSE_ERROR)


def at_shelf(palette: Palette, *, base_id: int, batch_g: float) -> AtShelf:
    """Return the shelf as a batch of so much yarn finds it."""
    require_mass(batch_g, name="The batch", argument="grams")
    rows = Dye.objects.filter(name__in=palette.names.dyes)
    return AtShelf(
        dyes={row.name: row for row in rows},
        offer=Offer(bottles=shelf(), taken_ml=promised_ml()),
        tools=at_hand(fibre_g=batch_g),
        bath=BathWish(version_id=0, base_id=base_id, fibre_g=batch_g, dyed_on=today()),
    )


def palette_base(palette: Palette, base_id: int) -> str:
    """Return the name of a base that the palette holds, or refuse it."""
    row = Base.objects.filter(pk=base_id).first()
    if row is None:
        raise NotFoundError(kind="base", key=str(base_id), argument="base")
    if row.name not in palette.names.bases:
        raise NotFoundError(
            kind="base in the palette",
            key=row.name,
            advice=(
                "If it was only just named so, the fit is under way: look again in a "
                "minute. Else dye and read a few swatches on it first."
            ),
            argument="base",
        )
    return row.name


def wishes_of(wish: FindWish, palette: Palette, at: AtShelf) -> Wishes:
    """Return the wish as core takes it."""
    most = {
        name: at.most_percent(name) if name in at.dyes else 0.0
        for name in palette.names.dyes
    }
    return Wishes(
        most_dyes=wish.most_dyes,
        most_depth_percent=wish.most_depth_percent,
        wanted=_named(wish.with_dyes, at),
        unwanted=_unwanted(wish, palette, at, most),
        most_by_dye=_with_room(most) if wish.is_on_shelf else {},
        dose_errors={name: at.dose_error(name, _MIDDLING_PERCENT) for name in at.dyes},
    )


def _with_room(most: Mapping[str, float]) -> dict[str, float]:
    """Leave what rounding a depth to three figures may add, so that no crumb lacks."""
    return {name: (1.0 - _ROUNDING) * percent for name, percent in most.items()}


def _unwanted(
    wish: FindWish, palette: Palette, at: AtShelf, most: Mapping[str, float]
) -> tuple[str, ...]:
    """Return the dyes that are left out: by name, by kind, or gone from the shelf.

    A retired dye is taken only where it is asked for.
    """
    by_name = _named(wish.without_dyes, at)
    gone = set(gone_dyes(palette)) - set(_named(wish.with_dyes, at))
    return tuple(
        name
        for name in palette.names.dyes
        if name in by_name
        or name in gone
        or (wish.is_on_shelf and not most[name])
        or (wish.is_without_metal and at.dyes[name].is_metal_complex)
    )


def _named(numbers: tuple[int, ...], at: AtShelf) -> tuple[str, ...]:
    return tuple(name for name, row in at.dyes.items() if row.pk in numbers)
