"""A bottle's spread, carried through its ledger."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.solutions import (
    BottleAct,
    BottleState,
    LedgerLine,
    bottle_state,
)
from shadewright.core.solutions.carrying import (
    BEFORE_SPREADS,
    NO_TEST_SPREAD,
    as_known,
)
from shadewright.core.uncertainty import Term, Value

SCALE = Term(name="reading the scale, powder", source="T7K: scale", u=0.004)
MARK = Term(name="mark of the cylinder", source="T7K: mark", u=-0.006)
LEVEL = Term(name="mark of the cylinder", source="T7K: mark", u=3.0)
POUR = Term(name="each pour", source="line 2: pour", u=2.0)


def line(number: int, act: BottleAct, **parts: object) -> LedgerLine:
    return replace(LedgerLine(number=number, act=act), **parts)  # type: ignore[arg-type]


def made(**parts: object) -> LedgerLine:
    """500 ml at 1 %: √(0.004² + 0.006²) = 0.721 % of it, 3 ml of the mark."""
    whole = line(
        1,
        BottleAct.FILLED,
        volume_ml=500.0,
        strength_percent=1.0,
        strength_terms=(SCALE, MARK),
        amount_terms=(LEVEL,),
    )
    return replace(whole, **parts)  # type: ignore[arg-type]


def after(*lines: LedgerLine) -> BottleState:
    return bottle_state([made(), *lines])


def terms(state: BottleState) -> dict[str, float]:
    return {term.source: round(term.u, 12) for term in state.terms}


def test_a_bottle_is_as_sure_as_it_was_filled() -> None:
    assert after().strength.u == pytest.approx(0.00721, abs=5e-6)
    assert after().volume.u == 3.0
    assert after().lacks == ()


@given(st.lists(st.floats(0.1, 40.0), max_size=10))
def test_drawing_never_changes_how_sure_a_strength_is(drawn: list[float]) -> None:
    draws = [
        line(number, BottleAct.DRAWN, volume_ml=ml, amount_terms=(POUR,))
        for number, ml in enumerate(drawn, start=2)
    ]
    assert after(*draws).terms == after().terms


@pytest.mark.by_hand
def test_water_brings_what_it_was_measured_with() -> None:
    """125 ml ± 2 into 500 ± 3: c = 0.8 %, dc/dV = 0.2/625, dc/dv = −0.8/625.

    The scale's 0.004 shrinks to 0.0032. The mark is one error: −0.006 · 0.8 of the
    strength and +3 · 0.2/625 of the volume are −0.0048 + 0.00096 = −0.00384: dye
    that went in was weighed, so what the first mark was off matters less.
    """
    thin = after(line(2, BottleAct.WATER_ADDED, volume_ml=125.0, amount_terms=(POUR,)))
    assert thin.strength_percent == pytest.approx(0.8)
    assert terms(thin) == {
        "T7K: scale": 0.0032,
        "T7K: mark": -0.00384,
        "line 2: pour": -2.0 * 0.8 / 625.0,
    }


def test_water_without_a_tool_is_named_as_missing() -> None:
    thin = after(line(2, BottleAct.WATER_ADDED, volume_ml=125.0))
    assert thin.lacks == ("what the water was measured with",)
    assert set(terms(thin)) == {"T7K: scale", "T7K: mark"}


@pytest.mark.by_hand
def test_a_level_read_anew_forgets_the_first_mark() -> None:
    """5 g ± 0.4 % dried to 400 ± 2 ml: 1.25 %; the mark cancels, 0.006 = 3/500."""
    dry = after(line(2, BottleAct.EVAPORATED, volume_ml=400.0, amount_terms=(POUR,)))
    assert terms(dry) == {"T7K: scale": 0.005, "line 2: pour": -2.0 * 1.25 / 400.0}
    assert dry.volume.u == 2.0


def test_a_count_changes_the_volume_alone() -> None:
    counted = after(line(2, BottleAct.COUNTED, volume_ml=400.0, amount_terms=(POUR,)))
    assert counted.terms == after().terms
    assert counted.volume_terms == (POUR,)


@pytest.mark.by_hand
def test_powder_brings_the_scale() -> None:
    """2.5 g ± 0.01 g in 500 ml: 0.01 · 100/500 = 0.002 of 1.5 %; V: −3 · 0.5/500."""
    scale = Term(name="scale", source="line 2: scale", u=0.01)
    strong = after(line(2, BottleAct.POWDER_ADDED, dye_g=2.5, amount_terms=(scale,)))
    assert terms(strong) == {
        "T7K: scale": 0.004,
        "T7K: mark": -0.009,
        "line 2: scale": 0.002,
    }


@pytest.mark.by_hand
def test_stock_comes_in_by_its_share_and_under_its_own_name() -> None:
    """500 ml at 1 % and 500 ml at 1 %: half of each bottle's errors."""
    other = Term(name="scale", source="K7R: scale", u=0.02)
    both = after(
        line(
            2,
            BottleAct.STOCK_ADDED,
            volume_ml=500.0,
            strength_percent=1.0,
            strength_terms=(other,),
            amount_terms=(POUR,),
        )
    )
    assert terms(both) == {"T7K: scale": 0.002, "T7K: mark": -0.003, "K7R: scale": 0.01}
    assert both.volume.u == pytest.approx((3.0**2 + 2.0**2) ** 0.5)


