"""Planning a bath: doses out of bottles, and what stands in the way."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from shadewright.core.solutions.keeping import Purpose
from shadewright.errors import (
    ConflictError,
    MissingError,
    StudioError,
)
from shadewright.records.models import (
    Auxiliary,
    Base,
    Bath,
    Dye,
    Lot,
    MillLot,
    Pot,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.catalogue import AuxiliaryKind, DyeClass
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.baths import BathPlan, BathWish, keep_bath, plan_bath
from shadewright.workflows.bottles import pour_away
from shadewright.workflows.planned_baths import (
    give_up,
    wish_of,
)
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import version, write_recipe
from shadewright.workflows.stamps import today
from shadewright.workflows.undo import undo
from tests.workflows.bench import entered, now
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    return ready()


def wish(pot: Ready, **said: Any) -> BathWish:  # ruff: ignore[any-type]
    plain = BathWish(
        version_id=pot.version, base_id=pot.base, fibre_g=100.0, dyed_on=today()
    )
    return replace(plain, **said)


def shares(plan: BathPlan) -> list[tuple[str, float]]:
    return [(s.code, round(s.volume_ml, 6)) for d in plan.doses for s in d.shares]


def refusal(wanted: BathWish) -> StudioError:
    with pytest.raises(StudioError) as refused:
        plan_bath(wanted)
    return refused.value


@pytest.mark.by_hand
def test_a_bath_is_reckoned_from_the_yarn_that_was_weighed(pot: Ready) -> None:
    # 97 g: Slate 0.6 % = 0.582 g = 58.2 ml of 1 %; Gorse 0.3 % = 29.1 ml.
    # Liquor 1:30 = 2910 ml; wet yarn 250 g brings 153 ml; 2 % citric acid = 1.94 g.
    plan = plan_bath(wish(pot, fibre_g=97.0, wet_yarn_g=250.0))
    assert shares(plan) == [(pot.slate, 58.2), (pot.gorse, 29.1)]
    assert plan.liquor_ml == pytest.approx(2910.0)
    assert plan.water.fresh_water_ml == pytest.approx(2910 - 58.2 - 29.1 - 153)
    assert plan.helpers[0].amount == pytest.approx(1.94)
    assert plan.troubles == ()


def test_the_plan_is_what_is_kept(pot: Ready) -> None:
    wanted = wish(
        pot,
        fibre_g=97.0,
        skeins=1,
        notes=" blue tag ",
        liquor_ratio=20.0,
        purpose=Purpose.PLAY,
    )
    plan = plan_bath(wanted)
    now_ = bath_now(keep_bath(wish=wanted, stamp=now()))
    doses = [each.step for each in now_.steps if each.step.code]
    assert [(s.code, s.amount) for s in doses] == [
        (s.code, s.volume_ml) for d in plan.doses for s in d.shares
    ]
    fill = now_.steps[0].step
    assert fill.amount == pytest.approx(plan.water.fresh_water_ml / 1000)
    assert (now_.notes, now_.skeins, now_.liquor_ratio) == ("blue tag", 1, 20.0)
    assert now_.status is BathStatus.PLANNED
    kept = wish_of(now_.number)
    assert kept.dosing.is_by_weight is False
    assert replace(kept, notes=" blue tag ", dosing=wanted.dosing) == wanted


def test_what_another_bath_will_draw_is_not_promised_twice() -> None:
    pot = ready(bottle_ml=100.0)  # bath 1 takes 60 of 100 ml of Slate
    spare = entered(pot.slate_dye, volume_ml=300.0).code
    assert promised_ml() == {pot.slate: 60.0, pot.gorse: 30.0}
    assert shares(plan_bath(wish(pot)))[0] == (spare, 60.0)
    first = pot.number
    tapped(first, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate)
    assert promised_ml() == {pot.gorse: 30.0}
    give_up(number=first, why="", stamp=now())
    assert promised_ml() == {}


def test_a_dose_taken_back_is_promised_again(pot: Ready) -> None:
    deed = tapped(
        pot.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate
    )
    undo(deed=deed, stamp=now())
    assert promised_ml() == {pot.slate: 60.0, pot.gorse: 30.0}


def test_a_bath_whose_day_is_over_promises_nothing(pot: Ready) -> None:
    assert promised_ml()[pot.slate] == 60.0
    Bath.objects.update(dyed_on=today() - timedelta(days=1))
    assert promised_ml() == {}


def test_a_dose_is_split_and_what_is_short_is_said() -> None:
    pot = ready(bottle_ml=100.0)
    spare = entered(pot.slate_dye, volume_ml=25.0).code
    plan = plan_bath(wish(pot))  # 40 ml + 25 ml are enough for 60 ml
    assert {code for code, _ in shares(plan)} == {pot.slate, spare, pot.gorse}
    assert sum(s.volume_ml for s in plan.doses[0].shares) == pytest.approx(60.0)
    short = plan_bath(wish(pot, fibre_g=200.0))  # 120 ml wanted, 65 ml there
    assert short.doses[0].missing_g == pytest.approx(0.55)
    assert short.troubles[0].replace("\N{NO-BREAK SPACE}", " ") == (
        "Slate: 0.55 g more dye is wanted than the good bottles hold."
    )
    assert any("respirator" in each for each in short.cautions)
    kept = bath_now(keep_bath(wish=wish(pot, fibre_g=200.0), stamp=now()))
    dry = [s.step for s in kept.steps if s.step.kind == "dose" and not s.step.code]
    assert [(s.title, round(s.amount or 0, 6), s.unit) for s in dry] == [
        ("Slate", 0.55, "g")
    ]


def test_without_a_good_bottle_the_whole_dose_is_short(pot: Ready) -> None:
    pour_away(code=pot.slate, stamp=now())
    plan = plan_bath(wish(pot))
    assert plan.doses[0].shares == ()
    assert "No good bottle of Slate" in plan.troubles[0]


def test_a_dose_too_small_to_measure_comes_with_advice(pot: Ready) -> None:
    plan = plan_bath(wish(pot, fibre_g=5.0, is_swatch=True))
    assert plan.doses[0].advice.startswith("3")
    assert "0.5\N{NO-BREAK SPACE}% stock" in plan.doses[0].advice


@pytest.mark.parametrize(
    ("said", "argument"),
    [
        ({"fibre_g": 0.0}, "fibre_g"),
        ({"fibre_g": -5.0}, "fibre_g"),
        ({"fibre_g": float("nan")}, "fibre_g"),
        ({"fibre_g": float("inf")}, "fibre_g"),
        ({"fibre_g": 1e9}, "fibre_g"),
        ({"fibre_g": 21.0, "is_swatch": True}, "fibre_g"),
        ({"wet_yarn_g": 99.0}, "wet_yarn_g"),
        ({"wet_yarn_g": float("nan")}, "wet_yarn_g"),
        ({"liquor_ratio": 0.0}, "liquor_ratio"),
        ({"liquor_ratio": -3.0}, "liquor_ratio"),
        ({"liquor_ratio": 5000.0}, "liquor_ratio"),
        ({"skeins": 0}, "skeins"),
        ({"skeins": 10**9}, "skeins"),
        ({"dyed_on": today().replace(year=1950)}, "dyed_on"),
        ({"dyed_on": today() + timedelta(days=400)}, "dyed_on"),
        ({"version_id": 777}, "version"),
        ({"base_id": 777}, "base"),
        ({"pot_id": 777}, "pot"),
        ({"mill_lot_id": 777}, "mill_lot"),
    ],
)
def test_what_cannot_be_is_refused_by_its_field(
    pot: Ready, said: dict[str, Any], argument: str
) -> None:
    assert refusal(wish(pot, **said)).argument == argument
    before = Bath.objects.count()
    with pytest.raises(StudioError):
        keep_bath(wish=wish(pot, **said), stamp=now())
    assert Bath.objects.count() == before


@pytest.mark.by_hand
def test_a_pot_that_is_too_small_says_how_much_yarn_it_takes(pot: Ready) -> None:
    # A tenth to spare: 3.3 / 1.1 = 3 l; 3 l at 1:30 take 100 g.
    small = Pot.objects.create(name="Blue pot", volume_l=3.3)
    plan_bath(wish(pot, pot_id=small.pk))
    error = refusal(wish(pot, pot_id=small.pk, fibre_g=101.0))
    assert error.argument == "pot"
    said = error.sentence.replace("\N{NO-BREAK SPACE}", " ")
    assert "Blue pot" in said
    assert "Dye at most 100 g of yarn in it" in said


def test_an_incomplete_recipe_is_not_dyed(pot: Ready) -> None:
    old = write_recipe(
        name="Spoons",
        text=RecipeText(doses=(DoseLine(as_written="3 tsp"),)),
        stamp=now(),
    )
    error = refusal(wish(pot, version_id=old.id))
    assert isinstance(error, ConflictError)
    assert "no dye and depth in % for “3 tsp”" in error.sentence


def test_a_mill_lot_is_of_the_base_that_is_dyed(pot: Ready) -> None:
    other = Base.objects.create(name="Moor sock")
    lot = MillLot.objects.create(base=other, lot="M1")
    assert refusal(wish(pot, mill_lot_id=lot.pk)).argument == "mill_lot"
    plan_bath(wish(pot, mill_lot_id=lot.pk, base_id=other.pk))


def test_dyes_and_salt_that_do_not_go_together_are_named(pot: Ready) -> None:
    Dye.objects.filter(name="Slate").update(
        dye_class=DyeClass.MILLING, is_metal_complex=True
    )
    Dye.objects.filter(name="Gorse").update(dye_class=DyeClass.LEVELLING)
    salt = Auxiliary.objects.create(name="Glauber", kind=AuxiliaryKind.SALT)
    old = version(pot.version)
    text = replace(old.text, helpers=(HelperLine(auxiliary_id=salt.pk, amount=5.0),))
    new = write_recipe(name="Mixed", text=text, stamp=now())
    said = " ".join(plan_bath(wish(pot, version_id=new.id)).cautions)
    assert "levelling wants pH 2 to 4, milling wants pH 5 to 7" in said
    assert "Leave the Glauber’s salt out: with milling dyes" in said
    assert "Slate holds a metal" in said
    assert plan_bath(wish(pot)).cautions[0].startswith("The dyes are of different")


@pytest.mark.by_hand
def test_the_base_says_what_stays_bare_and_whether_it_was_tried(pot: Ready) -> None:
    # 0.9 % in all on the whole yarn, a quarter bare: 0.9 / 0.75 = 1.2 % on the rest.
    Base.objects.filter(pk=pot.base).update(undyeable_percent=25.0)
    bare, tried = plan_bath(wish(pot)).notes
    assert bare.replace("\N{NO-BREAK SPACE}", " ").startswith(
        "25 % of Fell DK takes no acid dye and stays bare."
    )
    assert "1.2\N{NO-BREAK SPACE}%" in bare
    assert tried.startswith("Not tried on Fell DK yet")
    Lot.objects.create(bath=Bath.objects.get(number=pot.number), number=pot.number)
    assert len(plan_bath(wish(pot)).notes) == 1
    Base.objects.filter(pk=pot.base).update(undyeable_percent=100.0)
    assert "stays bare" in plan_bath(wish(pot)).notes[0]


def test_a_missing_weight_is_asked_for_in_words(pot: Ready) -> None:
    error = refusal(wish(pot, fibre_g=0.0))
    assert isinstance(error, MissingError)
    assert "Weigh the dry yarn" in error.sentence


@pytest.mark.store
def test_a_bath_moved_to_another_day_keeps_its_number_for_itself(pot: Ready) -> None:
    Bath.objects.update(dyed_on=today() + timedelta(days=1))
    second = keep_bath(wish=wish(pot), stamp=now())
    assert second == pot.number[:-1] + "2"
    tomorrow = keep_bath(
        wish=wish(pot, dyed_on=today() + timedelta(days=1)), stamp=now()
    )
    assert tomorrow.endswith("-B1")
