"""The list of swatches, one of them, and reading its colour."""

from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse
from pytest_django.fixtures import DjangoAssertNumQueries, Settings

from shadewright.records.models import Base, Meter, Swatch
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.people import Person
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Standing, swatch_now, swatches_now
from tests.web.pages_read import Answer, read
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = pytest.mark.usefixtures("ines")
LIST = "/shades/swatches/"


@pytest.fixture
def base() -> Base:
    """Return a bare yarn."""
    return Base.objects.create(name="Hollow", fibres="wool")


def page_of(swatch: Swatch) -> str:
    return f"{LIST}{swatch.pk}/"


def got(client: Client, address: str) -> Answer:
    return read(client.get(address))


def test_without_a_swatch_there_is_one_step(client: Client) -> None:
    page = got(client, LIST)
    assert "Your swatches would stand here" in page.text
    assert page.links.count("/shades/start/") == 1
    assert page.source.count("button first") == 1


def test_the_list_is_searched_and_sorted(client: Client, base: Base) -> None:
    kept_singles(base, read_by=ReadBy.EYE)
    kept_swatch(base, {"Slate": 2.0}, (30.0, 0.0, -9.0))
    dark_first = got(client, f"{LIST}?sort=light").text
    assert dark_first.index("Slate 2 %") < dark_first.index("Gorse 1 %")
    only = got(client, f"{LIST}?q=meter").text
    assert "Slate 2 %" in only
    assert "Gorse 1 %" not in only
    assert "By eye" in dark_first
    assert "Teaches" in dark_first


def test_each_colour_carries_its_source_and_its_spread(
    client: Client, base: Base
) -> None:
    kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0), read_by=ReadBy.EYE)
    source = got(client, LIST).source.replace("\u00a0", " ")
    assert "picked on a screen beside the yarn, usually ΔE" in source


def test_a_reading_is_kept_and_can_be_taken_back_that_day(
    client: Client, ines: Person, base: Base
) -> None:
    row = kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0), read_by=ReadBy.EYE)
    data = {"deed": uuid4(), "way": "meter", "texts": "75, 5, 60\n75.2, 5.4, 60.2"}
    assert client.post(f"{page_of(row)}read/", data).status_code == 302
    now = swatch_now(row.pk)
    assert now.reading is not None
    assert (now.reading.read_by, now.reading.repeat) == (ReadBy.METER, 2)
    page = got(client, page_of(row))
    assert "mean of 2 readings" in page.text
    assert ines.name in page.text
    client.post(reverse("undo", args=[data["deed"]]))
    now = swatch_now(row.pk)
    assert now.reading is not None
    assert now.reading.read_by is ReadBy.EYE
    assert "undone" in got(client, page_of(row)).text


def test_a_reading_that_lies_apart_is_named_and_the_typed_words_are_kept(
    client: Client, base: Base
) -> None:
    row = kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0))
    meter = Meter.objects.create(name="Old one", light="D50", observer="2")
    texts = "78.1 6.2 55\n78.4 6 55.6\n77.9 6.3 54.8\n92 6.2 55.2"
    data = {"deed": uuid4(), "way": f"meter:{meter.pk}", "texts": texts}
    assert client.post(f"{page_of(row)}read/", data).status_code == 302
    text = got(client, page_of(row)).text.replace("\u00a0", " ")
    assert "mean of 4 readings, each ± 6.9 in Lab" in text
    assert "typed for D50/2°: 78.1 6.2 55; 78.4 6 55.6" in text
    assert "Reading 4 lies 13.9 from the others in Lab" in text


def test_a_wet_reading_is_kept_and_teaches_nothing(client: Client, base: Base) -> None:
    page = {"base": "Hollow", "dye_1": "Gorse", "depth_1": "1"}
    read_wet = {"way": "eye", "texts": "#cfa020", "is_wet": "on"}
    client.post(f"{LIST}new/", {"deed": uuid4(), **page, **read_wet})
    (now,) = swatches_now()
    assert now.standing is Standing.WET
    text = got(client, f"{LIST}{now.id}/").text
    assert "a wet colour teaches nothing" in text
    assert base.name in text


