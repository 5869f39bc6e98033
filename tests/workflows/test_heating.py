"""How long a pot takes on its burner: guessed, then learned from the ledgers."""

from dataclasses import dataclass
from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from shadewright.core.baths import Leg
from shadewright.core.baths.heating import Pace
from shadewright.records.models import Bath, HeatSource, Pot
from shadewright.records.models.baths import BathAct
from shadewright.records.models.catalogue import SourceKind
from shadewright.records.recipe_reads import version_row
from shadewright.workflows.bath_pages import bath_now, open_baths
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import keep_bath, plan_bath
from shadewright.workflows.heat_words import evidence_words, step_words, way_words
from shadewright.workflows.heating import BathHeat, heat_of_plan, top_caution
from shadewright.workflows.recipe_shapes import RecipeText
from shadewright.workflows.recipes import version, write_version
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.studio import set_altitude
from shadewright.workflows.undo import undo
from tests.workflows.asked import asked_by
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = [pytest.mark.django_db, pytest.mark.one_store]


@dataclass(frozen=True)
class Kitchen:
    """A planned recipe, a pot and a ring."""

    bath: Ready
    pot: Pot
    ring: HeatSource

    def wish(self, *, version_id: int | None = None, ring: bool = True) -> BathWish:
        return BathWish(
            version_id=version_id or self.bath.version,
            base_id=self.bath.base,
            fibre_g=100.0,
            dyed_on=today(),
            pot_id=self.pot.pk,
            source_id=self.ring.pk if ring else None,
        )

    def planned(self, *, version_id: int | None = None, ring: bool = True) -> str:
        wish = self.wish(version_id=version_id, ring=ring)
        return keep_bath(wish=wish, stamp=stamp_now(by=None))

    def heated(self, minutes: float, *, version_id: int | None = None) -> str:
        """Tick a bath from heat on to the top."""
        number = self.planned(version_id=version_id)
        tapped(number, BathAct.HEAT_ON, "heat", at=ago(minutes=minutes + 60))
        tapped(number, BathAct.AT_TOP, "top", at=ago(minutes=60))
        return number

    def heat(self, *, version_id: int | None = None) -> BathHeat:
        found = plan_bath(self.wish(version_id=version_id)).heating.heat
        assert found is not None
        return found

    def version_of(self, **heat: object) -> int:
        """Write a version that is heated otherwise."""
        parent = version(self.bath.version)
        plain = {
            name: getattr(parent.text, name)
            for name in ("doses", "helpers", "start_c", "rise_c_per_min", "top_c")
        }
        text = RecipeText(**(plain | heat))
        return write_version(
            parent_id=parent.id, text=text, stamp=stamp_now(by=None)
        ).id


@pytest.fixture
def kitchen() -> Kitchen:
    founded()
    pot = Pot.objects.create(name="Blue pot", volume_l=12.0, mass_kg=2.0)
    ring = HeatSource.objects.create(name="Left ring", kind="induction", power_kw=1.8)
    return Kitchen(bath=ready(), pot=pot, ring=ring)


@pytest.mark.by_hand
def test_before_any_timing_it_is_a_guess(kitchen: Kitchen) -> None:
    """3 l x 0.9922 x 4.187 x 50 = 623 kJ, wool 7, pot 50: 680 kJ = 0.189 kWh.

    60 x 0.189 / (1.8 x 0.85) = 7.4 min; of the recipe's 50 min.
    """
    heat = kitchen.heat()
    assert heat.full.count == 0
    assert heat.full.minutes == pytest.approx(7.41, abs=0.03)
    assert heat.way.minutes == pytest.approx(50.0)
    assert heat.rise is not None
    assert heat.rise.pace is Pace.RUNS_AHEAD
    words = step_words(heat).replace("\u00a0", " ")
    assert words.startswith("50 min, as the recipe says; at full power 7 to 8 min")
    assert "a guess: no heat-up of this pot on this burner is timed yet" in words
    assert "Turn it down to about 15 %." in words


