"""What a page is: one frozen dataclass that holds all its template may use.

A room declares its pages so::

    @dataclass(frozen=True, kw_only=True)
    class BottlePage(Page):
        template: ClassVar[str] = "bottles/bottle.html"
        place: ClassVar[str] = "Shelf"
        strength: Measured

and its view ends with ``return show(request, BottlePage(title=..., ...))``.
The template finds it as ``page``; a test fails on a name that the dataclass
lacks and on a field that the template never uses.
"""

from dataclasses import dataclass
from typing import ClassVar

from django.http import HttpRequest, HttpResponse
from django.template.loader import render_to_string

from shadewright.web.frame import Frame
from shadewright.web.unbroken import unbroken


@dataclass(frozen=True, kw_only=True)
class Link:
    """Words that lead somewhere."""

    words: str
    address: str


@dataclass(frozen=True, kw_only=True)
class Part:
    """A piece of a page that is sent alone, in answer to htmx."""

    template: ClassVar[str]


@dataclass(frozen=True, kw_only=True)
class Page(Part):
    """A whole page; ``title`` is its one h1, ``fact`` the line below it."""

    place: ClassVar[str] = ""
    is_guided: ClassVar[bool] = False

    title: str
    fact: str = ""
    crumbs: tuple[Link, ...] = ()


def show(
    request: HttpRequest | None,
    page: Part,
    *,
    status: int = 200,
    frame: Frame | None = None,
) -> HttpResponse:
    """Answer with the page, or the part of one, in its own template.

    What is round it follows from the request, where no frame is given.
    """
    own = {} if frame is None else {"frame": frame}
    html = render_to_string(page.template, {"page": page, **own}, request)
    return HttpResponse(unbroken(html), status=status)
