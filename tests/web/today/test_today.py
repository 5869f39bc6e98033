"""Today: what waits, in the studio and in the demo."""

from datetime import UTC, datetime, timedelta

import pytest
from django.test import Client
from django.utils import timezone
from pytest_django.fixtures import Settings
from time_machine import TimeMachineFixture

from shadewright.records.models import Dye
from shadewright.workflows.bottles import Look, draw, enter_bottle, look_at
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import count_jar
from shadewright.workflows.judging.snips import keep_snip
from shadewright.workflows.labels import print_labels
from shadewright.workflows.making import start_making, weigh_powder
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.studio import found_studio, own_studio_wanted
from tests.web.benches import Bench, small_bench
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE
from tests.workflows.judging.checked import check, held_to_standard

pytestmark = pytest.mark.django_db


@pytest.fixture
def bench() -> Bench:
    return small_bench()


def bottle(bench: Bench, *, days_old: int = 1, is_labelled: bool = True) -> ShelfBottle:
    about = Particulars(made_on=today() - timedelta(days=days_old))
    entered = enter_bottle(
        dye_id=bench.dye,
        strength_percent=1.0,
        volume_ml=500.0,
        stamp=stamp_now(by=None),
        about=about,
    )
    if is_labelled:
        print_labels(codes=[entered.code], format_key="a4-21")
    return entered


def with_data_sheets() -> None:
    Dye.objects.update(data_sheet_link="https://example.org/sheet.pdf")


def look(client: Client) -> Answer:
    return read(client.get("/"))


@pytest.mark.usefixtures("bench")
def test_the_day_stands_at_the_head(
    client: Client, time_machine: TimeMachineFixture
) -> None:
    time_machine.move_to(datetime(2026, 11, 25, 12, tzinfo=UTC))
    page = look(client)
    assert "<h1>Wednesday 25 November</h1>" in page.source
    assert "/stocks/new/" in page.links
    assert "/find/" in page.links


def test_an_empty_studio_is_calm_and_shows_how_to_begin(client: Client) -> None:
    found_studio(name="Test studio", person="Ines")
    page = look(client)
    assert "Nothing waits yet" in page.text
    assert {"/jars/new/", "/shelf/enter/", "/stocks/new/"} <= set(page.links)


def test_nothing_waits_where_all_is_well(client: Client, bench: Bench) -> None:
    with_data_sheets()
    bottle(bench)
    page = look(client)
    assert "Nothing waits" in page.text
    assert "1 bottle on the shelf, and none asks for a hand." in page.text


def test_a_stock_in_the_making_is_first_and_goes_on(
    client: Client, bench: Bench
) -> None:
    begun = start_making(
        dye_id=bench.dye,
        jar_id=bench.jar,
        volume_ml=500.0,
        strength_percent=1.0,
        stamp=stamp_now(by=None),
    )
    weigh_powder(making_id=begun.id, powder_g=5.2, stamp=stamp_now(by=None))
    page = look(client)
    assert "Next, step 3 of 8: Wet it to a paste." in page.text
    assert f"/stocks/making/{begun.id}/" in page.links
    assert page.source.count("button first") == 1


def test_each_trouble_has_its_reason_and_one_key(client: Client, bench: Bench) -> None:
    settled, old, low = bottle(bench), bottle(bench, days_old=300), bottle(bench)
    look_at(code=settled.code, look=Look.SETTLED, stamp=stamp_now(by=None))
    draw(code=low.code, volume_ml=450.0, stamp=stamp_now(by=None))
    page = look(client)
    assert f"Bottle {settled.code} Slate has settled" in page.text
    assert f"Bottle {old.code} Slate is past its time" in page.text
    assert f"Bottle {low.code} Slate is nearly empty" in page.text
    assert f"/bottles/{settled.code}/" in page.links
    assert f"/stocks/new/?dye={bench.dye}" in page.links


