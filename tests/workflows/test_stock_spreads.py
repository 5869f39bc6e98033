"""How sure a stock is: by its tools, from the powder through every act."""

import pytest

from shadewright.core.solutions.carrying import BEFORE_SPREADS
from shadewright.core.uncertainty import budget
from shadewright.errors import OutOfRangeError
from shadewright.records.models import BottleLine, MeasuringTool, StockBottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.making import (
    choose_scale,
    choose_ware,
    finish_making,
    make_up,
    make_up_by_weight,
    start_making,
    weigh_powder,
)
from shadewright.workflows.makings import making
from shadewright.workflows.mending import add_powder, add_water, dilute, merge
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.stock_spreads import NO_MEASURE, NO_SCALE, NO_WARE, made_with
from shadewright.workflows.stocks import make_stock
from shadewright.workflows.undo import undo
from shadewright.workflows.usual_tools import set_usual_tools
from tests.workflows.bench import entered, founded, new_dye, now

pytestmark = pytest.mark.django_db


def scale(step_g: float, own_error: float = 0.0) -> int:
    """A scale that its sheet says is off by so much; 0 is taken at its word."""
    return MeasuringTool.objects.create(
        name=f"Scale of {step_g:g} g",
        kind="balance",
        readability=step_g,
        own_error=own_error,
    ).pk


def ware(kind: str, size: float) -> int:
    return MeasuringTool.objects.create(
        name=f"{kind} of {size:g} ml", kind=kind, size=size
    ).pk


@pytest.fixture
def dye_id() -> int:
    founded()
    return new_dye()


@pytest.fixture
def bottle(dye_id: int) -> ShelfBottle:
    return made(dye_id)


def made(dye_id: int, *, tools: bool = True) -> ShelfBottle:
    """A litre at 1 % from 10 g, by a scale of 0.01 g and a cylinder of class B."""
    return make_stock(
        dye_id=dye_id,
        jar_id=None,
        wanted_percent=1.0,
        powder_g=10.0,
        final_ml=1000.0,
        stamp=now(),
        made_with=made_with(
            scale(0.01) if tools else None,
            ware("cylinder", 1000.0) if tools else None,
        ),
    )


def worst(bottle: ShelfBottle) -> str:
    return budget(bottle.strength)[0].name


@pytest.mark.by_hand
def test_a_bottle_keeps_how_sure_it_was_made(bottle: ShelfBottle) -> None:
    """√((0.01/√6/10)² + (10/√3/1000)²) = 0.5788 %."""
    assert bottle.u_strength_rel == pytest.approx(0.005788, abs=5e-7)
    assert bottle.lacks == ()
    row = StockBottle.objects.get(code=bottle.code)
    assert row.scale is not None
    assert row.ware is not None
    assert (row.is_by_weight, row.spread_method) == (
        False,
        "spread of a strength, version 1",
    )
    assert [term["u"] for term in row.spread] == [term.u for term in bottle.terms]


def test_what_was_not_said_is_not_made_up(dye_id: int) -> None:
    bare = made(dye_id, tools=False)
    assert (bare.u_strength_rel, bare.lacks) == (None, (NO_SCALE, NO_WARE))


def test_a_bottle_from_before_has_no_figure(bottle: ShelfBottle) -> None:
    BottleLine.objects.all()._raw_delete(using="default")
    row = StockBottle.objects.get(code=bottle.code)
    BottleLine(
        bottle=row,
        deed=now().deed,
        act="filled",
        volume_ml=1000.0,
        strength_percent=1.0,
    ).save()
    old = shelf_bottle(bottle.code)
    assert (old.u_strength_rel, old.lacks) == (None, (BEFORE_SPREADS,))


def test_a_bottle_entered_as_it_stood_is_a_guess_of_a_tenth(dye_id: int) -> None:
    guess = entered(dye_id)
    assert guess.u_strength_rel == 0.1
    assert worst(guess) == "strength as labelled: a guess"


@pytest.mark.by_hand
def test_made_up_by_weight_the_grams_say_the_volume(dye_id: int) -> None:
    """1008.2 g less 10 g of powder over 0.9982 g/ml are 1000.0 ml."""
    kitchen = scale(1.0)
    begun = start_making(
        dye_id=dye_id,
        jar_id=None,
        volume_ml=1000.0,
        strength_percent=1.0,
        stamp=now(),
        scale_id=scale(0.01),
        ware_id=kitchen,
    )
    assert begun.is_by_weight
    assert begun.spread is None
    weighed = weigh_powder(making_id=begun.id, powder_g=10.0, stamp=now())
    assert weighed.fill_to_g == pytest.approx(1008.2, abs=0.05)
    assert "until the scale shows" in weighed.steps[6].text
    filled = make_up_by_weight(making_id=begun.id, filled_g=1008.2)
    assert filled.label_percent == pytest.approx(1.0, abs=2e-5)
    bottle = finish_making(making_id=begun.id, stamp=now())
    assert bottle.volume_ml == pytest.approx(1000.0, abs=0.02)
    assert worst(bottle) == "room that the dye takes up in the stock"
    assert {line.name for line in budget(bottle.strength)} >= {
        "reading the scale, powder",
        "reading the scale, finished stock",
    }
    assert bottle.lacks == ()


