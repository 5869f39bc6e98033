"""Things to dye with: two dyes with bottles, an acid, a base with a lot, a pot."""

from dataclasses import dataclass

from shadewright.records.models import Auxiliary, Base, Dye, MillLot, Pot
from shadewright.records.models.catalogue import AuxiliaryKind, DyeClass
from shadewright.workflows.baths import BathWish, keep_bath
from shadewright.workflows.bottles import enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now, today


@dataclass(frozen=True)
class Dyeing:
    """The numbers and codes that a form names."""

    slate: int
    gorse: int
    slate_bottle: str
    gorse_bottle: str
    acid: int
    base: int
    lot: int
    pot: int

    def text(self) -> RecipeText:
        """Return a recipe of Slate 0.6 % and Gorse 0.3 %."""
        return RecipeText(
            doses=(
                DoseLine(dye_id=self.slate, dye_name="Slate", depth_percent=0.6),
                DoseLine(dye_id=self.gorse, dye_name="Gorse", depth_percent=0.3),
            ),
            helpers=(HelperLine(auxiliary_id=self.acid, name="Vinegar", amount=2.0),),
            start_c=40.0,
            rise_c_per_min=1.0,
            top_c=90.0,
            hold_min=30.0,
            ties="four, loose",
        )

    def recipe(self, name: str = "Low Tide") -> int:
        """Write the recipe and return its version's number."""
        return write_recipe(name=name, text=self.text(), stamp=stamp_now(by=None)).id

    def bath(self, version: int, *, fibre_g: float = 100.0) -> str:
        """Plan a bath for today and return its number."""
        wish = BathWish(
            version_id=version,
            base_id=self.base,
            fibre_g=fibre_g,
            dyed_on=today(),
            mill_lot_id=self.lot,
            pot_id=self.pot,
        )
        return keep_bath(wish=wish, stamp=stamp_now(by=None))


def dyeing_things() -> Dyeing:
    """Put the things on the shelf of a studio that is founded already."""
    slate = Dye.objects.create(
        name="Slate", chart_hex="#5b6570", dye_class=DyeClass.MILLING
    )
    gorse = Dye.objects.create(
        name="Gorse", chart_hex="#e0b02c", dye_class=DyeClass.MILLING
    )
    vinegar = Auxiliary.objects.create(
        name="Vinegar",
        kind=AuxiliaryKind.ACID,
        is_liquid=True,
        strength_g_per_100_ml=5.0,
    )
    base = Base.objects.create(name="Fell DK", fibres="wool")
    return Dyeing(
        slate=slate.pk,
        gorse=gorse.pk,
        slate_bottle=_bottle(slate.pk),
        gorse_bottle=_bottle(gorse.pk),
        acid=vinegar.pk,
        base=base.pk,
        lot=MillLot.objects.create(base=base, lot="M7").pk,
        pot=Pot.objects.create(name="Blue pot", volume_l=12.0).pk,
    )


def _bottle(dye_id: int) -> str:
    return enter_bottle(
        dye_id=dye_id,
        strength_percent=1.0,
        volume_ml=500.0,
        stamp=stamp_now(by=None),
        about=Particulars(),
    ).code
