"""Check a lot dry, decide, make standards, and share, on their pages."""

import re
from uuid import uuid4

import pytest
from django.test import Client
from playwright.sync_api import Browser, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Bath, Order, OrderLine, Standard
from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page
from tests.web.pages_read import Answer, read
from tests.workflows.judging.checked import check, held_to_standard

METER = "meter"
SPOTS = "51.6, 0, 0\n51.5, 0, 0\n\n51.6, 0, 0\n51.7, 0, 0"


@pytest.fixture
def lots(db: None) -> tuple[str, str]:
    """A lot that is the standard, and another of the same recipe."""
    del db
    _pot, first, lot = held_to_standard()
    return first, lot


def ordered_of(what: Standard, *, skeins: int) -> OrderLine:
    """Order skeins of what a standard is of."""
    number = Order.objects.count() + 1
    order = Order.objects.create(number=number, deed=uuid4(), for_whom="Wren")
    return OrderLine.objects.create(
        order=order,
        position=1,
        recipe_id=what.recipe_id,
        base_id=what.base_id,
        skeins=skeins,
        skein_g=100.0,
    )


def sent(client: Client, address: str, **said: str) -> Answer:
    answer = client.post(address, {"deed": str(uuid4()), **said}, follow=True)
    return read(answer)


@pytest.mark.store
def test_a_lot_is_checked_and_decided(client: Client, lots: tuple[str, str]) -> None:
    lot = lots[1]
    page = sent(client, f"/lots/{lot}/check/", way=METER, texts=SPOTS)
    assert "a little lighter" in page.text
    assert "CIEDE2000 1.5 ± 0.3" in page.text
    assert "Alternate skeins" in page.text
    assert "4 spots on 2 skeins, dry. " in page.text
    bath = Bath.objects.get(number=lot)
    drift = read(client.get(f"/drift/{bath.version.recipe_id}/{bath.base_id}/"))
    assert f"{lot} " in drift.text
    assert "1.5 ± 0.3 a little lighter" in drift.text  # as the check says it
    page = sent(client, f"/lots/{lot}/decide/", choice="sell it as a one-off")
    assert "Decided: sell it as a one-off" in page.text
    of_lot = read(client.get(f"/lots/{lot}/"))
    assert "Alternate skeins a little lighter, CIEDE2000 1.5 ± 0.3" in of_lot.text
    assert "Decided sell it as a one-off" in of_lot.text
    assert "Grade One-off" in of_lot.text
    check(lot, "50, 0, 0\n50, 0, 0")
    anew = read(client.get(f"/lots/{lot}/check/"))
    assert "Decided before this was read: sell it as a one-off" in anew.text


@pytest.mark.store
def test_to_correct_it_leads_to_what_to_add(
    client: Client, lots: tuple[str, str]
) -> None:
    check(lots[1], "58, 0, 0\n58, 0, 0")
    said = {"deed": str(uuid4()), "choice": "correct it"}
    answer = client.post(f"/lots/{lots[1]}/decide/", said)
    assert answer.headers["Location"] == f"/lots/{lots[1]}/correct/"


@pytest.mark.store
def test_wet_yarn_gets_no_verdict_and_a_clock(
    client: Client, lots: tuple[str, str]
) -> None:
    lot = lots[1]
    page = sent(client, f"/lots/{lot}/check/", way=METER, texts="40, 0, 0", is_wet="on")
    assert "no verdict" in page.text
    page = sent(client, f"/lots/{lot}/snip/", minutes="20")
    assert "in 20 min" in page.text
    page = sent(client, f"/lots/{lot}/check/", way=METER, texts=SPOTS)
    assert "dries until" in page.fault("is_wet")


@pytest.mark.store
def test_a_lot_becomes_the_standard_in_two_taps(
    client: Client, lots: tuple[str, str]
) -> None:
    first, lot = lots
    check(lot, SPOTS)
    address = f"/lots/{lot}/standard/"
    assert address in read(client.get(f"/lots/{lot}/check/")).links
    page = sent(client, address, where="Tin 4", why="The first one faded.")
    assert "What it replaced" in page.text
    assert f"/lots/{first}/" in page.links
    old = Standard.objects.get(lot__number=first)
    sent(client, f"/standards/again/{old.pk}/")
    assert "Tin 3" in read(client.get("/standards/")).text