def test_a_bottle_poured_back_into_its_own_other_half_is_as_sure_as_before() -> None:
    half = line(2, BottleAct.GIVEN, volume_ml=250.0, dye_g=2.5)
    back = line(
        3,
        BottleAct.STOCK_ADDED,
        volume_ml=250.0,
        strength_percent=1.0,
        strength_terms=(SCALE, MARK),
        amount_terms=(POUR,),
    )
    assert terms(after(half, back)) == terms(after())


def test_a_test_puts_an_end_to_what_was_before() -> None:
    found = Term(name="strength test", source="line 2: test", u=0.05)
    water = line(2, BottleAct.WATER_ADDED, volume_ml=125.0)
    tested = line(3, BottleAct.TESTED, strength_percent=0.9, strength_terms=(found,))
    assert after(water, tested).terms == (found,)
    assert after(water, tested).lacks == ()
    bare = line(3, BottleAct.TESTED, strength_percent=0.9)
    assert after(water, bare).lacks == (NO_TEST_SPREAD,)


def test_what_is_undone_leaves_the_spread_as_it_was() -> None:
    water = line(2, BottleAct.WATER_ADDED, volume_ml=125.0, amount_terms=(POUR,))
    assert after(water, line(3, BottleAct.UNDO, undoes=2)) == after()


def test_an_old_bottle_has_no_invented_figure_and_an_old_guess_a_tenth() -> None:
    old = bottle_state([made(strength_terms=(), amount_terms=())])
    assert (old.terms, old.lacks) == ((), (BEFORE_SPREADS,))
    guess = bottle_state([made(strength_terms=(), is_guess=True)])
    assert (guess.strength.u_rel, guess.lacks) == (0.1, ())


def test_a_guess_poured_in_brings_its_share_of_a_tenth() -> None:
    """500 ml at 1 % ± 0.1 % and as much that is known: half of it, 0.05 %."""
    guess = line(
        2, BottleAct.STOCK_ADDED, volume_ml=500.0, strength_percent=1.0, is_guess=True
    )
    assert terms(after(guess))["label of line 2"] == 0.05
    unknown = line(2, BottleAct.STOCK_ADDED, volume_ml=500.0, strength_percent=1.0)
    assert BEFORE_SPREADS in after(unknown).lacks


def test_an_empty_bottle_forgets_what_it_held() -> None:
    """500 ml are drawn: what comes in then is as sure as it was elsewhere."""
    other = Term(name="scale", source="K7R: scale", u=0.02)
    empty = line(2, BottleAct.DRAWN, volume_ml=500.0)
    filled = line(
        3,
        BottleAct.STOCK_ADDED,
        volume_ml=100.0,
        strength_percent=2.0,
        strength_terms=(other,),
        amount_terms=(POUR,),
    )
    assert after(empty, filled).terms == (other,)


def test_a_spread_of_the_rest_alone_is_no_spread() -> None:
    """A level that was read well does not make an unknown making sure."""
    term = Term(name="level", source="level", u=0.001)
    strength = Value(value=1.0, terms=(term,))
    assert as_known(strength, lacks=["what the water was measured with"]) is strength
    for lacks in (BEFORE_SPREADS, NO_TEST_SPREAD):
        assert as_known(strength, lacks=[lacks]).terms == ()
