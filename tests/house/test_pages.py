"""Every page has its place in the guide's list of pages."""

import re
from collections.abc import Iterator
from importlib import import_module

from django.urls import URLPattern, URLResolver, path
from django.views.generic import RedirectView

from tests.house.reading import DOCS

CONVERTER = re.compile(r"<\w+:(\w+)>")


def addresses(
    patterns: list[URLPattern | URLResolver], start: str = "/"
) -> Iterator[str]:
    """Return the address of every named pattern, its parts as ``<name>``."""
    for pattern in patterns:
        address = CONVERTER.sub(r"<\1>", f"{start}{pattern.pattern}")
        if isinstance(pattern, URLResolver):
            yield from addresses(pattern.url_patterns, address)
        elif pattern.name:
            yield address


def test_every_page_stands_in_the_guide() -> None:
    patterns = import_module("shadewright.web.urls").urlpatterns
    guide = (DOCS / "guide" / "pages.md").read_text(encoding="utf-8")
    said = set(re.findall(r"`(/[^`\s]*)`", guide))
    assert set(addresses(patterns)) - said == set()


def test_the_guide_speaks_of_no_page_that_is_gone() -> None:
    patterns = import_module("shadewright.web.urls").urlpatterns
    guide = (DOCS / "guide" / "pages.md").read_text(encoding="utf-8")
    said = set(re.findall(r"`(/[^`\s]*)`", guide))
    assert said - set(addresses(patterns)) == set()


def test_addresses_are_written_for_people() -> None:
    view = RedirectView.as_view(url="/")
    sample: list[URLPattern | URLResolver] = [
        path("shelf/<str:code>/", view, name="bottle"),
        path("favicon.ico", view),
    ]
    assert list(addresses(sample)) == ["/shelf/<code>/"]
