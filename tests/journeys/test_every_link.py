"""Every link of the demo answers, and none leads outside."""

from collections import Counter, deque
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import parse_qsl, urljoin, urlsplit

import pytest
from django.contrib.staticfiles import finders
from django.http import HttpResponseBase
from django.test import Client
from django.urls import resolve
from django.utils import timezone
from pytest_django.fixtures import Settings

from shadewright.workflows.demo import build_demo
from shadewright.workflows.demo.absorption import DYES
from shadewright.workflows.shades.outcomes import hit_rate, outcomes
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import swatch_now

pytestmark = [pytest.mark.slow, pytest.mark.one_store, pytest.mark.django_db]

MOST_OF_A_KIND = 2
"""So many pages of one kind, asked for in one way, stand for all of them."""

LINKS = {"a": "href", "link": "href", "img": "src", "script": "src", "form": "action"}


class Links(HTMLParser):
    """The addresses on a page that are asked for with GET."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = dict(attrs)
        is_sent = tag == "form" and (said.get("method") or "get").lower() != "get"
        address = said.get(LINKS.get(tag, ""))
        if address and not is_sent:
            self.found.append(address)


def test_every_link_of_the_demo_answers(
    client: Client, settings: Settings, tmp_path: Path
) -> None:
    settings.MEDIA_ROOT = tmp_path
    build_demo(timezone.localtime())
    answered = dict(crawl(client))
    wrong = {where: said for where, said in answered.items() if said not in {200, 302}}
    assert wrong == {}
    assert len(answered) > 250
    the_shades_say_what_is_known(client)


def the_shades_say_what_is_known(client: Client) -> None:
    """The numbers on the pages are those of the demo's own palette."""
    holds, rate = palette_now(), hit_rate(outcomes())
    assert holds is not None
    assert rate is not None
    (suspect,) = holds.suspects
    palette = words_of(client, "/shades/")
    assert f"{len(DYES)} dyes" in palette
    assert all(dye in palette for dye in DYES)
    assert " ".join(swatch_now(suspect.swatch_id).label.split()) in palette
    foretold = words_of(client, "/shades/predictions/")
    assert f"Of {rate.counted} predictions at 90 %, {rate.held} held" in foretold


def words_of(client: Client, address: str) -> str:
    """Return a page with one plain space for every gap."""
    page = client.get(address, follow=True).content.decode()
    return " ".join(page.replace("&nbsp;", " ").split())


def crawl(client: Client) -> Iterator[tuple[str, int]]:
    """Ask for every address that can be reached from the first page, once."""
    to_ask, seen, kinds = deque(["/"]), {"/"}, Counter[object]()
    while to_ask:
        address = to_ask.popleft()
        if address.startswith("/static/"):
            name = urlsplit(address).path.removeprefix("/static/")
            yield address, 200 if finders.find(name) else 404
            continue
        kinds[kind := kind_of(address)] += 1
        if kinds[kind] > MOST_OF_A_KIND:
            continue
        answer = client.get(address)
        yield address, answer.status_code
        for link in links_on(answer, address):
            if link not in seen:
                seen.add(link)
                to_ask.append(link)


def kind_of(address: str) -> object:
    parts = urlsplit(address)
    asked = frozenset(key for key, _ in parse_qsl(parts.query))
    return resolve(parts.path).view_name, asked


def links_on(answer: HttpResponseBase, address: str) -> Iterator[str]:
    page = b"".join(answer)  # a file is closed when it has been read
    if answer.status_code == 302:
        yield inside(answer["Location"], address)
    elif answer["Content-Type"].startswith("text/html"):
        for link in Links(page.decode()).found:
            yield inside(link, address)


def inside(link: str, address: str) -> str:
    """Return a link as an address of ours; one that leads outside is a fault."""
    parts = urlsplit(urljoin(address, link))
    assert not parts.scheme, f"{address} leads to {link}"
    assert not parts.netloc, f"{address} leads to {link}"
    return parts._replace(fragment="").geturl()
