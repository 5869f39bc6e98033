"""The page of the people."""

import pytest
from django.test import Client

from shadewright.workflows.people import Person, people
from shadewright.workflows.studio import studio
from tests.web.pages_read import read
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")


def test_somebody_joins(client: Client) -> None:
    page = client.post("/people/", {"name": "Tam"}, follow=True).content.decode()
    assert "Tam has joined" in page
    assert [person.name for person in people()] == ["Ines", "Tam"]


def test_the_frame_leads_to_it(client: Client, ines: Person) -> None:
    assert 'href="/people/"' in client.get("/shelf/").content.decode()
    client.post("/people/", {"name": "Tam"})
    assert 'href="/people/"' in client.get("/shelf/").content.decode()
    assert ines in people()


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "Name is missing."),
        ("ines", "Ines works here already."),
        ("I\0nes", "Name holds a sign that no one can read."),
        ("x" * 41, "Name may have up to 40 characters; this has 41."),
    ],
)
def test_a_fault_stands_by_the_name(client: Client, typed: str, sentence: str) -> None:
    answer = client.post("/people/", {"name": typed})
    assert answer.status_code == 422
    assert sentence in answer.content.decode()
    assert len(people()) == 1


def test_html_in_a_name_stays_text(client: Client) -> None:
    name = HOSTILE[:40]
    page = client.post("/people/", {"name": name}, follow=True).content.decode()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page


def test_what_an_hour_is_worth_is_kept_and_taken_out(client: Client) -> None:
    page = client.post("/people/rate/", {"rate_per_hour": "18,5"}, follow=True)
    assert "What an hour is worth is written down" in page.content.decode()
    assert 'value="18.50"' in page.content.decode()
    client.post("/people/rate/", {"rate_per_hour": ""})
    here = studio()
    assert here is not None
    assert here.rate_per_hour is None


@pytest.mark.parametrize("typed", ["much", "-1", "20 min", "20000"])
def test_a_rate_that_is_none_stands_by_its_field(client: Client, typed: str) -> None:
    answer = client.post("/people/rate/", {"rate_per_hour": typed})
    assert answer.status_code == 422
    page = read(answer)
    assert page.fault("rate_per_hour")
    assert page.value("rate_per_hour") == typed


def test_a_rate_takes_a_post_alone(client: Client) -> None:
    assert client.get("/people/rate/").status_code == 405


def test_how_high_the_studio_stands_moves_the_boil(client: Client) -> None:
    assert "about 100\u00a0°C" in client.get("/people/").content.decode()
    page = client.post("/people/altitude/", {"altitude_m": "1600"}, follow=True)
    assert "about 94.6\u00a0°C" in page.content.decode()
    here = studio()
    assert here is not None
    assert here.altitude_m == 1600.0
    client.post("/people/altitude/", {"altitude_m": ""})
    assert "about 100\u00a0°C" in client.get("/people/").content.decode()


@pytest.mark.parametrize("typed", ["high", "9000", "-500", "16 kg"])
def test_a_height_that_is_none_stands_by_its_field(client: Client, typed: str) -> None:
    answer = client.post("/people/altitude/", {"altitude_m": typed})
    assert answer.status_code == 422
    page = read(answer)
    assert page.fault("altitude_m")
    assert page.value("altitude_m") == typed
