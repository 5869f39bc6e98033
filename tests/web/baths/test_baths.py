"""The dye days; a bath as planned beside as dyed; its bottles; giving it up."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.bottles import enter_bottle, pour_away
from shadewright.workflows.filling import Particulars
from shadewright.workflows.lots import Grade, LotWords, finish_bath
from shadewright.workflows.recipes import version
from shadewright.workflows.stamps import stamp_now, today
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read
from tests.web.sample import HOSTILE
from tests.workflows import pots


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


@pytest.fixture
def number(things: Dyeing) -> str:
    return things.bath(things.recipe())


def page(client: Client, address: str) -> Answer:
    return read(client.get(address))


def tapped(number: str, act: BathAct, step: str, **said: object) -> None:
    value = said.get("value")
    keep_tap(
        Tap(
            bath=number,
            act=act,
            step=step,
            value=float(str(value)) if value is not None else None,
            unit="ml" if value is not None else "",
            bottle=str(said.get("bottle", "")),
            note=str(said.get("note", "")),
        ),
        stamp=stamp_now(by=None),
    )


def another(things: Dyeing, *, volume_ml: float = 500.0) -> str:
    return enter_bottle(
        dye_id=things.slate,
        strength_percent=2.0,
        volume_ml=volume_ml,
        stamp=stamp_now(by=None),
        about=Particulars(),
    ).code


def test_an_empty_day_leads_to_planning(client: Client, ines: object) -> None:
    del ines
    shown = page(client, "/baths/")
    assert "No bath is planned" in shown.text
    assert "/baths/new/" in shown.links


def test_days_stand_in_order_and_past_ones_are_found(
    client: Client, things: Dyeing, number: str
) -> None:
    moss = things.bath(things.recipe("Moss"))
    gone = things.bath(things.recipe("Heather"))
    tomorrow, before = today() + timedelta(days=1), today() - timedelta(days=1)
    Bath.objects.filter(number=moss).update(dyed_on=tomorrow)
    Bath.objects.filter(number=gone).update(dyed_on=before)
    shown = page(client, "/baths/")
    places = [shown.text.index(each) for each in (number, moss, gone)]
    assert places == sorted(places)
    assert "1 bath today, 1 later." in shown.text
    assert "Tomorrow," in shown.text
    assert shown.text.count(gone) == 1
    assert f"/baths/cards.pdf?number={number}" in shown.links
    assert "Swatch tags" not in shown.text
    Bath.objects.filter(number=number).update(is_swatch=True)
    tags = f"/baths/tags.pdf?number={number}"
    assert tags in page(client, "/baths/").links
    assert tags in page(client, f"/baths/{number}/").links
    found = page(client, "/baths/?q=heather")
    assert gone in found.text
    assert number not in found.text
    assert "No past bath says “puce”" in page(client, "/baths/?q=puce").text


def test_many_past_baths_come_a_page_at_a_time(
    client: Client, things: Dyeing, number: str
) -> None:
    version_id = things.recipe("Moss")
    for _ in range(31):
        things.bath(version_id)
    before = today() - timedelta(days=1)
    Bath.objects.exclude(number=number).update(dyed_on=before)
    shown = page(client, "/baths/")
    assert shown.text.count("Moss, version 1") == 30
    assert "Page 1 of 2" in shown.text
    assert page(client, "/baths/?page=2").text.count("Moss, version 1") == 1
    assert page(client, "/baths/?page=99").text.count("Moss, version 1") == 1
    found = page(client, "/baths/?q=moss&page=2")
    assert "/baths/?q=moss&page=1" in {f"/baths/{link}" for link in found.links}


def test_a_dyed_swatch_leads_to_its_tag_lot_and_trace(
    client: Client, number: str
) -> None:
    Bath.objects.filter(number=number).update(is_swatch=True)
    tapped(number, BathAct.STARTED, "fill")
    said = LotWords(grade=Grade.SWATCH)
    finish_bath(number=number, said=said, stamp=stamp_now(by=None))
    shown = page(client, f"/baths/{number}/")
    assert f"/baths/tags.pdf?number={number}" in shown.links
    assert f"/lots/{number}/" in shown.links
    assert f"/lots/{number}/trace/" in shown.links


def test_a_planned_bath_shows_its_round(
    client: Client, things: Dyeing, number: str
) -> None:
    shown = page(client, f"/baths/{number}/")
    for words in (
        f"Bath {number}",
        "Low Tide on Fell DK",
        f"Slate {things.slate_bottle}",
        "60 ml not yet",
        "Vinegar 40 ml",
        "Nothing yet: the bath has not begun.",
        "Mill lot M7",
        "Blue pot",
        "3 l, 1:30",
    ):
        assert words in shown.text
    links = shown.links
    assert f"/bench/{number}/" in links
    assert f"/baths/{number}/give-up/" in links
    assert f"/baths/new/?again={number}" in links
    assert f"/baths/{number}/doses/dose-1/" in links
    assert f"/baths/cards.pdf?number={number}" in links
    assert f"/baths/{number}/card/" in links
    assert f"/baths/{number}/finish/" in links
    recipe_id = version(bath_now(number).version_id).recipe_id
    assert f"/recipes/{recipe_id}/versions/1/" in links
    assert page(client, "/baths/261125-B99/").status == 404
    assert page(client, "/baths/nothing/").status == 404


@pytest.mark.by_hand
def test_what_went_differently_is_said_in_words(
    client: Client, things: Dyeing, number: str
) -> None:
    # 75 ml instead of 60 ml: 0.75 % instead of 0.6 %, a quarter deeper.
    tapped(number, BathAct.STARTED, "fill")
    tapped(number, BathAct.DOSED, "dose-1", value=75, bottle=things.slate_bottle)
    tapped(number, BathAct.MISSED, "dose-2", note="bottle was clouded")
    tapped(number, BathAct.STARTED, "yarn")
    tapped(number, BathAct.STARTED, "yarn")
    shown = page(client, f"/baths/{number}/")
    for words in (
        "going",
        "as planned",
        f"75 ml, from {things.slate_bottle}",
        "15 ml more than planned.",
        "Slate: 0.75 % instead of 0.6 %, 25 % deeper.",
        "left out",
        "bottle was clouded",
        "ticked twice",
        f"Dose in: Slate, 75 ml from {things.slate_bottle}",
    ):
        assert words in shown.text
    assert "/doses/dose-1/" not in shown.source
    assert "Plan it again" in shown.text


def test_another_bottle_at_the_pot_is_named(
    client: Client, things: Dyeing, number: str
) -> None:
    strong = another(things)
    tapped(number, BathAct.DOSED, "dose-1", value=30, bottle=strong)
    shown = page(client, f"/baths/{number}/")
    assert f"From {strong} instead of {things.slate_bottle}." in shown.text
    assert "less than planned" not in shown.text  # as much dye, from a stronger stock


def test_a_line_of_today_is_taken_back(
    client: Client, things: Dyeing, number: str
) -> None:
    tapped(number, BathAct.DOSED, "dose-1", value=60, bottle=things.slate_bottle)
    deed = bath_now(number).lines[0].deed
    done = client.post(f"/undo/{deed}/", {"next": f"/baths/{number}/"}, follow=True)
    shown = read(done)
    assert "Taken back" in shown.text
    assert "Undone: Slate" in shown.text
    assert "60 ml not yet" in shown.text


def test_a_planned_dose_is_taken_from_another_bottle(
    client: Client, things: Dyeing, number: str
) -> None:
    strong = another(things)
    address = f"/baths/{number}/doses/dose-1/"
    asked = page(client, address)
    assert "0.6 g of dye." in asked.text
    assert f"{strong}: 2 %" in asked.text
    sent = {"deed": str(uuid4()), "bottle": strong}
    client.post(address, sent)
    done = read(client.post(address, sent, follow=True))
    assert f"Slate comes from {strong}" in done.text
    assert f"Slate {strong}" in done.text
    assert "30 ml not yet" in done.text
    assert f"was planned from {things.slate_bottle}" in done.text
    assert "planned" in done.text
    assert len(bath_now(number).lines) == 1


@pytest.mark.parametrize("typed", ["", "Z99", HOSTILE])
def test_a_bottle_that_is_not_offered_is_refused(
    client: Client, number: str, typed: str
) -> None:
    address = f"/baths/{number}/doses/dose-1/"
    shown = read(client.post(address, {"deed": str(uuid4()), "bottle": typed}))
    assert shown.status == 422
    assert HOSTILE not in shown.source


def test_a_dose_in_the_pot_keeps_its_bottle(
    client: Client, things: Dyeing, number: str
) -> None:
    tapped(number, BathAct.DOSED, "dose-1", value=60, bottle=things.slate_bottle)
    address = f"/baths/{number}/doses/dose-1/"
    sent = {"deed": str(uuid4()), "bottle": another(things)}
    shown = read(client.post(address, sent))
    assert shown.status == 422
    assert "This dose is in the pot already." in shown.text
    assert page(client, f"/baths/{number}/doses/fill/").status == 404
    assert page(client, f"/baths/{number}/doses/dose-9/").status == 404


def test_without_a_bottle_a_stock_is_made(
    client: Client, things: Dyeing, number: str
) -> None:
    pour_away(code=things.slate_bottle, stamp=stamp_now(by=None))
    shown = page(client, f"/baths/{number}/doses/dose-1/")
    assert "No good bottle of this dye holds the whole dose." in shown.text
    assert any(link.startswith("/stocks/new/?dye=") for link in shown.links)


def test_a_bath_is_given_up_and_taken_back(
    client: Client, things: Dyeing, number: str
) -> None:
    tapped(number, BathAct.DOSED, "dose-1", value=60, bottle=things.slate_bottle)
    address = f"/baths/{number}/give-up/"
    asked = page(client, address)
    assert f"the ledgers of {things.slate_bottle} keep it" in asked.text
    sent = {"deed": asked.value("deed"), "why": HOSTILE}
    client.post(address, sent)
    done = read(client.post(address, sent, follow=True))
    assert f"Bath {number} is given up" in done.text
    assert HOSTILE in done.text
    assert HOSTILE not in done.source
    assert f"/bench/{number}/" not in done.links
    assert page(client, address).status == 409
    client.post(f"/undo/{sent['deed']}/")
    assert bath_now(number).status is BathStatus.GOING
    long = read(client.post(address, {"deed": str(uuid4()), "why": "x" * 201}))
    assert "Why may have up to 200 characters" in long.fault("why")


def test_the_ledger_names_what_came_after_the_heat(client: Client, number: str) -> None:
    pots.tapped(number, BathAct.LEFTOVER, "hold", value=25.0, unit="%")
    pots.tapped(number, BathAct.RINSED, "rinse")
    pots.tapped(number, BathAct.HUNG, "rack", value=2.0, unit="skeins")
    pots.tapped(number, BathAct.NOTE, "more/dose-1", value=110.0, unit="%")
    said = page(client, f"/baths/{number}/").text
    assert "Dye left in the bath: Hold 30 min, then look at the bath, 25 %" in said
    assert "On the rack, 2 skeins" in said
    assert "Note: Slate, 110 %" in said
    assert "10 % more than on the card, for the hue." in said
