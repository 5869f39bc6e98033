"""Published numbers live once, as data, each with its source and the place in it."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests.house.reading import ROOT, name_of

FOLDER = ROOT / "tests" / "published"
FILES = sorted(FOLDER.glob("*.toml"))


def cases(path: Path) -> list[dict[str, Any]]:
    """Return the cases of a file."""
    with path.open("rb") as file:
        return tomllib.load(file)["case"]  # type: ignore[no-any-return]


def faults(case: dict[str, Any]) -> list[str]:
    """Return what a case lacks."""
    words = ("printed", "source", "where")
    wrong = [k for k in words if not (isinstance(case.get(k), str) and case[k].strip())]
    if not case.get("inputs"):
        wrong.append("inputs")
    if "tolerance" in case and not case.get("why_wider"):
        wrong.append("why_wider")
    return wrong


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_every_case_carries_its_source(path: Path) -> None:
    wrong = {
        case.get("id", number): faults(case) for number, case in enumerate(cases(path))
    }
    assert {name: keys for name, keys in wrong.items() if keys} == {}


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_no_two_cases_have_one_name(path: Path) -> None:
    names = [case["id"] for case in cases(path)]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_every_file_is_read_by_a_test(path: Path) -> None:
    tests = (ROOT / "tests").rglob("test_*.py")
    reading = [test for test in tests if test.parent.name != "house"]
    assert any(path.stem in test.read_text(encoding="utf-8") for test in reading)


def test_a_case_without_its_source_is_found() -> None:
    case = {"inputs": {"x": 1.0}, "printed": 2.5, "where": " ", "tolerance": 1.0}
    assert faults(case) == ["printed", "source", "where", "why_wider"]
