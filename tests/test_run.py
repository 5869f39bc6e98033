"""The runner of the tests tells a failure from a success, also its own."""

from pathlib import Path
from typing import IO

import pytest

from tests import browser, postgres, run
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


def test_a_run_of_no_test_is_a_failure() -> None:
    assert run_pytest("tests/house/no_such_file.py") == Counts(0, 1, 0)


def test_both_databases_are_asked_and_all_are_counted(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked = []

    def pretend(*options: str, out: IO[str] | None = None) -> Counts:
        asked.append(options)
        if out is None:
            return Counts(5, 0, 0)
        out.write(f"asked with {options[-1]}")
        return Counts(2, 1, 0)

    monkeypatch.setattr(run, "run_pytest", pretend)
    assert run.on_both_databases(()) == Counts(17, 1, 0)
    every = [run.STORE, run.OTHERS, run.ON_POSTGRES, run.CORE]
    assert sorted(asked) == sorted(every)
    said = capsys.readouterr().out
    assert said.index("on SQLite") < said.index("on PostgreSQL") < said.index("other")
    assert "asked with not store and not core" in said


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
