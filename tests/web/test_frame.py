"""The frame around every page: the menu, the person, the note after an act."""

import re
from datetime import UTC, date, datetime

import pytest
from django.test import Client, override_settings
from time_machine import TimeMachineFixture

from shadewright.web.frame import PLACES
from shadewright.web.templatetags import house
from shadewright.workflows.people import add_person
from tests.web.sample import HOSTILE

pytestmark = [pytest.mark.django_db, pytest.mark.urls("tests.web.sample")]


def text(client: Client, address: str = "/sample/") -> str:
    return client.get(address).content.decode()


def test_a_page_has_one_h1_a_title_and_a_skip_link(client: Client) -> None:
    page = text(client)
    assert page.count("<h1") == 1
    assert "<title>Parts · Shadewright</title>" in page
    assert '<a class="skip" href="#main">' in page
    assert 'id="main"' in page


def test_the_menu_names_the_places_and_marks_the_current_one(client: Client) -> None:
    menu = re.search(r'<nav class="places".*?</nav>', text(client), re.DOTALL)
    assert menu is not None
    names = re.findall(r"<span>(.*?)</span>", menu[0])
    assert names == [place.name for place in PLACES]
    assert {"Today", "Shelf", "Lots"} <= set(names)
    assert 'href="/shelf/" aria-current="true"' in menu[0]
    assert menu[0].count("aria-current") == 1


@pytest.mark.parametrize("address", ["/sample/", "/nowhere/"])
def test_the_demo_says_so_on_every_page(client: Client, address: str) -> None:
    with override_settings(IS_DEMO=True):
        assert "people are invented" in text(client, address)
    assert "people are invented" not in text(client, address)


def test_a_person_working_alone_is_at_the_bench(client: Client) -> None:
    add_person("Ines")
    page = text(client)
    assert "Ines" in page
    assert "<details" not in page


def test_of_several_people_one_takes_the_bench(client: Client) -> None:
    add_person("Ines")
    tam = add_person("Tam")
    assert "Who is" in text(client)
    sent = {"person": str(tam.id), "next": "/sample/"}
    page = client.post("/person/", sent, follow=True)
    assert page.redirect_chain == [("/sample/", 302)]
    assert "Tam is at the bench" in page.content.decode()
    assert 'aria-current="true">Tam' in page.content.decode()


@pytest.mark.parametrize("key", ["", "99", "x", HOSTILE])
def test_nobody_unknown_takes_the_bench(client: Client, key: str) -> None:
    add_person("Ines")
    answer = client.post("/person/", {"person": key})
    assert answer.status_code == 404
    assert "Choose somebody on the list." in answer.content.decode()
    assert HOSTILE not in answer.content.decode()


@pytest.mark.parametrize(
    "address", ["https://elsewhere.example/", "//elsewhere", "x:y"]
)
def test_the_way_back_stays_in_the_studio(client: Client, address: str) -> None:
    ines = add_person("Ines")
    answer = client.post("/person/", {"person": str(ines.id), "next": address})
    assert answer.headers["Location"] == "/"


def test_an_act_leaves_a_note_with_undo_and_only_once(client: Client) -> None:
    sent = {"powder_g": "5.2", "made_on": "2026-11-03", "look": "clear"}
    sent["deed"] = "6f1c2f2e-0000-4000-8000-000000000000"
    page = client.post("/sample/", sent, follow=True).content.decode()
    assert "Weighed 5.2 g" in page
    assert 'action="/sample/undo/"' in page
    assert "Weighed" not in re.sub(r"<main.*</main>", "", text(client), flags=re.DOTALL)


def test_a_fault_stands_by_its_field_and_what_was_typed_stays(client: Client) -> None:
    sent = {"powder_g": "five", "water": "x" * 30, "made_on": "", "notes": HOSTILE}
    answer = client.post("/sample/", sent)
    page = answer.content.decode()
    assert answer.status_code == 422
    assert 'value="five"' in page
    assert 'aria-describedby="id_powder_g_error"' in page
    assert '<span class="wrong" id="id_powder_g_error">Powder weighed cannot be' in page
    assert "Day made is missing." in page
    assert "Water may have up to 20 characters; this has 30." in page
    assert HOSTILE not in page
    assert "autofocus" in page


def test_a_refusal_that_names_no_field_stands_at_the_head(client: Client) -> None:
    page = client.post("/sample/", {"powder_g": "5"}).content.decode()
    assert "<li>The jar holds less than that.</li>" in page


def test_a_table_sorts_by_its_heads_and_back(client: Client) -> None:
    def order(address: str) -> list[str]:
        return re.findall(r"</svg>(Slate|Gorse)</span></th>", text(client, address))

    assert order("/sample/") == ["Gorse", "Slate"]
    assert order("/sample/?sort=-dye") == ["Slate", "Gorse"]
    assert order("/sample/?sort=left") == ["Slate", "Gorse"]
    assert order("/sample/?sort=-age") == ["Slate", "Gorse"]
    assert order("/sample/?sort=nonsense") == ["Gorse", "Slate"]
    assert 'aria-sort="ascending"><a class="sort" href="?sort=-dye"' in text(client)


def test_sorting_keeps_the_rest_of_the_address(client: Client) -> None:
    assert 'href="?find=a%26b&amp;sort=age"' in text(client, "/sample/?find=a%26b")


@pytest.mark.parametrize(
    ("days", "words"),
    [
        (None, "age not known"),
        (0, "today"),
        (1, "1 day"),
        (13, "13 days"),
        (14, "2 weeks"),
        (69, "9 weeks"),
        (70, "2 months"),
        (245, "8 months"),
        (729, "23 months"),
        (731, "2 years"),
    ],
)
def test_an_age_in_words(days: int | None, words: str) -> None:
    assert house.age(days) == words


def test_days_in_words(time_machine: TimeMachineFixture) -> None:
    time_machine.move_to(datetime(2026, 11, 25, 12, tzinfo=UTC))
    assert house.day(date(2026, 11, 3)) == "3 November"
    assert house.day(date(2025, 2, 28)) == "28 February 2025"
    assert house.moment(datetime(2026, 11, 24, 9, 24, tzinfo=UTC)) == "24 Nov 09:24"
