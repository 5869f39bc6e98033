"""Bases and their mill lots, acids and helpers, measuring tools."""

from datetime import date
from typing import Any

import pytest
from django.test import Client

from shadewright.records.models import (
    Auxiliary,
    Base,
    Circuit,
    HeatSource,
    MeasuringTool,
    MillLot,
    Pot,
    Water,
)
from shadewright.workflows.catalogue import earlier_versions
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")
FORMS: dict[str, dict[str, str]] = {
    "bases": {
        "name": "Sock",
        "fibres": "80 % wool, 20 % nylon",
        "undyeable_percent": "0",
        "skein_g": "100",
        "metres_per_100_g": "420",
        "price_per_kg": "41,50",
        "notes": "springy",
    },
    "acids": {
        "name": "Vinegar",
        "kind": "acid",
        "is_liquid": "on",
        "strength_g_per_100_ml": "5",
        "price_per_kg": "1,20",
        "hazard_words": "",
        "data_sheet_link": "",
        "notes": "springy",
    },
    "waters": {
        "name": "Tap",
        "tested_on": "2026-01-05",
        "alkalinity_mg_per_l": "120",
        "hardness_mg_per_l": "150 mg/l",
        "ph": "7,6",
        "notes": "springy",
    },
    "pots": {
        "name": "Blue pot",
        "material": "enamel",
        "volume_l": "12 l",
        "mass_kg": "1,8",
        "notes": "springy",
    },
    "burners": {
        "name": "Left front",
        "kind": "induction",
        "power_kw": "1800 W",
        "notes": "springy",
    },
    "circuits": {"name": "Cooker", "limit_kw": "7,2", "notes": "springy"},
    "tools": {
        "name": "Tall cylinder",
        "kind": "cylinder",
        "size": "500",
        "readability": "5 ml",
        "tool_class": "B",
        "standard": "ISO",
        "own_error": "4 ml",
        "price": "12,50",
        "notes": "springy",
    },
}
NEEDED = {
    "bases": {"name": "Sock", "fibres": "wool"},
    "acids": {"name": "Salt", "kind": "salt"},
    "waters": {"name": "Rain butt"},
    "pots": {"name": "Pot", "material": "enamel", "volume_l": "12"},
    "burners": {"name": "Ring", "kind": "coil", "power_kw": "2"},
    "circuits": {"name": "Wall", "limit_kw": "3.6"},
    "tools": {"name": "Scale", "kind": "balance"},
}
MODELS: dict[str, Any] = {
    "bases": Base,
    "acids": Auxiliary,
    "waters": Water,
    "pots": Pot,
    "burners": HeatSource,
    "circuits": Circuit,
    "tools": MeasuringTool,
}


def text(client: Client, address: str) -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


@pytest.mark.parametrize("slug", FORMS)
def test_it_is_added_shown_edited_and_kept(client: Client, slug: str) -> None:
    places = {
        client.post(f"/{slug}/new/", FORMS[slug]).headers["Location"] for _ in "12"
    }
    (place,) = places
    assert MODELS[slug].objects.count() == 1
    assert "springy" in text(client, place)
    changed = {**FORMS[slug], "notes": "dull"}
    page = client.post(f"{place}edit/", changed, follow=True).content.decode()
    assert 'Notes: <span class="undone">springy</span> → dull' in page
    row = MODELS[slug].objects.get()
    assert len(earlier_versions(row)) == 1


