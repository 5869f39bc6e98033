"""The page of the people."""

import pytest
from django.test import Client

from shadewright.workflows.people import Person, people
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
        ("ines", "There is a ines already."),
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
