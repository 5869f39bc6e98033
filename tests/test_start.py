"""start.py on a machine that lacks something, or is killed half-way."""

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.clones import fresh_clone, plain_environment
from tests.house.reading import ROOT

START = ROOT / "start.py"


def run(
    *words: str, folder: Path = ROOT, before: str = ""
) -> subprocess.CompletedProcess[str]:
    """Run start.py, after some lines that make this Python a poorer one."""
    code = f"import sys; {before}\nimport start; sys.exit(start.main({list(words)!r}))"
    return subprocess.run(
        [sys.executable, "-c", code],
        cwd=folder,
        env=plain_environment(),
        capture_output=True,
        text=True,
        check=False,
    )


def begin(folder: Path) -> subprocess.Popen[str]:
    """Start a set-up, to be watched or killed."""
    return subprocess.Popen(
        [sys.executable, "-u", "start.py", "setup"],
        cwd=folder,
        env=plain_environment(),
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )


@pytest.fixture
def clone(tmp_path: Path) -> Path:
    return fresh_clone(tmp_path / "clone of a dyer")


def test_an_old_python_can_read_it() -> None:
    ast.parse(START.read_text(encoding="utf-8"), feature_version=(3, 8))


def test_it_needs_nothing_but_python() -> None:
    tree = ast.parse(START.read_text(encoding="utf-8"))
    imports = [node for node in ast.walk(tree) if isinstance(node, ast.Import)]
    parts = [node for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
    names = {alias.name.split(".")[0] for node in imports for alias in node.names}
    names |= {str(node.module).split(".")[0] for node in parts}
    assert names - sys.stdlib_module_names == set()


@pytest.mark.parametrize(
    ("newer", "line"),
    [("python3.12", "    python3.12 start.py"), ("", "apt install python3.11 ")],
)
def test_old_python_gets_the_line_to_type(newer: str, line: str) -> None:
    which = f"shutil.which = lambda name: name == {newer!r}"
    before = f"import shutil; sys.version_info = (3, 8, 10); {which}"
    done = run("setup", before=before)
    assert done.returncode == 2
    assert "needs Python 3.11 or newer; this is 3.8." in done.stderr
    assert line in done.stderr


@pytest.mark.parametrize(
    ("user", "line"), [(1000, "    sudo apt install python3."), (0, "    apt install ")]
)
def test_missing_venv_gets_the_line_to_type(clone: Path, user: int, line: str) -> None:
    before = f"import os; sys.modules['ensurepip'] = None; os.geteuid = lambda: {user}"
    done = run("setup", folder=clone, before=before)
    assert done.returncode == 2
    assert "comes without venv" in done.stderr
    assert line in done.stderr
    assert "-venv" in done.stderr
    assert not (clone / ".venv").exists()


def test_a_folder_that_cannot_be_written_is_named(clone: Path) -> None:
    (clone / "build").write_text(
        "a file stands where a folder should", encoding="utf-8"
    )
    done = run("setup", folder=clone)
    assert done.returncode == 2
    assert done.stderr.strip() == f"File exists: {clone / 'build'}"


@pytest.mark.parametrize(("word", "status"), [("--help", 0), ("nonsense", 2)])
def test_its_words_are_told(word: str, status: int) -> None:
    done = run(word)
    assert done.returncode == status
    assert "python3 start.py test" in done.stdout


@pytest.mark.slow
def test_a_part_that_is_not_the_locked_one_is_refused(clone: Path) -> None:
    lock = clone / "requirements.lock"
    text = lock.read_text(encoding="ascii")
    lock.write_text(re.sub(r"sha256:\w+", f"sha256:{'0' * 64}", text), encoding="ascii")
    done = run("setup", folder=clone)
    assert done.returncode == 2
    assert "do not match the hashes".upper() in done.stderr.upper()
    assert "start again" in done.stderr
    assert not is_ready(clone)


@pytest.mark.slow
def test_killed_half_way_it_repairs_itself(clone: Path) -> None:
    """Kill it in each step, one start after the other; then let it finish."""
    for part in ("1/3", "2/3", "3/3"):
        with begin(clone) as process:
            assert process.stdout
            said = ""
            while part not in said:
                said += process.stdout.read(1)
            process.kill()
        assert not (clone / ".venv" / "shadewright-stamp").exists()
    assert_whole(clone, run("setup", folder=clone))


@pytest.mark.slow
def test_two_starts_at_once_wait_and_a_third_has_nothing_to_do(clone: Path) -> None:
    with begin(clone) as first, begin(clone) as second:
        said = [process.communicate()[0] for process in (first, second)]
    assert [first.returncode, second.returncode] == [0, 0]
    assert sum("3/3" in words for words in said) == 1
    third = run("setup", folder=clone)
    assert "1/3" not in third.stdout
    assert_whole(clone, third)
    assert_changes_are_seen(clone)


def assert_changes_are_seen(clone: Path) -> None:
    """Assert that a ready clone is no longer so once something has changed."""
    for name in ("requirements.lock", "pyproject.toml", ".venv/bin/shadewright"):
        path = clone / name
        before = path.read_bytes()
        path.write_bytes(b"# new\n" + before)
        if name.startswith(".venv"):
            path.unlink()
        assert not is_ready(clone), name
        path.write_bytes(before)
        assert is_ready(clone), name
    elsewhere = clone.rename(clone.with_name("moved"))
    assert not is_ready(elsewhere)


def is_ready(clone: Path) -> bool:
    """Ask start.py whether the clone needs no set-up."""
    code = "import start; print(start.is_ready(is_dev=False))"
    command = [sys.executable, "-c", code]
    return subprocess.check_output(command, cwd=clone, text=True).strip() == "True"


def assert_whole(clone: Path, done: subprocess.CompletedProcess[str]) -> None:
    """Assert that a set-up said it was ready, and that its parts are there."""
    assert done.returncode == 0, done.stdout + done.stderr
    assert "Ready: " in done.stdout
    python = clone / ".venv" / "bin" / "python"
    subprocess.run(
        [python, "-c", "import shadewright, django, typst, zxingcpp"],
        env=plain_environment(),
        check=True,
    )
