"""``shadewright day plan``: a file goes in, a plan comes out."""

import json
from pathlib import Path

import pytest

from shadewright.cli.entry import run
from tests.core.planning.made_days import made_day
from tests.core.planning.plan_checker import faults_of
from tests.core.planning.test_searching import due_day


def file_of(day: object, folder: Path) -> str:
    """Return the path of a day's file."""
    path = folder / "day.json"
    path.write_text(json.dumps(day), encoding="utf-8")
    return str(path)


def test_a_plan_as_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It keeps the rules of its file."""
    day = made_day(3)
    asked = ["day", "plan", file_of(day, tmp_path), "--seconds", "0.1", "--json"]
    assert run(asked) == 0
    assert faults_of(day, json.loads(capsys.readouterr().out)) == []


def test_a_plan_to_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each bath in a line, and why the other is left out."""
    path = file_of(due_day("12:00", None), tmp_path)
    assert run(["day", "plan", path, "--seconds", "0.1"]) == 0
    said = capsys.readouterr().out
    assert "B0" in said
    assert "P1 on S1" in said
    assert "B1 is left out" in said


def test_a_missing_file_is_a_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    """And no traceback."""
    assert run(["day", "plan", "nowhere.json"]) == 2
    assert "The day file" in capsys.readouterr().err
