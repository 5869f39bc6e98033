"""The papers of a day, how it went, all off, and the rack, as pages."""

from datetime import UTC, date, datetime
from typing import TYPE_CHECKING
from uuid import uuid4

import pytest
import time_machine
from django.test import Client

from shadewright.records.models import DayLine, Dye
from shadewright.records.models.baths import BathAct
from tests.paper.pictures import words_on
from tests.web.pages_read import read
from tests.web.sample import HOSTILE

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tests.workflows.days.planned_day import PlannedDay

pytestmark = pytest.mark.django_db

DAY = date(2026, 11, 26)
AFTER, OFF = f"/days/{DAY}/after/", f"/days/{DAY}/off/"


@pytest.fixture
def day(db: None) -> "Iterator[PlannedDay]":
    """Two baths and their plan, at seven in the evening."""
    from tests.workflows.days.planned_day import planned_day

    del db
    with time_machine.travel(datetime(2026, 11, 26, 19, tzinfo=UTC), tick=False):
        yield planned_day()


def heat(number: str, *, is_off: bool = True) -> None:
    from tests.workflows.days.planned_day import at
    from tests.workflows.pots import tapped

    tapped(number, BathAct.STARTED, "fill", at=at(8, 10))
    tapped(number, BathAct.HEAT_ON, "heat", at=at(8, 33))
    if is_off:
        tapped(number, BathAct.HEAT_OFF, "off", at=at(10, 10))


@pytest.mark.parametrize(
    ("name", "paper"),
    [("sheet", "a4"), ("soak", "a5"), ("pull", "letter"), ("cards", "a5")],
)
def test_papers_open_as_pdf(
    client: Client, day: "PlannedDay", name: str, paper: str
) -> None:
    answer = client.get(f"/days/{DAY}/{name}.pdf", {"paper": paper})
    assert answer.headers["Content-Type"] == "application/pdf"
    assert "2026-11-26" in answer.headers["Content-Disposition"]
    assert day.first[7:] in words_on(answer.content)


@pytest.mark.parametrize("name", ["sheet", "soak", "pull", "cards"])
@pytest.mark.usefixtures("day")
def test_what_cannot_be_printed_is_said(client: Client, name: str) -> None:
    empty = read(client.get(f"/days/2026-12-01/{name}.pdf"))
    assert empty.status == 422
    assert "A bath" in empty.text
    wrong = read(client.get(f"/days/{DAY}/{name}.pdf", {"paper": HOSTILE}))
    assert wrong.status == 422
    assert HOSTILE not in wrong.source
    assert client.get(f"/days/2026-02-30/{name}.pdf").status_code == 404


def test_a_day_is_told_side_by_side(client: Client, day: "PlannedDay") -> None:
    heat(day.first)
    page = read(client.get(AFTER))
    for part in (
        "0 of 2 baths finished, the last heat off at 10:10, 27 min later.",
        "Heat on 08:21 08:33 12 min later",
        "It was not begun.",
        "Water, an estimate Soaks 2 l, baths 5.82 l, rinses 15 l",
        "Each burner at its full power from heat on to heat off",
        "A usual value, a guess: 0 timings of yours so far, 5 are wanted.",
        "Follow your local rules",
    ):
        assert part in page.text, part
    assert f"/baths/{day.first}/card/" in page.links
    assert f"/baths/{day.first}/pour-away/" in page.links
    assert f"/days/{DAY}/pull.pdf" in page.links


def test_nothing_says_that_a_bath_may_be_poured(
    client: Client, day: "PlannedDay"
) -> None:
    Dye.objects.update(is_metal_complex=True)
    heat(day.first)
    text = read(client.get(AFTER)).text
    assert "holds a metal" in text
    for said in ("may be poured", "can be poured", "is safe", "allowed"):
        assert said not in text


