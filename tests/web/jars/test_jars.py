"""The jars as a list: what is left, sorted and searched."""

import re
from datetime import timedelta

import pytest
from django.test import Client

from shadewright.records.models import Dye
from shadewright.workflows.jars import (
    ShelfJar,
    count_jar,
    hand_in_jar,
    jars,
    receive_jar,
)
from shadewright.workflows.stamps import stamp_now, today
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")


def received(dye: Dye, powder_g: float, **more: object) -> ShelfJar:
    stamp = stamp_now(by=None)
    return receive_jar(dye_id=dye.pk, powder_g=powder_g, stamp=stamp, **more)  # type: ignore[arg-type]


def text(client: Client, address: str = "/jars/") -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


def codes(page: str) -> list[str]:
    return re.findall(r'<a class="code" href="/jars/\d+/">(J-\d+)<', page)


def test_an_empty_list_says_what_would_stand_there(client: Client) -> None:
    page = text(client)
    assert "Your jars would stand here" in page
    assert 'href="/jars/new/"' in page


def test_a_jar_stands_there_with_what_is_left(client: Client, gorse: Dye) -> None:
    jar = received(gorse, 100, lot="A7", opened_on=today() - timedelta(days=1))
    count_jar(jar_id=jar.id, reading_g=62.5, stamp=stamp_now(by=None))
    page = text(client)
    assert codes(page) == [jar.code]
    assert "62.5 g" in page
    assert "A7" in page
    assert 'width="62.5"' in page
    assert "low" not in page[page.index("<table") : page.index("</table")]


def test_a_low_jar_is_drawn_low(client: Client, gorse: Dye) -> None:
    jar = received(gorse, 100)
    count_jar(jar_id=jar.id, reading_g=5, stamp=stamp_now(by=None))
    assert 'class="full low"' in text(client)


def test_it_sorts(client: Client, gorse: Dye) -> None:
    kelp = Dye.objects.create(name="Kelp")
    first = received(kelp, 50, opened_on=today()).code
    second = received(gorse, 80).code
    assert codes(text(client)) == [second, first]
    for order, found in (
        ("code", [first, second]),
        ("left", [first, second]),
        ("-left", [second, first]),
        ("opened", [first, second]),
    ):
        assert codes(text(client, f"/jars/?sort={order}")) == found


def test_it_searches_by_dye_lot_and_code(client: Client, gorse: Dye) -> None:
    jar = received(gorse, 50, lot="A7")
    for words in ("gors", "a7", jar.code.lower(), "gorse A7"):
        assert codes(text(client, f"/jars/?q={words}")) == [jar.code]
    assert "No jar with “kelp”" in text(client, "/jars/?q=kelp")


def test_html_in_a_search_stays_text(client: Client) -> None:
    page = client.get("/jars/", {"q": HOSTILE}).content.decode()
    assert "<script>alert" not in page


def test_a_jar_that_left_is_only_a_link(client: Client, gorse: Dye) -> None:
    jar = received(gorse, 50)
    hand_in_jar(jar_id=jar.id, stamp=stamp_now(by=None))
    page = text(client)
    assert codes(page) == []
    assert f'Gone: <a href="/jars/{jar.id}/">{jar.code} Gorse</a>' in page
    assert jars() == ()
