"""Taps at the pot: written once, never lost, and what does not fit is said."""

from uuid import uuid4

import pytest

from shadewright.errors import MissingError, NotFoundError, OutOfRangeError
from shadewright.records.models import BathLine, BottleLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import BathStatus, bath_now, open_baths
from shadewright.workflows.bench import Tap, keep_tap, tap
from shadewright.workflows.bench_doses import confirm_bottle, dose_asked
from shadewright.workflows.bottles import Look, look_at, pour_away
from shadewright.workflows.deviations import deviations
from shadewright.workflows.shelf import shelf, shelf_bottle
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.workflows.bench import entered, founded
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def dosed(pot: Ready, value: float | None = 60.0, **more: object) -> None:
    said = {"unit": "ml", "bottle": pot.slate, **more}
    tapped(pot.number, BathAct.DOSED, "dose-1", value=value, **said)  # type: ignore[arg-type]


def note_of_last() -> str:
    line = BathLine.objects.last()
    assert line is not None
    return line.note


def test_a_round_from_water_to_heat_off(pot: Ready) -> None:
    assert bath_now(pot.number).status is BathStatus.PLANNED
    for each in bath_now(pot.number).steps[:-1]:
        tapped(pot.number, BathAct.CHECKED, each.step.key)
    last = bath_now(pot.number).next_step
    assert last is not None
    assert last.step.key == "finish"


@pytest.mark.by_hand
def test_a_dose_is_drawn_from_its_bottle(pot: Ready) -> None:
    dosed(pot)
    assert shelf_bottle(pot.slate).volume_ml == 440.0  # 500 - 60
    first = bath_now(pot.number).steps[1]
    assert first.is_done
    assert first.ticks[0].is_drawn


def test_the_same_tap_twice_is_written_once(pot: Ready) -> None:
    what = Tap(
        bath=pot.number,
        act=BathAct.DOSED,
        step="dose-1",
        value=60.0,
        unit="ml",
        bottle=pot.slate,
    )
    stamp = stamp_now(by=None, deed=uuid4())
    keep_tap(what, stamp=stamp)
    keep_tap(what, stamp=stamp)
    assert BathLine.objects.count() == 1
    assert shelf_bottle(pot.slate).volume_ml == 440.0


def test_two_taps_on_one_step_both_stand(pot: Ready) -> None:
    dosed(pot)
    dosed(pot)
    assert bath_now(pot.number).steps[1].is_double


def test_a_form_is_told_what_cannot_be(pot: Ready) -> None:
    stamp = stamp_now(by=None)
    what = Tap(bath=pot.number, act=BathAct.DOSED, step="dose-1", unit="ml")
    with pytest.raises(MissingError, match="Write what went in"):
        tap(what, stamp=stamp)
    for value in (0.0, -3.0, 2e6, float("nan")):
        with pytest.raises(OutOfRangeError, match="The amount must be"):
            tap(Tap(bath=pot.number, act=BathAct.DOSED, value=value), stamp=stamp)
    assert BathLine.objects.count() == 0


@pytest.mark.parametrize("value", [0.0, -3.0, 2e6, float("inf"), float("nan")])
def test_a_tap_with_an_impossible_amount_is_kept_with_a_note(
    pot: Ready, value: float
) -> None:
    dosed(pot, value=value)
    assert "which cannot be" in note_of_last()
    assert bath_now(pot.number).steps[1].is_done
    assert shelf_bottle(pot.slate).volume_ml == 500.0


def test_a_tap_without_an_amount_is_kept_with_a_note(pot: Ready) -> None:
    dosed(pot, value=None)
    assert note_of_last() == "how much went in was not said"


@pytest.mark.parametrize("value", [None, 1e9])
def test_a_dose_of_which_nobody_knows_how_much_is_not_called_left_out(
    pot: Ready, value: float | None
) -> None:
    """It is in the pot: to ask for all of it once more would double it."""
    dosed(pot, value=value)
    (unsaid,) = deviations(bath_now(pot.number))
    assert unsaid.words.replace("\xa0", " ") == (
        "Slate: how much went in is not known; 0.6 % was planned."
    )
    assert (unsaid.missing_ml, unsaid.factor) == (None, None)
    assert "Give no more of it yet" in unsaid.advice


def test_a_bottle_poured_away_keeps_the_tap_and_its_own_ledger(pot: Ready) -> None:
    pour_away(code=pot.slate, stamp=stamp_now(by=None))
    lines = BottleLine.objects.count()
    dosed(pot)
    assert "is gone: nothing drawn there" in note_of_last()
    assert BottleLine.objects.count() == lines
    line = BathLine.objects.get()
    assert line.bottle is not None
    assert line.drawn is None


def test_a_bottle_that_nobody_knows_keeps_the_tap(pot: Ready) -> None:
    dosed(pot, bottle="X9XX")
    assert note_of_last() == "no bottle X9XX is known"


def test_a_bath_that_is_finished_takes_late_taps_with_a_note(pot: Ready) -> None:
    tapped(pot.number, BathAct.FINISHED, "finish")
    dosed(pot)
    assert note_of_last() == "came after the bath was finished"
    assert open_baths() == ()


def test_a_bath_that_nobody_planned_is_refused(pot: Ready) -> None:
    with pytest.raises(NotFoundError):
        tapped(f"{pot.number}9", BathAct.DOSED, "dose-1")


