"""Where the program starts: help, version, and what it does not import."""

import os
import subprocess
import sys

import pytest

import shadewright
from shadewright.cli.entry import COMMANDS
from tests.cli.typed import Terminal

HEAVY = ("django", "numpy", "scipy", "typst", "PIL", "segno", "zxingcpp")


def test_help_lists_every_command_without_importing_one(typed: Terminal) -> None:
    shown = typed("--help")
    assert shown.status == 0
    for name, listed in COMMANDS.items():
        assert name in shown.out
        assert listed.says in shown.out


def test_the_version_is_said(typed: Terminal) -> None:
    assert typed("--version").out == f"shadewright {shadewright.__version__}\n"


def test_an_unknown_command_is_one_line(typed: Terminal) -> None:
    assert "dye" in typed("dye --volume 5ml").refusal


@pytest.mark.parametrize(
    "line",
    ["stock make --volume 500ml --strength 1%", "stock merge 1l@1% 2l@2%", "--help"],
)
def test_a_sum_touches_no_heavy_part(line: str) -> None:
    script = (
        "import sys; from shadewright.cli import run; "
        f"assert run({line.split()!r}) == 0; "
        f"print([part for part in {HEAVY!r} if part in sys.modules])"
    )
    shown = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert shown.stdout.splitlines()[-1] == "[]"


def test_it_starts_as_a_module_in_a_terminal_that_knows_no_signs() -> None:
    shown = subprocess.run(
        [sys.executable, "-m", "shadewright", "stock", "make", "--volume", "-5ml"],
        capture_output=True,
        check=False,
        env={"PYTHONIOENCODING": "ascii"},
    )
    assert shown.returncode == 2
    assert shown.stderr.startswith(b"--volume: Volume must be")
    assert b"Traceback" not in shown.stderr


def test_a_reader_who_leaves_early_sees_no_traceback() -> None:
    reading, writing = os.pipe()
    os.close(reading)
    shown = subprocess.run(
        [sys.executable, "-m", "shadewright", "--help"],
        stdout=writing,
        stderr=subprocess.PIPE,
        check=False,
    )
    os.close(writing)
    assert shown.returncode == 1
    assert not shown.stderr


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("stock make --strength 1%", "--volume is missing: Finished stock, as 500ml."),
        ("stock merge", "PORTIONS is missing: Pour part bottles"),
        ("stock make --volume", "--volume needs something behind it."),
        ("stock make --vesel 5l", "There is no option --vesel. Did you mean --vessel"),
        ("stock make --zzz red", "See shadewright stock make --help."),
        ("serve --port x", "--port must be a whole number from"),
        ("stock nonsense", "no command “nonsense”. See shadewright stock --help."),
        (
            "stock make --volume 1l --strength 1% --vessel 'jug 1l' of glass",
            "“of glass” belongs to no option.",
        ),
        (
            "bath --fibre 1kg --dose A=1% --acid citric:2% --acid vinegar5:30ml",
            "--acid stands there twice",
        ),
        ("bath --fibre 1kg --dose A=1% --dye-class mild", "milling or super-milling"),
    ],
)
def test_a_line_that_is_wrong_is_told_in_one_sentence(
    typed: Terminal, line: str, says: str
) -> None:
    assert says in typed(line).refusal


def test_an_option_that_may_stand_twice_still_may(typed: Terminal) -> None:
    shown = typed("bath --fibre 1kg --dose A=1%@1% --dose A=2%@1% --json")
    assert len(shown.answer["doses"]) == 2