def test_weighed_anew_after_filling_the_water_is_reckoned_anew(dye_id: int) -> None:
    begun = start_making(
        dye_id=dye_id,
        jar_id=None,
        volume_ml=100.0,
        strength_percent=1.0,
        stamp=now(),
        ware_id=scale(1.0),
    )
    weigh_powder(making_id=begun.id, powder_g=1.0, stamp=now())
    before = make_up_by_weight(making_id=begun.id, filled_g=101.0).final_ml
    after = weigh_powder(making_id=begun.id, powder_g=2.0, stamp=now()).final_ml
    assert before is not None
    assert after is not None
    assert before - after == pytest.approx(1.0, abs=0.005)


def test_a_finished_stock_lighter_than_its_powder_is_refused(dye_id: int) -> None:
    begun = start_making(
        dye_id=dye_id,
        jar_id=None,
        volume_ml=100.0,
        strength_percent=1.0,
        stamp=now(),
        ware_id=scale(1.0),
    )
    weigh_powder(making_id=begun.id, powder_g=1.0, stamp=now())
    with pytest.raises(OutOfRangeError, match="tared with the empty vessel") as refused:
        make_up_by_weight(making_id=begun.id, filled_g=0.5)
    assert refused.value.argument == "filled_g"


def test_another_scale_may_be_taken_at_the_step(dye_id: int) -> None:
    begun = start_making(
        dye_id=dye_id, jar_id=None, volume_ml=500.0, strength_percent=1.0, stamp=now()
    )
    fine, flask = scale(0.01), ware("flask", 500.0)
    choose_scale(making_id=begun.id, tool_id=fine)
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    choose_ware(making_id=begun.id, tool_id=flask)
    make_up(making_id=begun.id, final_ml=500.0)
    spread = making(begun.id).spread
    assert spread is not None
    assert spread.lacks == ()
    # an untold class is B: 0.5/√3 of 500 ml is 0.058 %; 0.01/√6 of 5 g is 0.082 %
    assert spread.strength.u_rel == pytest.approx(0.0010, abs=5e-5)
    choose_scale(making_id=begun.id, tool_id=None)
    unsaid = making(begun.id).spread
    assert unsaid is not None
    assert unsaid.lacks == (NO_SCALE,)


def test_water_comes_with_the_usual_tool_or_the_one_that_is_said(
    bottle: ShelfBottle,
) -> None:
    unknown = add_water(code=bottle.code, volume_ml=100.0, stamp=now())
    assert unknown.lacks == ("what the water was measured with",)
    stamp = now()
    jug = ware("jug", 500.0)
    said = add_water(code=bottle.code, volume_ml=100.0, stamp=stamp, tool_id=jug)
    assert "mark of the 500\u00a0ml jug" in [
        line.name for line in budget(said.strength)
    ]
    undo(deed=stamp.deed, stamp=now())
    assert shelf_bottle(bottle.code).terms == unknown.terms
    set_usual_tools(fill_tool=jug)
    again = add_water(code=bottle.code, volume_ml=100.0, stamp=now())
    assert again.u_strength_rel == pytest.approx(said.u_strength_rel)


def test_powder_comes_with_the_usual_scale(bottle: ShelfBottle) -> None:
    set_usual_tools(powder_scale=scale(0.1))
    strong = add_powder(code=bottle.code, powder_g=5.0, jar_id=None, stamp=now())
    names = [line.name for line in budget(strong.strength)]
    assert "reading the scale, added powder" in names
    assert strong.lacks == ()


@pytest.mark.by_hand
def test_a_weaker_bottle_keeps_the_first_ones_errors(bottle: ShelfBottle) -> None:
    """0.5788 % of the first, 1/√3 of 50 ml is 1.155 %, 5/√3 of 500 ml 0.577 %.

    √(0.5788² + 1.1547² + 0.5774²) = 1.4148 %.
    """
    weaker = _thinned(bottle, now(), ware("cylinder", 100.0), ware("cylinder", 500.0))
    assert weaker.u_strength_rel == pytest.approx(0.014148, abs=5e-7)
    sources = {term.source for term in weaker.terms}
    assert {term.source for term in bottle.terms} <= sources
    bare = _thinned(bottle, now(), None, None)
    assert bare.u_strength_rel == pytest.approx(bottle.u_strength_rel)
    assert bare.lacks == (NO_MEASURE, NO_WARE)


def _thinned(
    bottle: ShelfBottle, stamp: Stamp, measure: int | None, vessel: int | None
) -> ShelfBottle:
    return dilute(
        code=bottle.code,
        want_percent=0.1,
        volume_ml=500.0,
        stamp=stamp,
        about=Particulars(),
        tool_id=measure,
        ware_id=vessel,
    )


def test_one_mistake_stays_one_when_its_halves_meet_again(bottle: ShelfBottle) -> None:
    half = dilute(
        code=bottle.code,
        want_percent=1.0,
        volume_ml=400.0,
        stamp=now(),
        about=Particulars(),
    )
    together = merge(code=bottle.code, from_codes=[half.code], stamp=now())
    assert together.volume_ml == 1000.0
    assert together.strength.u == pytest.approx(bottle.strength.u)


def test_a_guess_merged_in_says_how_wide_it_makes_the_whole(
    dye_id: int, bottle: ShelfBottle
) -> None:
    guess = entered(dye_id, volume_ml=1000.0)
    both = merge(code=bottle.code, from_codes=[guess.code], stamp=now())
    assert worst(both) == "strength as labelled: a guess"
    assert both.u_strength_rel == pytest.approx(0.05, abs=0.001)