@pytest.mark.by_hand
def test_a_bottle_that_gave_more_had_a_wrong_ledger(pot: Ready) -> None:
    dosed(pot, value=510.0)
    counted = BottleLine.objects.get(act="counted")
    assert counted.note == "gave 10 ml more than the ledger held"  # 510 - 500
    assert shelf_bottle(pot.slate).volume_ml == 0.0


@pytest.mark.by_hand
def test_a_bottle_that_ran_out_is_empty_and_the_next_gives_the_rest(
    pot: Ready,
) -> None:
    other = entered(pot.slate_dye, strength_percent=2.0).code
    tapped(
        pot.number,
        BathAct.DOSED,
        "dose-1/part",
        value=20.0,
        unit="ml",
        bottle=pot.slate,
        is_emptied=True,
    )
    assert shelf_bottle(pot.slate).volume_ml == 0.0
    now = bath_now(pot.number)
    assert now.next_step is not None
    assert now.next_step.step.key == "fill"
    asked = dose_asked(now, now.steps[1], shelf())
    assert asked.code == other
    assert asked.amount == pytest.approx(20.0)  # 0.6 - 0.2 g; 100 x 0.4 / 2
    confirm_bottle(bath=pot.number, step="dose-1", code=other)
    tapped(
        pot.number, BathAct.DOSED, "dose-1/part", value=20.0, unit="ml", bottle=other
    )
    assert bath_now(pot.number).steps[1].is_done
    assert deviations(bath_now(pot.number)) == ()


def test_without_a_next_bottle_the_way_on_is_said(pot: Ready) -> None:
    tapped(
        pot.number,
        BathAct.DOSED,
        "dose-1/part",
        value=20.0,
        unit="ml",
        bottle=pot.slate,
        is_emptied=True,
    )
    now = bath_now(pot.number)
    asked = dose_asked(now, now.steps[1], shelf())
    assert asked.amount is None
    assert "Make a stock, or leave the rest out." in asked.trouble


def test_a_wrong_dye_leaves_the_dose_to_be_given(pot: Ready) -> None:
    tapped(
        pot.number,
        BathAct.DOSED,
        "dose-1/part",
        value=60.0,
        unit="ml",
        bottle=pot.gorse,
    )
    first = bath_now(pot.number).steps[1]
    assert not first.is_done
    assert first.parts[0].dye == "Gorse"
    assert shelf_bottle(pot.gorse).volume_ml == 440.0


def test_the_bottle_on_the_card_is_confirmed(pot: Ready) -> None:
    confirm_bottle(bath=pot.number, step="dose-1", code=pot.slate)


def test_a_bottle_is_refused_that_is_not_on_the_card(pot: Ready) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        confirm_bottle(bath=pot.number, step="dose-1", code=pot.gorse)
    assert refused.value.sentence == (
        f"The bottle for this dose must be {pot.slate}, as on the card; "
        f"got {pot.gorse} (Gorse)."
    )
    with pytest.raises(NotFoundError):
        confirm_bottle(bath=pot.number, step="fill", code=pot.slate)
    with pytest.raises(NotFoundError):
        confirm_bottle(bath=pot.number, step="dose-1", code="X9XX")


def test_a_settled_and_an_empty_bottle_are_refused(pot: Ready) -> None:
    look_at(code=pot.slate, look=Look.SETTLED, stamp=stamp_now(by=None))
    with pytest.raises(OutOfRangeError, match="settled"):
        confirm_bottle(bath=pot.number, step="dose-1", code=pot.slate)
    pour_away(code=pot.slate, stamp=stamp_now(by=None))
    with pytest.raises(OutOfRangeError, match="empty"):
        confirm_bottle(bath=pot.number, step="dose-1", code=pot.slate)


@pytest.mark.by_hand
def test_a_dose_that_went_differently_says_what_it_does(pot: Ready) -> None:
    dosed(pot, value=66.0)
    tapped(pot.number, BathAct.MISSED, "dose-2")
    over, missed = deviations(bath_now(pot.number))
    # 66 ml of 1 % on 100 g are 0.66 %, a tenth more than 0.6 %
    assert over.words.replace("\xa0", " ") == (
        "Slate: 0.66 % instead of 0.6 %, 10 % deeper."
    )
    assert "cannot be taken out" in over.advice
    assert over.missing_ml is None
    assert missed.words.replace("\xa0", " ") == ("Gorse: left out; 0.3 % was planned.")
    assert missed.missing_ml == pytest.approx(30.0)


@pytest.mark.by_hand
def test_a_share_of_a_split_dose_is_weighed_against_the_whole() -> None:
    pot = ready(bottle_ml=100.0)
    entered(pot.slate_dye, volume_ml=25.0)
    number = pot.another()
    first, second = (
        each.step for each in bath_now(number).steps if each.step.title == "Slate"
    )
    assert (first.amount or 0) + (second.amount or 0) == pytest.approx(60.0)
    poured = (first.amount or 0) + 6.0
    tapped(number, BathAct.DOSED, "dose-1", value=poured, unit="ml", bottle=first.code)
    (over,) = deviations(bath_now(number))
    # 6 ml of 1 % on 100 g are 0.06 % more than 0.6 %, a tenth
    assert over.words.replace("\xa0", " ") == (
        "Slate: 0.66 % instead of 0.6 %, 10 % deeper."
    )


def test_undo_gives_the_dose_back_to_its_bottle(pot: Ready) -> None:
    deed = tapped(
        pot.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate
    )
    undo(deed=deed, stamp=stamp_now(by=None))
    assert shelf_bottle(pot.slate).volume_ml == 500.0
    assert not bath_now(pot.number).steps[1].is_done
    assert bath_now(pot.number).standing == ()
