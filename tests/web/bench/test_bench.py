"""One bath at the pot, without a script: plain forms do the same."""

from dataclasses import replace
from datetime import timedelta
from io import BytesIO
from uuid import uuid4

import pytest
import segno
from django.test import Client

from shadewright.records.models import Bath, BathLine, Dye, HeatSource, Pot
from shadewright.workflows.bath_pages import BathAct, bath_now
from shadewright.workflows.bottles import Look, look_at
from shadewright.workflows.shelf import shelf_bottle
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE
from tests.workflows.bench import entered, founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def sent(client: Client, pot: Ready, **form: str) -> Answer:
    said = {"key": str(uuid4()), "act": "dosed", "step": "dose-1", **form}
    address = f"/bench/{pot.number}/tap/"
    return read(client.post(address, said, follow=True))


def shown(client: Client, pot: Ready, query: str = "") -> Answer:
    return read(client.get(f"/bench/{pot.number}/{query}"))


def test_the_head_says_which_pot_on_which_burner(client: Client, pot: Ready) -> None:
    """A plan may give a bath another burner while the yarn is in the soak."""
    vat = Pot.objects.create(name="Tall pot", volume_l=12.0)
    plate = HeatSource.objects.create(name="Old plate", kind="induction", power_kw=1.5)
    Bath.objects.filter(number=pot.number).update(pot=vat, source=plate, skeins=1)
    assert "100 g · 1 skein · Tall pot on Old plate" in shown(client, pot).text


def test_a_new_bath_says_who_rings_before_the_first_dose(
    client: Client, pot: Ready
) -> None:
    page = shown(client, pot)
    assert "This phone rings while this page is open and awake." in page.text
    assert "The computer rings every alarm." in page.text
    tapped(pot.number, BathAct.STARTED, "fill")
    assert "This phone rings" not in shown(client, pot).text


def test_the_first_dose_says_what_and_how_much(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.STARTED, "fill")
    page = shown(client, pot)
    assert f"{pot.slate} Slate 1 %" in page.text
    assert "Done, 60 ml" in page.text
    assert "± 0.6 ml is fine" in page.text


def test_no_single_tap_doubles_a_small_dose(client: Client, pot: Ready) -> None:
    usual = shown(client, pot, "?step=dose-1&view=other")
    assert "+1: 61 ml" in usual.text
    assert "+5: 65 ml" in usual.text
    small = replace(pot, number=pot.another(fibre_g=5.0))
    page = shown(client, small, "?step=dose-1&view=other")
    assert "+1: 4 ml" in page.text
    assert "+5:" not in page.text


def test_a_wrong_bottle_says_what_it_did(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.STARTED, "fill")
    mistake = {"step": "dose-1/part", "note": "wrong bottle", "unit": "ml"}
    page = sent(client, pot, value="30", bottle=pot.gorse, **mistake)
    assert f"30 ml of {pot.gorse} Gorse went in." in page.text
    assert "cannot be taken out again" in page.text
    assert "Done, 60 ml" in page.text
    other = entered(pot.slate_dye).code
    page = sent(client, pot, value="30", bottle=other, **mistake)
    assert "It is the same dye" in page.text
    assert "Done, 30 ml" in page.text


def test_a_plain_form_ticks_and_shows_the_next_step(client: Client, pot: Ready) -> None:
    sent(client, pot, value="60", unit="ml", bottle=pot.slate)
    assert shelf_bottle(pot.slate).volume_ml == 440.0
    assert "Last: Slate 60 ml" in shown(client, pot).text


@pytest.mark.parametrize("value", ["", "lots", "0", "-4", "1e12", HOSTILE])
def test_an_amount_that_cannot_be_is_asked_for_again(
    client: Client, pot: Ready, value: str
) -> None:
    page = sent(client, pot, value=value, unit="ml", bottle=pot.slate)
    assert page.status == 422
    assert "The amount" in page.text
    assert HOSTILE not in page.source
    assert BathLine.objects.count() == 0


def test_a_plain_form_takes_back(client: Client, pot: Ready) -> None:
    deed = tapped(pot.number, BathAct.STARTED, "fill")
    said = {"key": str(uuid4()), "undoes": str(deed)}
    for _ in range(2):
        client.post(f"/bench/{pot.number}/undo/", said)
    assert bath_now(pot.number).standing == ()
    bad = client.post(f"/bench/{pot.number}/undo/", {"key": "x", "undoes": "y"})
    assert bad.status_code == 404