def test_meters_are_written_and_taken_back(client: Client, day: "PlannedDay") -> None:
    for shown in ("1204,5", "1207 kWh"):
        sent = {"deed": uuid4(), "power": shown, "note": ""}
        assert client.post(AFTER, sent).status_code == 302
    text = read(client.get(AFTER)).text
    assert "between its first and last reading. 2.5 kWh" in text
    assert "Power read 1204.5 kWh" in text
    last = DayLine.objects.order_by("-id")[0]
    client.post(f"/undo/{last.deed}/", {"next": AFTER})
    assert "2.5 kWh" not in read(client.get(AFTER)).text
    assert day.first


@pytest.mark.usefixtures("day")
@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"water": "much"}, "water", "Water meter"),
        ({"power": "3 l"}, "power", "Power meter"),
        ({"power": "-1"}, "power", "Power meter"),
    ],
)
def test_a_reading_that_cannot_be_stays_to_be_mended(
    client: Client, typed: dict[str, str], field: str, sentence: str
) -> None:
    page = read(client.post(AFTER, {"deed": uuid4(), **typed}))
    assert page.status == 422
    assert sentence in page.fault(field)
    assert not DayLine.objects.exists()


@pytest.mark.usefixtures("day")
def test_a_meter_that_runs_backwards_is_told_by_its_field(client: Client) -> None:
    client.post(AFTER, {"deed": uuid4(), "water": "88.2"})
    page = read(client.post(AFTER, {"deed": uuid4(), "water": "82.8"}))
    assert page.status == 422
    assert "at least 88.2" in page.fault("water")


def test_all_off_is_said_once_and_undone(client: Client, day: "PlannedDay") -> None:
    heat(day.first)
    page = read(client.get(OFF))
    assert "Burner 1 1.8 kW off, as ticked" in page.text
    assert "Look at each one" in page.text
    sent = {"deed": page.value("deed")}
    assert client.post(OFF, sent).headers["Location"] == AFTER
    client.post(OFF, sent)
    assert DayLine.objects.count() == 1
    assert "Said at 19:00" in read(client.get(OFF)).text
    client.post(f"/undo/{DayLine.objects.get().deed}/", {"next": OFF})
    assert "Said at" not in read(client.get(OFF)).text


def test_a_heat_that_is_not_ticked_off_is_named(
    client: Client, day: "PlannedDay"
) -> None:
    heat(day.first, is_off=False)
    page = read(client.get(OFF))
    assert "on, as ticked" in page.text
    assert f"/bench/{day.first}/" in page.links
    client.post(OFF, {"deed": page.value("deed")})
    assert "not ticked as off: B2 Low Tide" in read(client.get(AFTER)).text


@pytest.mark.usefixtures("day")
def test_nobody_says_all_off_of_a_day_to_come(client: Client) -> None:
    page = read(client.post("/days/2026-11-27/off/", {"deed": uuid4()}))
    assert page.status == 422
    assert "today or earlier" in page.text


def test_yarn_goes_on_the_rack_and_off(client: Client, day: "PlannedDay") -> None:
    from tests.workflows.days.planned_day import at
    from tests.workflows.pots import tapped

    assert "Nothing hangs on the rack" in read(client.get("/rack/")).text
    heat(day.first)
    assert f"/bench/{day.first}/" in read(client.get("/rack/")).links
    tapped(day.first, BathAct.HUNG, "rack", value=2, unit="skeins", at=at(12))
    page = read(client.get("/rack/"))
    assert "2 skeins on 40 places, 38 free." in page.text
    assert "hung 26 Nov 12:00, dry at about 28 Nov 00:00. drying" in page.text
    assert "dry at about 28 Nov 00:00" in read(client.get(AFTER)).text
    sent = {"deed": page.value("deed")}
    assert client.post(f"/rack/{day.first}/dry/", sent).status_code == 302
    assert "Nothing hangs here" in read(client.get("/rack/")).text
    client.post(f"/undo/{sent['deed']}/", {"next": "/rack/"})
    assert "2 skeins" in read(client.get("/rack/")).text


@pytest.mark.usefixtures("day")
def test_what_hangs_nowhere_is_not_taken_off(client: Client) -> None:
    assert client.get("/rack/261126-B1/dry/").status_code == 405
    sent = {"deed": uuid4()}
    assert read(client.post("/rack/261126-B99/dry/", sent)).status == 404
