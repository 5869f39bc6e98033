"""The wheel: installed into an empty environment, it opens the demo studio."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from tests.clones import fetch, fresh_clone, plain_environment, running_studio
from tests.house.reading import ROOT, SOURCE, project_files

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from a fresh clone without fetching anything."""
    clone = fresh_clone(tmp_path_factory.mktemp("clone"))
    folder = tmp_path_factory.mktemp("wheel")
    pip(
        [sys.executable],
        "wheel",
        "--no-deps",
        "--no-build-isolation",
        "-w",
        folder,
        clone,
    )
    (built,) = folder.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def empty(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The Python of an environment with nothing in it but pip."""
    folder = tmp_path_factory.mktemp("empty")
    subprocess.run([sys.executable, "-m", "venv", folder], check=True)
    return folder / "bin" / "python"


def pip(python: list[str | Path], *words: str | Path) -> None:
    """Run pip, without a word unless it fails."""
    done = subprocess.run(
        [*python, "-I", "-m", "pip", "--disable-pip-version-check", *words],
        env=plain_environment(),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_every_file_of_the_package_is_in_the_wheel(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        packed = set(archive.namelist())
    written = {
        path.relative_to(SOURCE.parent).as_posix()
        for path in project_files()
        if path.is_relative_to(SOURCE)
    }
    assert written - packed == set()
    assert {name.split("/")[0] for name in packed - written} == {
        f"{wheel.name.split('-py3')[0]}.dist-info"
    }


def test_wheel_opens_the_demo(wheel: Path, empty: Path, tmp_path: Path) -> None:
    lock = ROOT / "requirements.lock"
    pip([empty], "install", "--require-hashes", "-r", lock)
    pip([empty], "install", "--no-deps", wheel)
    shadewright = str(empty.with_name("shadewright"))
    with running_studio([shadewright, "demo"], tmp_path / "demo") as url:
        page = fetch(url)
    assert "invented" in page
    assert (tmp_path / "demo" / "studio.sqlite3").exists()