@pytest.mark.store
def test_a_studio_sets_limits_of_its_own(client: Client, lots: tuple[str, str]) -> None:
    check(lots[1], SPOTS)
    page = sent(
        client,
        "/standards/tolerances/",
        formula="CMC(2:1)",
        match="3",
        alternate="2",
        new_lot="4",
    )
    assert "above 3" in page.fault("alternate")
    what = Standard.objects.get()
    own = f"/standards/{what.recipe_id}/{what.base_id}/"
    sent(client, f"{own}tone/", least="2", most="5")
    page = read(client.get(f"/lots/{lots[1]}/check/"))
    assert "Tone too level" in page.text


@pytest.mark.store
def test_orders_come_from_lots_that_share(
    client: Client, lots: tuple[str, str]
) -> None:
    first, lot = lots
    check(lot, "50.5, 0, 0\n50.5, 0, 0")
    what = Standard.objects.get()
    assert "They go together" in read(client.get(f"/sharing/?lot={lot}")).text
    own = f"/sharing/?recipe={what.recipe_id}&base={what.base_id}"
    assert own in read(client.get("/sharing/")).links
    text = read(client.get(f"{own}&skeins=6")).text
    assert f"mixed: 4 of {first}, 2 of {lot}" in text
    assert "It cannot be" in read(client.get(f"{own}&skeins=9")).text


@pytest.mark.store
def test_an_order_is_set_aside_in_one_tap_and_put_back(
    client: Client, lots: tuple[str, str]
) -> None:
    check(lots[1], "50.5, 0, 0\n50.5, 0, 0")
    what = Standard.objects.get()
    line = ordered_of(what, skeins=3)
    own = f"/sharing/?recipe={what.recipe_id}&base={what.base_id}"
    assert "Set aside" in read(client.get(own)).text
    took = client.post(f"/sharing/{line.pk}/aside/", follow=True)
    page = read(took)
    assert f"Set aside for order {line.order.number}: 3 of " in page.text
    (share,) = line.baths.all()
    assert share.skeins == 3
    (back,) = re.findall(r'action="(/undo/[^"]*)"', page.source)
    order = read(client.get(f"/orders/{line.order.number}/"))
    assert f"Set aside: 3 of {share.bath.number} instead of nothing" in order.text
    client.post(back)
    assert not line.baths.exists()
    many = ordered_of(what, skeins=40)
    assert client.post(f"/sharing/{many.pk}/aside/").status_code == 409
    assert not many.baths.exists()


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["390", "1280"])
def test_every_page_is_sound(
    browser: Browser,
    live_server: LiveServer,
    lots: tuple[str, str],
    size: tuple[int, int],
) -> None:
    what, lot = Standard.objects.get(), lots[1]
    own = f"{what.recipe_id}/{what.base_id}/"
    with watched_page(browser, size, scheme="light") as page:
        page.goto(f"{live_server.url}/lots/{lot}/")
        page.get_by_role("link", name="Check it dry").click()
        page.get_by_label("Spots").fill(SPOTS)
        page.get_by_label("Read by a meter").check()
        page.get_by_role("button", name="Check it").click()
        expect(page.get_by_role("heading", name="Verdict")).to_be_visible()
        assert axe(page) == []
        assert goes_sideways(page) == 0
        page.get_by_role("button", name="Alternate skeins").click()
        expect(page.get_by_text("Decided:")).to_be_visible()
        page.clock.install()
        page.goto(f"{live_server.url}/lots/{lot}/snip/")
        page.get_by_role("button", name="It hangs").click()
        expect(page.get_by_text("Dry at")).to_be_visible()
        check_key = page.get_by_role("link", name="Check it dry")
        expect(check_key).to_be_hidden()
        assert axe(page) == []
        page.clock.fast_forward("21:00")
        expect(check_key).to_be_visible()
        for address in (
            f"/lots/{lot}/",
            f"/lots/{lot}/snip/",
            f"/lots/{lot}/standard/",
            "/standards/",
            f"/standards/{own}",
            "/standards/tolerances/",
            f"/sharing/?recipe={what.recipe_id}&base={what.base_id}&skeins=6",
        ):
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address
