"""Stock that goes on the scale: asked for, poured, drawn and traced in grams."""

from dataclasses import replace

import pytest

from shadewright.core.baths import weighed_mass_g
from shadewright.records import recipe_reads
from shadewright.records.models import BathLine, MeasuringTool
from shadewright.records.models.baths import BathAct
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.baths import keep_bath
from shadewright.workflows.bench_doses import DoseAsked, dose_asked
from shadewright.workflows.deviations import deviations
from shadewright.workflows.planned_baths import wish_of
from shadewright.workflows.poured import poured_bath
from shadewright.workflows.shelf import shelf, shelf_bottle
from shadewright.workflows.tools_at_hand import DosingWish
from shadewright.workflows.usual_tools import set_usual_tools
from tests.workflows.bench import founded, now
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def scale() -> int:
    founded()
    return MeasuringTool.objects.create(
        name="Kitchen scale", kind=ToolKind.BALANCE, readability=0.1
    ).pk


@pytest.fixture
def pot(scale: int) -> Ready:
    """A bath of 60 ml Slate and 30 ml Gorse, both by weight on a scale of 0.1 g."""
    del scale
    first = ready()
    wish = replace(wish_of(first.number), dosing=DosingWish(is_by_weight=True))
    return replace(first, number=keep_bath(wish=wish, stamp=now()))


def asked(number: str, step: str) -> DoseAsked:
    bath = bath_now(number)
    each = next(x for x in bath.steps if x.step.key == step)
    return dose_asked(bath, each, shelf())


@pytest.mark.by_hand
def test_the_pot_asks_for_what_the_scale_can_show(pot: Ready) -> None:
    slate = asked(pot.number, "dose-1")
    # 60 ml x 1.0082 g/ml = 60.49 g
    assert (slate.amount, slate.unit, slate.scale_g) == (60.5, "g", None)
    assert slate.volume_ml == pytest.approx(60)
    step = bath_now(pot.number).steps[1].step
    assert step.text == ("Put the jug on the scale, press tare, pour to 60.5\u00a0g.")


@pytest.mark.by_hand
def test_grams_are_drawn_as_millilitres(pot: Ready, scale: int) -> None:
    before = shelf_bottle(pot.slate).volume_ml
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60.5, unit="g", bottle=pot.slate)
    # 60.5 g / 1.0082 g/ml
    drawn = before - shelf_bottle(pot.slate).volume_ml
    assert drawn == pytest.approx(60.008, abs=5e-4)
    line = BathLine.objects.get(step="dose-1")
    assert (line.value, line.unit, line.tool_id) == (60.5, "g", scale)
    slate = bath_now(pot.number).steps[1]
    assert slate.is_done
    assert slate.dose is not None
    assert slate.dose.given_g == pytest.approx(0.60008, abs=5e-6)
    assert deviations(bath_now(pot.number)) == ()


@pytest.mark.by_hand
def test_too_much_on_the_scale_is_too_deep(pot: Ready) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66.5, unit="g", bottle=pot.slate)
    (found,) = deviations(bath_now(pot.number))
    # 66.5/60.49 = 1.099
    assert "0.66\u00a0% instead of 0.6\u00a0%" in found.words


def test_a_part_leaves_its_rest_in_grams(pot: Ready) -> None:
    tapped(
        pot.number,
        BathAct.DOSED,
        "dose-1/part",
        value=20.2,
        unit="g",
        bottle=pot.slate,
    )
    rest = asked(pot.number, "dose-1")
    assert rest.unit == "g"
    assert rest.amount == pytest.approx(60.49 - 20.2, abs=0.06)
    assert rest.volume_ml is not None
    back_g = weighed_mass_g(volume_ml=rest.volume_ml, strength_percent=1)
    assert rest.amount == pytest.approx(back_g, abs=0.05)


@pytest.mark.by_hand
def test_the_true_depth_is_as_sure_as_the_scale_was(pot: Ready) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60.5, unit="g", bottle=pot.slate)
    poured = poured_bath(recipe_reads.bath_row(pot.number))
    assert poured.depth_percent("Slate") == pytest.approx(0.60008, abs=5e-6)
    how = poured.how_sure("Slate")
    assert how is not None
    assert how.lacks == ()
    assert how.sure is not None
    assert how.sure.depth.value == pytest.approx(0.60008, abs=5e-6)
    names = {term.name for term in how.sure.depth.terms}
    assert {"reading the scale, Slate", "the scale itself, Slate"} <= names
    assert poured.how_sure("Gorse") is None  # nobody ticked it


def test_millilitres_of_a_bath_by_weight_come_from_the_usual_tool(
    pot: Ready, scale: int
) -> None:
    syringe = MeasuringTool.objects.create(name="S", kind=ToolKind.SYRINGE, size=20)
    set_usual_tools(dose_tool=syringe.pk)
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60, unit="ml", bottle=pot.slate)
    assert BathLine.objects.get(step="dose-1").tool_id == syringe.pk
    set_usual_tools(powder_scale=scale)
    other = pot.another()
    tapped(other, BathAct.DOSED, "dose-1", value=60.5, unit="g", bottle=pot.slate)
    line = BathLine.objects.get(bath__number=other, step="dose-1")
    assert line.tool_id == scale


def test_dry_dye_stays_in_grams_of_dye(scale: int) -> None:
    founded_pot = ready(bottle_ml=20.0)
    tapped(founded_pot.number, BathAct.DOSED, "dose-1", value=0.6, unit="g")
    dose = bath_now(founded_pot.number).steps[1].dose
    assert dose is not None
    assert dose.given_g == pytest.approx(0.6)
    del scale
