"""The shelf: a board, the same as a table, and what asks for a hand."""

import re
from datetime import timedelta

import pytest
from django.test import Client

from shadewright.records.models import Dye
from shadewright.workflows.bottles import (
    Look,
    draw,
    enter_bottle,
    look_at,
    pour_away,
    record_strength,
)
from shadewright.workflows.filling import Particulars
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.stocks import make_stock
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")


def made(dye: Dye, powder_g: float, days: int, final_ml: float = 500.0) -> str:
    return make_stock(
        dye_id=dye.pk,
        jar_id=None,
        wanted_percent=1.0,
        powder_g=powder_g,
        final_ml=final_ml,
        stamp=stamp_now(by=None),
        about=Particulars(made_on=today() - timedelta(days=days), place="top shelf"),
    ).code


def entered(dye: Dye, days: int | None = None) -> str:
    made_on = None if days is None else today() - timedelta(days=days)
    return enter_bottle(
        dye_id=dye.pk,
        strength_percent=2.0,
        volume_ml=250.0,
        stamp=stamp_now(by=None),
        about=Particulars(made_on=made_on, is_date_about=True),
    ).code


def text(client: Client, address: str = "/shelf/") -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


def codes(page: str) -> list[str]:
    table = page[page.index("The same as a table") :]
    return re.findall(r'class="code" href="/bottles/(\w+)/"', table)


def test_an_empty_shelf_says_what_would_stand_there(client: Client) -> None:
    page = text(client)
    assert "Your bottles would stand here" in page
    assert 'href="/stocks/new/"' in page
    assert "<table" not in page


def test_a_bottle_stands_on_the_board_and_in_the_table(
    client: Client, gorse: Dye
) -> None:
    code = made(gorse, 5.2, days=4)
    page = text(client)
    assert "1 bottle, 0.5 litres of stock. None asks for a hand." in page
    assert page.count(f'href="/bottles/{code}/"') == 2
    assert ">1.04<" in page
    assert "500 ml, 4 days" in page
    assert "weighed" in page
    assert "top shelf" in page
    assert "±" not in page
    assert "guess</span>" not in page


def test_a_strength_from_a_label_is_marked_as_a_guess(
    client: Client, gorse: Dye
) -> None:
    code = entered(gorse, days=95)
    page = text(client)
    assert "as labelled: a guess" in page
    assert "about 3 months" in page
    record_strength(code=code, strength_percent=1.9, stamp=stamp_now(by=None))
    assert "as labelled: a guess" not in text(client)


def test_a_shelf_of_old_stock_is_not_called_calm(client: Client, gorse: Dye) -> None:
    made(gorse, 5.0, days=120)
    page = text(client)
    assert "look first" in page
    assert "Look at the old ones before you draw." in page
    assert "None asks" not in page


def test_it_sorts_by_every_column_that_says_so(client: Client, gorse: Dye) -> None:
    kelp = Dye.objects.create(name="Kelp")
    old, new = made(kelp, 2.5, days=9), made(gorse, 5.0, days=2, final_ml=250.0)
    draw(code=new, volume_ml=100.0, stamp=stamp_now(by=None))
    assert codes(text(client)) == [new, old]
    for column, ascending in (
        ("code", sorted([new, old])),
        ("dye", [new, old]),
        ("strength", [old, new]),
        ("left", [new, old]),
        ("age", [new, old]),
    ):
        assert codes(text(client, f"/shelf/?sort={column}")) == ascending
        back = codes(text(client, f"/shelf/?sort=-{column}"))
        assert back == ascending[::-1]


def test_what_settled_ran_low_or_is_old_asks_for_a_hand(
    client: Client, gorse: Dye
) -> None:
    settled, low, past = (made(gorse, 5.0, days=days) for days in (3, 3, 300))
    look_at(code=settled, look=Look.SETTLED, stamp=stamp_now(by=None))
    draw(code=low, volume_ml=450.0, stamp=stamp_now(by=None))
    page = text(client)
    assert "3 ask for a hand." in page
    assert f"{settled}</span> Gorse has settled" in page
    assert f"{past}</span> Gorse is past its time" in page
    assert "Made 9 months ago" in page
    assert f"{low}</span> Gorse is nearly empty" in page
    assert "50 ml left of 500 ml." in page
    assert f'href="/stocks/new/?dye={gorse.pk}"' in page


def test_stock_of_a_metal_dye_is_handed_in(client: Client, gorse: Dye) -> None:
    gorse.is_metal_complex = True
    gorse.save()
    made(gorse, 5.0, days=300)
    page = text(client)
    assert "collected and handed in, never poured" in page
    assert "safety data sheet" in page


def test_an_empty_bottle_can_be_poured_away(client: Client, gorse: Dye) -> None:
    code = made(gorse, 5.0, days=3)
    draw(code=code, volume_ml=495.0, stamp=stamp_now(by=None))
    assert f"{code}</span> Gorse is empty" in text(client)


def test_the_head_leads_on(client: Client, gorse: Dye) -> None:
    made(gorse, 5.0, days=3)
    page = text(client)
    for address in ("/stocks/new/", "/shelf/enter/", "/labels/", "/find/"):
        assert f'"{address}"' in page
    for address in ("/dyes/", "/jars/", "/bases/", "/acids/", "/tools/"):
        assert f'href="{address}"' in page


def test_poured_bottles_stand_on_a_page_of_their_own(
    client: Client, gorse: Dye
) -> None:
    assert "No bottle has gone yet." in text(client, "/shelf/gone/")
    code = made(gorse, 5.0, days=3)
    pour_away(code=code, stamp=stamp_now(by=None))
    assert f"/bottles/{code}/" not in text(client)
    assert 'href="/shelf/gone/"' in text(client)
    page = text(client, "/shelf/gone/?sort=-code")
    assert f'href="/bottles/{code}/"' in page
    assert "poured away" in page


def test_html_in_a_dye_s_name_stays_text(client: Client) -> None:
    made(Dye.objects.create(name=HOSTILE), 5.0, days=300)
    page = text(client)
    assert "<script>alert" not in page
    assert page.count("&lt;script&gt;alert") >= 3
