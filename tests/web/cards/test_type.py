"""A card typed back: one key as planned, and only what went differently else."""

from datetime import UTC, datetime
from uuid import uuid4

import pytest
import time_machine
from django.test import Client

from shadewright.records.models import BathLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.recipes import When
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.bottles import draw
from shadewright.workflows.deviations import deviations
from shadewright.workflows.shelf import shelf_bottle
from shadewright.workflows.stamps import stamp_now
from tests.web.cards.sheets import opened
from tests.web.pages_read import read
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


def line(pot: Ready, key: str, act: str = "") -> BathLine:
    lines = BathLine.objects.filter(bath__number=pot.number, step=key)
    return lines.get(act=act) if act else lines.get()


def test_lines_are_those_of_the_card_in_their_order(client: Client, pot: Ready) -> None:
    text = opened(client, pot.number).page.text
    place = 0
    for number, each in enumerate(bath_now(pot.number).steps, start=1):
        place = text.index(f"{number} {' '.join(each.step.title.split())}", place)
    for part in ("Low Tide, version 1", "Fell DK", "60 ml", pot.slate, "looked like"):
        assert part in text


def test_a_card_as_planned_takes_two_taps(client: Client, pot: Ready) -> None:
    """Under ten seconds: no field is touched, and one key has the focus already."""
    sheet = opened(client, pot.number)  # tap 1: the card is opened
    assert 'value="all" autofocus' in sheet.page.source
    answer = sheet.send("all")  # tap 2, or Enter: all as planned
    assert answer.headers["Location"] == f"/baths/{pot.number}/finish/"
    now = bath_now(pot.number)
    assert now.next_step is not None
    assert now.next_step.step.key == "finish"
    assert deviations(now) == ()
    assert shelf_bottle(pot.slate).volume_ml == 440.0
    assert shelf_bottle(pot.gorse).volume_ml == 470.0
    slate = line(pot, "dose-1")
    assert (slate.act, slate.value, slate.unit) == (BathAct.DOSED, 60.0, "ml")
    assert slate.device == "card"
    assert slate.note == "time not noted"


def test_what_went_differently_is_typed_and_nothing_else(
    client: Client, pot: Ready
) -> None:
    sheet = opened(client, pot.number)
    sheet.send(
        dose_1_amount="62,5",
        dose_1_time="9.40",
        dose_2_missed="on",
        look_looked="Grey, tips still yellow",
        top_temperature="88",
        hold_ph="4.5",
        hold_time="1120",
        notes="Second skein a little paler",
    )
    slate = line(pot, "dose-1")
    assert slate.value == 62.5
    assert slate.at == datetime(2026, 11, 25, 9, 40, tzinfo=UTC)
    assert not slate.note
    assert line(pot, "dose-2").act == BathAct.MISSED
    assert line(pot, "look").note == "Grey, tips still yellow; time not noted"
    assert line(pot, "top", BathAct.TEMPERATURE).value == 88.0
    assert line(pot, "hold", BathAct.PH).value == 4.5
    assert line(pot, "hold", BathAct.CHECKED).at.hour == 11
    note = BathLine.objects.get(act=BathAct.NOTE)
    assert note.note == "Second skein a little paler"
    assert shelf_bottle(pot.slate).volume_ml == 437.5
    assert shelf_bottle(pot.gorse).volume_ml == 500.0


def test_rinses_and_the_rack_are_typed_with_the_card_and_taken_back_with_it(
    client: Client, pot: Ready
) -> None:
    sheet = opened(client, pot.number)
    sheet.send("all", finish_rinses="2", finish_rack="16:40")
    rinses = BathLine.objects.filter(act=BathAct.RINSED)
    assert [(x.step, x.at.hour, x.at.minute) for x in rinses] == [("rinse", 16, 40)] * 2
    hung = BathLine.objects.get(act=BathAct.HUNG)
    assert (hung.step, hung.at.hour, hung.device) == ("rack", 16, "card")
    again = opened(client, pot.number).page.source
    assert "finish-rinses" not in again  # what stands is not asked again
    assert "finish-rack" not in again
    client.post(f"/baths/{pot.number}/card/{sheet.shown['deed']}/undo/")
    assert bath_now(pot.number).standing == ()


