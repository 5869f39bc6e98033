"""Every equation of a chapter has its own number, and none is left out.

A chapter within a chapter counts its own.
"""

import re

import pytest

from tests.house.reading import SOURCE, core_chapters, sub_chapters

_NUMBERED = re.compile(r"^    \S.*  \((\d+)\)$", re.MULTILINE)


def numbers(chapter: str) -> list[int]:
    """Return the numbers of a chapter's equations, file by file."""
    place = SOURCE / "core" / chapter
    files = sorted(place.glob("*.py")) if place.is_dir() else [place.with_suffix(".py")]
    texts = (file.read_text(encoding="utf-8") for file in files)
    return [int(found) for text in texts for found in _NUMBERED.findall(text)]


@pytest.mark.parametrize("chapter", [*core_chapters(), *sub_chapters()])
def test_equations_are_numbered_once_and_without_a_gap(chapter: str) -> None:
    found = numbers(chapter)
    assert sorted(found) == list(range(1, len(found) + 1))


def test_there_are_equations_to_number() -> None:
    assert {name for name in core_chapters() if numbers(name)} >= {
        "quantities",
        "solutions",
        "baths",
    }
    assert numbers("baths/acidity")
