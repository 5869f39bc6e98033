"""The first page of a studio that nobody has founded."""

import pytest
from django.test import Client

from shadewright.workflows.people import Person, people
from shadewright.workflows.studio import studio
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.django_db
SENT = {"name": "Long Reach", "person": "Ines", "water": "Rain"}


@pytest.mark.parametrize("address", ["/shelf/", "/dyes/", "/jars/new/", "/people/"])
def test_every_page_leads_there(client: Client, address: str) -> None:
    assert client.get(address).headers["Location"] == "/start/"


def test_the_machine_is_well_all_the_same(client: Client) -> None:
    assert client.get("/healthz").status_code == 200


def test_a_studio_is_founded_and_its_shelf_is_empty(client: Client) -> None:
    page = client.post("/start/", SENT, follow=True)
    assert page.redirect_chain == [("/shelf/", 302)]
    text = page.content.decode()
    assert "Long Reach is founded" in text
    assert "Your bottles would stand here" in text
    assert "No bottle is needed to begin with colours" in text
    assert 'href="/shelf/enter/"' in text
    assert 'href="/jars/new/"' in text
    facts = studio()
    assert facts is not None
    assert (facts.name, facts.water) == ("Long Reach", "Rain")
    assert [person.name for person in people()] == ["Ines"]


def test_sent_twice_it_is_founded_once(client: Client) -> None:
    answers = [client.post("/start/", SENT) for _ in range(2)]
    assert [answer.headers["Location"] for answer in answers] == ["/shelf/"] * 2
    assert len(people()) == 1


def test_once_founded_the_first_page_is_the_shelf(client: Client, ines: Person) -> None:
    del ines
    assert client.get("/start/").headers["Location"] == "/shelf/"


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("name", "  ", "The studio’s name is missing."),
        ("name", "x" * 81, "may have up to 80 characters; this has 81."),
        ("person", "", "Your name is missing."),
        ("person", "y" * 41, "may have up to 40 characters; this has 41."),
        ("water", "z" * 81, "may have up to 80 characters; this has 81."),
    ],
)
def test_a_fault_stands_by_its_field(
    client: Client, field: str, typed: str, sentence: str
) -> None:
    answer = client.post("/start/", {**SENT, field: typed})
    page = answer.content.decode()
    assert answer.status_code == 422
    assert sentence in page
    assert f'id="id_{field}_error"' in page
    assert 'value="Rain"' in page or field == "water"
    assert studio() is None


def test_html_in_a_name_stays_text(client: Client) -> None:
    sent = {"name": HOSTILE, "person": HOSTILE, "water": HOSTILE}
    page = client.post("/start/", sent, follow=True).content.decode()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page
