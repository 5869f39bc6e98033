"""The runner of the tests tells a failure from a success, also its own."""

from pathlib import Path
from typing import IO

import pytest

from tests import browser, conftest, postgres, run
from tests.run import Counts, missing_programs, read_record, run_check, run_pytest

RECORD = """<testsuites>
<testsuite tests="5" failures="1" errors="1" skipped="1" /><testsuite tests="2" />
</testsuites>"""


@pytest.mark.parametrize(("code", "verdict"), [(0, "ok"), (3, "FAILED")])
def test_check_goes_by_its_exit_status(
    code: int, verdict: str, capfd: pytest.CaptureFixture[str]
) -> None:
    program = ("python", "-c", f"print('why'); raise SystemExit({code})")
    assert run_check("a check", program) == (code == 0)
    said = capfd.readouterr().out
    assert verdict in said
    assert ("why" in said) == (code != 0)


def test_counts_come_from_the_record(tmp_path: Path) -> None:
    record = tmp_path / "record.xml"
    record.write_text(RECORD, encoding="utf-8")
    assert str(read_record(record)) == "4 passed, 2 failed, 1 skipped"


def test_a_run_of_no_test_is_a_failure(tmp_path: Path) -> None:
    with (tmp_path / "said").open("w+", encoding="utf-8") as said:
        assert run_pytest("tests/house/no_such_file.py", out=said) == Counts(0, 1, 0)
        said.seek(0)
        assert "no_such_file.py" in said.read()


def test_every_part_is_asked_and_all_are_counted(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked = []

    def pretend(*options: str, out: IO[str]) -> Counts:
        asked.append(options)
        out.write(f"asked with {options[-1]}")
        return Counts(3, int(options[-1].startswith("browser")), 0)

    monkeypatch.setattr(run, "run_pytest", pretend)
    monkeypatch.setattr(run, "missing_programs", list)
    monkeypatch.setattr(run, "CHECKS", {"good": ("python", "-c", "")})
    assert run.test(()) == Counts(16, 1, 0)
    assert sorted(asked) == sorted(run.PARTS.values())
    said = capsys.readouterr().out
    for title, options in run.PARTS.items():
        assert f"\n{title}\nasked with {options[-1]}" in said


def test_every_test_stands_in_a_part() -> None:
    """Whatever a test is marked, one part asks it, and two ask a store's."""
    for kinds in ((), ("core",), ("page",), ("browser",), ("browser", "page")):
        assert len(parts_that_ask(*kinds)) == 1
    assert parts_that_ask("store", "page") == ["The store, on SQLite"]
    both = ["The store, on SQLite", "The store, on PostgreSQL"]
    assert parts_that_ask("store") == both
    assert parts_that_ask("store", "core") == ["Core"]


def test_a_part_reads_no_file_of_which_it_asks_no_test() -> None:
    """And of each other file the part reads as much as pytest without it would."""
    where = {
        "core/test_a.py": "core",
        "web/orders/test_a.py": "page",
        "cli/test_a.py": "",
    }
    for words in (options[-1] for options in run.PARTS.values()):
        for path, part in where.items():
            kinds = [(), ("store",), ("browser",)]
            takes = [asks(words, marked(part, *kind)) for kind in kinds]
            assert conftest.leaves_out(words, Path(path)) != any(takes)
    assert not conftest.leaves_out("slow or not core", Path("core/test_a.py"))


def parts_that_ask(*kinds: str) -> list[str]:
    marks = marked(*kinds)
    return [title for title, words in run.PARTS.items() if asks(words[-1], marks)]


def marked(*kinds: str) -> dict[str, bool]:
    return {mark: mark in kinds for mark in ("store", "page", "core", "browser")}


def asks(words: str, marks: dict[str, bool]) -> bool:
    """Whether pytest's ``-m`` takes a test: its words are Python's."""
    return bool(eval(words, {}, marks))  # ruff: ignore[suspicious-eval-usage]


def test_a_failed_check_fails_the_run(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SHADEWRIGHT_DATA", "put back at the end")
    monkeypatch.setattr(run, "CHECKS", {"bad": ("python", "-c", "raise SystemExit(1)")})
    monkeypatch.setattr(run, "HOUSE", {})
    assert run.main("check") == 1


def test_missing_programs_are_named(monkeypatch: pytest.MonkeyPatch) -> None:
    def none_found() -> Path:
        raise postgres.NoServerError

    monkeypatch.setattr(browser, "NAMES", ("no-such-browser",))
    monkeypatch.setattr(browser, "DRIVER_LIBRARY", "libnone.so.1")
    monkeypatch.setattr(postgres, "find_programs", none_found)
    assert missing_programs() == ["chromium", "libatomic1", "postgresql"]
