"""What a bath's doses are measured with, and how sure their depths then are."""

from dataclasses import replace

import pytest

from shadewright.records import recipe_reads
from shadewright.records.models import BathDose, MeasuringTool
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.baths import BathPlan, BathWish, keep_bath, plan_bath
from shadewright.workflows.dosing import NOT_REMEMBERED, remembered
from shadewright.workflows.planned_baths import change_bottle, plan_anew, wish_of
from shadewright.workflows.stamps import today
from shadewright.workflows.tools_at_hand import DosingWish
from shadewright.workflows.usual_tools import set_usual_tools
from tests.workflows.bench import entered, founded, now
from tests.workflows.pots import Ready, ready

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def scale(name: str = "Kitchen scale", *, step_g: float = 0.1) -> int:
    return MeasuringTool.objects.create(
        name=name, kind=ToolKind.BALANCE, readability=step_g
    ).pk


def ware(kind: ToolKind, size_ml: float) -> int:
    name = f"{kind.value} {size_ml:g}"
    return MeasuringTool.objects.create(name=name, kind=kind, size=size_ml).pk


def planned(pot: Ready, dosing: DosingWish | None = None) -> BathPlan:
    wish = BathWish(
        version_id=pot.version, base_id=pot.base, fibre_g=100.0, dyed_on=today()
    )
    return plan_bath(wish if dosing is None else replace(wish, dosing=dosing))


def test_with_no_tool_on_the_shelf_the_plan_says_what_is_not_known(pot: Ready) -> None:
    slate = planned(pot).doses[0].dosed
    assert slate.tool is None
    assert slate.how_sure.lacks == (
        "what Slate is measured with",
        "what the yarn is weighed on",
    )
    assert slate.how_sure.sure is not None  # the label on the bottle is a guess
    (term,) = slate.how_sure.sure.depth.terms
    assert term.name == "strength as labelled: a guess"


def test_the_best_tool_on_the_shelf_is_taken_where_none_is_usual(pot: Ready) -> None:
    small = ware(ToolKind.SYRINGE, 20)
    cylinder = ware(ToolKind.CYLINDER, 100)
    ware(ToolKind.JUG, 1000)
    slate = planned(pot).doses[0].dosed  # 60 ml: ±1 ml, not three fills of ±0.8 ml
    assert slate.tool is not None
    assert slate.tool.id == cylinder
    set_usual_tools(dose_tool=small)
    usual = planned(pot).doses[0].dosed.tool
    assert usual is not None
    assert usual.id == small
    said = planned(pot, DosingWish(tools={1: cylinder})).doses
    assert [dose.dosed.tool and dose.dosed.tool.id for dose in said] == [
        cylinder,
        small,
    ]


@pytest.mark.by_hand
def test_a_dose_by_weight_comes_in_grams(pot: Ready) -> None:
    on = scale()
    plan = planned(pot, DosingWish(is_by_weight=True))
    slate = plan.doses[0].dosed
    assert slate.tool is not None
    assert slate.tool.id == on
    assert slate.shares_g == pytest.approx((60.492,), abs=5e-4)
    assert slate.how_sure.lacks == ()
    assert slate.how_sure.sure is not None
    names = {term.name for term in slate.how_sure.sure.depth.terms}
    # nobody checked the scale: it is off by two steps, besides its rounding
    assert {"reading the scale, Slate", "the scale itself, Slate"} <= names


def test_tools_and_spread_are_kept_with_the_bath(pot: Ready) -> None:
    on, cylinder = scale(), ware(ToolKind.CYLINDER, 100)
    row = recipe_reads.bath_row(pot.another())
    assert row.yarn_scale_id == on
    assert not row.is_by_weight
    slate = row.doses.first()
    assert slate is not None
    assert slate.tool_id == cylinder
    kept = remembered(slate)
    assert kept.lacks == ()
    assert kept.sure is not None
    plan = planned(pot).doses[0].dosed.how_sure.sure
    assert plan is not None
    assert kept.sure.depth == plan.depth
    assert wish_of(row.number).dosing == DosingWish(
        yarn_scale=on, is_by_weight=False, tools={1: cylinder, 2: cylinder}
    )


def test_a_bath_of_the_time_before_says_that_nothing_was_kept(pot: Ready) -> None:
    old = BathDose.objects.filter(bath__number=pot.number)
    old.update(spread=[], spread_method="")
    (slate, _gorse) = old
    assert remembered(slate) == NOT_REMEMBERED


def test_another_bottle_is_as_sure_as_it_is(pot: Ready) -> None:
    scale()
    ware(ToolKind.CYLINDER, 100)
    number = pot.another()
    other = entered(pot.slate_dye, strength_percent=2.0)
    before = remembered(recipe_reads.bath_row(number).doses.all()[0]).sure
    change_bottle(number=number, step="dose-1", code=other.code, stamp=now())
    after = remembered(recipe_reads.bath_row(number).doses.all()[0]).sure
    assert before is not None
    assert after is not None
    sources = {term.source for term in after.depth.terms}
    assert sources != {term.source for term in before.depth.terms}
    # 30 ml instead of 60 ml from the same cylinder
    assert after.depth.u_rel > before.depth.u_rel


def test_planned_anew_the_tools_stay(pot: Ready) -> None:
    scale()
    number = keep_bath(
        wish=replace(wish_of(pot.number), dosing=DosingWish(is_by_weight=True)),
        stamp=now(),
    )
    anew = plan_anew(number=number, wish=wish_of(number), stamp=now())
    assert recipe_reads.bath_row(anew).is_by_weight


def test_yarn_goes_on_the_coarsest_scale_that_shows_a_hundredth(pot: Ready) -> None:
    fine, coarse = scale(), scale("Yarn scale", step_g=1.0)
    wish = wish_of(pot.number)
    for fibre_g, expected in ((100.0, coarse), (50.0, fine), (5.0, fine)):
        again = replace(wish, fibre_g=fibre_g, dosing=DosingWish())
        found = plan_bath(again).tools.yarn_scale
        assert found is not None
        assert found.id == expected