def test_a_bottle_is_confirmed_or_refused_in_one_sentence(
    client: Client, pot: Ready
) -> None:
    address = f"/bench/{pot.number}/bottle/"
    good = read(client.post(address, {"step": "dose-1", "code": pot.slate.lower()}))
    assert good.status == 200
    for code, sentence in (
        (pot.gorse, f"got {pot.gorse} (Gorse)"),
        ("X9XX", "There is no bottle"),
        ("", "Type the three signs"),
        (HOSTILE, "code must be letter, digit, letter"),
    ):
        page = read(client.post(address, {"step": "dose-1", "code": code}))
        assert page.status == 422
        assert sentence in page.text
        assert HOSTILE not in page.source


def test_the_script_hears_the_same_sentence(client: Client, pot: Ready) -> None:
    look_at(code=pot.slate, look=Look.SETTLED, stamp=stamp_now(by=None))
    said = client.post(
        f"/bench/{pot.number}/bottle/",
        {"step": "dose-1", "code": pot.slate},
        headers={"Accept": "application/json"},
    ).json()
    assert said["code"] == pot.slate
    assert "one that has settled" in said["why"]


def test_a_photo_of_the_label_is_read(client: Client, pot: Ready) -> None:
    picture = BytesIO()
    segno.make(f"SHADEWRIGHT:BOTTLE:{pot.slate}").save(picture, kind="png", scale=8)
    picture.seek(0)
    picture.name = "label.png"
    said = client.post(
        f"/bench/{pot.number}/bottle/",
        {"step": "dose-1", "photo": picture},
        headers={"Accept": "application/json"},
    ).json()
    assert said == {"code": pot.slate, "why": ""}


def test_after_an_interruption_it_asks_for_the_dose(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.STARTED, "fill", at=ago(minutes=3))
    page = shown(client, pot)
    view = page.source.index('data-view="ask">')
    assert "Was Slate 60" in page.source[view : view + 900]
    assert 'data-view="main" hidden' in page.source
    assert 'data-view="ask" hidden' in shown(client, pot, "?view=main").source


def test_a_dose_that_went_differently_says_what_can_be_done(
    client: Client, pot: Ready
) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-1", value=54.0, unit="ml", bottle=pot.slate)
    page = shown(client, pot)
    assert "0.54 % instead of 0.6 %, 10 % lighter" in page.text
    assert "Added 6 ml more" in page.text


def test_a_bath_that_nobody_planned_is_not_found(client: Client, pot: Ready) -> None:
    del pot
    for address in ("", "now/"):
        assert client.get(f"/bench/999999-B1/{address}").status_code == 404
    page = read(client.get("/bench/999999-B1/"))
    assert "Read the number on its card again" in page.text


def test_the_page_hears_of_time_clocks_and_other_phones(
    client: Client, pot: Ready
) -> None:
    before = client.get(f"/bench/{pot.number}/now/").json()
    tapped(pot.number, BathAct.HEAT_ON, "heat")
    other = pot.another()
    tapped(other, BathAct.STARTED, "fill")
    after = client.get(f"/bench/{pot.number}/now/").json()
    assert before["mark"] != after["mark"]
    assert [clock["key"] for clock in after["clocks"]] == ["look", "watch", "top"]
    assert after["clocks"][0]["at"] - after["now"] == pytest.approx(900_000, abs=5000)
    assert after["elsewhere"] > 0


def test_the_pot_that_rings_stands_first(client: Client, pot: Ready) -> None:
    late, soon = pot.another(), pot.another()
    called = f"{soon.rpartition('-')[2]} Low Tide"
    tapped(late, BathAct.HEAT_ON, "heat", at=ago(minutes=2))
    tapped(soon, BathAct.HEAT_ON, "heat", at=ago(minutes=16))
    page = read(client.get("/bench/"))
    order = [page.source.index(f'href="/bench/{x}/"') for x in (soon, late, pot.number)]
    assert order == sorted(order)
    assert "asks for you" in page.text
    assert f"{called}: Look at 15 minutes" in page.text
    heard = {"key": str(uuid4()), "act": "note", "step": "look/heard"}
    client.post(f"/bench/{soon}/tap/", heard)
    page = read(client.get("/bench/"))
    assert f"{called}: Look at 15 minutes" not in page.text


def test_today_has_the_pots_too(client: Client, pot: Ready) -> None:
    page = read(client.get("/"))
    assert f"/bench/{pot.number}/" in page.links
    assert "rings for every pot" in page.text


def test_a_day_without_a_pot_says_so(client: Client, pot: Ready) -> None:
    for row in Bath.objects.all():
        row.dyed_on += timedelta(days=3)
        row.save()
    page = read(client.get("/bench/"))
    assert "No pot is open today" in page.text
    assert f"/bench/{pot.number}/" not in page.links


def test_hostile_names_are_shown_as_words(client: Client, pot: Ready) -> None:
    Dye.objects.filter(pk=pot.slate_dye).update(name=HOSTILE)
    for address in (f"/bench/{pot.number}/", "/bench/", "/"):
        assert HOSTILE not in client.get(address).content.decode()
