"""The list of orders, one of them with its lots, par levels, and what to dye."""

from datetime import timedelta
from uuid import uuid4

from django.test import Client

from shadewright.records.models import Pot
from shadewright.records.models.lots import Grade
from shadewright.workflows.days.yields import yield_of
from shadewright.workflows.people import Person
from shadewright.workflows.stamps import today
from tests.web.pages_read import read
from tests.workflows.days.wanted import (
    on_shelf,
    ordered,
    par_of,
    planned,
    recipe_of,
    share,
)
from tests.workflows.pots import Ready


def test_without_orders_it_says_what_would_stand_here(
    client: Client, ines: Person
) -> None:
    del ines
    page = read(client.get("/orders/"))
    assert "No order waits" in page.text
    assert "/orders/new/" in page.links
    assert "No par level yet" in read(client.get("/orders/pars/")).text
    assert "Nothing is to be dyed" in read(client.get("/orders/to-dye/")).text
    assert read(client.get("/orders/9/")).status == 404


def test_what_is_wanted_soonest_stands_first_and_is_found(
    client: Client, pot: Ready
) -> None:
    late = ordered(pot, 2, due_on=today() + timedelta(days=9), for_whom="Ada")
    soon = ordered(pot, 3, due_on=today() + timedelta(days=1), for_whom="Bo")
    page = read(client.get("/orders/"))
    assert page.text.index("Bo") < page.text.index("Ada")
    assert "tomorrow" in page.text
    found = read(client.get("/orders/?q=ada"))
    assert f"/orders/{late.order.number}/" in found.links
    assert f"/orders/{soon.order.number}/" not in found.links
    assert "No order with “moss”" in read(client.get("/orders/?q=moss")).text


def test_an_order_shows_its_baths_and_lots(client: Client, pot: Ready) -> None:
    line = ordered(pot, 12)
    lot = on_shelf(pot, 3, line=line)
    seconds = on_shelf(pot, 2, grade=Grade.SECOND, line=line)
    bath = planned(pot, 4, line=line)
    page = read(client.get(f"/orders/{line.order.number}/"))
    assert {f"/lots/{lot}/", f"/lots/{seconds}/", f"/baths/{bath}/"} <= set(page.links)
    assert "Its lot is graded “Second”, not first." in page.text
    assert "5 to dye." in page.text
    assert "9 of 12 are not there yet." in page.text


def test_a_lot_is_taken_and_let_go(client: Client, pot: Ready) -> None:
    line = ordered(pot, 3)
    lot = on_shelf(pot, 5)
    address = f"/orders/{line.order.number}/"
    assert f"{lot} has 3 free, on the shelf." in read(client.get(address)).text
    assert "3 skeins on the shelf not taken for it" in read(client.get(address)).text
    answer = client.post(f"{address}lines/1/", {"number": lot, "skeins": "3"})
    assert answer.status_code == 302
    assert "all there" in read(client.get(address)).text
    page = read(client.post(f"{address}lines/1/", {"number": lot, "skeins": "9"}))
    assert page.status == 422
    assert f"What is taken of {lot} must be at most 5; got 9." in page.text
    no_line = client.post(f"{address}lines/2/", {"number": lot, "skeins": "1"})
    assert "There is no line of the order “2”." in read(no_line).text
    client.post(f"{address}lines/1/", {"number": lot, "skeins": "0"})
    assert yield_of(lot).free == 5


def test_a_day_is_promised_and_taken_back(client: Client, pot: Ready) -> None:
    line = ordered(pot, 3)
    address = f"/orders/{line.order.number}/"
    in_week = today() + timedelta(days=7)
    client.post(f"{address}promise/", {"promised_on": f"{in_week}"})
    page = read(client.get(address))
    assert "Promised for" in page.text
    assert "cannot be met" in page.text
    past = {"promised_on": f"{today() - timedelta(days=1)}"}
    page = read(client.post(f"{address}promise/", past))
    assert page.status == 422
    assert "must be from today to a year from now" in page.text
    client.post(f"{address}promise/", {"promised_on": ""})
    text = read(client.get(address)).text
    assert "Promised for: nothing instead of" in text


def test_an_order_is_sent_and_opened_again(client: Client, pot: Ready) -> None:
    line = ordered(pot, 3)
    lot = on_shelf(pot, 5)
    share(lot, line, 2)
    address, deed = f"/orders/{line.order.number}/", str(uuid4())
    for _twice in range(2):
        client.post(f"{address}close/", {"deed": deed, "how": "sent"})
    assert yield_of(lot).skeins == 3
    assert "It is closed" in read(client.get(address)).text
    assert address in read(client.get("/orders/closed/")).links
    assert address not in read(client.get("/orders/")).links
    client.post(f"{address}open/")
    assert yield_of(lot).skeins == 5