def test_a_dye_that_is_made_by_the_way_is_told_of(client: Client, base: Base) -> None:
    page = {"base": base.name, "dye_1": "Gorze", "depth_1": "1", "way": "eye"}
    made = client.post(f"{LIST}new/", {"deed": uuid4(), **page}, follow=True)
    assert "Gorze is new among the dyes" in read(made).text
    again = client.post(f"{LIST}new/", {"deed": uuid4(), **page}, follow=True)
    assert "is new among the dyes" not in read(again).text


def test_a_swatch_without_a_colour_waits_for_one(client: Client) -> None:
    page = {"base": "Hollow", "fibres": "wool", "dye_1": "Gorse", "depth_1": "1"}
    client.post(f"{LIST}new/", {"deed": uuid4(), **page, "way": "eye"})
    (now,) = swatches_now()
    assert now.standing is Standing.UNREAD
    assert "Not read yet" in got(client, f"{LIST}{now.id}/").text


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"texts": ""}, "texts", "The colour is missing"),
        ({"texts": "sienna"}, "texts", "A meter gives L, a and b"),
        ({"further_A": "1, 2"}, "further_A", "cannot be read"),
        ({"spectrum_text": "nothing here"}, "spectrum_text", "cannot be read"),
    ],
)
def test_a_fault_of_a_reading_stands_by_its_field(
    client: Client, base: Base, changed: dict[str, str], field: str, words: str
) -> None:
    row = kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0))
    data = {"deed": uuid4(), "way": "meter", "texts": "50, 1, 2", **changed}
    page = read(client.post(f"{page_of(row)}read/", data))
    assert page.status == 422
    assert words in page.fault(field)


def test_the_way_that_was_taken_last_is_chosen(client: Client, base: Base) -> None:
    row = kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0), read_by=ReadBy.EYE)
    meter = Meter.objects.create(name="Small grey one")
    address = f"{page_of(row)}read/"
    assert 'value="eye" id="id_way_0" checked' in got(client, address).source
    way = f"meter:{meter.pk}"
    client.post(address, {"deed": uuid4(), "way": way, "texts": "75, 5, 60"})
    page = got(client, address)
    assert "Read by Small grey one" in page.text
    assert f'value="{way}" id="id_way_4" checked' in " ".join(page.source.split())


def test_a_swatch_stands_beside_what_was_foretold(client: Client, base: Base) -> None:
    rows = kept_singles(base)
    kept_swatch(base, {"Gorse": 0.5}, (80.0, 3.0, 48.0))
    fit_now(why="first swatches")
    newer = kept_swatch(base, {"Gorse": 0.4}, (81.0, 3.0, 45.0))
    assert "has not learned from it yet" in got(client, page_of(newer)).text
    alone = got(client, page_of(rows[2])).text
    assert "No other swatch tells of its dyes yet" in alone
    text = got(client, page_of(rows[1])).text
    assert "foretold from colours read by a meter" in text
    assert "From the other swatches alone, the palette would have been ΔE" in text


def test_what_does_not_teach_is_not_said_to_have_taught(
    client: Client, base: Base
) -> None:
    kept_singles(base)
    blue = kept_swatch(base, {"Gorse": 2.0}, (34.0, 13.0, -51.0))
    fit_now(why="a tag that was swapped")
    text = got(client, page_of(blue)).text
    assert "Suspect" in text
    assert "from what the palette says, which did not learn from it." in text
    assert "It is right: let it teach" in text
    assert f"/shades/palettes/{base.pk}/" in got(client, page_of(blue)).links
    assert "nothing checks it" not in text


def test_a_new_reading_fits_the_palette_anew(
    client: Client, base: Base, settings: Settings
) -> None:
    rows = kept_singles(base)
    settings.REFITS = "at once"
    data = {"deed": uuid4(), "way": "meter", "texts": "75, 5, 60"}
    client.post(f"{page_of(rows[1])}read/", data)
    holds = palette_now()
    assert holds is not None
    assert rows[1].pk in holds.used


def test_no_page_asks_the_store_more_where_there_are_more_swatches(
    client: Client, base: Base, django_assert_max_num_queries: DjangoAssertNumQueries
) -> None:
    rows = kept_singles(base)
    fit_now(why="first swatches")
    for address in (LIST, page_of(rows[1]), f"{page_of(rows[1])}read/"):
        with django_assert_max_num_queries(25):
            client.get(address)
