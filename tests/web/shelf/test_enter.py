"""Entering the bottles that stand on the shelf already."""

import re
from datetime import timedelta
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Dye
from shadewright.workflows.dyes import dyes
from shadewright.workflows.people import Person
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import today
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("gorse")
PAGE = "/shelf/enter/"


def sent(**changed: object) -> dict[str, object]:
    """What is typed for a sound bottle, with some of it changed."""
    usual = {
        "deed": uuid4(),
        "dye": "Gorse",
        "strength_percent": "1",
        "volume_ml": "350",
        "made_about": "91",
        "made_on": "",
        "place": "fridge",
    }
    return {**usual, **changed}


def text(client: Client, data: dict[str, object]) -> str:
    page = client.post(PAGE, data, follow=True).content.decode()
    return page.replace("\u00a0", " ")


def test_the_form_opens_at_the_dye_and_offers_those_there_are(client: Client) -> None:
    page = client.get(PAGE).content.decode()
    assert '<option value="Gorse">' in page
    assert re.search(r'<input[^>]*name="dye"[^>]*autofocus', page)
    assert "None yet." in page


def test_a_bottle_is_entered_as_a_guess(client: Client, ines: Person) -> None:
    page = text(client, sent())
    (bottle,) = shelf()
    assert bottle.is_strength_guess
    assert bottle.evidence == "as labelled: a guess"
    assert (bottle.strength_percent, bottle.volume_ml) == (1.0, 350.0)
    assert (bottle.made_on, bottle.is_date_about) == (
        today() - timedelta(days=91),
        True,
    )
    assert bottle.place == "fridge"
    assert f"Bottle {bottle.code} Gorse entered" in page
    assert "±" not in page
    assert ines.name in client.get("/shelf/").content.decode()


def test_the_form_stays_for_the_next_one(client: Client) -> None:
    page = text(client, sent())
    (bottle,) = shelf()
    assert f'class="big-code code">{bottle.code}<' in page
    assert 'name="strength_percent" value="1"' in page
    assert 'value="fridge"' in page
    assert 'value="350"' not in page
    dye = re.search(r'<input[^>]*name="dye"[^>]*>', page)
    assert dye is not None
    assert "autofocus" in dye[0]
    assert "value=" not in dye[0]


@pytest.mark.parametrize(
    ("about", "on", "days", "said"),
    [
        ("", "", None, "exactly"),
        ("0", "", 0, "exactly"),
        ("365", "", 365, "about"),
        ("365", "yesterday", 1, "exactly"),
    ],
)
def test_a_day_on_the_label_goes_before_a_guess_at_it(
    client: Client, about: str, on: str, days: int | None, said: str
) -> None:
    day = str(today() - timedelta(days=1)) if on else ""
    text(client, sent(made_about=about, made_on=day))
    (bottle,) = shelf()
    assert bottle.is_date_about is (said == "about")
    expected = None if days is None else today() - timedelta(days=days)
    assert bottle.made_on == expected


def test_units_may_be_typed_and_a_comma_is_as_good_as_a_point(client: Client) -> None:
    text(client, sent(strength_percent="0,5 %", volume_ml="0,25 l"))
    (bottle,) = shelf()
    assert (bottle.strength_percent, bottle.volume_ml) == (0.5, 250.0)


def test_an_unknown_dye_is_not_added_by_a_slip(client: Client) -> None:
    answer = client.post(PAGE, sent(dye="Gorze"))
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "There is no dye “Gorze”. Did you mean Gorse? To add it, tick" in page
    assert 'value="Gorze"' in page
    assert [dye.name for dye in dyes()] == ["Gorse"]


def test_a_new_dye_is_added_right_there(client: Client) -> None:
    text(client, sent(dye="  Kelp  green ", is_new_dye="on"))
    assert [dye.name for dye in dyes()] == ["Gorse", "Kelp green"]
    assert shelf()[0].dye_name == "Kelp green"


