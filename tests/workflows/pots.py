"""A bath that stands ready to be dyed, planned as the dyer plans it."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from uuid import UUID, uuid4

from django.utils import timezone

from shadewright.records.models import Auxiliary, Base
from shadewright.records.models.baths import BathAct
from shadewright.records.models.recipes import When
from shadewright.workflows.baths import BathWish, keep_bath
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.bench import entered, new_dye


@dataclass(frozen=True)
class Ready:
    """A planned bath with its bottles, and the recipe for more of them."""

    number: str
    slate: str
    gorse: str
    slate_dye: int
    gorse_dye: int
    version: int
    base: int

    def another(self, *, fibre_g: float = 100.0) -> str:
        """Plan one more bath of the same recipe."""
        wish = BathWish(
            version_id=self.version,
            base_id=self.base,
            fibre_g=fibre_g,
            dyed_on=today(),
        )
        return keep_bath(wish=wish, stamp=stamp_now(by=None))


def ready(
    *, bottle_ml: float = 500.0, when: When = When.AFTER_DYE, at_c: float | None = None
) -> Ready:
    """Plan 100 g at 0.6 % Slate and 0.3 % Gorse: 60 ml and 30 ml of 1 %."""
    slate, gorse = new_dye("Slate"), new_dye("Gorse")
    bottles = [entered(dye, volume_ml=bottle_ml).code for dye in (slate, gorse)]
    acid = Auxiliary.objects.create(name="Citric acid")
    text = RecipeText(
        doses=(
            DoseLine(dye_id=slate, dye_name="Slate", depth_percent=0.6),
            DoseLine(dye_id=gorse, dye_name="Gorse", depth_percent=0.3),
        ),
        helpers=(HelperLine(auxiliary_id=acid.pk, amount=2.0, when=when, at_c=at_c),),
        start_c=40.0,
        rise_c_per_min=1.0,
        top_c=90.0,
        hold_min=30.0,
    )
    version = write_recipe(name="Low Tide", text=text, stamp=stamp_now(by=None))
    base = Base.objects.create(name="Fell DK")
    pot = Ready("", bottles[0], bottles[1], slate, gorse, version.id, base.pk)
    return replace(pot, number=pot.another())


def tapped(
    number: str,
    act: BathAct,
    step: str,
    *,
    value: float | None = None,
    unit: str = "",
    bottle: str = "",
    at: datetime | None = None,
    is_emptied: bool = False,
) -> UUID:
    """Tap at the pot; return the deed."""
    deed = uuid4()
    what = Tap(
        bath=number,
        act=act,
        step=step,
        value=value,
        unit=unit,
        bottle=bottle,
        is_emptied=is_emptied,
    )
    keep_tap(what, stamp=stamp_now(by=None, deed=deed, at=at))
    return deed


def ago(*, minutes: float) -> datetime:
    """Return a time that is past."""
    return timezone.now() - timedelta(minutes=minutes)
