"""``shadewright stock``: how sure a strength is."""

import pytest

from tests.cli.typed import Terminal

LITRE = "stock make --volume 1l --strength 1%"


@pytest.mark.by_hand
def test_ten_grams_in_a_litre_cylinder(typed: Terminal) -> None:
    """0.01/√6 g of 10 g and 10/√3 ml of 1000 ml: 0.0408 % and 0.5774 %, 0.5788 %.

    A rectangle nearly alone: 95 of 100 lie within 0.95 · 1 % of it.
    """
    line = f'{LITRE} --balance 0.01g --vessel "cylinder 1000ml B"'
    answer = typed(f"{line} --json").answer
    assert answer["u_strength_rel"] == pytest.approx(0.005788, abs=5e-7)
    mark, scale = answer["terms"]
    assert mark["name"] == "mark of the 1000\u00a0ml cylinder"
    assert mark["u_rel"] == pytest.approx(0.005774, abs=5e-7)
    assert scale["u_rel"] == pytest.approx(0.000408, abs=5e-7)
    assert answer["strength_from_percent"] == pytest.approx(0.9905, abs=5e-5)
    assert answer["strength_to_percent"] == pytest.approx(1.0095, abs=5e-5)
    assert "u_why" not in answer
    shown = typed(line).out.replace("\u00a0", " ")
    assert "how sure      ± 1 % of it (mostly: mark of the 1000 ml cylinder)\n" in shown


@pytest.mark.by_hand
def test_a_scale_of_known_error_counts_it_besides_its_step(typed: Terminal) -> None:
    """0.1/√6 and 0.2/√3 of 5 g: 0.816 % and 2.309 %, together 2.449 %."""
    answer = typed(
        "stock make --volume 500ml --strength 1% --balance 0.1g+-0.2g --json"
    ).answer
    assert [term["name"] for term in answer["terms"]] == [
        "the scale itself, powder",
        "reading the scale, powder",
    ]
    assert answer["u_strength_rel"] == pytest.approx(0.02449, abs=5e-6)
    assert any("No vessel" in warning for warning in answer["warnings"])


@pytest.mark.by_hand
def test_by_weight_the_mark_goes_and_the_room_of_the_dye_comes(typed: Terminal) -> None:
    """10 g in a litre take up to 10 ml of it: 1 %/√3 = 0.577 %."""
    answer = typed(f"{LITRE} --balance 0.01g --by-weight --json").answer
    assert answer["make_up_to_g"] == pytest.approx(1008.2, abs=0.05)
    room, powder, filled = answer["terms"]
    assert room["name"] == "room that the dye takes up in the stock"
    assert room["u_rel"] == pytest.approx(0.00577, abs=5e-6)
    assert powder["name"] == "reading the scale, powder"
    assert filled["u_rel"] == pytest.approx(0.00408 / 998.2, rel=0.01)


def test_without_scale_and_vessel_nothing_is_made_up(typed: Terminal) -> None:
    answer = typed(f"{LITRE} --json").answer
    assert answer["u_strength_rel"] is None
    assert "--balance" in answer["u_why"]
    assert "how sure" not in typed(LITRE).out


@pytest.mark.by_hand
def test_a_dilution_adds_its_own_tools_to_the_stock(typed: Terminal) -> None:
    """2 % ± 1 %: 1/√3 of 62.5 ml is 0.924 %, 0.3/√3 of 250 ml 0.069 %: 1.363 %."""
    answer = typed(
        "stock dilute --have 2%+-1% --want 0.5% --volume 250ml "
        '--measure "cylinder 100ml B" --vessel "flask 250ml B" --json'
    ).answer
    assert [term["name"] for term in answer["terms"]] == [
        "strength of the stock",
        "mark of the 100\u00a0ml cylinder",
        "mark of the 250\u00a0ml flask",
    ]
    assert answer["u_strength_rel"] == pytest.approx(0.01363, abs=5e-6)


@pytest.mark.by_hand
def test_part_bottles_bring_their_spreads_by_their_dye(typed: Terminal) -> None:
    """1.8 g ± 2 % and 1.6 g ± 1 %: √(0.036² + 0.016²)/3.4 = 1.159 %."""
    answer = typed("stock merge 180ml@1%+-2% 320ml@0.5%+-1% --json").answer
    assert answer["u_strength_rel"] == pytest.approx(0.01159, abs=5e-6)
    twins = typed("stock merge 100ml@1%+-2% 100ml@1%+-2% --json").answer
    assert twins["u_strength_rel"] == pytest.approx(0.02 / 2**0.5)


def test_a_strength_is_never_below_nought(typed: Terminal) -> None:
    line = "stock dilute --have 2%+-100% --want 0.5% --volume 250ml --json"
    assert typed(line).answer["strength_from_percent"] == 0.0