def test_a_par_level_is_set_and_what_is_short_is_to_be_dyed(
    client: Client, pot: Ready
) -> None:
    what = {"recipe_1": recipe_of(pot).pk, "base_1": pot.base, "skeins_1": "8"}
    assert client.post("/orders/pars/", what).status_code == 302
    on_shelf(pot, 2)
    page = read(client.get("/orders/pars/"))
    assert "Low Tide on Fell DK" in page.text
    wrong = read(client.post("/orders/pars/", what | {"skeins_1": "-1"}))
    assert "must be from 0 to 10 000; got -1." in wrong.fault("skeins_1")
    assert "6 for the shelf." in read(client.get("/orders/to-dye/")).text
    client.post("/orders/pars/", what | {"skeins_1": "0"})
    assert "No par level yet" in read(client.get("/orders/pars/")).text


def test_what_to_dye_counts_whole_pots(client: Client, pot: Ready) -> None:
    line = ordered(pot, 6, due_on=today() + timedelta(days=9))
    par_of(pot, 4)
    Pot.objects.create(name="Big pot", volume_l=13.2)  # 12 l of liquor: 4 at 1:30
    page = read(client.get("/orders/to-dye/?day=2026-12-01"))
    assert "11 × Low Tide on Fell DK" in page.text
    assert "3 loads of Big pot (4 skeins each); 1 more" in page.text
    Pot.objects.create(name="Small pot", volume_l=9.9)  # 9 l of liquor: 3
    page = read(client.get("/orders/to-dye/"))
    said = (
        "2 loads of Big pot (4 skeins each), 1 load of Small pot (3 skeins each): all"
    )
    assert said in page.text
    assert f"/orders/{line.order.number}/" in page.links
    assert read(client.get("/orders/to-dye/?day=soon")).status == 422


def test_a_bath_and_its_lot_say_for_whom_they_are(client: Client, pot: Ready) -> None:
    line = ordered(pot, 3, for_whom="Ada")
    lot, bath = on_shelf(pot, 3, line=line), planned(pot, 2)
    share(bath, line, 1)
    number = line.order.number
    assert f"Order {number}, Ada" in read(client.get(f"/lots/{lot}/")).text
    assert f"/orders/{number}/" in read(client.get(f"/lots/{lot}/")).links
    assert f"order {number}, Ada" in read(client.get(f"/baths/{bath}/")).text


def test_today_names_what_is_late_or_wanted_soon(client: Client, pot: Ready) -> None:
    late = ordered(pot, 4, due_on=today() - timedelta(days=1), for_whom="Ada")
    ordered(pot, 2, due_on=today() + timedelta(days=30), for_whom="Bo")
    page = read(client.get("/"))
    assert f"Order {late.order.number} for Ada: 4 × Low Tide on Fell DK" in page.text
    assert "1 day ago. 4 of 4 are on no day yet." in page.text
    assert "Bo" not in page.text
    for whom in ("Cy", "Di", "Ed"):
        ordered(pot, 1, due_on=today(), for_whom=whom)
    assert "4 orders are late or wanted within a week" in read(client.get("/")).text


def test_an_order_goes_on_a_day_and_its_baths_come_back(
    client: Client, pot: Ready
) -> None:
    line = ordered(pot, 6, due_on=today() + timedelta(days=9))
    Pot.objects.create(name="Big pot", volume_l=13.2)  # 4 skeins at 1:30
    address = f"/orders/{line.order.number}/"
    (put_on,) = [x for x in read(client.get(address)).links if "/add/" in x]
    form = read(client.get(put_on))
    assert form.status == 200
    assert form.value("skeins") == "6"
    assert f"order {line.order.number}" in form.text.casefold()


def test_what_cannot_be_planned_leads_to_what_is_to_be_mended(
    client: Client, pot: Ready
) -> None:
    line = ordered(pot, 3)
    line.base.is_retired = True
    line.base.save()
    for address in (f"/orders/{line.order.number}/", "/orders/to-dye/"):
        page = read(client.get(address))
        assert "Fell DK is retired: take it into use again" in page.text
        assert f"/bases/{pot.base}/" in page.links
        assert not [link for link in page.links if "/add/" in link]
