"""The steps, their order and their cautions."""

from shadewright.core.solutions import making_steps, stock_plan

STEPS = making_steps(stock_plan(volume_ml=500.0, strength_percent=1.0))
BY_KEY = {step.key: step for step in STEPS}


def test_the_steps_come_in_their_order() -> None:
    keys = [step.key for step in STEPS]
    assert keys == [
        "lay_out",
        "weigh",
        "paste",
        "dissolve",
        "look",
        "cool",
        "make_up",
        "label",
    ]


def test_every_step_has_a_title_a_text_and_a_caution() -> None:
    for step in STEPS:
        assert step.title
        assert step.text.endswith(".")
        assert step.caution.endswith(".")


def test_the_powder_is_met_with_care() -> None:
    before = BY_KEY["lay_out"]
    assert "amp paper under the scale" in before.text
    for word in ("N95/FFP2", "goggles", "gloves"):
        assert word in before.caution
    weigh = BY_KEY["weigh"].caution
    assert "N95/FFP2" in weigh
    assert "until all of it is wet" in weigh


def test_the_amounts_stand_in_the_text() -> None:
    plain = {key: step.text.replace("\u00a0", " ") for key, step in BY_KEY.items()}
    assert "5 g" in plain["weigh"]
    assert "15 ml" in plain["paste"]
    assert "until no dry powder is left" in plain["paste"]
    assert "rinse the weighing cup over" in plain["paste"]
    assert "about 320 ml" in plain["dissolve"]
    assert "two thirds: about 330 ml" in plain["dissolve"]
    assert "80 °C and more" in plain["dissolve"]
    assert "500 ml in all" in plain["make_up"]
    assert "funnel" in plain["make_up"]
    assert "1 %" in plain["label"]


def test_the_sheet_and_the_rules_come_first() -> None:
    ends = "Follow the dye's safety data sheet and your local rules."
    assert STEPS[0].caution.endswith(ends)
    assert STEPS[-1].caution.endswith(ends)


def test_a_paste_that_fills_two_thirds_gets_no_hot_water() -> None:
    strong = making_steps(stock_plan(volume_ml=10.0, strength_percent=50.0))
    dissolve = next(step for step in strong if step.key == "dissolve")
    assert "The paste is two thirds already" in dissolve.text
    assert "0\u00a0ml" not in dissolve.text


def test_on_a_scale_it_is_made_up_by_weight() -> None:
    steps = making_steps(
        stock_plan(volume_ml=500.0, strength_percent=1.0), filled_g=504.1
    )
    assert [step.key for step in steps] == [step.key for step in STEPS]
    assert "504.1\u00a0g" in steps[-2].text
    assert "tare" in steps[-2].text
