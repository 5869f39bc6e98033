"""What is left in a bottle, from its ledger."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions.alligation import Portion, mixture
from shadewright.core.solutions.ledger import (
    BottleAct,
    BottleState,
    LedgerLine,
    bottle_state,
    running_states,
    standing,
)
from shadewright.errors import ConflictError, OutOfRangeError

VOLUMES = st.floats(min_value=1.0, max_value=5_000.0)
STRENGTHS = st.floats(min_value=0.05, max_value=10.0)
SHARES = st.floats(min_value=0.01, max_value=0.99)


def ledger(*lines: tuple[BottleAct, dict[str, float]]) -> list[LedgerLine]:
    """Number the lines from one; the first is a bottle of 500 ml at 1 %."""
    first = (BottleAct.FILLED, {"volume_ml": 500.0, "strength_percent": 1.0})
    return [
        replace(LedgerLine(number=number, act=act), **numbers)  # type: ignore[arg-type]
        for number, (act, numbers) in enumerate([first, *lines], start=1)
    ]


def after(*lines: tuple[BottleAct, dict[str, float]]) -> BottleState:
    return bottle_state(ledger(*lines))


def numbers(state: BottleState) -> tuple[float, float, float]:
    return (state.volume_ml, state.dye_g, state.strength_percent)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("act", "line", "volume_ml", "dye_g", "strength_percent"),
    [
        # 500 ml at 1 % hold 5 g. 35 ml take 0.35 g along; the rest is as strong.
        (BottleAct.DRAWN, {"volume_ml": 35}, 465, 4.65, 1.0),
        (BottleAct.GIVEN, {"volume_ml": 35, "dye_g": 0.35}, 465, 4.65, 1.0),
        # 5 g in 400 ml: 100 × 5 / 400 = 1.25 %
        (BottleAct.EVAPORATED, {"volume_ml": 400}, 400, 5.0, 1.25),
        # the ledger was wrong about the volume alone: 400 ml at 1 % hold 4 g
        (BottleAct.COUNTED, {"volume_ml": 400}, 400, 4.0, 1.0),
        (BottleAct.COUNTED, {"volume_ml": 0}, 0, 0.0, 1.0),
        # 5 g in 625 ml: 100 × 5 / 625 = 0.8 %
        (BottleAct.WATER_ADDED, {"volume_ml": 125}, 625, 5.0, 0.8),
        # 5 + 2.5 = 7.5 g in 500 ml = 1.5 %
        (BottleAct.POWDER_ADDED, {"dye_g": 2.5}, 500, 7.5, 1.5),
        # 250 ml at 4 % bring 10 g: 15 g in 750 ml = 2 %
        (
            BottleAct.STOCK_ADDED,
            {"volume_ml": 250, "strength_percent": 4},
            750,
            15.0,
            2.0,
        ),
        # 500 ml at 1.1 % hold 5.5 g
        (BottleAct.TESTED, {"strength_percent": 1.1}, 500, 5.5, 1.1),
        (BottleAct.POURED, {}, 0, 0.0, 1.0),
        (BottleAct.STIRRED, {}, 500, 5.0, 1.0),
        (BottleAct.REWARMED, {}, 500, 5.0, 1.0),
        (BottleAct.WEIGHED, {}, 500, 5.0, 1.0),
        (BottleAct.CLEAR, {}, 500, 5.0, 1.0),
        (BottleAct.SETTLED, {}, 500, 5.0, 1.0),
    ],
    ids=lambda value: value.value if isinstance(value, BottleAct) else "",
)
def test_what_each_line_does(
    act: BottleAct,
    line: dict[str, float],
    volume_ml: float,
    dye_g: float,
    strength_percent: float,
) -> None:
    found = numbers(after((act, line)))
    assert found == pytest.approx((volume_ml, dye_g, strength_percent))


def test_every_line_but_the_undo_is_tried_above() -> None:
    rows = test_what_each_line_does.pytestmark[0].args[1]  # type: ignore[attr-defined]
    assert {row[0] for row in rows} == set(BottleAct) - {
        BottleAct.FILLED,
        BottleAct.UNDO,
    }


def test_an_empty_ledger_is_no_bottle() -> None:
    assert bottle_state([]) == BottleState()


@pytest.mark.parametrize(
    ("act", "line", "words", "argument"),
    [
        (BottleAct.DRAWN, {"volume_ml": 501}, "at most the 500 ml", "volume_ml"),
        (BottleAct.GIVEN, {"volume_ml": 501}, "at most the 500 ml", "volume_ml"),
        (BottleAct.EVAPORATED, {"volume_ml": 501}, "at most the 500", "volume_ml"),
        (BottleAct.EVAPORATED, {"volume_ml": 0}, "above 0", "volume_ml"),
        # 5 g in 9 ml would be 55.6 %
        (BottleAct.EVAPORATED, {"volume_ml": 9}, "got 55.6 %", "volume_ml"),
        # 5 + 246 g in 500 ml would be 50.2 %
        (BottleAct.POWDER_ADDED, {"dye_g": 246}, "got 50.2 %", "powder_g"),
        (BottleAct.TESTED, {"strength_percent": 51}, "got 51 %", "strength_percent"),
    ],
)
def test_what_no_bottle_can_do_is_refused(
    act: BottleAct, line: dict[str, float], words: str, argument: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        after((act, line))
    assert words in refused.value.sentence.replace("\u00a0", " ")
    assert refused.value.argument == argument


def test_the_last_drop_can_be_drawn_though_sums_round() -> None:
    thirds = [(BottleAct.DRAWN, {"volume_ml": 500 / 3})] * 3
    assert after(*thirds).volume_ml == pytest.approx(0.0, abs=1e-9)
    assert after(*thirds).volume_ml >= 0.0


@pytest.mark.parametrize("act", [BottleAct.WATER_ADDED, BottleAct.POWDER_ADDED])
def test_nothing_joins_a_stock_that_is_not_there(act: BottleAct) -> None:
    drawn = (BottleAct.DRAWN, {"volume_ml": 500.0})
    with pytest.raises(ConflictError, match="The bottle is empty"):
        after(drawn, (act, {"volume_ml": 10.0, "dye_g": 1.0}))


@pytest.mark.parametrize("act", [BottleAct.DRAWN, BottleAct.CLEAR, BottleAct.POURED])
def test_nothing_happens_to_a_bottle_that_is_poured_away_or_never_filled(
    act: BottleAct,
) -> None:
    with pytest.raises(ConflictError, match="poured away"):
        after((BottleAct.POURED, {}), (act, {}))
    with pytest.raises(ConflictError, match="never filled"):
        bottle_state([LedgerLine(number=1, act=act)])


def test_two_bottles_agree_about_what_went_over() -> None:
    given_at_1_percent = (BottleAct.GIVEN, {"volume_ml": 100.0, "dye_g": 1.0})
    assert after(given_at_1_percent).dye_g == pytest.approx(4.0)
    stronger = (BottleAct.TESTED, {"strength_percent": 1.2})
    with pytest.raises(ConflictError, match="Another bottle was filled"):
        after(stronger, given_at_1_percent)


def test_an_undo_takes_its_line_out_and_leaves_the_rest() -> None:
    lines = ledger(
        (BottleAct.DRAWN, {"volume_ml": 35}),
        (BottleAct.DRAWN, {"volume_ml": 60}),
    )
    undo = LedgerLine(number=4, act=BottleAct.UNDO, undoes=2)
    assert [line.number for line in standing([*lines, undo])] == [1, 3]
    assert bottle_state([*lines, undo]).volume_ml == 440.0


@pytest.mark.parametrize(
    ("lines", "is_settled"),
    [
        ([], None),
        ([BottleAct.SETTLED], True),
        ([BottleAct.SETTLED, BottleAct.STIRRED, BottleAct.REWARMED], True),
        ([BottleAct.SETTLED, BottleAct.CLEAR], False),
    ],
)
def test_only_a_look_says_whether_it_is_clear(
    lines: list[BottleAct], *, is_settled: bool | None
) -> None:
    assert after(*((act, {}) for act in lines)).is_settled is is_settled


def test_a_guess_stays_one_until_it_is_tested() -> None:
    guess = LedgerLine(
        number=1,
        act=BottleAct.FILLED,
        volume_ml=100,
        strength_percent=1,
        is_guess=True,
    )
    tested = LedgerLine(number=2, act=BottleAct.TESTED, strength_percent=0.9)
    assert bottle_state([guess]).is_guess
    assert not bottle_state([guess, tested]).is_guess
    assert bottle_state([guess, tested]).is_tested


def test_a_guess_poured_in_makes_a_guess_and_a_test_no_longer_holds() -> None:
    tested = (BottleAct.TESTED, {"strength_percent": 1.0})
    joined = (BottleAct.STOCK_ADDED, {"volume_ml": 10.0, "strength_percent": 2.0})
    lines = ledger(tested, joined)
    state = bottle_state([*lines[:2], replace(lines[2], is_guess=True)])
    assert (state.is_guess, state.is_tested, state.is_mixed) == (True, False, True)
    assert not after(joined, tested).is_mixed


def test_a_guess_that_is_used_up_makes_no_guess_of_what_follows() -> None:
    lines = ledger(
        (BottleAct.DRAWN, {"volume_ml": 500}),
        (BottleAct.STOCK_ADDED, {"volume_ml": 10, "strength_percent": 2}),
    )
    assert not bottle_state([replace(lines[0], is_guess=True), *lines[1:]]).is_guess


def test_there_is_one_state_more_than_lines() -> None:
    lines = ledger((BottleAct.DRAWN, {"volume_ml": 35}))
    volumes = [state.volume_ml for state in running_states(lines)]
    assert volumes == [0.0, 500.0, 465.0]


@given(volume=VOLUMES, strength=STRENGTHS, share=SHARES)
def test_law_drawing_never_changes_the_strength(
    volume: float, strength: float, share: float
) -> None:
    made = LedgerLine(
        number=1,
        act=BottleAct.FILLED,
        volume_ml=volume,
        strength_percent=strength,
    )
    drawn = LedgerLine(number=2, act=BottleAct.DRAWN, volume_ml=share * volume)
    state = bottle_state([made, drawn])
    assert state.strength_percent == pytest.approx(strength)
    assert state.dye_g == pytest.approx((1 - share) * volume * strength / 100)


@given(volume=VOLUMES, strength=STRENGTHS, share=SHARES)
def test_law_what_evaporates_and_is_given_back_changes_nothing(
    volume: float, strength: float, share: float
) -> None:
    made = LedgerLine(
        number=1,
        act=BottleAct.FILLED,
        volume_ml=volume,
        strength_percent=min(strength, 49 * share),
    )
    dried = LedgerLine(number=2, act=BottleAct.EVAPORATED, volume_ml=share * volume)
    water = LedgerLine(
        number=3, act=BottleAct.WATER_ADDED, volume_ml=volume - share * volume
    )
    found = numbers(bottle_state([made, dried, water]))
    assert found == pytest.approx(numbers(bottle_state([made])))


@given(
    portions=st.lists(st.tuples(VOLUMES, STRENGTHS), min_size=1, max_size=6),
)
def test_law_stock_added_again_and_again_is_alligation(
    portions: list[tuple[float, float]],
) -> None:
    acts = [BottleAct.FILLED, *[BottleAct.STOCK_ADDED] * (len(portions) - 1)]
    lines = [
        LedgerLine(number=number, act=act, volume_ml=volume, strength_percent=strength)
        for number, (act, (volume, strength)) in enumerate(
            zip(acts, portions, strict=True)
        )
    ]
    together = mixture([
        Portion(volume_ml=volume, strength_percent=c) for volume, c in portions
    ])
    state = bottle_state(lines)
    assert state.volume_ml == pytest.approx(together.volume_ml)
    assert state.strength_percent == pytest.approx(together.strength_percent)


@given(shares=st.lists(SHARES, max_size=6), data=st.data())
def test_law_an_undone_line_is_as_if_it_never_was(
    shares: list[float], data: st.DataObject
) -> None:
    draws = [(BottleAct.DRAWN, {"volume_ml": 80 * share}) for share in shares]
    lines = ledger(*draws)
    if not draws:
        return
    gone = data.draw(st.integers(min_value=2, max_value=len(lines)))
    undo = LedgerLine(number=len(lines) + 1, act=BottleAct.UNDO, undoes=gone)
    without = [line for line in lines if line.number != gone]
    assert bottle_state([*lines, undo]) == bottle_state(without)
