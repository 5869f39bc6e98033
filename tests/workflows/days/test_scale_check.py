"""What a larger bath owes to its little trial."""

import pytest

from shadewright.core.baths.stepping import TOO_UNSURE
from shadewright.records.models import Auxiliary, MeasuringTool, Pot
from shadewright.records.models.catalogue import ToolKind
from shadewright.records.models.recipes import AmountUnit
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import keep_bath, plan_bath
from shadewright.workflows.days.scale_check import scale_check
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.dyed import finished
from tests.workflows.pots import ready

pytestmark = pytest.mark.django_db


def test_what_a_swatch_was_off_by_is_dyed_into_everything_larger() -> None:
    # 0.05 % on 20 g is 0.01 g, 1 ml of 1 % out of a syringe of 20 ml; on 500 g it is
    # 25 ml. The bottle is the same, so its strength makes no difference between them.
    pot = ready()
    MeasuringTool.objects.create(name="Syringe", kind=ToolKind.SYRINGE, size=20)
    MeasuringTool.objects.create(name="Scale", kind=ToolKind.BALANCE, readability=0.1)
    large = Pot.objects.create(name="Vat", volume_l=30.0)
    acid = Auxiliary.objects.get().pk
    text = RecipeText(
        doses=(DoseLine(dye_id=pot.slate_dye, dye_name="Slate", depth_percent=0.05),),
        helpers=(HelperLine(auxiliary_id=acid, amount=0.5, unit=AmountUnit.PER_LITRE),),
    )
    version = write_recipe(name="Mist", text=text, stamp=stamp_now(by=None)).id
    swatch = BathWish(
        version_id=version,
        base_id=pot.base,
        fibre_g=20.0,
        liquor_ratio=60.0,
        dyed_on=today(),
        is_swatch=True,
    )
    number = keep_bath(wish=swatch, stamp=stamp_now(by=None))
    finished(number, is_sure=True)
    bath = BathWish(
        version_id=version,
        base_id=pot.base,
        fibre_g=500.0,
        dyed_on=today(),
        pot_id=large.pk,
    )
    scale = scale_check(plan_bath(bath))
    assert scale.trial is not None
    assert (scale.trial.number, scale.trial.is_swatch) == (number, True)
    (slate,) = scale.dyes
    assert slate.in_bath is not None
    assert slate.in_trial is not None
    assert slate.apart is not None
    assert slate.in_trial > 1.5 * slate.in_bath
    assert slate.apart < slate.in_trial  # the strength, a guess in both, drops out
    assert slate.apart > TOO_UNSURE
    assert scale.unsure == ("Slate",)
    assert scale.steps_g == (100.0,)
    assert scale.with_water[0] == "Citric acid, counted to the litre"
    assert "the liquor: 1:60 in the trial, 1:30 here" in scale.not_at_all
    assert scale.straight == ("Slate",)
