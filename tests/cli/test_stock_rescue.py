"""``shadewright stock rescue``: weighed wrongly, filled wrongly, or not at all."""

import pytest

from tests.cli.typed import Terminal


@pytest.mark.by_hand
def test_rescue_of_a_wrong_weight(typed: Terminal) -> None:
    # 5.37 g make 537 ml at 1 %, 57 ml more than 480 ml
    answer = typed(
        "stock rescue --powder 5.37g --strength 1% --in-vessel 480ml --json"
    ).answer
    assert answer == {
        "make_up_to_ml": pytest.approx(537.0),
        "add_water_ml": pytest.approx(57.0),
    }
    bare = typed("stock rescue --powder 5.37g --strength 1% --json").answer
    assert set(bare) == {"make_up_to_ml"}
    half = typed(
        "stock rescue --powder 5.37g --strength 1% --powder-strength 50% --json"
    ).answer
    assert half["make_up_to_ml"] == pytest.approx(268.5)


@pytest.mark.by_hand
def test_rescue_of_a_wrong_volume(typed: Terminal) -> None:
    # 10 g in 1040 ml are 0.961538 %; 1040 ml want 10.4 g
    weak = typed(
        "stock rescue --powder 10g --strength 1% --volume 1040ml --json"
    ).answer
    assert "N95/FFP2" in weak.pop("warnings")[0]
    assert weak == {
        "true_strength_percent": pytest.approx(0.9615384615),
        "add_powder_g": pytest.approx(0.4),
    }
    # 10 g in 960 ml are 1.041667 %; 10 g make 1000 ml
    strong = typed(
        "stock rescue --powder 10g --strength 1% --volume 960ml --json"
    ).answer
    assert strong == {
        "true_strength_percent": pytest.approx(1.0416666667),
        "make_up_to_ml": pytest.approx(1000.0),
        "add_water_ml": pytest.approx(40.0),
        "warnings": [],
    }


def test_a_stock_that_is_right_wants_nothing(typed: Terminal) -> None:
    line = "stock rescue --powder 10g --strength 1% --volume 1000ml"
    assert typed(f"{line} --json").answer == {
        "true_strength_percent": 1.0,
        "warnings": [],
    }
    assert "nothing: it is as wanted" in typed(line).out
