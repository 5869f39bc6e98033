"""From nothing to a palette on one page."""

from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse
from pytest_django.fixtures import Settings

from shadewright.records.models import Base, Dye
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.people import Person
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Standing, swatches_now
from tests.web.pages_read import Answer, read

PAGE, LIST = "/shades/start/", "/shades/swatches/"
COLOURS = {
    "Gorse": "#e0b02c",
    "Rosehip": "#b4363a",
    "Foxglove": "#a8437f",
    "Sloe": "#3f5f96",
    "Kelp": "#3d7a5d",
    "Peat": "#5b4636",
}


def sent(**changed: str) -> dict[str, object]:
    """Six dyes at 1 % on a yarn that is new, with some of it changed."""
    rows: dict[str, object] = {}
    for number, (dye, colour) in enumerate(COLOURS.items(), start=1):
        rows |= {f"dye_{number}": dye, f"depth_{number}": "1"}
        rows |= {f"colour_{number}": colour, f"pick_{number}": colour}
    usual = {"deed": uuid4(), "rows": "6", "base": "Hollow", "fibres": "100 % wool"}
    return {**usual, "way": "eye", **rows, **changed}


def posted(client: Client, data: dict[str, object]) -> Answer:
    return read(client.post(PAGE, data))


def test_six_dyes_and_their_colours_make_a_palette(
    client: Client, ines: Person, settings: Settings
) -> None:
    settings.REFITS = "at once"
    assert posted(client, sent()).status == 302
    kept = swatches_now()
    assert {now.doses[0][0] for now in kept} == set(COLOURS)
    assert all(now.reading and now.reading.by == ines.name for now in kept)
    assert all(now.reading and now.reading.read_by is ReadBy.EYE for now in kept)
    holds = palette_now()
    assert holds is not None
    assert holds.palette.names.bases == ("Hollow",)


@pytest.mark.usefixtures("ines")
def test_sent_twice_it_is_kept_once(client: Client) -> None:
    data = sent()
    posted(client, data)
    posted(client, data)
    assert len(swatches_now()) == len(COLOURS)


@pytest.mark.usefixtures("ines")
def test_taken_back_that_day_it_teaches_nothing_and_stands_in_no_list(
    client: Client,
) -> None:
    data = sent()
    posted(client, data)
    client.post(reverse("undo", args=[data["deed"]]))
    assert {now.standing for now in swatches_now()} == {Standing.UNREAD}
    assert "Your swatches would stand here" in read(client.get(LIST)).text


@pytest.mark.usefixtures("gorse")
def test_what_is_known_is_found_and_bare_yarn_may_be_told(client: Client) -> None:
    Base.objects.create(name="Hollow", fibres="wool")
    posted(client, sent(base="hollow", fibres="", colour_bare="Lab 91, -0.5, 9"))
    assert Dye.objects.count() == len(COLOURS)
    assert Base.objects.count() == 1
    assert [now.label for now in swatches_now() if not now.doses] == ["bare yarn"]


@pytest.mark.usefixtures("ines")
def test_a_picker_that_was_moved_counts_without_a_script(client: Client) -> None:
    posted(client, sent(colour_1="", pick_1="#E0B02C"))
    assert len(swatches_now()) == len(COLOURS)


@pytest.mark.usefixtures("ines")
@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"base": ""}, "base", "Base is missing."),
        ({"fibres": ""}, "fibres", "This yarn is new here"),
        ({"dye_2": ""}, "dye_2", "The dye is missing"),
        ({"depth_3": "25"}, "depth_3", "must be above 0 and at most 20 %"),
        ({"depth_3": "-1"}, "depth_3", "must be above 0 and at most 20 %"),
        ({"colour_4": "blue-ish"}, "colour_4", "cannot be read"),
        ({"colour_5": "", "pick_5": "#a6a6a6"}, "colour_5", "The colour of Kelp"),
        ({"way": "meter"}, "colour_1", "A meter gives L, a and b"),
    ],
)
def test_a_fault_stands_at_its_row_and_nothing_typed_is_lost(
    client: Client, changed: dict[str, str], field: str, words: str
) -> None:
    page = posted(client, sent(**changed))
    assert page.status == 422
    assert words in page.fault(field)
    assert page.value("colour_6") == COLOURS["Peat"]
    assert not swatches_now()
    assert not Base.objects.exists()


@pytest.mark.usefixtures("ines")
def test_more_rows_keep_what_was_typed(client: Client) -> None:
    page = posted(client, sent(act="more", colour_2="rubbish"))
    assert page.status == 200
    assert page.value("colour_2") == "rubbish"
    assert page.value("depth_9") == "1"


@pytest.mark.usefixtures("ines")
def test_an_empty_page_says_what_to_fill_in(client: Client) -> None:
    data = {"deed": uuid4(), "base": "Hollow", "fibres": "wool", "way": "eye"}
    blank = {f"depth_{n}": "1" for n in range(1, 7)}
    page = posted(client, {**data, **blank})
    assert "No swatch is filled in yet" in page.fault("dye_1")
