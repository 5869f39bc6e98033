"""The round of a bath: every step once, in order, each caution where it matters."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    DoseWanted,
    HelperWanted,
    Leg,
    Moment,
    Programme,
    RoundStep,
    RoundWanted,
    StepKind,
    bath_round,
    dose_slack_ml,
    touch_minutes,
)

GORSE = DoseWanted(dye="Gorse", code="G4R", amount=60.0, unit="ml", scale_g=60.5)
SLOW = Programme(start_c=40.0, rise_c_per_min=1.0, top_c=90.0, hold_min=30.0)


def helper(
    moment: Moment,
    *,
    amount: float = 8.0,
    is_acid: bool = True,
    at_c: float | None = None,
) -> HelperWanted:
    return HelperWanted(
        name="Citric acid",
        amount=amount,
        unit="g",
        moment=moment,
        is_acid=is_acid,
        at_c=at_c,
    )


def round_of(
    *helpers: HelperWanted,
    doses: tuple[DoseWanted, ...] = (GORSE,),
    programme: Programme = SLOW,
    pot_kg: float = 4.0,
    is_metal_complex: bool = False,
) -> dict[str, RoundStep]:
    wanted = RoundWanted(
        water_ml=2940.0,
        doses=doses,
        helpers=helpers,
        programme=programme,
        ties="four, loose",
        stirring="Turn every five minutes.",
        pot_kg=pot_kg,
        is_metal_complex=is_metal_complex,
    )
    return {step.key: step for step in bath_round(wanted)}


@pytest.mark.parametrize(
    ("moment", "before", "after"),
    [
        (Moment.START, "fill", "dose-1"),
        (Moment.AFTER_DYE, "yarn", "heat"),
        (Moment.AT_TOP, "top", "hold"),
    ],
)
def test_the_acid_goes_in_when_the_recipe_says(
    moment: Moment, before: str, after: str
) -> None:
    keys = list(round_of(helper(moment)))
    place = keys.index("add-1")
    assert (keys[place - 1], keys[place + 1]) == (before, after)


@pytest.mark.by_hand
def test_two_halves_are_half_each_before_the_heat_and_at_the_top() -> None:
    steps = round_of(helper(Moment.TWO_HALVES))
    halves = [steps["add-1a"], steps["add-1b"]]
    assert [half.amount for half in halves] == [4.0, 4.0]  # 8 g / 2
    assert [half.title for half in halves] == [
        "First half: Citric acid",
        "Second half: Citric acid",
    ]
    keys = list(steps)
    assert keys.index("add-1a") < keys.index("heat") < keys.index("top")
    assert keys.index("top") < keys.index("add-1b") < keys.index("hold")


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("at_c", "minutes", "before", "after"),
    [
        (50.0, 10.0, "heat", "look"),  # (50 - 40) / 1, before the look at 15
        (60.0, 20.0, "look", "top"),  # (60 - 40) / 1
        (40.0, 0.0, "heat", "look"),  # with the heat
        (90.0, 50.0, "look", "top"),  # at the very top
    ],
)
def test_acid_on_the_way_up_stands_where_its_minute_is(
    at_c: float, minutes: float, before: str, after: str
) -> None:
    steps = round_of(helper(Moment.ON_THE_WAY, at_c=at_c))
    keys = list(steps)
    place = keys.index("add-1")
    assert (keys[place - 1], keys[place + 1]) == (before, after)
    assert steps["add-1"].heated_min == minutes
    said = steps["add-1"].text.replace("\u00a0", " ")
    assert said == f"On the way up, at {at_c:g} °C."


def test_acid_on_the_way_up_without_a_pace_has_no_clock() -> None:
    acid = helper(Moment.ON_THE_WAY, at_c=60.0)
    steps = round_of(acid, programme=Programme(top_c=90.0))
    keys = list(steps)
    assert keys.index("look") < keys.index("add-1") < keys.index("top")
    assert touch_minutes(steps=tuple(steps.values())) == ()


def test_hands_are_wanted_in_the_rise_when_the_acid_goes_in() -> None:
    acids = (helper(Moment.ON_THE_WAY, at_c=each) for each in (70.0, 50.0))
    steps = round_of(*acids, helper(Moment.AT_TOP))
    assert touch_minutes(steps=tuple(steps.values())) == (10.0, 30.0)


@given(
    doses=st.integers(min_value=0, max_value=8),
    moments=st.lists(st.sampled_from(Moment), max_size=5),
)
def test_every_step_has_a_key_of_its_own_and_nothing_is_lost(
    doses: int, moments: list[Moment]
) -> None:
    steps = round_of(*map(helper, moments), doses=(GORSE,) * doses)
    kinds = [step.kind for step in steps.values()]
    assert kinds.count(StepKind.DOSE) == doses
    added = sum(step.amount or 0.0 for key, step in steps.items() if "add" in key)
    assert added == pytest.approx(8.0 * len(moments))
    assert kinds[0] is StepKind.FILL
    assert kinds[-1] is StepKind.FINISH


@pytest.mark.by_hand
def test_the_clock_of_the_rise_is_degrees_by_pace() -> None:
    steps = round_of()
    assert steps["heat"].timer_min == 50.0  # (90 - 40) / 1
    assert steps["top"].timer_min == 30.0
    assert steps["fill"].amount == pytest.approx(2.94)  # 2940 / 1000


@pytest.mark.parametrize(
    "programme",
    [
        Programme(),
        Programme(top_c=90.0),
        Programme(start_c=40.0, top_c=90.0),
        Programme(start_c=40.0, top_c=90.0, rise_c_per_min=0.0),
    ],
)
def test_what_the_recipe_does_not_say_has_no_clock(programme: Programme) -> None:
    steps = round_of(programme=programme)
    assert programme.rise_min is None
    assert steps["heat"].timer_min is None
    assert steps["top"].timer_min is None


def test_a_bath_that_starts_hot_is_at_the_top_at_once() -> None:
    assert Programme(start_c=95.0, rise_c_per_min=1.0, top_c=90.0).rise_min == 0.0


def test_each_caution_stands_at_its_own_step() -> None:
    steps = round_of(helper(Moment.START), pot_kg=12.0, is_metal_complex=True)
    assert "never the reverse" in steps["add-1"].caution
    assert "steam" in steps["heat"].caution
    for key in ("fill", "off"):
        assert "do not carry them hot and alone" in steps[key].caution
    assert "sewer authority" in steps["finish"].caution
    assert "local rules" in steps["finish"].caution


def test_a_light_pot_and_a_plain_dye_ask_for_less() -> None:
    steps = round_of(helper(Moment.START, is_acid=False))
    assert not steps["fill"].caution
    assert not steps["add-1"].caution
    assert steps["finish"].caution == (
        "Follow the dye’s safety data sheet and your local rules."
    )


def test_dry_dye_asks_for_a_mask_and_says_so_at_the_dose() -> None:
    dry = DoseWanted(dye="Peat", code="", amount=2.0, unit="g")
    assert "respirator" in round_of(doses=(dry,))["dose-1"].caution
    assert not round_of()["dose-1"].caution


@pytest.mark.by_hand
@pytest.mark.parametrize(("volume_ml", "slack_ml"), [(35.0, 0.35), (4.0, 0.1)])
def test_a_hundredth_is_fine_and_a_tenth_of_a_millilitre(
    volume_ml: float, slack_ml: float
) -> None:
    assert dose_slack_ml(volume_ml=volume_ml) == pytest.approx(slack_ml)


def test_the_heat_says_its_rise_and_its_minutes() -> None:
    heat = round_of()["heat"]
    said = heat.text.replace("\u00a0", " ")
    assert said == "Rise by 1 °C a minute. About 50 min to the top."
    assert heat.timer_min == 50.0


@pytest.mark.by_hand
def test_stops_on_the_way_are_told_and_counted() -> None:
    """10 min at 40; 30 min to 70; 15 held; 28/0.8 = 35 min to 98: 90 in all."""
    slow = Programme(
        start_c=40.0,
        rise_c_per_min=0.8,
        top_c=98.0,
        hold_min=45.0,
        stops=(
            Leg(to_c=40.0, rise_c_per_min=1.0, hold_min=10.0),
            Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0),
        ),
    )
    heat = round_of(programme=slow)["heat"]
    assert heat.timer_min == pytest.approx(90.0)
    assert heat.text.replace("\u00a0", " ") == (
        "10 min at 40 °C; to 70 °C by 1 °C/min, hold 15 min; "
        "to 98 °C by 0.8 °C/min. About 90 min to the top."
    )


def test_what_the_source_needs_stands_in_place_of_the_recipes_minutes() -> None:
    wanted = RoundWanted(
        water_ml=2940.0,
        doses=(GORSE,),
        helpers=(),
        programme=SLOW,
        heating="60 to 70 min to 90 °C.",
    )
    (heat,) = (step for step in bath_round(wanted) if step.key == "heat")
    assert heat.text.endswith("a minute. 60 to 70 min to 90 °C.")
