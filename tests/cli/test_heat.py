"""``shadewright heat``: sums as typed, and what is refused."""

import pytest

from tests.cli.typed import Terminal

POT = "heat --water 4l --fibre 100g --vessel 2kg:stainless --from 20C"
HEAT = f"{POT} --to 95C --power 1.8kW --source induction"


@pytest.mark.by_hand
def test_the_answer_has_every_key(typed: Terminal) -> None:
    """1339 kJ / 3600 = 0.372 kWh; by 0.85 are 0.438; 60 x 0.438 / 1.8 = 14.6 min."""
    answer = typed(f"{HEAT} --json").answer
    assert answer["energy_kwh"] == pytest.approx(0.372, abs=5e-4)
    assert answer["input_kwh"] == pytest.approx(0.4376, abs=5e-4)
    assert answer["minutes"] == pytest.approx(14.6, abs=0.05)
    assert answer["fastest_ramp_c_per_min"] == pytest.approx(75 / 14.588, abs=5e-3)
    assert answer["share"] == 0.85
    assert answer["boils_at_c"] == pytest.approx(99.97, abs=0.01)
    assert any("guess" in told for told in answer["warnings"])


def test_a_person_reads_aligned_lines(typed: Terminal) -> None:
    shown = typed(HEAT).out.replace("\u00a0", " ")
    assert shown.startswith("heat into the pot  0.372 kWh\n")
    assert "fastest rise       5.14 °C a minute\n" in shown
    assert "! Hot bath and steam" in shown


def test_other_units_and_signs_say_the_same(typed: Terminal) -> None:
    same = (
        "heat --water 4000ml --fibre 0,1kg --vessel 2000g:stainless --from 68F "
        "--to 203F --power 1800W --source Induction --altitude 0ft --json"
    )
    minutes = typed(same).answer["minutes"]
    assert minutes == pytest.approx(typed(f"{HEAT} --json").answer["minutes"])


def test_a_heavy_pot_is_not_carried_hot(typed: Terminal) -> None:
    line = (
        "heat --water 10l --fibre 100g --vessel 2kg:enamel --from 20C --to 95C "
        "--power 3kW --source gas --json"
    )
    assert any("do not carry" in told for told in typed(line).answer["warnings"])


@pytest.mark.parametrize(
    ("words", "option"),
    [
        ("--to 20C", "--to"),
        ("--to 10C", "--to"),
        ("--to 101C", "--to"),
        ("--to 95", "--to"),
        ("--to 95C --altitude 1600m", "--to"),
        ("--to 95C --altitude 9km", "--altitude"),
        ("--to 95C --altitude 1600", "--altitude"),
        ("--to 95C --altitude high", "--altitude"),
    ],
)
def test_an_aim_or_a_height_that_cannot_be(
    typed: Terminal, words: str, option: str
) -> None:
    line = f"{POT} --power 1.8kW --source induction {words}"
    assert typed(line).refusal.startswith(f"{option}: ")


@pytest.mark.parametrize(
    ("old", "new", "option"),
    [
        ("1.8kW", "0kW", "--power"),
        ("1.8kW", "-1kW", "--power"),
        ("1.8kW", "1.8", "--power"),
        ("1.8kW", "0.0001W", "--power"),
        ("induction", "fire", "--source"),
        ("2kg:stainless", "2kg:copper", "--vessel"),
        ("2kg:stainless", "2kg", "--vessel"),
        ("2kg:stainless", "0kg:stainless", "--vessel"),
        ("2kg:stainless", "heavy:stainless", "--vessel"),
        ("4l", "0l", "--water"),
        ("4l", "-4l", "--water"),
        ("100g", "0g", "--fibre"),
        ("20C", "-1C", "--from"),
    ],
)
def test_what_cannot_be_is_told_in_one_line(
    typed: Terminal, old: str, new: str, option: str
) -> None:
    assert typed(HEAT.replace(old, new, 1)).refusal.startswith(f"{option}: ")


def test_what_is_missing_is_named(typed: Terminal) -> None:
    for option in ("--water", "--fibre", "--vessel", "--from", "--to", "--power"):
        words = HEAT.split()
        at = words.index(option)
        line = " ".join(words[:at] + words[at + 2 :])
        assert typed(line).refusal.startswith(f"{option} is missing")
