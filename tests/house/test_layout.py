"""Every room stands where the contracts say, and a stray one is refused."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.reading import DOCS, ROOT, SOURCE, core_chapters, project_files

ELSEWHERE = {"house", "published", "journeys"}
FAULTS = {
    "a room that nobody declared": ("stray/__init__.py", ""),
    "a chapter that nobody declared": ("core/stray/__init__.py", ""),
    "core looks at the settings": ("core/tables/x.py", "import shadewright.settings"),
    "core opens a path": ("core/tables/x.py", "import pathlib"),
    "an early chapter reads a later one": (
        "core/quantities/x.py",
        "import shadewright.core.baths",
    ),
    "paper looks into the store": ("paper/x.py", "import shadewright.records"),
    "the command line looks into the store": ("cli/x.py", "import shadewright.records"),
    "a picture reckons in arrays": ("drawing/x.py", "import numpy"),
}


def lint_imports(folder: Path) -> subprocess.CompletedProcess[str]:
    program = Path(sys.executable).with_name("lint-imports")
    return subprocess.run(
        [program, "--config", ROOT / "pyproject.toml", "--no-cache"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(folder)},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the package, to break."""
    shutil.copytree(SOURCE, tmp_path / "shadewright", ignore=_no_caches)
    return tmp_path


def _no_caches(_folder: str, names: list[str]) -> set[str]:
    return {"__pycache__", "static", "templates"} & set(names)


def test_imports_keep_the_contracts(copy: Path) -> None:
    done = lint_imports(copy)
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize("fault", FAULTS)
def test_contracts_would_be_broken_by(copy: Path, fault: str) -> None:
    name, text = FAULTS[fault]
    path = copy / "shadewright" / name
    path.parent.mkdir(exist_ok=True)
    path.write_text(text + "\n", encoding="utf-8")
    assert lint_imports(copy).returncode != 0


def test_tests_mirror_the_source() -> None:
    tests = ROOT / "tests"
    rooms = {
        path.parent.relative_to(tests)
        for path in project_files()
        if path.is_relative_to(tests) and path.name.startswith("test_")
    }
    stray = {
        room
        for room in rooms
        if not (SOURCE / room).is_dir() and ELSEWHERE.isdisjoint(room.parts)
    }
    assert stray == set()


@pytest.mark.parametrize("chapter", core_chapters())
def test_chapter_has_its_page_in_the_handbook(chapter: str) -> None:
    page = DOCS / "handbook" / f"{chapter}.md"
    assert page.read_text(encoding="utf-8").startswith("# ")


def test_chapter_offers_only_what_exists_and_is_written_there() -> None:
    """A chapter's first page is its introduction and its public names."""
    for chapter in core_chapters():
        text = (SOURCE / "core" / chapter / "__init__.py").read_text(encoding="utf-8")
        assert text.startswith('"""'), chapter
        assert "\ndef " not in text, chapter
        assert "\nclass " not in text, chapter
