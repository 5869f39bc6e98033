"""``shadewright stock``: sums as typed, and what is refused."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.cli.typed import Terminal

MAKE = "stock make --volume 500ml --strength 1% --json"


@pytest.mark.by_hand
def test_make_answers_with_every_key(typed: Terminal) -> None:
    answer = typed(MAKE).answer
    assert answer["powder_g"] == 5.0
    assert answer["final_volume_ml"] == 500.0
    assert answer["paste_water_ml"] == 15.0
    assert answer["strength_percent"] == 1.0
    assert answer["u_strength_rel"] is None
    assert answer["u_why"]
    assert answer["terms"] == []
    assert len(answer["steps"]) == 8
    assert set(answer["steps"][0]) == {"key", "title", "text", "caution"}
    assert "make_up_to_g" not in answer
    assert "powder_g_scale" not in answer
    assert ["vessel" in warning for warning in answer["warnings"]] == [False, True]


@pytest.mark.by_hand
def test_make_with_all_it_can_be_told(typed: Terminal) -> None:
    # 2 % of 500 ml from a powder of 80 %: 10/0.8 = 12.5 g; on a scale of 1 g: 13 g
    # (a half goes up); 500 ml × 0.99821 + 12.5 = 511.6 g
    answer = typed(
        "stock make --volume 0,5l --strength 2% --powder-strength 80% --balance 1g "
        '--vessel "cylinder 500ml A ASTM" --temperature 68F --by-weight --json'
    ).answer
    assert answer["powder_g"] == 12.5
    assert answer["powder_g_scale"] == 13.0
    assert answer["make_up_to_g"] == pytest.approx(511.6, abs=0.05)
    assert answer["vessel"]["standard"] == "ASTM"
    told = " ".join(answer["warnings"]).replace("\u00a0", " ")
    assert "made up to 520 ml" in told  # 500 × 13/12.5
    assert "kitchen scale" in told
    assert "takes no room" in told or "take no room" in told


def test_make_warns_of_a_hot_fill(typed: Terminal) -> None:
    hot = typed(f"{MAKE} --temperature 80C").answer["warnings"]
    assert "2.7\u00a0% too strong" in hot[0]
    cool = typed(f"{MAKE} --temperature 25C").answer["warnings"]
    assert not any("too strong" in warning for warning in cool)


def test_a_checked_balance_is_not_doubted(typed: Terminal) -> None:
    told = typed(f"{MAKE} --balance 0.1g+-0.2g").answer["warnings"]
    assert not any("kitchen scale" in warning for warning in told)
    assert not any("No balance" in warning for warning in told)


def test_make_speaks_to_a_person(typed: Terminal) -> None:
    shown = typed("stock make --volume 500ml --strength 1%")
    assert shown.status == 0
    assert "powder       5\u00a0g\n" in shown.out
    assert "\n1 Lay out. " in shown.out
    assert "data sheet" in shown.out
    assert max(len(line) for line in shown.out.splitlines()) <= 80


@pytest.mark.by_hand
def test_by_weight_heat_does_not_matter(typed: Terminal) -> None:
    # 500 ml × 0.9718 + 5 = 490.9 g at 80 °C; 500 ml × 0.9982 + 5 = 504.1 g at 20 °C
    answer = typed(f"{MAKE} --by-weight --temperature 80C").answer
    assert answer["make_up_to_g"] == pytest.approx(490.9, abs=0.05)
    assert "make up to 504.1\u00a0g, hot or cold" in answer["warnings"][0]
    making_up = next(step for step in answer["steps"] if step["key"] == "make_up")
    assert "until the scale shows 504.1\u00a0g" in making_up["text"]
    low, high = answer["strength_from_percent"], answer["strength_to_percent"]
    assert (low + high) / 2 == pytest.approx(answer["strength_percent"])


def test_by_weight_the_step_speaks_of_the_scale(typed: Terminal) -> None:
    steps = typed(f"{MAKE} --by-weight").answer["steps"]
    making_up = next(step for step in steps if step["key"] == "make_up")
    assert "until the scale shows 504.1\u00a0g" in making_up["text"]
    by_mark = typed(MAKE).answer["steps"]
    assert "scale" not in next(s for s in by_mark if s["key"] == "make_up")["text"]


@pytest.mark.by_hand
def test_dilute(typed: Terminal) -> None:
    # 250 ml × 0.5/2
    answer = typed("stock dilute --have 2% --want 0.5% --volume 250ml --json").answer
    assert answer["stock_ml"] == 62.5
    assert answer["water_ml"] == 187.5
    assert answer["u_strength_rel"] is None
    assert answer["u_why"]


@pytest.mark.by_hand
def test_merge(typed: Terminal) -> None:
    # (180 × 1 + 320 × 0.5)/500
    answer = typed("stock merge 180ml@1% 320ml@0.5% --json").answer
    assert answer["volume_ml"] == 500.0
    assert answer["strength_percent"] == pytest.approx(0.68)
    assert answer["u_strength_rel"] is None
    assert "180ml@1%+-2%" in answer["u_why"]


@pytest.mark.by_hand
def test_series(typed: Terminal) -> None:
    # the factor is 0.025^0.2 = 0.47818
    answer = typed("stock series --from 2% --to 0.05% --steps 6 --json").answer
    strengths = answer["strengths_percent"]
    assert strengths == pytest.approx(
        [2.0, 0.9564, 0.4573, 0.2187, 0.1046, 0.05], abs=5e-5
    )


@pytest.mark.parametrize(
    "line",
    [
        "stock rescue --powder 10g --strength 1% --volume 1040ml",
        "stock dilute --have 2% --want 0.5% --volume 250ml",
        "stock merge 180ml@1% 320ml@0.5%",
        "stock series --from 2% --to 0.05% --steps 6",
    ],
)
def test_a_person_reads_a_few_aligned_lines(typed: Terminal, line: str) -> None:
    shown = typed(line)
    assert shown.status == 0
    rows = [row for row in shown.out.splitlines() if row[:2] not in {"! ", "  "}]
    assert 2 <= len(rows) <= 6
    texts = [row.index(row.split("  ")[-1].lstrip()) for row in rows]
    assert len(set(texts)) == 1


@pytest.mark.parametrize(
    ("line", "option", "says"),
    [
        ("make --volume -5ml --strength 1%", "--volume", "got −5 ml"),
        ("make --volume 0ml --strength 1%", "--volume", "above 0"),
        ("make --volume 500 --strength 1%", "--volume", "500 ml, 0.5 l"),
        ("make --volume 500g --strength 1%", "--volume", "“500g”"),
        ("make --volume '16 oz' --strength 1%", "--volume", "fl oz"),
        ("make --volume lots --strength 1%", "--volume", "“lots”"),
        ("make --volume '' --strength 1%", "--volume", "missing"),
        ("make --volume nanml --strength 1%", "--volume", "“nanml”"),
        ("make --volume infml --strength 1%", "--volume", "“infml”"),
        ("make --volume 1e999ml --strength 1%", "--volume", "“1e999ml”"),
        ("make --volume 99999999l --strength 1%", "--volume", "above 0 and at most"),
        ("make --volume '5\n\x1b[31mml' --strength 1%", "--volume", "“5 �[31mml”"),
        ("make --volume 1,234.5ml --strength 1%", "--volume", "one decimal sign"),
        ("make --volume 500ml --strength 0%", "--strength", "above 0 and at most 50 %"),
        ("make --volume 500ml --strength 51%", "--strength", "got 51 %"),
        ("make --volume 500ml --strength -1%", "--strength", "got −1 %"),
        (
            "make --volume 500ml --strength -1%",
            "--strength",
            "above 0 and at most 50 %",
        ),
        ("make --volume 500ml --strength 20000%", "--strength", "at most 50 %"),
        ("make --volume 500ml --strength 50.0001%", "--strength", "got 50.0001 %"),
        ("make --volume 500ml --strength 1%+-500%", "--strength", "from 0 % to 100 %"),
        ("make --volume 500ml --strength 1", "--strength", "“1”"),
        (
            "make --volume 500ml --strength 1% --powder-strength -5%",
            "--powder-strength",
            "above 0 and at most 400 %",
        ),
        (
            "make --volume 500ml --strength 50% --powder-strength 0.001%",
            "--volume",
            "Powder for it",
        ),
        ("make --volume 500ml --strength 1% --balance -1g", "--balance", "above 0"),
        ("make --volume 500ml --strength 1% --balance 1g+-", "--balance", "own error"),
        (
            "make --volume 500ml --strength 1% --vessel 'cylinder 500ml C'",
            "--vessel",
            "KIND SIZE",
        ),
        (
            "make --volume 500ml --strength 1% --vessel 'cylinder B'",
            "--vessel",
            "KIND SIZE",
        ),
        (
            "make --volume 500ml --strength 1% --temperature 500C",
            "--temperature",
            "from 0 °C to 100 °C",
        ),
        ("make --volume 500ml --strength 1g", "--strength", "“1g”"),
        (
            "make --volume 500ml --strength 1% --powder-strength 0%",
            "--powder-strength",
            "at most 400 %",
        ),
        (
            "make --volume 500ml --strength 1% --powder-strength 401%",
            "--powder-strength",
            "got 401 %",
        ),
        ("make --volume 500ml --strength 1% --balance 0g", "--balance", "above 0"),
        ("make --volume 500ml --strength 1% --balance 50g", "--balance", "5000 ml"),
        ("make --volume 500ml --strength 1% --balance 0.1", "--balance", "“0.1”"),
        ("make --volume 500ml --strength 1% --vessel bucket", "--vessel", "cylinder"),
        (
            "make --volume 500ml --strength 1% --vessel 'jug 250ml'",
            "--vessel",
            "Take a larger one",
        ),
        ("make --volume 500ml --strength 1% --temperature 20", "--temperature", "°C"),
        (
            "make --volume 500ml --strength 1% --temperature 120C",
            "--temperature",
            "100",
        ),
        ("make --strength 1%", "--volume", "missing"),
        ("make --volume 500ml --strength 1% --colour red", "--colour", "no option"),
        ("rescue --powder 1tsp --strength 1%", "--powder", "weigh it"),
        ("rescue --powder 0g --strength 1%", "--powder", "above 0"),
        (
            "rescue --powder 4.8g --strength 1% --in-vessel 500ml",
            "--in-vessel",
            "past the mark",
        ),
        (
            "rescue --powder 5g --strength 1% --in-vessel 1ml --volume 1ml",
            "--in-vessel",
            "do not go together",
        ),
        ("rescue --powder 90g --strength 1% --volume 100ml", "--powder", "got 90 %"),
        ("dilute --have 1% --want 2% --volume 250ml", "--want", "stronger"),
        ("dilute --have 1% --want 0.5% --volume 0ml", "--volume", "above 0"),
        ("dilute --have 2%+-x --want 0.5% --volume 1l", "--have", "Spread"),
        (
            "dilute --have 2% --want 1% --volume 1l --vessel 'flask 500ml'",
            "--vessel",
            "large enough",
        ),
        ("merge 180ml@1%+-200%", "PORTION", "from 0 % to 100 %"),
        ("merge", "PORTION", "missing"),
        ("merge 180ml", "PORTION", "180ml@1%"),
        ("merge 180ml@1% -5ml@1%", "PORTION", "got −5 ml"),
        ("merge 180ml@60%", "PORTION", "at most 50 %"),
        ("series --from 2% --to 0.05% --steps 1", "--steps", "from 2 to 100"),
        ("series --from 2% --to 0.05% --steps six", "--steps", "whole number"),
        ("series --from 2% --to 0.05% --steps 2.5", "--steps", "whole number"),
        ("series --from 2% --to 0% --steps 6", "--to", "above 0"),
    ],
)
def test_what_cannot_be_is_told_in_one_line(
    typed: Terminal, line: str, option: str, says: str
) -> None:
    refusal = typed(f"stock {line}").refusal
    assert option in refusal
    assert says in refusal


@given(st.text(max_size=30).filter(lambda text: "\0" not in text))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=50)
def test_no_text_brings_a_traceback(typed: Terminal, text: str) -> None:
    quoted = "'" + text.replace("'", "'\"'\"'") + "'"
    shown = typed(f"stock make --volume={quoted} --strength 1%")
    assert shown.status in {0, 2}
    assert "Traceback" not in shown.err
