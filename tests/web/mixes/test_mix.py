"""A mix by sliders: its address, its colour, its doses, kept."""

import re

import pytest
from django.test import Client

from shadewright.records.models import Dye, FoundFor, MeasuringTool, Recipe
from shadewright.records.models.catalogue import ToolKind
from shadewright.web.mix_text import mix_text
from tests.web.pages_read import read
from tests.workflows.bench import entered
from tests.workflows.shades.two_yarns import TwoYarns

FERN = "%23556f4a"


@pytest.mark.usefixtures("ines")
def test_without_a_palette_it_leads_to_the_first_swatches(client: Client) -> None:
    shown = read(client.get("/shades/mix/"))
    assert shown.status == 200
    assert "No palette yet" in shown.text
    assert "/shades/start/" in shown.links


def test_it_begins_with_bare_yarn_of_the_base_used_most(
    client: Client, yarns: TwoYarns
) -> None:
    shown = read(client.get("/shades/mix/"))
    assert "On Hollow 4-ply" in shown.text
    assert "Bare yarn" in shown.text
    assert f'value="{yarns.dye("Gorse")}">Gorse' in shown.source


def test_the_colour_stands_beside_the_one_that_is_wanted(
    client: Client, yarns: TwoYarns
) -> None:
    mix = mix_text(yarns.mix(Gorse=0.6, Sloe=0.2))
    address = f"/shades/mix/?mix={mix}&base={yarns.wool}&colour={FERN}&name=Wet+Fern"
    shown = read(client.get(address))
    assert "Wanted: Wet Fern" in shown.text
    assert "(CIEDE2000) to" in shown.text
    assert "foretold from colours read by a meter" in shown.text
    assert "9 in 10 times at most" in shown.text
    for light in ("Daylight", "Lamp", "Shop LED"):
        assert light in shown.text
    assert "Gorse 0.6 % + Sloe 0.2 %" in shown.text
    assert any(link.startswith("/shades/gradient/?") for link in shown.links)


def test_a_slider_is_answered_with_the_colour_alone(
    client: Client, yarns: TwoYarns
) -> None:
    """It says what the page would, and where the page then is."""
    gorse, sloe = yarns.dye("Gorse"), yarns.dye("Sloe")
    sent = {f"d{gorse}": "0,6", f"d{sloe}": "0", "base": str(yarns.silk)}
    part = read(client.get("/shades/mix/told/", sent))
    assert "<h1" not in part.source
    assert f"/shades/mix/?base={yarns.silk}&amp;mix={gorse}:0.6" in part.source
    whole = read(client.get(f"/shades/mix/?base={yarns.silk}&mix={gorse}:0.6"))
    assert re.findall(r"#[0-9a-f]{6}", part.source)[0] in whole.source


def test_what_is_typed_comes_into_the_address(client: Client, yarns: TwoYarns) -> None:
    """Without a script: Show, Add this dye, Take out."""
    gorse, sloe = yarns.dye("Gorse"), yarns.dye("Sloe")
    sent = {f"d{gorse}": "0.6", "base": str(yarns.wool), "yarn": "50 g"}
    start = f"/shades/mix/?base={yarns.wool}"
    went = client.get("/shades/mix/", sent | {"add": str(sloe)})
    assert (
        went.headers["Location"]
        == f"{start}&mix={gorse}:0.6,{sloe}:0.1&yarn=50#dye-{sloe}"
    )
    sent |= {f"d{sloe}": "0.2"}
    assert client.get("/shades/mix/", sent | {"out": str(gorse)}).headers[
        "Location"
    ] == (f"{start}&mix={sloe}:0.2&yarn=50")


@pytest.mark.parametrize(
    ("text", "said"),
    [("soft", "The depth"), ("21", "The depth must be"), ("-1", "The depth")],
)
def test_a_depth_that_cannot_be_is_said_beside_its_field(
    client: Client, yarns: TwoYarns, text: str, said: str
) -> None:
    sent = {f"d{yarns.dye('Gorse')}": text}
    shown = read(client.get("/shades/mix/", sent))
    assert shown.status == 422
    assert said in shown.text
    assert f'value="{text}"' in shown.source
    part = read(client.get("/shades/mix/told/", sent))
    assert part.status == 200
    assert said in part.text
    assert 'form="save-mix"' not in part.source


