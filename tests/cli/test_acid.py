"""``shadewright acid``: sums as typed, and what is refused."""

import pytest

from tests.cli.typed import Terminal

NOTE = "Water only, no fibre: the bath reads higher."


def test_the_answer_has_every_key(typed: Terminal) -> None:
    answer = typed("acid --acid citric:2g --water 3l --json").answer
    assert answer["ph"] == pytest.approx(2.89, abs=0.05)  # 3.5 mmol/l, by hand
    assert answer["u_ph"] == pytest.approx(0.2)
    assert answer["note"] == NOTE
    assert answer["acids"] == [{"acid": "citric", "pure_g": 2.0, "volume_ml": None}]
    assert "safety data sheet" in answer["warnings"][0]


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("words", "expected"),
    [
        # without activities: 3.36, 3.82; ammonium sulphate 5.53 and 0.14 for them
        ("--acid acetic:2g --water 3l", 3.36),
        ("--acid vinegar5:40ml --water 3l", 3.36),
        ("--acid acetic@10%:20ml --water 3l", 3.36),
        ("--acid citric:1g --acid citric:1g --water 3l", 2.89),
        ("--acid acetic:2g --water 3l --alkalinity 50", 3.82),
        ("--acid vinegar5:1l --water 1l", 2.42),
        ("--acid ammonium-sulphate:3g --water 3l", 5.6),
        ("--acid citric:0,5g/l --acid citric-mono:0.5g/l --water 2l", 2.75),
    ],
)
def test_what_a_hand_would_find(typed: Terminal, words: str, expected: float) -> None:
    assert typed(f"acid {words} --json").answer["ph"] == pytest.approx(
        expected, abs=0.08
    )


def test_a_hot_ammonium_salt_is_sourer(typed: Terminal) -> None:
    bath = "acid --acid ammonium-sulphate:3g --water 3l --json"
    cold, hot = typed(bath).answer, typed(f"{bath} --temperature 98C").answer
    assert hot["ph"] < cold["ph"] - 0.5
    assert "ammonia leaves" in hot["note"]


def test_a_guess_has_no_spread_and_says_why(typed: Terminal) -> None:
    line = "acid --acid citric:0.2g --water 3l --alkalinity 250"
    answer = typed(f"{line} --json").answer
    assert answer["u_ph"] is None
    assert "alkalinity" in answer["u_why"]
    shown = typed(line).out
    assert shown.startswith("pH    above 6\n")  # water of bicarbonate, not lye
    assert "±" not in shown
    strong = typed("acid --acid sulphuric:150g --water 1l").out
    assert strong.startswith("pH    about 0\n")


def test_a_person_reads_the_spread_and_the_note(typed: Terminal) -> None:
    line = "acid --acid vinegar5:40ml --acid sulphuric:0.1g --water 3l"
    shown = typed(line).out.replace("\u00a0", " ").splitlines()
    assert shown[:4] == [
        "pH    3.1 ± 0.2",
        "acid  40 ml of vinegar of 5 %, 2 g of pure acid",
        "acid  0.1 g of pure sulphuric acid",
        f"! {NOTE}",
    ]
    assert any("licensed" in row for row in shown)


@pytest.mark.parametrize(
    ("words", "option"),
    [
        ("--water 3l", "--acid"),
        ("--acid citric:2g", "--water"),
        ("--acid citric:2% --water 3l", "--acid"),
        ("--acid citric:2ml --water 3l", "--acid"),
        ("--acid citric:2 --water 3l", "--acid"),
        ("--acid citric:0g --water 3l", "--acid"),
        ("--acid citric:-2g --water 3l", "--acid"),
        ("--acid citric:1kg --water 3l", "--acid"),
        ("--acid vinegar5:2g --water 3l", "--acid"),
        ("--acid vinegar5:4l --water 3l", "--acid"),
        ("--acid acetic:20ml --water 3l", "--acid"),
        ("--acid lemon:2g --water 3l", "--acid"),
        ("--acid citric --water 3l", "--acid"),
        ("--acid citric:2g --water 3", "--water"),
        ("--acid citric:2g --water 0l", "--water"),
        ("--acid citric:2g --water 3l --alkalinity -1", "--alkalinity"),
        ("--acid citric:2g --water 3l --alkalinity 3000", "--alkalinity"),
        ("--acid citric:2g --water 3l --alkalinity 5dH", "--alkalinity"),
        ("--acid citric:2g --water 3l --alkalinity much", "--alkalinity"),
        ("--acid citric:2g --water 3l --temperature 101C", "--temperature"),
        ("--acid citric:2g --water 3l --temperature 25", "--temperature"),
    ],
)
def test_what_cannot_be_is_told_in_one_line(
    typed: Terminal, words: str, option: str
) -> None:
    assert option in typed(f"acid {words}").refusal


@pytest.mark.parametrize(
    "words",
    [
        "--acid sulphuric:600g --water 3l",
        "--acid citric:0.000001g --water 1000l --alkalinity 2000",
        "--acid ammonium-acetate:200g --water 1l --temperature 0C",
    ],
)
def test_the_ends_of_every_range_answer(typed: Terminal, words: str) -> None:
    assert typed(f"acid {words} --json").answer["note"].startswith(NOTE)
