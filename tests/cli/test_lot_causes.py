"""``shadewright lot causes``: a history goes in, the likeliest causes come out."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.typed import Terminal

GUIDE = Path(__file__).parents[2] / "docs" / "guide" / "command-line-lot.md"
ROW = re.compile(r"^    ((?:lot|L\d),.*)$", re.MULTILINE)


@pytest.fixture
def history(tmp_path: Path) -> Path:
    """The table of the guide: the last lot paler, with a short hold and a new jar."""
    path = tmp_path / "history.csv"
    rows = ROW.findall(GUIDE.read_text(encoding="utf-8"))
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return path


def test_the_likeliest_cause_first(typed: Terminal, history: Path) -> None:
    answer = typed(f"lot causes {history} --lot L8 --json").answer
    assert answer["verdict"] == "drifted"
    assert 2.0 < answer["de"] < 3.0
    assert 0.1 < answer["expected_de"] < 0.6
    first = answer["causes"][0]
    assert (first["factor"], first["was"], first["now"]) == ("hold_min", 45.0, 31.0)
    assert first["score"] > 0.6
    assert len(first["expected_shift"]) == 3
    assert 0.0 < answer["unknown"] < 0.2
    assert answer["signals"][0] == "L: one lot beyond three standard deviations"


def test_the_guide_shows_what_comes(typed: Terminal, history: Path) -> None:
    said = typed(f"lot causes {history} --lot L8").out.replace("\u00a0", " ")
    guide = GUIDE.read_text(encoding="utf-8")
    assert [row for row in said.splitlines() if f"    {row}\n" not in guide] == []
    assert said.startswith("verdict        drifted\nlooks          lighter")


def test_an_empty_cell_is_said(typed: Terminal, history: Path) -> None:
    text = history.read_text(encoding="utf-8").replace(",31,15,first", ",,15,first")
    history.write_text(text, encoding="utf-8")
    said = typed(f"lot causes {history} --lot L8").out.replace("\u00a0", " ")
    row = next(each for each in said.splitlines() if each.startswith("hold "))
    assert row.endswith(" %, was 45 min, now not written down")
    causes = typed(f"lot causes {history} --lot L8 --json").answer["causes"]
    hold = next(cause for cause in causes if cause["factor"] == "hold_min")
    assert (hold["was"], hold["now"], hold["expected_shift"]) == (45.0, None, None)


def test_a_misspelt_column_is_said(typed: Terminal, history: Path) -> None:
    text = history.read_text(encoding="utf-8").replace("hold_min", "hold", 1)
    history.write_text(text, encoding="utf-8")
    assert "! column hold is not known" in typed(f"lot causes {history} --lot L8").out


def test_an_earlier_lot_of_the_same_file(typed: Terminal, history: Path) -> None:
    answer = typed(f"lot causes {history} --lot l7 --json").answer
    assert answer["verdict"] == "within"
    assert (answer["causes"], answer["unknown"], answer["signals"]) == ([], 0.0, [])


def test_the_first_lot_has_nothing_to_be_held_beside(
    typed: Terminal, history: Path
) -> None:
    answer = typed(f"lot causes {history} --lot L1 --json").answer
    assert (answer["verdict"], answer["de"]) == ("cannot tell", None)
    assert answer["de_why"] == "no lot before it was read"
    said = typed(f"lot causes {history} --lot L1").out
    assert "cannot tell: no lot before it was read" in said


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("lot causes {} --lot L9", "--lot: There is no lot in this history “L9”."),
        ("lot causes {}", "--lot is missing: "),
        ("lot causes {}.not --lot L8", "The lot history “history.csv.not” cannot"),
        ("lot causes --lot L8", "HISTORY.csv is missing"),
    ],
)
def test_a_fault_is_one_sentence(
    typed: Terminal, history: Path, line: str, said: str
) -> None:
    assert typed(line.format(history)).refusal.startswith(said)


def test_it_needs_no_heavy_part(history: Path) -> None:
    script = (
        "import sys; from shadewright.cli import run; "
        f"assert run(['lot', 'causes', {str(history)!r}, '--lot', 'L8']) == 0; "
        "print([x for x in ('django', 'numpy', 'coloraide') if x in sys.modules])"
    )
    shown = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert shown.stdout.splitlines()[-1] == "[]"
