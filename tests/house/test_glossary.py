"""Every name that core offers stands in the glossary, with its meaning."""

import re
from importlib import import_module

import pytest

from tests.house.reading import DOCS, core_chapters


@pytest.mark.parametrize("chapter", core_chapters())
def test_public_names_stand_in_the_glossary(chapter: str) -> None:
    glossary = (DOCS / "glossary.md").read_text(encoding="utf-8")
    said = set(re.findall(r"`(\w+)`", glossary))
    offered = set(getattr(import_module(f"shadewright.core.{chapter}"), "__all__", ()))
    assert offered - said == set()


def test_glossary_speaks_of_nothing_that_is_gone() -> None:
    """A name that the glossary writes as a function's must be offered somewhere."""
    glossary = (DOCS / "glossary.md").read_text(encoding="utf-8")
    called = set(re.findall(r"`(\w+)\(\)`", glossary))
    chapters = [import_module(f"shadewright.core.{name}") for name in core_chapters()]
    offered = {name for chapter in chapters for name in dir(chapter)}
    assert called - offered == set()