@pytest.mark.parametrize(
    ("slug", "words"),
    [
        ("bases", ("80 % wool, 20 % nylon", "100 g", "420 m", "41.50")),
        ("acids", ("5 g/100 ml", "1.20", "Acid into water, never water into acid")),
        ("waters", ("120 mg/l", "150 mg/l", "7.6", "5 January")),
        ("pots", ("12 l", "1.8 kg", "Enamel")),
        ("burners", ("1.8 kW", "Induction")),
        ("circuits", ("7.2 kW",)),
        ("tools", ("500 ml", "5 ml", "ISO", "4 ml", "12.50")),
    ],
)
def test_its_page_tells_what_is_known(
    client: Client, slug: str, words: tuple[str, ...]
) -> None:
    page = client.post(f"/{slug}/new/", FORMS[slug], follow=True).content.decode()
    for word in words:
        assert word in page.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("slug", "field", "typed", "sentence"),
    [
        ("bases", "name", "", "Your name for it is missing."),
        ("bases", "fibres", "", "Fibres is missing."),
        ("bases", "fibres", "x" * 121, "Fibres may have up to 120 characters"),
        ("bases", "undyeable_percent", "101", "must be from 0 % to 100 %"),
        ("bases", "undyeable_percent", "-1", "must be from 0 % to 100 %"),
        ("bases", "skein_g", "0", "One skein must be above 0"),
        ("bases", "skein_g", "heavy", "One skein is written as a weight"),
        ("bases", "skein_g", "100 ml", "One skein is written as a weight"),
        ("bases", "price_per_kg", "-1", "Price of 1 kg must be"),
        ("bases", "metres_per_100_g", "-4", "Length of 100 g must be above 0"),
        ("bases", "metres_per_100_g", "9" * 9, "Length of 100 g must be above 0"),
        ("acids", "kind", "magic", "What it is for must be one of those offered."),
        ("acids", "strength_g_per_100_ml", "-5", "must be above 0"),
        ("acids", "strength_g_per_100_ml", "", "The strength is missing"),
        ("acids", "strength_g_per_100_ml", "500", "at most 200 g/100 ml"),
        ("acids", "strength_g_per_100_ml", "weak", "is written as a number"),
        ("acids", "price_per_kg", "-1", "Price of 1 kg must be from 0"),
        ("acids", "data_sheet_link", "x", "The link must be a whole address"),
        ("waters", "alkalinity_mg_per_l", "hard", "Alkalinity is written as a number"),
        ("waters", "alkalinity_mg_per_l", "-1", "must be from 0 mg/l to 2000 mg/l"),
        ("waters", "hardness_mg_per_l", "5 dH", "Hardness is written as a number"),
        ("waters", "ph", "15", "pH from the tap must be from 0 to 14"),
        ("waters", "ph", "7 g", "pH from the tap is written as a number"),
        ("waters", "tested_on", "2999-01-01", "must be today or earlier"),
        ("waters", "tested_on", "soon", "cannot be read as it was typed."),
        ("pots", "volume_l", "", "Holds, filled to the brim is missing."),
        ("pots", "volume_l", "0", "Holds, filled to the brim must be above 0"),
        ("pots", "volume_l", "big", "is written as a volume"),
        ("pots", "mass_kg", "-2", "Weight, empty must be above 0"),
        ("pots", "mass_kg", "2 l", "Weight, empty is written as a weight"),
        ("pots", "material", "gold", "Material must be one of those offered."),
        ("burners", "power_kw", "", "Power is missing."),
        ("burners", "power_kw", "0", "Power must be above 0 and at most 100 kW"),
        ("burners", "power_kw", "200", "Power must be above 0 and at most 100 kW"),
        ("burners", "power_kw", "hot", "Power is written as a power"),
        ("burners", "kind", "gold", "What it is must be one of those offered."),
        ("tools", "kind", "", "Kind is missing."),
        ("tools", "size", "-500", "Largest that it measures must be from 0 ml"),
        ("tools", "size", "tall", "Largest that it measures is written as a volume"),
        ("tools", "size", "500 g", "Largest that it measures is written as a volume"),
        ("tools", "readability", "600", "The smallest step must be smaller"),
        ("tools", "tool_class", "Z", "Class must be one of those offered."),
        ("tools", "standard", "OWN", "Standard must be one of those offered."),
        ("tools", "own_error", "600", "only be off by less than the largest"),
        ("tools", "own_error", "a bit", "How far it may be off is written as a volume"),
        ("tools", "price", "-1", "Price must be from 0"),
    ],
)
def test_a_fault_stands_by_its_field_and_what_was_typed_stays(
    client: Client, slug: str, field: str, typed: str, sentence: str
) -> None:
    answer = client.post(f"/{slug}/new/", {**FORMS[slug], field: typed})
    page = answer.content.decode().replace("\u00a0", " ")
    assert answer.status_code == 422
    assert sentence in page
    assert f'id="id_{field}_error"' in page
    assert "springy" in page
    assert typed in page or typed in {"magic", "Z", "OWN", "gold"}
    assert MODELS[slug].objects.count() == 0