def test_many_with_the_same_trouble_stand_in_one_line(
    client: Client, bench: Bench
) -> None:
    old = [bottle(bench, days_old=300) for _ in range(4)]
    page = look(client)
    assert "4 bottles: each is past its time" in page.text
    assert all(f"{one.code} Slate" in page.text for one in old)
    assert "/shelf/" in page.links


def test_bottles_that_want_a_label_stand_in_one_line(
    client: Client, bench: Bench
) -> None:
    one = bottle(bench, is_labelled=False)
    page = look(client)
    assert "1 bottle wants a label" in page.text
    assert f"{one.code} Slate" in page.text
    assert "/labels/" in page.links


def test_a_jar_that_is_nearly_empty(client: Client, bench: Bench) -> None:
    count_jar(jar_id=bench.jar, reading_g=6.0, stamp=stamp_now(by=None))
    page = look(client)
    assert "Jar J-1 Slate is nearly empty" in page.text
    assert "6 g left." in page.text
    assert f"/jars/{bench.jar}/" in page.links


@pytest.mark.usefixtures("bench")
def test_dyes_without_a_data_sheet_are_named_in_one_line(client: Client) -> None:
    page = look(client)
    assert "2 dyes have no safety data sheet Peat, Slate." in page.text
    with_data_sheets()
    assert "no safety data sheet" not in look(client).text


def test_hostile_names_are_shown_as_words(client: Client, bench: Bench) -> None:
    Dye.objects.filter(pk=bench.dye).update(name=HOSTILE)
    bottle(bench, is_labelled=False)
    page = look(client)
    assert HOSTILE in page.text
    assert HOSTILE not in page.source


@pytest.mark.usefixtures("bench")
def test_only_the_demo_offers_a_studio_of_ones_own(
    client: Client, settings: Settings
) -> None:
    assert "demo studio" not in look(client).text
    settings.IS_DEMO = True
    page = look(client)
    assert "This is the demo studio" in page.text
    assert 'action="/own-studio/"' in page.source


@pytest.mark.usefixtures("bench")
def test_without_a_server_the_line_to_type_is_shown(client: Client) -> None:
    page = read(client.post("/own-studio/"))
    assert "python3 start.py serve" in page.text
    assert "shadewright serve" in page.text
    assert client.get("/own-studio/").status_code == 405


@pytest.mark.usefixtures("bench")
def test_the_address_of_ones_own_studio_is_a_link(client: Client) -> None:
    def opened(**_kwargs: object) -> str:
        return "http://127.0.0.1:8001/"

    own_studio_wanted.connect(opened, weak=False)
    try:
        page = read(client.post("/own-studio/"))
    finally:
        own_studio_wanted.disconnect(opened)
    assert "http://127.0.0.1:8001/" in page.links
    assert "python3 start.py serve" in page.text


def test_the_shelf_is_not_changed_by_looking(client: Client, bench: Bench) -> None:
    bottle(bench)
    before = shelf()
    look(client)
    assert shelf() == before


def test_a_snip_waits_until_it_is_read(
    client: Client, time_machine: TimeMachineFixture
) -> None:
    time_machine.move_to(datetime(2026, 11, 24, 14, 0, tzinfo=UTC), tick=False)
    _pot, _first, lot = held_to_standard()
    keep_snip(lot, minutes=20.0, stamp=stamp_now(by=None))
    page = read(client.get("/"))
    dry_at = timezone.localtime() + timedelta(minutes=20)
    assert f"The snip of {lot} is dry at {dry_at:%H:%M}" in page.text
    assert f"/lots/{lot}/snip/" in page.links
    time_machine.shift(timedelta(minutes=25))
    page = read(client.get("/"))
    assert f"The snip of {lot} is dry since {dry_at:%H:%M}" in page.text
    assert f"/lots/{lot}/check/" in page.links
    check(lot, "50, 0, 0\n50, 0, 0")
    assert "The snip of" not in read(client.get("/")).text
    keep_snip(lot, minutes=20.0, stamp=stamp_now(by=None))
    time_machine.shift(timedelta(days=4))
    assert "The snip of" not in read(client.get("/")).text
