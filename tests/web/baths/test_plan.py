"""Planning a bath: what it takes, what stands in the way, planned once."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Base, Bath, MeasuringTool, MillLot, Pot
from shadewright.web.ways import way_round
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.bottles import draw, enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText, When
from shadewright.workflows.recipes import write_recipe, write_version
from shadewright.workflows.stamps import stamp_now, today
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE

PLAN = "/baths/new/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


def form(things: Dyeing, **typed: object) -> dict[str, str]:
    plain = {
        "act": "keep",
        "deed": uuid4(),
        "base": things.base,
        "mill_lot": things.lot,
        "fibre_g": "97",
        "pot": things.pot,
        "dyed_on": f"{today():%Y-%m-%d}",
        "notes": "blue tag",
    }
    return {name: str(value) for name, value in (plain | typed).items()}


def live(client: Client, **typed: str | int) -> Answer:
    """Ask as htmx does while somebody types."""
    return read(client.get(PLAN, typed, headers={"HX-Request": "true"}))


def test_first_there_is_a_recipe_and_a_base(client: Client, things: Dyeing) -> None:
    none = read(client.get(PLAN))
    assert "First a recipe" in none.text
    assert "/recipes/new/" in none.links
    things.recipe()
    only = f'<option value="{things.base}" selected>'
    assert only in read(client.get(PLAN)).source
    Base.objects.create(name="Another yarn")
    assert only not in read(client.get(PLAN)).source
    Base.objects.update(is_retired=True)
    assert way_round("add-base", back=PLAN) in read(client.get(PLAN)).links


@pytest.mark.by_hand
def test_what_it_takes_follows_what_is_typed(client: Client, things: Dyeing) -> None:
    # 97 g at 0.6 %: 0.582 g, 58.2 ml of 1 %; 2 % acid: 1.94 g, 38.8 ml of 5 g/100 ml;
    # 2910 ml of liquor less 87.3 ml of stock, 38.8 ml of vinegar, 103 ml in the yarn.
    number = things.recipe()
    page = live(client, version=number, base=things.base, fibre_g="97", wet_yarn_g=200)
    assert page.status == 200
    for words in (
        f"58.2 ml of {things.slate_bottle}",
        f"29.1 ml of {things.gorse_bottle}",
        "0.582 g",
        "2.68 l",
        "2.91 l in all, 1:30",
        "38.8 ml after the dye",
        "Acid into water, never the reverse",
        "Not tried on Fell DK yet",
    ):
        assert words in page.text
    assert not Bath.objects.exists()


def test_without_script_a_key_shows_the_plan(client: Client, things: Dyeing) -> None:
    number = things.recipe()
    shown = read(client.post(PLAN, form(things, version=number, act="plan")))
    assert shown.status == 200
    assert f"58.2 ml of {things.slate_bottle}" in shown.text
    assert not Bath.objects.exists()


def test_a_bath_is_planned_once(client: Client, things: Dyeing) -> None:
    sent = form(things, version=things.recipe(), skeins="1")
    places = {client.post(PLAN, sent).headers["Location"] for _ in "12"}
    number = f"{today():%y%m%d}-B1"
    assert places == {f"/baths/{number}/"}
    done = read(client.get(places.pop()))
    assert f"Bath {number} is planned" in done.text
    assert "blue tag" in done.text
    row = Bath.objects.get()
    assert row.fibre_g == 97.0
    assert row.mill_lot_id == things.lot
    assert row.created_by is not None


def test_a_swatch_is_a_small_bath(client: Client, things: Dyeing) -> None:
    sent = form(things, version=things.recipe(), fibre_g="10", is_swatch="on", pot="")
    done = read(client.post(PLAN, sent, follow=True))
    assert f"Swatch {today():%y%m%d}-S1" in done.text
    page = live(client, version=sent["version"], base=things.base, fibre_g="5")
    assert "is too little to measure well" in page.text
    MeasuringTool.objects.create(name="Syringe", kind="syringe", size=20)
    page = live(client, version=sent["version"], base=things.base, fibre_g="5")
    assert "is too little to measure well" not in page.text  # the advice says it
    assert "What would make it surer" in page.text


def test_short_stock_leads_to_making_more(client: Client, things: Dyeing) -> None:
    draw(code=things.slate_bottle, volume_ml=450.0, stamp=stamp_now(by=None))
    # 40 ml can be drawn of the 50 ml left: 0.4 g of the 0.6 g; 22 ml of 1 % are wanted.
    page = live(client, version=things.recipe(), base=things.base, fibre_g="100")
    assert "Slate: 0.2 g more dye is wanted than the good bottles hold." in page.text
    assert (
        f"/stocks/new/?dye={things.slate}&strength_percent=1&volume_ml=100"
        in page.links
    )
    assert "respirator" in page.text


def test_a_dose_over_two_bottles_shows_both(client: Client, things: Dyeing) -> None:
    draw(code=things.slate_bottle, volume_ml=450.0, stamp=stamp_now(by=None))
    second = enter_bottle(
        dye_id=things.slate,
        strength_percent=2.0,
        volume_ml=45.0,
        stamp=stamp_now(by=None),
        about=Particulars(),
    ).code
    page = live(client, version=things.recipe(), base=things.base, fibre_g="150")
    assert f"of {things.slate_bottle}" in page.text
    assert f"of {second}" in page.text
    assert "short" not in page.text


def test_lots_are_those_of_the_base(client: Client, things: Dyeing) -> None:
    moor = Base.objects.create(name="Moor sock", undyeable_percent=25.0)
    MillLot.objects.create(base=moor, lot="W9")
    number = things.recipe()
    page = live(client, version=number, base=moor.pk, fibre_g="100")
    assert "Moor sock, lot W9" in page.text
    assert "Fell DK, lot M7" not in page.text
    assert "25 % of Moor sock takes no acid dye and stays bare" in page.text
    wrong = read(client.post(PLAN, form(things, version=number, base=moor.pk)))
    assert "Mill lot must be one of those offered." in wrong.fault("mill_lot")


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("version", "", "Recipe is missing."),
        ("version", "999", "Recipe must be one of those offered."),
        ("version", HOSTILE, "Recipe must be one of those offered."),
        ("base", "", "Base is missing."),
        ("fibre_g", "", "Weight of the dry yarn is missing."),
        ("fibre_g", "0", "Weight of the dry yarn must be above 0"),
        ("fibre_g", "-100", "Weight of the dry yarn must be above 0"),
        ("fibre_g", "two skeins", "Weight of the dry yarn is written as a weight"),
        ("fibre_g", "100 ml", "Weight of the dry yarn is written as a weight"),
        ("fibre_g", "9" * 12, "Weight of the dry yarn must be"),
        ("skeins", "-2", "The number of skeins must be from 1"),
        ("skeins", "9" * 20, "The number of skeins must be from 1"),
        ("skeins", "some", "Skeins must be a whole number."),
        ("wet_yarn_g", "90", "The wet yarn must be at least the dry yarn’s 97 g"),
        ("liquor_ratio", "0", "Liquor ratio must be above 0"),
        ("liquor_ratio", "wide", "Liquor ratio is written as"),
        ("pot", "999", "Pot must be one of those offered."),
        ("dyed_on", "", "Day is missing."),
        ("dyed_on", "soon", "Day cannot be read as it was typed."),
        ("dyed_on", "1066-10-14", "The day must be from 2000"),
        ("dyed_on", "2999-01-01", "The day must be from 2000"),
        ("notes", "x" * 2001, "Notes may have up to 2000 characters"),
    ],
)
def test_a_fault_stands_by_its_field_and_what_was_typed_stays(
    client: Client, things: Dyeing, name: str, typed: str, sentence: str
) -> None:
    sent = form(things, **{"version": things.recipe(), "fibre_g": "97 g", name: typed})
    page = read(client.post(PLAN, sent))
    assert page.status == 422
    assert sentence in page.fault(name)
    assert page.value("fibre_g") == sent["fibre_g"]
    assert sent["deed"] == page.value("deed")
    assert HOSTILE not in page.source
    assert not Bath.objects.exists()


def test_a_pot_too_small_says_how_much_it_takes(client: Client, things: Dyeing) -> None:
    Pot.objects.update(volume_l=3.3)
    sent = form(things, version=things.recipe(), fibre_g="200")
    page = read(client.post(PLAN, sent))
    assert page.status == 422
    assert "Dye at most 100 g of yarn in it" in page.fault("pot")


def test_an_incomplete_version_cannot_be_dyed(client: Client, things: Dyeing) -> None:
    text = RecipeText(doses=(DoseLine(as_written="3 tsp"),))
    old = write_recipe(name="Ancient", text=text, stamp=stamp_now(by=None))
    page = read(client.post(PLAN, form(things, version=old.id)))
    assert "no dye and depth in % for “3 tsp”" in page.fault("version")


def test_an_earlier_version_can_be_dyed(client: Client, things: Dyeing) -> None:
    first = things.recipe()
    write_version(parent_id=first, text=things.text(), stamp=stamp_now(by=None))
    offered = read(client.get(f"{PLAN}?version={first}")).text
    assert "Low Tide, version 1" in offered
    assert "Low Tide, version 2" in offered
    assert "Low Tide, version 1" not in read(client.get(PLAN)).text


def test_a_bath_is_planned_anew_with_everything_filled_in(
    client: Client, things: Dyeing
) -> None:
    Pot.objects.update(volume_l=30.0)
    number = things.recipe()
    old = things.bath(number, fibre_g=450.0)
    page = read(client.get(f"{PLAN}?again={old}"))
    assert f"Plan bath {old} anew" in page.text
    assert page.value("fibre_g") == "450"
    assert page.value("instead_of") == old
    assert "short" not in page.text  # its own doses are not held against it
    sent = form(things, version=number, fibre_g="400", instead_of=old)
    done = read(client.post(PLAN, sent, follow=True))
    assert f"Bath {today():%y%m%d}-B2 is planned" in done.text
    assert bath_now(old).status is BathStatus.GIVEN_UP
    again = read(client.get(f"{PLAN}?again={old}"))
    assert not again.value("instead_of")
    late = read(client.post(PLAN, form(things, version=number, instead_of=old)))
    assert late.status == 422
    assert "has begun or is over" in late.text
    assert read(client.get(f"{PLAN}?again=nothing")).status == 404


def test_a_day_that_is_over_becomes_today(client: Client, things: Dyeing) -> None:
    old = things.bath(things.recipe())
    Bath.objects.update(dyed_on=today() - timedelta(days=9))
    page = read(client.get(f"{PLAN}?again={old}"))
    assert page.value("dyed_on") == f"{today():%Y-%m-%d}"


@pytest.mark.parametrize(
    ("when", "words"),
    [
        (When.START, "38.8 ml at the start"),
        (When.ON_THE_WAY, "38.8 ml on the way up, at 60 °C"),
        (When.AT_TOP, "38.8 ml at the top"),
        (When.TWO_HALVES, "38.8 ml in two halves"),
    ],
)
def test_the_plan_says_when_the_acid_goes_in(
    client: Client, things: Dyeing, when: When, words: str
) -> None:
    at_c = 60.0 if when is When.ON_THE_WAY else None
    number = _with_acid(things, when, at_c=at_c)
    assert words in live(client, version=number, base=things.base, fibre_g="97").text


def _with_acid(things: Dyeing, when: When, at_c: float | None = None) -> int:
    (acid,) = things.text().helpers
    text = replace(things.text(), helpers=(replace(acid, when=when, at_c=at_c),))
    return write_recipe(name="Up", text=text, stamp=stamp_now(by=None)).id