@pytest.mark.by_hand
def test_one_timing_replaces_the_guess(kitchen: Kitchen) -> None:
    """At full power in 20 min in place of the recipe's 50."""
    kitchen.heated(20.0)
    heat = kitchen.heat()
    assert heat.full.count == 1
    assert heat.full.minutes == pytest.approx(20.0, rel=1e-3)
    assert heat.full.least < 20.0 < heat.full.most
    assert evidence_words(heat) == "from 1 heat-up of this pot here"


def test_several_timings_are_averaged_and_their_spread_told(kitchen: Kitchen) -> None:
    for minutes in (19.0, 20.0, 21.0):
        kitchen.heated(minutes)
    heat = kitchen.heat()
    assert heat.full.minutes == pytest.approx(20.0, rel=0.01)
    assert evidence_words(heat) == "from 3 heat-ups of this pot here"
    assert "at full power 17 to 23" in step_words(heat).replace("\u00a0", " ")


def test_a_pace_that_was_kept_by_hand_teaches_nothing(kitchen: Kitchen) -> None:
    kitchen.heated(50.0)
    heat = kitchen.heat()
    assert (heat.full.count, heat.kept) == (0, 1)
    assert evidence_words(heat) == "a guess: 1 heat-up here kept a recipe’s pace"


def test_another_pot_or_another_ring_teaches_nothing(kitchen: Kitchen) -> None:
    number = kitchen.heated(20.0)
    other = HeatSource.objects.create(name="Gas", kind="gas", power_kw=3.0)
    Bath.objects.filter(number=number).update(source=other)
    assert kitchen.heat().full.count == 0
    pot = Pot.objects.create(name="Red pot", volume_l=12.0)
    Bath.objects.filter(number=number).update(source=kitchen.ring, pot=pot)
    assert kitchen.heat().full.count == 0


def test_a_tick_that_was_taken_back_teaches_nothing(kitchen: Kitchen) -> None:
    number = kitchen.planned()
    tapped(number, BathAct.HEAT_ON, "heat", at=ago(minutes=80))
    deed = tapped(number, BathAct.AT_TOP, "top", at=ago(minutes=60))
    assert kitchen.heat().full.count == 1
    undo(deed=deed, stamp=stamp_now(by=None))
    assert kitchen.heat().full.count == 0


@pytest.mark.by_hand
def test_a_reading_counts_more_than_the_recipe(kitchen: Kitchen) -> None:
    """From 15 °C, not 40: 75 degrees in 30 min; the next 50 take 20."""
    number = kitchen.planned()
    cold = {"value": 15.0, "unit": "°C"}
    tapped(number, BathAct.TEMPERATURE, "heat", at=ago(minutes=91), **cold)  # type: ignore[arg-type]
    tapped(number, BathAct.HEAT_ON, "heat", at=ago(minutes=90))
    tapped(number, BathAct.AT_TOP, "top", at=ago(minutes=60))
    assert kitchen.heat().full.minutes == pytest.approx(20.0, abs=0.2)


@pytest.mark.parametrize("minutes", [0.5, 400.0])
def test_a_time_that_cannot_be_meant_is_passed_over(
    kitchen: Kitchen, minutes: float
) -> None:
    kitchen.heated(minutes)
    assert kitchen.heat().full.count == 0


@pytest.mark.by_hand
def test_a_ring_that_is_too_weak_says_so(kitchen: Kitchen) -> None:
    """0.189 kWh on 0.2 kW x 0.85: 67 min, 0.75 °C a minute in place of 1."""
    HeatSource.objects.update(power_kw=0.2)
    kitchen.ring.refresh_from_db()
    heat = kitchen.heat()
    assert heat.rise is not None
    assert heat.rise.pace is Pace.TOO_SLOW
    assert heat.way.minutes == pytest.approx(66.7, abs=0.3)
    assert "cannot be kept" in step_words(heat)
    assert way_words(heat).endswith("is timed yet.")