@pytest.mark.parametrize("tick", [{"dye": "Kelp", "is_new_dye": "on"}, {}])
def test_one_new_dye_is_followed_by_another(
    client: Client, tick: dict[str, object]
) -> None:
    page = text(client, sent(**tick))
    is_ticked = re.search(r'name="is_new_dye"[^>]*checked', page) is not None
    assert is_ticked is bool(tick)


def test_a_known_dye_that_is_ticked_as_new_is_not_doubled(client: Client) -> None:
    text(client, sent(dye="gorse", is_new_dye="on"))
    assert [dye.name for dye in dyes()] == ["Gorse"]


def test_a_refused_bottle_leaves_no_new_dye_behind(client: Client) -> None:
    client.post(PAGE, sent(dye="Kelp", is_new_dye="on", volume_ml="-5"))
    assert [dye.name for dye in dyes()] == ["Gorse"]


def test_a_studio_without_dyes_expects_new_ones(client: Client) -> None:
    Dye.objects.all().delete()
    page = client.get(PAGE).content.decode()
    assert re.search(r'name="is_new_dye"[^>]*checked', page)


def test_sent_twice_it_is_written_once(client: Client) -> None:
    data = sent()
    pages = [text(client, data) for _ in range(2)]
    (bottle,) = shelf()
    assert all(f'class="big-code code">{bottle.code}<' in page for page in pages)


@pytest.mark.parametrize("where", ["toast", "list"])
def test_it_can_be_taken_back_from_the_toast_and_from_the_list(
    client: Client, where: str
) -> None:
    page = text(client, sent())
    start = page.index("Entered today") if where == "list" else page.index("</main>")
    address = re.search(r'action="(/undo/[^"]*)"', page[start:])
    assert address is not None
    back = client.post(address[1], {"next": PAGE}, follow=True).content.decode()
    assert shelf() == ()
    assert "Taken back" in back
    assert "None yet." in back


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("dye", "", "Dye is missing."),
        ("dye", "x" * 61, "Dye may have up to 60 characters; this has 61."),
        ("strength_percent", "", "Strength as labelled is missing."),
        ("strength_percent", "-1", "got −1 %"),
        ("strength_percent", "0", "must be above 0 and at most 50 %"),
        ("strength_percent", "51", "must be above 0 and at most 50 %"),
        ("strength_percent", "strong", "is written as a percentage"),
        ("strength_percent", "1 ml", "is written as a percentage"),
        ("volume_ml", "-350", "got −350 ml"),
        ("volume_ml", "0", "Left in it must be above 0"),
        ("volume_ml", "half", "Left in it is written as a volume"),
        ("volume_ml", "350 g", "Left in it is written as a volume"),
        ("volume_ml", "9" * 30, "Left in it must be above 0"),
        ("made_on", "soon", "cannot be read as it was typed."),
        ("made_on", "2999-01-01", "must be today or earlier; got 1 January 2999."),
        ("made_on", "0099-01-01", "must be in 1950 or later"),
        ("place", "x" * 41, "Place may have up to 40 characters; this has 41."),
        ("dye", HOSTILE, "There is no dye"),
    ],
)
def test_a_fault_stands_by_its_field_and_what_was_typed_stays(
    client: Client, field: str, typed: str, sentence: str
) -> None:
    answer = client.post(PAGE, sent(**{field: typed}))
    page = answer.content.decode().replace("\u00a0", " ")
    assert answer.status_code == 422
    assert sentence in page
    assert f'id="id_{field}_error"' in page
    assert "<script>alert" not in page
    if typed and typed != HOSTILE:
        assert f'value="{typed}"' in page
    assert shelf() == ()


def test_a_choice_that_was_not_offered_is_refused(client: Client) -> None:
    answer = client.post(PAGE, sent(made_about="12345"))
    assert answer.status_code == 422
    assert "Made must be one of those offered." in answer.content.decode()


def test_html_in_every_field_stays_text(client: Client) -> None:
    name = HOSTILE[:40]
    page = text(client, sent(dye=name, is_new_dye="on", place=name))
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page
