"""Advice from the shelf and the tools that stand there; nothing is kept."""

from decimal import Decimal

import pytest

from shadewright.core.baths.levers.pulled import Lever
from shadewright.records.models import Bath, Dye, MeasuringTool, Pot
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.advice import AdvisedDose, bath_advice
from shadewright.workflows.baths import BathWish, plan_bath
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipe_sureness import recipe_sureness
from shadewright.workflows.recipes import version, write_recipe
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.whole_shelf import WholeShelf, whole_shelf
from tests.workflows.bench import entered, founded, made, new_dye, new_jar, now
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    """A bath of 100 g: 60 ml of Slate and 30 ml of Gorse; some tools."""
    founded()
    tools = (
        ("Kitchen scale", ToolKind.BALANCE, 3000.0, 1.0),
        ("Big syringe", ToolKind.SYRINGE, 20.0, None),
        ("Tall cylinder", ToolKind.CYLINDER, 500.0, None),
    )
    for name, kind, size, step in tools:
        MeasuringTool.objects.create(name=name, kind=kind, size=size, readability=step)
    return ready()


def advised(pot: Ready, version_id: int, **changes: object) -> AdvisedDose:
    wish = BathWish(
        version_id=version_id,
        base_id=pot.base,
        fibre_g=100.0,
        dyed_on=today(),
        **changes,  # type: ignore[arg-type]
    )
    before = Bath.objects.count()
    found = bath_advice(plan_bath(wish))
    assert Bath.objects.count() == before
    return found[0]


def pale(dye_id: int, depth: float = 0.02) -> int:
    text = RecipeText(
        doses=(DoseLine(dye_id=dye_id, dye_name="Kelp", depth_percent=depth),)
    )
    return write_recipe(name=f"Pale {depth}", text=text, stamp=now()).id


def test_a_weaker_bottle_on_the_shelf_is_proposed(pot: Ready) -> None:
    kelp = new_dye("Kelp")
    older = stamp_now(by=None, at=ago(minutes=20 * 24 * 60))
    strong, weak = made(kelp, stamp=older), made(kelp, powder_g=0.5)
    assert strong.strength_percent == 1.0
    found = advised(pot, pale(kelp, depth=0.06))  # 6 ml of the strong
    assert found.advice is not None
    levers = {each.lever: each for each in found.advice.proposals}
    assert levers[Lever.BOTTLE].way.stock.code == weak.code
    assert found.advice.best < found.advice.now


def test_a_stock_is_only_made_from_a_jar_or_a_bottle_that_can_give_it(
    pot: Ready,
) -> None:
    MeasuringTool.objects.create(
        name="Powder scale", kind=ToolKind.BALANCE, size=500, readability=0.1
    )
    kelp = new_dye("Kelp")
    entered(kelp)  # a guess: surer stock comes from powder alone
    without = advised(pot, pale(kelp, depth=0.6))
    assert without.advice is not None
    assert Lever.MAKE not in {each.lever for each in without.advice.proposals}
    assert "Test its strength" in without.sentence
    new_jar(kelp)
    found = advised(pot, pale(kelp, depth=0.61))
    assert found.advice is not None
    first = found.advice.strongest
    assert first is not None
    assert first.lever is Lever.MAKE
    assert "of powder" in found.sentence
    Dye.objects.filter(pk=kelp).update(solubility_g_per_l=15.0)
    soluble = advised(pot, pale(kelp, depth=0.62))
    assert soluble.advice is not None
    for each in soluble.advice.proposals:
        assert each.way.stock.strength.value <= 1.0


def test_a_larger_batch_is_one_that_the_pot_holds(pot: Ready) -> None:
    kelp = new_dye("Kelp")
    made(kelp)
    recipe = pale(kelp)
    small = Pot.objects.create(name="Small", volume_l=5.0)
    large = Pot.objects.create(name="Large", volume_l=20.0)
    for each, most_g in ((small, 100.0), (large, 400.0)):
        found = advised(pot, recipe, pot_id=each.pk)
        assert found.advice is not None
        batches = [x for x in found.advice.proposals if x.lever is Lever.BATCH]
        assert [x.wanted.yarn_g for x in batches] == ([most_g] if most_g > 100 else [])


def test_a_dose_without_stock_or_tool_says_what_is_wanted(pot: Ready) -> None:
    kelp = new_dye("Kelp")
    recipe = pale(kelp)
    assert "a stock is to be made first" in advised(pot, recipe).sentence
    made(kelp)
    MeasuringTool.objects.update(is_retired=True)
    assert "Say what doses are measured in" in advised(pot, recipe).sentence


def test_a_recipe_is_less_sure_the_smaller_the_batch(pot: Ready) -> None:
    known = recipe_sureness(version(pot.version))
    assert known is not None
    assert (known.usual_g, known.is_dyed) == (100.0, False)
    assert [each.yarn_g for each in known.batches] == [20.0, 100.0, 400.0]
    reaches = [each.worst.reach or 0.0 for each in known.batches if each.worst]
    assert reaches == sorted(reaches, reverse=True)
    larger = pot.another(fibre_g=250.0)
    tapped(larger, "finished", "finish")  # type: ignore[arg-type]
    dyed = recipe_sureness(version(pot.version))
    assert dyed is not None
    assert (dyed.usual_g, dyed.is_dyed) == (250.0, True)


def test_nothing_is_known_without_tools(pot: Ready) -> None:
    MeasuringTool.objects.update(is_retired=True)
    assert recipe_sureness(version(pot.version)) is None
    assert whole_shelf() is None


def names(found: WholeShelf | None) -> list[str]:
    assert found is not None
    return [x.effect.change.name.replace("\u00a0", " ") for x in found.advised]


def test_tools_follow_their_price_and_habits_go_first(pot: Ready) -> None:
    del pot
    plain = whole_shelf()
    assert plain is not None
    kinds = [each.habit is not None for each in plain.advised]
    assert kinds == sorted(kinds, reverse=True)
    assert all(x.effect.change.price is None for x in plain.advised if x.idea)
    dear = {"fine-scale": Decimal(900), "cylinder-50": Decimal(1)}
    listed = names(whole_shelf(dear))
    assert listed.index("50 ml cylinder") < listed.index("0.01 g scale")
    assert listed.index("0.01 g scale") < listed.index("5 ml syringe")


def test_a_tool_that_hangs_there_is_not_proposed(pot: Ready) -> None:
    del pot
    assert "20 ml syringe" not in names(whole_shelf())
    assert "0.01 g scale" in names(whole_shelf())
    MeasuringTool.objects.create(
        name="Fine", kind=ToolKind.BALANCE, size=500, readability=0.001
    )
    assert "0.01 g scale" not in names(whole_shelf())


def test_a_dye_without_a_good_bottle_is_named(pot: Ready) -> None:
    pale(new_dye("Kelp"))
    found = whole_shelf()
    assert found is not None
    assert found.studio.unserved == ("Kelp",)
    assert {each.dye for each in found.strengths} == {"Slate", "Gorse", "Kelp"}
    assert pot.gorse_dye == found.studio.dye_ids["Gorse"]