@pytest.mark.by_hand
def test_stops_on_the_way_are_taken_off_what_is_learned(kitchen: Kitchen) -> None:
    """Half an hour to the top with 15 min held: 15 min of heating for 50 degrees."""
    stop = Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0)
    stopped = kitchen.version_of(stops=(stop,))
    kitchen.heated(30.0, version_id=stopped)
    assert kitchen.heat().full.minutes == pytest.approx(15.0, rel=1e-3)
    heat = kitchen.heat(version_id=stopped)
    assert heat.way.minutes == pytest.approx(65.0)


def test_a_pot_takes_its_last_ring_again(kitchen: Kitchen) -> None:
    kitchen.planned()
    number = kitchen.planned(ring=False)
    assert Bath.objects.get(number=number).source_id == kitchen.ring.pk
    HeatSource.objects.update(is_retired=True)
    assert Bath.objects.get(number=kitchen.planned(ring=False)).source_id is None


def test_without_pot_ring_or_top_nothing_is_said(kitchen: Kitchen) -> None:
    assert bath_now(kitchen.bath.number).heat is None
    open_top = kitchen.version_of(top_c=None)
    assert plan_bath(kitchen.wish(version_id=open_top)).heating.heat is None


def test_a_pot_said_to_stand_on_a_steamer_is_planned_without_minutes(
    kitchen: Kitchen,
) -> None:
    kitchen.ring.kind = SourceKind.STEAMER
    kitchen.ring.save()
    assert plan_bath(kitchen.wish()).heating.heat is None
    assert bath_now(kitchen.planned()).heat is None


def test_more_open_baths_ask_the_store_no_more(kitchen: Kitchen) -> None:
    kitchen.heated(20.0)
    kitchen.planned()
    counts = []
    for _ in range(2):
        kitchen.planned()
        with CaptureQueriesContext(connection) as asked:
            assert open_baths()[-1].heat is not None
        counts.append(len(asked))
    assert counts[0] == counts[1]


def test_the_heat_of_a_plan_asks_nothing_twice(kitchen: Kitchen) -> None:
    row = version_row(kitchen.version_of(top_c=90.0))
    asked = asked_by(
        lambda: heat_of_plan(
            row,
            pot_id=kitchen.pot.pk,
            source_id=kitchen.ring.pk,
            fibre_g=100.0,
            liquor_ml=3000.0,
        )
    )
    assert len(set(asked)) == len(asked)


def test_where_no_start_is_said_it_is_guessed(kitchen: Kitchen) -> None:
    heat = kitchen.heat(version_id=kitchen.version_of(start_c=None))
    assert heat.is_start_guessed
    assert heat.start_c == 20.0
    assert heat.rise is None


def test_high_up_the_boil_comes_first(kitchen: Kitchen) -> None:
    hot = kitchen.version_of(top_c=98.0)
    assert not plan_bath(kitchen.wish(version_id=hot)).heating.caution
    set_altitude(1600.0)
    plan = plan_bath(kitchen.wish(version_id=hot)).heating
    assert "98\u00a0°C cannot be reached" in plan.caution
    assert plan.heat is not None
    assert plan.heat.top_c == pytest.approx(94.6, abs=0.1)
    assert not top_caution(None)


def test_the_steps_at_the_pot_say_the_same(kitchen: Kitchen) -> None:
    for minutes in (19.0, 20.0):
        kitchen.heated(minutes)
    now = bath_now(kitchen.planned())
    (step,) = (each.step for each in now.steps if each.step.key == "heat")
    assert "from 2 heat-ups of this pot here" in step.text
    assert step.timer_min == 50.0
    assert now.source_name == "Left ring"


def test_a_bath_does_not_learn_from_itself(kitchen: Kitchen) -> None:
    heat = bath_now(kitchen.heated(20.0)).heat
    assert heat is not None
    assert heat.full.count == 0


def test_a_later_tick_of_a_second_phone_changes_nothing(kitchen: Kitchen) -> None:
    number = kitchen.heated(20.0)
    late = ago(minutes=60) + timedelta(minutes=25)
    tapped(number, BathAct.AT_TOP, "top", at=late)
    assert kitchen.heat().full.minutes == pytest.approx(20.0, rel=1e-3)
