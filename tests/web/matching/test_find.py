"""Finding a recipe: the form, the answers, the search beside the page."""

import re
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.records.models import (
    Base,
    FoundFor,
    PowderJar,
    RecipeVersion,
    WantedColour,
)
from shadewright.web.matching import searches
from shadewright.workflows.shades.wanted import keep_wanted, wanted_of_text
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import Answer, read
from tests.workflows.shades.studios import Fitted

FERN = "52, -10, 20"


def found(client: Client, studio: Fitted, **said: object) -> Answer:
    query = {"colour": FERN, "name": "Wet Fern", "base": str(studio.base.pk)} | said
    return read(client.get(f"/shades/find/?{urlencode(query)}"))


@pytest.mark.usefixtures("ines")
def test_before_any_swatch_there_is_one_step(client: Client) -> None:
    """Nothing can be found yet; the way to begin stands there."""
    shown = read(client.get("/shades/find/"))
    assert "No palette yet" in shown.text
    assert reverse("swatch-start") in shown.links


def test_page_without_a_colour_asks_for_one(client: Client, studio: Fitted) -> None:
    """The form stands open."""
    del studio
    shown = read(client.get("/shades/find/"))
    assert "What colour is wanted" in shown.text
    assert "No colour yet" in shown.text


def test_form_that_is_sent_gets_its_address(client: Client, studio: Fitted) -> None:
    """What was typed becomes a short address that says all of it."""
    sent = {
        "by": "colour",
        "colour": "#556F4A",
        "name": "Wet Fern",
        "base": str(studio.base.pk),
        "grams": "400",
        "tolerance": "1,5",
        "most": "3",
        "depth": "6",
        "shelf": "on",
        f"dye_{studio.dyes['Kelp']}": "without",
    }
    answer = client.get("/shades/find/", sent)
    assert answer.status_code == 302
    query = parse_qs(urlsplit(answer["Location"]).query)
    assert query == {
        "colour": ["#556f4a"],
        "name": ["Wet Fern"],
        "base": [str(studio.base.pk)],
        "grams": ["400"],
        "tolerance": ["1.5"],
        "most": ["3"],
        "shelf": ["on"],
        "without": [str(studio.dyes["Kelp"])],
    }
    shown = read(client.get(answer["Location"]))
    assert "Wet Fern, 400 g Fell DK" in shown.text
    doses = re.findall(r"<th scope=\"row\">.*?</th>", shown.source)
    assert doses
    assert not any("Kelp" in row for row in doses)


def test_colour_of_the_bare_yarn_needs_no_dye(client: Client, studio: Fitted) -> None:
    """It says so, and offers nothing to save."""
    shown = found(client, studio, colour="91, -0.5, 9", name="Plain")
    assert "It needs no dye" in shown.text
    assert "Bare Fell DK is that colour already: ΔE" in shown.text
    assert "“Save as recipe” names it" not in shown.text


def test_answers_say_all_of_it(client: Client, studio: Fitted) -> None:
    """Words, number with spread, chance, doses by bottle, what is missing."""
    shown = found(client, studio)
    assert "1. Most likely to come out right" in shown.text
    assert "No difference to be seen" in shown.text
    assert shown.text.count("goggles and gloves until all powder is wet") == 1
    assert re.search(r"On paper CIEDE2000 0\.\d ?; in the pot usually \d", shown.text)
    assert "of such pots come within 1" in shown.text
    assert studio.pot.gorse in shown.text
    assert "No stock on the shelf of" in shown.text
    assert "Make a stock of Kelp" in shown.text
    assert "56 sets of dyes looked at" in shown.text
    assert "“Save as recipe” names it" in shown.text
    assert "target supposed" in shown.text


def test_colour_out_of_reach_is_said_first(client: Client, studio: Fitted) -> None:
    """How far and which way stands above the answers."""
    shown = found(client, studio, colour="80, -70, 60")
    assert shown.text.index("Out of reach") < shown.text.index("1. As near as")
    assert re.search(r"ΔE\s\d+\.\d away: very much duller", shown.text)
    assert "more vivid than this screen shows" in shown.text