def test_rinses_alone_are_enough_and_say_that_their_time_is_not_known(
    client: Client, pot: Ready
) -> None:
    tapped(pot.number, BathAct.HUNG, "rack")
    sheet = opened(client, pot.number)
    assert "finish-rack" not in sheet.page.source
    off = {f"{each.step.key}_planned": "" for each in bath_now(pot.number).steps}
    sheet.send(finish_rinses="3", **{k.replace("-", "_"): v for k, v in off.items()})
    rinses = BathLine.objects.filter(act=BathAct.RINSED)
    assert [line.note for line in rinses] == ["time not noted"] * 3
    page = read(client.get(f"/baths/{pot.number}/"))
    assert "no line was written, only the rinses" in page.text


@pytest.mark.parametrize("typed", ["21", "-1", "two"])
def test_rinses_that_cannot_be_are_refused(
    client: Client, pot: Ready, typed: str
) -> None:
    answer = read(opened(client, pot.number).send(finish_rinses=typed))
    assert answer.status == 422
    assert "the rinses must be" in answer.text
    assert not BathLine.objects.exists()


def test_another_bottle_is_drawn_from(client: Client, pot: Ready) -> None:
    opened(client, pot.number).send(dose_1_bottle=f" {pot.gorse.lower()} ")
    assert shelf_bottle(pot.slate).volume_ml == 500.0
    assert shelf_bottle(pot.gorse).volume_ml == 410.0  # 500 - 60 - 30
    assert [each.step for each in deviations(bath_now(pot.number))] == ["dose-1"]


def test_lines_that_are_not_ticked_are_still_to_come(
    client: Client, pot: Ready
) -> None:
    answer = opened(client, pot.number).send(
        look_planned="", top_planned="", hold_planned="", off_planned=""
    )
    assert answer.headers["Location"] == f"/baths/{pot.number}/"
    at_hand = bath_now(pot.number).next_step
    assert at_hand is not None
    assert at_hand.step.key == "look"


def test_lines_ticked_at_the_bench_stay_and_are_not_written_again(
    client: Client, pot: Ready
) -> None:
    tapped(pot.number, BathAct.STARTED, "fill", value=2.9, unit="l")
    said = {"unit": "ml", "bottle": pot.slate}
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60.0, **said)  # type: ignore[arg-type]
    sheet = opened(client, pot.number)
    assert "Done: 60 ml, 18:30" in sheet.page.text
    assert 'name="dose-1-amount"' not in sheet.page.source
    sheet.send("all")
    assert not line(pot, "dose-1").device
    assert shelf_bottle(pot.slate).volume_ml == 440.0


def test_a_line_ticked_meanwhile_is_named(client: Client, pot: Ready) -> None:
    sheet = opened(client, pot.number)
    said = {"unit": "ml", "bottle": pot.slate}
    tapped(pot.number, BathAct.DOSED, "dose-1", value=60.0, **said)  # type: ignore[arg-type]
    sheet.send(dose_1_amount="70")
    page = read(client.get(sheet.address))
    assert "Slate stood already and stays as it was" in page.text
    assert line(pot, "dose-1").value == 60.0


def test_a_dose_that_came_in_parts_is_left_to_the_bench(
    client: Client, pot: Ready
) -> None:
    said = {"unit": "ml", "bottle": pot.slate}
    tapped(pot.number, BathAct.DOSED, "dose-1/part", value=20.0, **said)  # type: ignore[arg-type]
    sheet = opened(client, pot.number)
    assert "Partly in; go on at the bench: 20 ml, 18:30" in sheet.page.text
    sheet.send("all")
    assert not bath_now(pot.number).steps[1].is_done


def test_a_card_sent_twice_is_written_once(client: Client, pot: Ready) -> None:
    sheet = opened(client, pot.number)
    first = sheet.send("all")
    count = BathLine.objects.count()
    second = sheet.send("all")
    assert BathLine.objects.count() == count == 10
    assert first.headers["Location"] == second.headers["Location"]
    assert shelf_bottle(pot.slate).volume_ml == 440.0


