"""Two lots side by side."""

from django.test import Client

from tests.web.pages_read import read
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready


def test_differences_stand_first_and_unknowns_apart(
    client: Client, lot: str, pot: Ready
) -> None:
    other = finished(dyed(pot, pot.another(), volumes_ml={pot.slate: 66.0}))
    page = read(client.get(f"/lots/compare/?a={lot}&b={other}"))
    differ, _, rest = page.text.partition("Cannot tell")
    assert "Slate, depth given 0.6 % 0.66 %" in differ.replace("\u00a0", " ")
    untold, _, same = rest.partition("The same")
    assert "Not written down of either: Mill lot;" in untold
    assert "Show what is the same" in same
    assert "Recipe Low Tide Low Tide" in same
    assert {f"/lots/{lot}/", f"/lots/{other}/"} <= set(page.links)


def test_a_lot_beside_itself_differs_in_nothing(client: Client, lot: str) -> None:
    page = read(client.get(f"/lots/compare/?a={lot}&b={lot}"))
    assert "What differed Nothing that is written down of both." in page.text


def test_it_asks_which_and_offers_lots_of_the_recipe(
    client: Client, lot: str, pot: Ready
) -> None:
    other = finished(dyed(pot, pot.another()))
    page = read(client.get(f"/lots/compare/?a={lot}"))
    assert page.status == 200
    assert page.value("a") == lot
    assert f"/lots/compare/?a={lot}&b={other}" in page.links
    bare = read(client.get("/lots/compare/"))
    assert f"/lots/compare/?a={lot}" in bare.links


def test_a_number_that_is_none_is_said_by_its_field(client: Client, lot: str) -> None:
    page = read(client.get(f"/lots/compare/?a={lot}&b=nowhere"))
    assert page.status == 422
    assert "There is no lot “nowhere”." in page.fault("b")
    assert page.value("a") == lot
    empty = read(client.get(f"/lots/compare/?a={lot}&b="))
    assert empty.fault("b") == "Beside this one is missing."