def test_a_shelf_that_is_too_small_is_not_laid_to_the_dyes(
    client: Client, studio: Fitted
) -> None:
    """With the filter it is the stock for the batch that does not come nearer."""
    shown = found(client, studio, shelf="on", grams="5000").text.replace("\u00a0", " ")
    assert "The nearest that the stock on the shelf for 5000 g comes to it" in shown


def test_price_of_a_jar_makes_a_cost(client: Client, studio: Fitted) -> None:
    """Where every price is known the cost stands there; else what is missing."""
    assert "not known" in found(client, studio, shelf="on").text
    assert not PowderJar.objects.exclude(price=None).exists()


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"colour": "greenish"}, "cannot be read"),
        ({"grams": "-3"}, "batch"),
        ({"tolerance": "none"}, "Tolerance must be"),
        ({"base": "999"}, "no base"),
        ({"most": "9"}, "Most dyes must be"),
        ({"depth": "60"}, "Most depth"),
    ],
)
def test_what_cannot_be_meant_is_one_sentence(
    client: Client, studio: Fitted, said: dict[str, str], words: str
) -> None:
    """A mangled address is answered with a page that says why."""
    query = {"colour": FERN, "base": str(studio.base.pk)} | said
    answer = client.get(f"/shades/find/?{urlencode(query)}")
    assert answer.status_code == 422
    assert words.casefold() in read(answer).text.casefold()


def test_fault_of_the_form_stands_by_its_field(client: Client, studio: Fitted) -> None:
    """What was typed stays."""
    sent = {"by": "colour", "colour": "", "base": str(studio.base.pk)}
    answer = client.get("/shades/find/", sent)
    assert answer.status_code == 422
    assert "Pick or type it, or choose one." in read(answer).text


def test_pasted_spectrum_is_looked_for(client: Client, studio: Fitted) -> None:
    """31 numbers become an address; nothing is supposed of it then."""
    numbers = " ".join(f"{0.1 + n / 200:.3f}" for n in range(31))
    sent = {
        "by": "spectrum",
        "spectrum": numbers,
        "base": str(studio.base.pk),
        "light": "A",
    }
    answer = client.get("/shades/find/", sent, follow=True)
    shown = read(answer)
    assert "target supposed" not in shown.text
    assert "a spectrum" in shown.text


def test_kept_colour_is_looked_for_by_its_number(
    client: Client, studio: Fitted
) -> None:
    """Its name heads the page, and it is not offered to be kept again."""
    kept = keep_wanted(
        wanted_of_text(FERN),
        name="Broom",
        base_id=studio.base.pk,
        stamp=stamp_now(by=None),
    )
    shown = read(client.get(f"/shades/find/?wanted={kept.key}"))
    assert "Broom, 100 g Fell DK" in shown.text
    assert "Keep this colour" not in shown.text