def test_one_key_takes_the_whole_card_back(client: Client, pot: Ready) -> None:
    sheet = opened(client, pot.number)
    sheet.send("all", hold_ph="4.5", notes="Wrong card")
    deed = sheet.shown["deed"]
    undo = f"/baths/{pot.number}/card/{deed}/undo/"
    assert undo in read(client.get(sheet.address)).source
    assert client.get(undo).status_code == 405
    answer = client.post(undo)
    assert answer.headers["Location"] == sheet.address
    assert not any(each.is_done for each in bath_now(pot.number).steps)
    assert bath_now(pot.number).standing == ()
    assert shelf_bottle(pot.slate).volume_ml == 500.0
    client.post(undo)
    assert shelf_bottle(pot.slate).volume_ml == 500.0
    assert "All as planned" in opened(client, pot.number).page.text


def test_enter_without_a_script_keeps_all_and_goes_on(
    client: Client, pot: Ready
) -> None:
    sheet = opened(client, pot.number)
    assert sheet.page.source.index('value="next"') < sheet.page.source.index(
        'value="all"'
    )
    page = read(sheet.send("next", dose_1_amount="61", dose_1_time="0940"))
    assert page.status == 200
    assert page.value("dose-1-amount") == "61"
    assert page.value("dose-1-time") == "0940"
    tag = next(x for x in page.source.split("<input") if 'name="dose-2-amount"' in x)
    assert "autofocus" in tag.partition(">")[0]
    assert page.source.count("autofocus") == 1
    assert BathLine.objects.count() == 0


def test_a_card_that_is_written_says_so(client: Client, pot: Ready) -> None:
    opened(client, pot.number).send("all")
    page = opened(client, pot.number).page
    assert "Every line of this card is written down." in page.text
    assert f"{pot.number} gets its lot on the next page" in page.text


def test_a_deed_of_ones_own_is_needed(client: Client, pot: Ready) -> None:
    sheet = opened(client, pot.number)
    page = read(sheet.send("all", deed="not a key"))
    assert page.status == 422
    assert BathLine.objects.count() == 0
    assert client.post(f"/baths/{pot.number}/card/{uuid4()}/undo/").status_code == 302


def test_a_bath_that_was_given_up_says_so(client: Client, pot: Ready) -> None:
    assert "given up" not in opened(client, pot.number).page.text
    tapped(pot.number, BathAct.GIVEN_UP, "")
    sheet = opened(client, pot.number)
    assert "This bath was given up." in sheet.page.text
    sheet.send("all")
    assert "came after the bath was given up" in line(pot, "off").note


def test_a_bottle_that_ran_out_is_set_right(client: Client, pot: Ready) -> None:
    draw(code=pot.slate, volume_ml=450.0, stamp=stamp_now(by=None))
    opened(client, pot.number).send("all")  # 60 ml from the 50 ml of the ledger
    assert line(pot, "dose-1").value == 60.0
    assert shelf_bottle(pot.slate).volume_ml == 0.0


def test_times_of_a_day_to_come_are_refused(client: Client, pot: Ready) -> None:
    with time_machine.travel(datetime(2026, 11, 24, 12, 0, tzinfo=UTC), tick=False):
        page = read(opened(client, pot.number).send(fill_time="0900"))
    assert "got 09:00 on 25 November" in page.fault("fill-time")


@pytest.mark.by_hand
def test_stock_that_was_weighed_is_typed_in_grams(client: Client, pot: Ready) -> None:
    opened(client, pot.number).send(dose_1_amount="60.5 g", dose_2_amount="31")
    slate, gorse = line(pot, "dose-1"), line(pot, "dose-2")
    assert (slate.value, slate.unit, slate.bottle.code) == (60.5, "g", pot.slate)  # type: ignore[union-attr]
    # 60.5 g / 1.0082 g/ml
    assert shelf_bottle(pot.slate).volume_ml == pytest.approx(500 - 60.008, abs=5e-4)
    assert (gorse.value, gorse.unit) == (31, "ml")


def test_acid_on_the_way_up_is_a_line_between_heat_and_top(
    client: Client, evening: datetime
) -> None:
    del evening
    founded()
    number = ready(when=When.ON_THE_WAY, at_c=60.0).number
    keys = [each.step.key for each in bath_now(number).steps]
    assert keys.index("heat") < keys.index("add-1") < keys.index("top")
    opened(client, number).send(add_1_temperature="62", add_1_at="", add_1_ph="4.5")
    reads = BathLine.objects.filter(bath__number=number, step="add-1")
    assert {(each.act, each.value) for each in reads} == {
        (BathAct.ADDED, 2.0),
        (BathAct.TEMPERATURE, 62.0),
        (BathAct.PH, 4.5),
    }
