"""Shades: from nothing to a palette, and what it says of each base."""

import re

import pytest
from django.test import Client
from django.urls import reverse
from playwright.sync_api import Page, expect
from pytest_django import DjangoAssertNumQueries
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Base, PaletteFit, WantedColour
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.people import Person
from shadewright.workflows.shades.fits import fit_now
from tests.browser import axe, goes_sideways
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = pytest.mark.django_db


@pytest.fixture
def hollow(ines: Person) -> Base:
    """A yarn with a palette of six dyes, and three colours that are wanted."""
    del ines
    base = Base.objects.create(name="Hollow 4-ply", fibres="wool")
    kept_singles(base)
    kept_swatch(base, {"Gorse": 0.3}, (82.0, 1.0, 46.0))
    kept_swatch(base, {"Peat": 0.3}, (52.0, 5.0, 13.0))
    for name, lab in {
        "Kingcup": (80.0, 0.0, 110.0),
        "Old Brick": (50.0, 30.0, 24.0),
    }.items():
        WantedColour.objects.create(name=name, read_by=ReadBy.METER, labs={"D65": lab})
    fit_now(why="first swatches")
    return base


def text(client: Client, address: str) -> str:
    answer = client.get(address, follow=True)
    assert answer.status_code == 200
    return answer.content.decode()


def test_from_nothing_there_is_one_step(client: Client, ines: Person) -> None:
    del ines
    page = text(client, "/shades/")
    assert page.count("button first") == 1
    assert page.index('href="/shades/start/"') < page.index("rooms-row")
    assert "aria-current" in page.split("Shades</span>", maxsplit=1)[0]


def test_two_swatches_a_dye_tell_how_well_it_foretells(
    client: Client, hollow: Base
) -> None:
    for dye, lab in (
        ("Rosehip", (66.0, 36.0, 15.0)),
        ("Foxglove", (64.0, 38.0, -6.0)),
        ("Sloe", (58.0, 0.0, -26.0)),
    ):
        kept_swatch(hollow, {dye: 0.3}, lab)
    fit_now(why="two of each")
    assert re.search(
        r"from the others: half come out within [\d.]+, nine in ten within [\d.]+",
        text(client, f"/shades/palettes/{hollow.pk}/"),
    )


def test_the_home_is_the_base_with_most_swatches(client: Client, hollow: Base) -> None:
    answer = client.get("/shades/")
    assert answer.headers["Location"] == f"/shades/palettes/{hollow.pk}/"


def test_a_palette_tells_how_well_it_foretells(client: Client, hollow: Base) -> None:
    page = text(client, f"/shades/palettes/{hollow.pk}/")
    assert "6 dyes and 9 swatches. Too few to say yet" in page
    assert page.count('class="dye-strip"') == 2 * (6 + 1)
    assert "Measured at 0.3\u00a0% and 1\u00a0%; between them from the model" in page
    assert re.search(r"±\u00a0[\d.]+, (sure|fair|wide)", page)
    assert page.count('class="reach"') == 2
    assert "Kingcup" in page


def test_it_asks_little_of_the_store(
    client: Client,
    hollow: Base,
    django_assert_max_num_queries: DjangoAssertNumQueries,
) -> None:
    with django_assert_max_num_queries(40):
        client.get(f"/shades/palettes/{hollow.pk}/?look=closer")


def test_looking_closer_tells_what_helps_and_what_is_out_of_reach(
    client: Client, hollow: Base
) -> None:
    page = text(client, f"/shades/palettes/{hollow.pk}/?look=closer")
    assert "not read yet" not in page
    assert re.search(r"<strong>Kingcup</strong> lies ΔE\u00a0[\d.]+ outside: ", page)
    assert "<strong>Old Brick</strong> lies" not in page
    rows = re.findall(
        r'<td class="n">([\d.]+)</td><td class="n">([\d.]+)</td></tr>', page
    )
    assert len(rows) == 3
    assert all(float(now) > float(then) for now, then in rows)


def test_a_base_without_dyed_swatches_is_told_so(client: Client, hollow: Base) -> None:
    silk = Base.objects.create(name="Drift silk", fibres="silk")
    link = f'<a href="/shades/palettes/{silk.pk}/">Drift silk</a>'
    assert link in text(client, f"/shades/palettes/{hollow.pk}/")
    page = text(client, f"/shades/palettes/{silk.pk}/")
    assert "No swatch on Drift silk yet" in page
    kept_swatch(silk, {}, (92.0, 0.0, 6.0))
    fit_now(why="bare silk")
    page = text(client, f"/shades/palettes/{silk.pk}/")
    assert "carried over from Hollow 4-ply" in page
    assert f'href="/shades/palettes/{hollow.pk}/"' in page


def test_swatches_that_wait_for_their_fit_are_counted(
    client: Client, ines: Person
) -> None:
    del ines
    base = Base.objects.create(name="Drift silk", fibres="silk")
    kept_singles(base)
    page = text(client, f"/shades/palettes/{base.pk}/")
    assert "7 swatches on Drift silk, not yet in the palette" in page
    PaletteFit.objects.create(stage="Fitting the swatches", share=0.4)
    page = text(client, f"/shades/palettes/{base.pk}/")
    assert f"{reverse('fit-status')}?first=1" in page
    assert "7 swatches so far" in text(client, "/shades/")


def test_a_fit_that_is_out_of_date_stands_first(client: Client, hollow: Base) -> None:
    address = f"/shades/palettes/{hollow.pk}/"
    before = text(client, address)
    assert before.index("h-strips") < before.index("The palette now")
    kept_swatch(hollow, {"Kelp": 0.3}, (64.0, -18.0, 12.0))
    after = text(client, address)
    assert after.index("The palette now") < after.index("h-strips")
    assert after.count('id="fit"') == 1


def test_there_is_no_palette_of_nothing(client: Client, ines: Person) -> None:
    del ines
    assert client.get("/shades/palettes/99/").status_code == 404


def test_a_palette_in_the_browser(
    page: Page, live_server: LiveServer, hollow: Base
) -> None:
    """Sound on a phone and on a desk; the tables open by the keyboard."""
    page.goto(f"{live_server.url}/shades/palettes/{hollow.pk}/")
    expect(page.get_by_role("heading", name="Out of reach")).to_be_visible()
    assert axe(page) == []
    assert goes_sideways(page) == 0
    assert page.locator("svg.dye-strip[role=img]:visible").count() == 6
    assert page.locator("svg.reach[role=img]:visible").count() == 1
    page.get_by_text("The reach as a table").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("columnheader", name="Bluer b*")).to_be_visible()
    assert axe(page) == []
    assert goes_sideways(page) == 0


def test_the_strips_stand_on_the_first_sheet_of_paper(
    desk: Page, live_server: LiveServer, hollow: Base
) -> None:
    """A4 within its margins is 688 by 1017 px; a dye takes a narrow line of it."""
    desk.set_viewport_size({"width": 688, "height": 1017})
    desk.goto(f"{live_server.url}/shades/palettes/{hollow.pk}/")
    expect(desk.get_by_role("heading", name="Out of reach")).to_be_visible()
    desk.emulate_media(media="print")
    strips = desk.get_by_role("region", name="Depth strips").bounding_box()
    assert strips is not None
    assert strips["y"] + strips["height"] < 1017
    (first, second) = (desk.locator(".strip").nth(n).bounding_box() for n in (0, 1))
    assert first is not None
    assert second is not None
    assert second["y"] - first["y"] < 60
