"""A lot's trace in the terminal, and as JSON."""

import subprocess
import sys
from pathlib import Path

import pytest

from shadewright.records.models.baths import BathAct
from tests.cli.typed import Terminal
from tests.workflows.bench import founded, made, new_jar
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ready, tapped


@pytest.fixture
def pot(db: None) -> Ready:
    """A bath with one dose from a bottle of a jar, the other not told."""
    del db
    founded()
    found = ready()
    bottle = made(found.slate_dye, new_jar(found.slate_dye)).code
    tapped(found.number, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=bottle)
    finished(found.number, skeins=1)
    return found


def test_a_trace_is_a_tree_of_lines(typed: Terminal, pot: Ready) -> None:
    said = typed(f"lot trace {pot.number.lower()}")
    assert said.status == 0
    lines = said.out.replace("\u00a0", " ").splitlines()
    assert lines[0] == f"lot {pot.number}  (Low Tide, version 1, 1 skein)"
    assert lines[1].startswith(f"└─ bath {pot.number}, ")
    assert lines[2].startswith("   ├─ bottle ")
    assert lines[2].endswith(" Slate, 1 %  (60 ml)")
    assert lines[3].startswith(
        "   │  └─ jar J-1  (supplier’s lot not written down, 5 g"
    )
    assert lines[4].startswith(
        "   ├─ ! dose Gorse: not written down whether it went in"
    )
    assert lines[-1] == "      └─ ! mill lot not written down"


def test_a_trace_is_one_json_object(typed: Terminal, pot: Ready) -> None:
    answer = typed(f"lot trace {pot.number} --json").answer
    assert (answer["kind"], answer["key"]) == ("lot", pot.number)
    bath = answer["below"][0]
    assert [node["kind"] for node in bath["below"]] == ["bottle", "dose", "base"]
    assert [node["is_missing"] for node in bath["below"]] == [False, True, False]
    assert bath["below"][0]["below"][0]["kind"] == "jar"


@pytest.mark.parametrize("number", ["999999-B1", "x'--", "<b>"])
def test_a_lot_that_is_not_there(typed: Terminal, pot: Ready, number: str) -> None:
    del pot
    said = typed(f'lot trace "{number}"')
    assert said.refusal.startswith(f"NUMBER: There is no lot “{number.upper()}”.")


def test_a_studio_in_another_folder_answers_on_its_own(tmp_path: Path) -> None:
    done = subprocess.run(
        [
            *(sys.executable, "-m", "shadewright", "lot", "trace", "261125-B1"),
            *("--json", "--data", str(tmp_path / "new")),
        ],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert not done.stdout
    assert "There is no lot “261125-B1”." in done.stderr
    assert "Traceback" not in done.stderr