def test_search_that_takes_long_shows_how_far_it_is(
    client: Client, studio: Fitted, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A panel with its share and Cancel; asked again, the answers stand there."""
    places = searches.SEARCHES.places
    places.acquire()
    places.acquire()
    monkeypatch.setattr(searches, "FIRST_WAIT_S", 0.0)
    shown = found(client, studio)
    assert "Looking through the dyes" in shown.text
    assert "Cancel" in shown.text
    assert "Most likely" not in shown.text
    places.release()
    (search,) = searches.SEARCHES.kept.values()
    assert search.over.wait(60)
    query = {"colour": FERN, "name": "Wet Fern", "base": str(studio.base.pk)}
    part = read(client.get(f"/shades/find/answers/?{urlencode(query)}"))
    assert "1. Most likely to come out right" in part.text
    assert search.share == 1.0


def test_search_can_be_cancelled(
    client: Client, studio: Fitted, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It stops before its next step and is forgotten; the target stays."""
    places = searches.SEARCHES.places
    places.acquire()
    places.acquire()
    monkeypatch.setattr(searches, "FIRST_WAIT_S", 0.0)
    found(client, studio)
    (search,) = searches.SEARCHES.kept.values()
    query = urlencode({"colour": FERN, "name": "Wet Fern", "base": str(studio.base.pk)})
    answer = client.post(f"/shades/find/stop/?{query}", follow=True)
    assert "Stopped. Press Find to look again." in read(answer).text
    places.release()
    assert search.over.wait(60)
    assert search.answer is None
    assert not searches.SEARCHES.kept


def test_few_searches_are_remembered(studio: Fitted) -> None:
    """The oldest is given up, so that memory is bounded."""
    from dataclasses import replace

    from shadewright.workflows.shades.find_wishes import FindWish
    from shadewright.workflows.shades.finding import hunt

    ready = hunt(FindWish(wanted=wanted_of_text(FERN), base_id=studio.base.pk))
    for number in range(searches.MOST_KEPT + 2):
        wish = replace(ready.wish, tolerance=1.0 + number)
        searches.SEARCHES.of(replace(ready, wish=wish))
    assert len(searches.SEARCHES.kept) == searches.MOST_KEPT
    for search in searches.SEARCHES.kept.values():
        assert search.over.wait(60)


def test_answer_is_saved_in_one_tap(client: Client, studio: Fitted) -> None:
    """The recipe opens and tells what it was found for; sent twice it is one."""
    query = urlencode({"colour": FERN, "name": "Wet Fern", "base": str(studio.base.pk)})
    html = client.get(f"/shades/find/?{query}").content.decode()
    deed = re.search(r'name="deed" value="([^"]+)"', html)
    mix = re.search(r'name="mix" value="([^"]+)"', html)
    assert deed
    assert mix
    sent = {"deed": deed[1], "mix": mix[1]}
    client.post(f"/shades/find/save/?{query}", sent)
    shown = read(client.post(f"/shades/find/save/?{query}", sent, follow=True))
    assert "Saved as Wet Fern, version 1" in shown.text
    assert "Found for Wet Fern" in shown.text
    found = FoundFor.objects.get()
    (trials,) = (link for link in shown.links if "kind=bracket" in link)
    assert f"base={studio.base.pk}" in trials
    assert "3 swatches of 10 g" in read(client.get(trials)).text
    keep_wanted(wanted_of_text(FERN), name="Fern at dusk", stamp=stamp_now(by=None))
    kept = read(client.get("/shades/wanted/"))
    assert f"/recipes/{found.version.recipe_id}/versions/1/" in kept.links
    Base.objects.create(name="Another yarn")
    plan = read(client.get(f"/baths/new/?version={found.version_id}")).source
    assert f'<option value="{studio.base.pk}" selected>' in plan


def test_search_from_a_recipe_makes_its_next_version(
    client: Client, studio: Fitted
) -> None:
    """The address names the version that it comes from."""
    shown = found(client, studio, version=studio.pot.version)
    assert "From Low Tide, version 1" in shown.text
    query = urlencode({
        "colour": FERN,
        "base": str(studio.base.pk),
        "version": studio.pot.version,
    })
    mix = f"{studio.dyes['Kelp']}:0.6"
    client.post(f"/shades/find/save/?{query}", {"mix": mix})
    newest = RecipeVersion.objects.latest("pk")
    assert (newest.recipe.name, newest.number) == ("Low Tide", 2)


def test_colour_is_kept_from_the_page(client: Client, studio: Fitted) -> None:
    """Its filters stay in the address."""
    query = urlencode({"colour": FERN, "base": str(studio.base.pk), "grams": "400"})
    answer = client.post(f"/shades/wanted/keep/?{query}", {"name": "Broom"})
    row = WantedColour.objects.get()
    assert row.name == "Broom"
    assert answer["Location"] == (
        f"/shades/find/?wanted={row.pk}&base={studio.base.pk}&grams=400"
    )


def test_page_asks_the_store_few_questions(
    client: Client, studio: Fitted, django_assert_max_num_queries: object
) -> None:
    """However many dyes and answers there are."""
    with django_assert_max_num_queries(45):  # type: ignore[operator]
        found(client, studio)
