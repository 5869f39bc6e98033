"""Each template uses only what its page declares, and all of it."""

import importlib
import inspect
import pkgutil
import re
from pathlib import Path
from typing import ClassVar

import pytest
from django.template import Template, engines
from django.template.loader import get_template

from shadewright import drawing, web
from shadewright.web.frame import Frame
from shadewright.web.pages import Page, Part
from tests.web.sample import SOURCE, PartsPage
from tests.web.template_reading import Reading, read, unused
from tests.web.template_reading import compiled as compiled_of

WEB = Path(web.__file__).parent
TEMPLATES = sorted(WEB.rglob("*.html"))
PARTS_OF_THE_HOUSE = ("base.html", "parts/")


def all_pages() -> list[type[Part]]:
    for module in pkgutil.walk_packages(web.__path__, f"{web.__name__}."):
        importlib.import_module(module.name)
    found: list[type[Part]] = []
    waiting = [Part]
    while waiting:
        subclasses = waiting.pop().__subclasses__()
        waiting += subclasses
        found += [one for one in subclasses if one.__module__.startswith(web.__name__)]
    return [page for page in found if hasattr(page, "template")]


def reading_of(template: Template, page: type[Part]) -> Reading:
    return read(template, {"page": page, "frame": Frame})


def compiled(text: str) -> Template:
    return compiled_of(engines["django"].from_string(text))


@pytest.mark.parametrize("page", all_pages(), ids=lambda page: page.__name__)
def test_a_template_uses_what_its_page_declares_and_all_of_it(page: type[Part]) -> None:
    reading = reading_of(compiled_of(get_template(page.template)), page)
    assert reading.wrong == []
    assert unused(page, reading) == []


def test_every_template_belongs_to_a_page() -> None:
    pages = {page.template for page in all_pages()}
    folder = WEB / "templates"
    rest = {
        path.relative_to(folder).as_posix() for path in folder.rglob("*.html")
    } - pages
    named = "".join(path.read_text(encoding="utf-8") for path in TEMPLATES)
    python = "".join(path.read_text(encoding="utf-8") for path in WEB.rglob("*.py"))
    assert [name for name in rest if f'"{name}"' not in named + python] == []


def test_the_reader_is_content_with_the_page_of_every_part() -> None:
    reading = reading_of(compiled(SOURCE), PartsPage)
    assert reading.wrong == []
    assert unused(PartsPage, reading) == []


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("{{ page.titel }}", "PartsPage.titel"),
        ("{% if page.fact and page.fakt %}{% endif %}", "PartsPage.fakt"),
        ("{% for row in page.rows %}{{ row.name }}{% endfor %}", "Row.name"),
        ("{% with one=page.rows.0 %}{{ one.age }}{% endwith %}", "Row.age"),
        ("{% sure page.strengths.0.value %}", "Measured.value"),
        ("{% field page.form.powder %}", "WeighForm.powder"),
        ("{{ page.title|default:page.other }}", "PartsPage.other"),
        ('{% include "parts/chip.html" with chip=page.order %}', "Order.kind"),
        ('{% extends "base.html" %}{{ frame.x }}', ""),
    ],
)
def test_the_reader_sees_a_wrong_name(text: str, wrong: str) -> None:
    found = reading_of(compiled(text), PartsPage).wrong
    assert (wrong in found) if wrong else found == ["Frame.x"]


def test_the_reader_sees_an_idle_field() -> None:
    template = compiled(
        "{{ page.title }}{% for row in page.rows %}{{ row.dye }}{% endfor %}"
    )
    idle = unused(PartsPage, reading_of(template, PartsPage))
    assert "Row.left_ml" in idle
    assert "PartsPage.form" in idle
    assert "PartsPage.title" not in idle
    assert "Row.dye" not in idle


def test_a_page_has_no_template_until_it_names_one() -> None:
    assert not hasattr(Page, "template")
    assert "template" in inspect.get_annotations(Part)
    assert inspect.get_annotations(Part)["template"] == ClassVar[str]


def test_every_class_in_a_template_or_a_drawing_has_a_style() -> None:
    styles = "".join(path.read_text(encoding="utf-8") for path in WEB.rglob("*.css"))
    styled = set(re.findall(r"\.([a-z][\w-]*)", styles))
    sources = [path.read_text(encoding="utf-8") for path in TEMPLATES]
    folder = Path(drawing.__file__).parent
    sources += [path.read_text(encoding="utf-8") for path in folder.glob("*.py")]
    named = {
        word
        for source in sources
        for words in re.findall(r'class="([^"]*)"', source)
        for word in re.sub(r"\{.*?\}+", " ", words).split()
    }
    assert sorted(named - styled) == []
