"""A jar comes in."""

from decimal import Decimal
from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Dye
from shadewright.workflows.jars import jars
from shadewright.workflows.stamps import today
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")
PAGE = "/jars/new/"


def sent(of: Dye, /, **changed: object) -> dict[str, object]:
    usual = {
        "deed": uuid4(),
        "dye": str(of.pk),
        "powder_g": "100",
        "lot": "A7",
        "opened_on": str(today()),
        "strength_percent": "100",
        "price": "24,50",
        "notes": "blue lid",
    }
    return {**usual, **changed}


def test_the_form_cautions_of_powder_and_explains_the_strength(
    client: Client, gorse: Dye
) -> None:
    page = client.get(f"{PAGE}?dye={gorse.pk}").content.decode()
    assert "Respirator (a fitted N95/FFP2 or better)" in page
    assert "safety data sheet and your local rules" in page
    assert "at 110 % less is weighed" in page
    assert f'<option value="{gorse.pk}" selected>Gorse' in page
    assert 'href="/dyes/new/"' in page


def test_a_jar_is_put_on_the_shelf(client: Client, gorse: Dye) -> None:
    page = client.post(PAGE, sent(gorse), follow=True)
    (jar,) = jars()
    assert page.redirect_chain == [(f"/jars/{jar.id}/", 302)]
    assert f"Jar {jar.code} received: write the code on it" in page.content.decode()
    assert (jar.lot, jar.left_g, jar.price) == ("A7", 100.0, Decimal("24.50"))
    assert (jar.opened_on, jar.strength_percent) == (today(), 100.0)


def test_a_weight_may_be_in_ounces(client: Client, gorse: Dye) -> None:
    client.post(PAGE, sent(gorse, powder_g="4 oz", lot="", opened_on="", price=""))
    (jar,) = jars()
    assert jar.left_g == pytest.approx(113.398, abs=0.001)
    assert (jar.lot, jar.opened_on, jar.price) == ("", None, None)


def test_sent_twice_it_is_written_once(client: Client, gorse: Dye) -> None:
    data = sent(gorse)
    places = [client.post(PAGE, data).headers["Location"] for _ in range(2)]
    assert places[0] == places[1]
    assert len(jars()) == 1


def test_it_can_be_taken_back(client: Client, gorse: Dye) -> None:
    data = sent(gorse)
    page = client.post(PAGE, data, follow=True).content.decode()
    undo = f"/undo/{data['deed']}/"
    assert page.count(f'action="{undo}"') == 2
    back = client.post(undo, {"next": "/jars/"}, follow=True).content.decode()
    assert jars() == ()
    assert "Gone:" in back


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("dye", "", "Dye is missing."),
        ("dye", "999", "Dye must be one of those offered."),
        ("dye", HOSTILE, "Dye must be one of those offered."),
        ("powder_g", "", "Powder in the jar is missing."),
        ("powder_g", "-100", "got −100 g"),
        ("powder_g", "0", "Powder in the jar must be above 0"),
        ("powder_g", "full", "Powder in the jar is written as a weight"),
        ("powder_g", "100 ml", "Powder in the jar is written as a weight"),
        ("powder_g", "2 tsp", "never by the spoon"),
        ("powder_g", "1" * 20, "Powder in the jar must be above 0"),
        ("strength_percent", "0", "Powder strength must be above 0 and at most 400"),
        ("strength_percent", "401", "Powder strength must be above 0 and at most 400"),
        ("strength_percent", "good", "Powder strength is written as a percentage"),
        ("price", "-3", "Price must be from 0"),
        ("price", "a lot", "Price is written as a number alone"),
        ("price", "999999999", "Price must be from 0"),
        ("opened_on", "2999-01-01", "must be today or earlier"),
        ("opened_on", "x", "cannot be read as it was typed."),
        ("lot", "x" * 41, "Lot may have up to 40 characters; this has 41."),
        ("notes", "x" * 2001, "Notes may have up to 2000 characters"),
    ],
)
def test_a_fault_stands_by_its_field_and_what_was_typed_stays(
    client: Client, gorse: Dye, field: str, typed: str, sentence: str
) -> None:
    answer = client.post(PAGE, sent(gorse, **{field: typed}))
    page = answer.content.decode().replace("\u00a0", " ")
    assert answer.status_code == 422
    assert sentence in page
    assert f'id="id_{field}_error"' in page
    assert "blue lid" in page or field == "notes"
    assert typed in page or field == "dye"
    assert "<script>alert" not in page
    assert jars() == ()


def test_html_in_every_field_stays_text(client: Client, gorse: Dye) -> None:
    data = sent(gorse, lot=HOSTILE[:40], notes=HOSTILE)
    page = client.post(PAGE, data, follow=True).content.decode()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page