@pytest.mark.parametrize("slug", FORMS)
def test_html_in_every_text_field_stays_text(client: Client, slug: str) -> None:
    hostile = {**FORMS[slug], "name": HOSTILE, "notes": HOSTILE}
    hostile |= {key: HOSTILE for key in ("fibres", "hazard_words") if key in hostile}
    page = client.post(f"/{slug}/new/", hostile, follow=True).content.decode()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page


def test_a_powder_has_no_strength_and_needs_none(client: Client) -> None:
    powder = {**FORMS["acids"], "name": "Citric acid"}
    del powder["is_liquid"]
    answer = client.post("/acids/new/", powder)
    assert "A powder has no strength in 100 ml" in answer.content.decode()
    powder["strength_g_per_100_ml"] = ""
    assert client.post("/acids/new/", powder).status_code == 302
    salt = {**powder, "name": "Salt", "kind": "salt", "strength_g_per_100_ml": "5"}
    assert client.post("/acids/new/", salt).status_code == 422


def test_a_liquid_helper_may_have_no_known_strength(client: Client) -> None:
    wetter = {**FORMS["acids"], "kind": "wetting agent", "strength_g_per_100_ml": ""}
    assert client.post("/acids/new/", wetter).status_code == 302


@pytest.fixture
def base() -> Base:
    """A base without lots."""
    return Base.objects.create(name="Sock", fibres="Wool")


def test_a_mill_lot_is_written_down_once_and_changed(
    client: Client, base: Base
) -> None:
    address = f"/bases/{base.pk}/lots/new/"
    lot = {"lot": "M 12", "received_on": "2026-02-03", "received_g": "5 kg"}
    assert f'href="{address}"' in text(client, f"/bases/{base.pk}/")
    client.post(address, lot)
    page = client.post(address, lot, follow=True).content.decode()
    row = MillLot.objects.get()
    assert (row.received_on, row.received_g) == (date(2026, 2, 3), 5000.0)
    assert "Received 3 February. 5000 g." in page.replace("\u00a0", " ")
    edit = f"/bases/{base.pk}/lots/{row.pk}/"
    assert f'href="{edit}"' in page
    client.post(edit, {**lot, "notes": HOSTILE})
    assert len(earlier_versions(row)) == 1
    assert "<script>alert" not in text(client, f"/bases/{base.pk}/")


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("lot", "", "Mill lot is missing."),
        ("lot", "m 12", "This base has a lot “m 12” already."),
        ("lot", "x" * 41, "Mill lot may have up to 40 characters"),
        ("received_on", "2999-01-01", "must be today or earlier"),
        ("received_g", "-5", "Weight must be above 0"),
        ("received_g", "much", "Weight is written as a weight"),
    ],
)
def test_a_fault_in_a_lot_stands_by_its_field(
    client: Client, base: Base, field: str, typed: str, sentence: str
) -> None:
    MillLot.objects.create(base=base, lot="M 12")
    sent = {"lot": "M 13", "received_on": "", "received_g": "", field: typed}
    answer = client.post(f"/bases/{base.pk}/lots/new/", sent)
    page = answer.content.decode().replace("\u00a0", " ")
    assert answer.status_code == 422
    assert sentence in page
    assert typed in page
    assert MillLot.objects.count() == 1


@pytest.mark.parametrize(
    "address",
    [
        "/dyes/99/",
        "/dyes/99/edit/",
        "/dyes/99/sheet/",
        "/bases/99/lots/new/",
        "/bases/99/lots/99/",
        f"/tools/{'9' * 40}/",
    ],
)
def test_what_is_not_there_is_said_plainly(client: Client, address: str) -> None:
    answer = client.get(address)
    assert answer.status_code == 404
    assert "There is no" in answer.content.decode()


@pytest.mark.parametrize("slug", FORMS)
def test_no_field_goes_without_words(client: Client, slug: str) -> None:
    form = text(client, f"/{slug}/new/")
    only_name = {**dict.fromkeys(FORMS[slug], ""), **NEEDED[slug]}
    page = client.post(f"/{slug}/new/", only_name, follow=True).content.decode()
    assert "-----" not in form
    assert "Not written down: " in page
    assert "None," not in page
