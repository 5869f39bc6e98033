"""Words and marks that may stand nowhere in the project, each with its reason."""

import re
import tomllib
from pathlib import Path

import pytest

from tests.house.reading import ROOT, SOURCE, name_of, project_files, texts

TEXTS = (".py", ".md", ".toml", ".html", ".js", ".css", ".bib", ".txt", ".lock", "")
# The last column is a sample that each pattern must find.
BANNED = {
    "a task without its issue": (
        r"\b(?:TODO|FIXME|XXX|HACK)\b(?!.*(?:#|issue )\d)",
        "# TODO: later",
    ),
    "a folder of one machine": (r"/(?:work|home/\w+|root)/", "open('/root/x')"),
    "the address of a registry": (
        r"https?://[^/\s\"']*(?:pypi|pythonhosted|npmjs|debian)\b",
        "https://" + "pypi.example/simple",
    ),
    "a merge left open": (r"^(?:<{7}|>{7}) ", "<" * 7 + " HEAD"),
    "a licence header": (
        r"SPDX-License|^# Copyright",
        "# SPDX-" + "License-Identifier",
    ),
}
HOMELESS = {"utils", "util", "helpers", "helper", "common", "misc"}


@pytest.mark.parametrize("reason", BANNED)
def test_banned_words_stand_nowhere(reason: str) -> None:
    pattern = re.compile(BANNED[reason][0], re.MULTILINE)
    found = {
        name_of(path): match.group()
        for path, text in texts(*TEXTS)
        if path != Path(__file__) and (match := pattern.search(text))
    }
    assert found == {}


@pytest.mark.parametrize("reason", BANNED)
def test_banned_words_would_be_found(reason: str) -> None:
    pattern, sample = BANNED[reason]
    assert re.search(pattern, sample, re.MULTILINE)


def test_a_task_with_its_issue_is_let_through() -> None:
    assert not re.search(BANNED["a task without its issue"][0], "# TODO(#12): later")


def test_no_room_is_called_by_no_name() -> None:
    found = [path for path in project_files() if path.is_relative_to(SOURCE)]
    assert {p for p in found if HOMELESS & {*p.parts, p.stem}} == set()


def test_locks_hold_every_part_that_the_project_names() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    extras = project["project"]["optional-dependencies"]
    own = [*project["project"]["dependencies"], *project["dependency-groups"]["build"]]
    named = {"requirements.lock": own}
    named["requirements-dev.lock"] = [*own, *extras["dev"], *extras["postgres"]]
    for lock, parts in named.items():
        text = (ROOT / lock).read_text(encoding="utf-8")
        names = [re.split(r"[^\w-]", part)[0].lower() for part in parts]
        assert [n for n in names if not re.search(f"^{n}==", text, re.MULTILINE)] == []


def test_locks_hold_hashes_and_no_address() -> None:
    locks = list(ROOT.glob("*.lock"))
    assert {lock.name for lock in locks} == {
        "requirements.lock",
        "requirements-dev.lock",
    }
    for lock in locks:
        text = lock.read_text(encoding="utf-8")
        assert not re.search(r"://|--(?:extra-)?index-url|--find-links", text)
        parts = re.split(r"\n(?! )", text.strip())
        assert [part for part in parts if "--hash=sha256:" not in part] == []