@pytest.mark.parametrize(
    "query", ["mix=Gorse:1", "base=x", "base=99999", "mix=99999:1", "colour=nocolour"]
)
def test_a_bad_address_is_one_sentence(
    client: Client, yarns: TwoYarns, query: str
) -> None:
    del yarns
    assert client.get(f"/shades/mix/?{query}").status_code in {404, 422}


def test_where_nothing_is_known_it_says_why(client: Client, yarns: TwoYarns) -> None:
    shown = read(client.get(f"/shades/mix/?base={yarns.nylon}"))
    assert "No swatch on Moss nylon was read yet" in shown.text
    madrone = Dye.objects.create(name="Madrone")
    shown = read(client.get(f"/shades/mix/?mix={madrone.pk}:0.5"))
    assert "No swatch of Madrone was read yet" in shown.text


def test_the_doses_follow_once_the_sliders_rest(
    client: Client, yarns: TwoYarns
) -> None:
    gorse = yarns.dye("Gorse")
    code = entered(gorse).code
    sent = {f"d{gorse}": "0.6", "yarn": "200"}
    part = read(client.get("/shades/mix/doses/", sent))
    assert "120 ml" in part.text
    assert f"/bottles/{code}/" in part.links
    assert "the nearest first" in part.text
    assert any(link.startswith("/shades/swatches/") for link in part.links)


def test_a_dose_too_small_for_the_tool_is_said(client: Client, yarns: TwoYarns) -> None:
    """0.05 g on a scale that shows tenths of a gram: half of it, or twice."""
    MeasuringTool.objects.create(name="Scale", kind=ToolKind.BALANCE, readability=0.1)
    sent = {f"d{yarns.dye('Gorse')}": "0.05"}
    part = read(client.get("/shades/mix/doses/", sent))
    assert "Gorse at 0.05 % is too little for Scale, which shows steps of 0.1 g" in (
        part.text
    )
    assert "this is dry dye" in part.text
    assert "respirator" in part.text


def test_a_mix_is_saved_with_the_colour_that_it_is_for(
    client: Client, yarns: TwoYarns
) -> None:
    mix = mix_text(yarns.mix(Gorse=0.6, Sloe=0.2))
    shown = read(client.get(f"/shades/mix/?mix={mix}&colour={FERN}&name=Wet+Fern"))
    sent = {
        name: shown.value(name)
        for name in ("deed", "base", "mix", "yarn", "colour", "wanted_name")
        if f'name="{name}"' in shown.source
    }
    went = client.post("/shades/mix/save/", sent | {"mix": mix, "called": "Bog Edge"})
    made = Recipe.objects.get()
    assert went.headers["Location"] == f"/recipes/{made.pk}/"
    assert made.name == "Bog Edge"
    assert FoundFor.objects.get().name == "Wet Fern"
    client.post("/shades/mix/save/", sent | {"mix": mix, "called": "Bog Edge"})
    assert Recipe.objects.count() == 1


def test_a_mix_without_a_name_is_named_as_it_was_mixed_at_last(
    client: Client, yarns: TwoYarns
) -> None:
    before = read(client.get(f"/shades/mix/?mix={mix_text(yarns.mix(Gorse=0.6))}"))
    assert not before.value("called")
    sent = {"deed": before.value("deed"), "mix": mix_text(yarns.mix(Gorse=0.8))}
    client.post("/shades/mix/save/", sent)
    assert Recipe.objects.get().name == "Gorse 0.8 %"


def test_a_name_that_is_too_long_is_refused(client: Client, yarns: TwoYarns) -> None:
    deed = read(client.get("/shades/mix/")).value("deed")
    sent = {"deed": deed, "mix": mix_text(yarns.mix(Gorse=0.6)), "called": "G" * 61}
    shown = read(client.post("/shades/mix/save/", sent))
    assert shown.status == 422
    assert "The name may have up to 60 characters" in shown.text
    assert not Recipe.objects.exists()
