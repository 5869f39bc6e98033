"""Two colours in the terminal."""

import subprocess
import sys

import pytest

from shadewright.core.colour import Lab, ciede2000, cmc
from tests.cli.typed import Terminal


def test_a_published_pair_comes_out(typed: Terminal) -> None:
    """Pair 2 of Sharma, Wu and Dalal (2005): 2.8615."""
    answer = typed("difference Lab=50,3.1571,-77.2803 Lab=50,0,-82.7485 --json").answer
    assert answer["ciede2000"] == pytest.approx(2.8615, abs=5e-5)
    assert answer["standard"]["lab"] == [50.0, 3.1571, -77.2803]
    assert answer["standard"]["evidence"] == "lab"
    assert answer["standard"]["carried_by"] is None


def test_all_keys_are_there(typed: Terminal) -> None:
    answer = typed("difference Lab=50,30,20 Lab=50,24,18 --json").answer
    assert answer["cmc_2_1"] == cmc(Lab(50, 30, 20), Lab(50, 24, 18))
    assert answer["grey_scale"] == pytest.approx(2.5874, abs=5e-5)
    assert answer["grey_scale_step"] == "2-3"
    assert answer["words"] == "duller, a little yellower"
    assert answer["warnings"] == []


def test_the_first_is_the_standard(typed: Terminal) -> None:
    there = typed("difference Lab=50,5,5 Lab=55,5,5 --json").answer
    back = typed("difference Lab=55,5,5 Lab=50,5,5 --json").answer
    assert there["words"] == "much lighter"
    assert back["words"] == "much darker"
    assert there["ciede2000"] == back["ciede2000"]


def test_a_screens_colour_is_carried_and_says_so(typed: Terminal) -> None:
    answer = typed("difference '#A0522D' Lab=42.7,30.6,33.4 --json").answer
    assert answer["standard"]["evidence"] == "screen"
    assert answer["standard"]["carried_by"].startswith("smoothest reflectance")
    assert answer["ciede2000"] < 0.1
    assert "trust such a difference to a few units" in answer["warnings"][0]


@pytest.mark.parametrize("other", ["sienna", "'rgb(160 82 45)'", "a0522d"])
def test_a_colour_of_css_is_the_same_by_any_name(typed: Terminal, other: str) -> None:
    answer = typed(f"difference '#a0522d' {other} --json").answer
    assert answer["ciede2000"] == pytest.approx(0.0, abs=1e-9)
    assert answer["words"] == "no difference to be seen"


def test_vivid_blues_are_warned_of(typed: Terminal) -> None:
    shown = typed("difference Lab=30,15,-60 Lab=31,14,-58").out
    assert "! In vivid blues the grey scale’s own sum takes a little off" in shown


def test_a_person_reads_lines(typed: Terminal) -> None:
    shown = typed("difference Lab=45,55,-5 Lab=45,55,-5").out.replace("\u00a0", " ")
    assert "standard    Lab 45, 55, −5\n" in shown
    assert "in words    no difference to be seen\n" in shown
    assert "grey scale  grade 5\n" in shown


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("'lab(50 2 3)' teal", "STANDARD: The colour cannot be read. In CSS, lab()"),
        ("teal Lab=50,5,2,7,-7", "SAMPLE: The colour cannot be read. Lab takes three"),
        ("teal puce-ish", "SAMPLE: The colour cannot be read. It is neither Lab nor"),
        ("Lab=120,0,0 teal", "STANDARD: The colour must be L from 0 to 100"),
        ("teal", "SAMPLE is missing"),
        ("teal teal teal", "belongs to no option"),
    ],
)
def test_what_is_no_colour_is_told_in_one_sentence(
    typed: Terminal, line: str, says: str
) -> None:
    assert says in typed(f"difference {line}").refusal


def test_it_starts_without_numpy_and_pictures() -> None:
    script = (
        "import sys; from shadewright.cli import run; "
        "run(['difference', 'Lab=50,2,3', 'teal']); "
        "print([p for p in ('numpy', 'PIL', 'django') if p in sys.modules])"
    )
    shown = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert shown.stdout.splitlines()[-1] == "[]"


def test_it_answers_as_the_core_does(typed: Terminal) -> None:
    answer = typed("difference Lab=61,-5,29 Lab=60,2.5,0 --json").answer
    assert answer["ciede2000"] == ciede2000(Lab(61, -5, 29), Lab(60, 2.5, 0))
