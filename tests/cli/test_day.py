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


def test_a_day_anew(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What cannot go on is a warning, and what stood elsewhere is said."""
    day = due_day(None, None) | {"end": "18:00", "now": "08:32"}
    day["people"][0]["to"] = "18:00"
    day["sources"][0]["out_from"] = "08:30"
    day["sources"].append(day["sources"][0] | {"name": "S2", "out_from": "17:00"})
    going = {"pot": "P1", "source": "S1", "fill_start_min": 0, "heat_start_min": 5}
    day["baths"][0]["going"] = going
    was = {"name": "B1", "pot": "P1", "source": "S1", "start_min": 217}
    path = file_of(day | {"before": [was]}, tmp_path)
    assert run(["day", "plan", path, "--seconds", "0.1"]) == 0
    said = capsys.readouterr()
    assert "B1 before" in said.out
    assert "P1 on S1, fill 11:37" in said.out
    assert "B0: S1 is out from 08:30" in said.out + said.err


def test_a_missing_file_is_a_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    """And no traceback."""
    assert run(["day", "plan", "nowhere.json"]) == 2
    assert "The day file" in capsys.readouterr().err
