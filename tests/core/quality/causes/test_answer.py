"""What is answered, in small studios where anybody would see it."""

from dataclasses import replace
from typing import Any

import pytest

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.quality import (
    Drift,
    Factor,
    LotCauses,
    PastLot,
    lot_causes,
    repeat_test,
)
from shadewright.errors import MissingError

RED = Lab(48.0, 22.0, 10.0)
SMALL = (0.1, -0.2, 0.15, 0.0, -0.15, 0.2, -0.1)


def moved(colour: Lab, shift: tuple[float, float, float]) -> Lab:
    """Return a colour with a shift."""
    return Lab(*(x + y for x, y in zip(colour, shift, strict=True)))


def lot(
    place: int,
    *,
    shift: tuple[float, float, float] = (0.0, 0.0, 0.0),
    **more: str | float | None,
) -> PastLot:
    """Return an ordinary lot, but for what is said."""
    noise = [SMALL[(place * step) % len(SMALL)] for step in (1, 2, 3)]
    plain = PastLot(
        number=f"{place}",
        colour=moved(moved(RED, shift), (noise[0], noise[1], noise[2])),
        jar="J1",
        bottle=f"B{place // 3}",
        bottle_age_days=5.0 + 8.0 * (place % 3),
        mill_lot="M1",
        water="rain",
        pot="PQ"[place % 2],
        load_g_per_l=25.0,
        ramp_c_per_min=1.5,
        hold_min=45.0,
        acid_after_min=15.0,
        person="first",
    )
    changes: dict[str, Any] = {**more}
    return replace(plain, **changes)


def ending(*last: PastLot, before: int = 10) -> LotCauses:
    """Return the answer for a history with such last lots."""
    return lot_causes([*(lot(place) for place in range(before)), *last])


def scores(found: LotCauses) -> dict[Factor, float]:
    return {cause.factor: cause.score for cause in found.causes}


def test_a_lot_like_the_others_is_within() -> None:
    found = ending(lot(10, jar="J2", hold_min=30.0))
    assert found.verdict is Drift.WITHIN
    assert (found.causes, found.unknown, repeat_test(found)) == ((), 0.0, "")
    assert found.de is not None
    assert found.de < 2.0 * found.expected_de


def test_the_only_thing_that_changed_is_named() -> None:
    found = ending(lot(10, shift=(-2.0, 1.0, 1.5), jar="J2"))
    assert found.verdict is Drift.DRIFTED
    first = found.causes[0]
    assert (first.factor, first.was, first.now) == (Factor.JAR, "J1", "J2")
    assert first.expected is None
    assert first.score > 0.7
    assert sum(scores(found).values()) + found.unknown == pytest.approx(1.0, abs=0.06)
    assert "one of jar J1, one of J2" in repeat_test(found)


@pytest.mark.by_hand
def test_one_new_name_against_what_nobody_wrote_down() -> None:
    # Three in four that a new name moves the colour any way, one in four as jars did
    # before, by little: 0.75 against 0.15 for what nobody wrote down, 0.75 / 0.90.
    found = ending(lot(10, shift=(-2.0, 1.0, 1.5), jar="J2", pot="Q"))
    assert found.causes[0].score == pytest.approx(0.75 / 0.90, abs=0.01)


def test_where_nothing_changed_nobody_wrote_it_down() -> None:
    found = ending(lot(10, shift=(-2.0, 1.0, 1.5)))
    assert found.verdict is Drift.DRIFTED
    assert found.unknown > 0.5
    assert repeat_test(found).startswith("Dye a swatch with everything as it was")


@pytest.mark.by_hand
def test_an_empty_cell_may_hide_the_cause() -> None:
    # The jar 0.75 as above, the water 0.12, the person 0.7 x 0.12 = 0.084, no column
    # 0.15; together 1.104.
    shift = (-2.0, 1.0, 1.5)
    found = ending(lot(10, shift=shift, jar="J2", pot="Q", water=None, person=None))
    jar, water, person = found.causes
    assert (water.factor, water.was, water.now) == (Factor.WATER, "rain", None)
    assert jar.score == pytest.approx(0.75 / 1.104, abs=0.01)
    assert water.score == pytest.approx(0.12 / 1.104, abs=0.005)
    assert person.score == pytest.approx(0.084 / 1.104, abs=0.005)
    assert repeat_test(found).endswith(
        "find out the water, which nobody wrote down: it was rain before."
    )


def test_nobody_wrote_down_a_hold_and_the_lot_is_paler() -> None:
    paler, deeper = (
        ending(lot(10, shift=shift, hold_min=None))
        for shift in ((2.2, -1.2, -0.2), (-2.2, 1.2, 0.2))
    )
    assert (paler.causes[0].factor, paler.causes[0].now) == (Factor.HOLD, None)
    assert paler.causes[0].score > 0.6 > scores(deeper)[Factor.HOLD]
    assert repeat_test(paler) == (
        "To be sure, find out the hold, which nobody wrote down: it was 45 before."
    )


def test_a_column_that_was_never_filled_in_is_not_named() -> None:
    shift = (-2.0, 1.0, 1.5)
    lots = [lot(place, water=None) for place in range(10)]
    found = lot_causes([*lots, lot(10, shift=shift, jar="J2", water=None)])
    assert set(scores(found)) == {Factor.JAR}
    assert found.unknown > ending(lot(10, shift=shift, jar="J2")).unknown + 0.05


def test_late_acid_is_blamed_for_paler_more_than_for_deeper() -> None:
    paler, deeper = (
        scores(ending(lot(10, shift=shift, jar="J2", acid_after_min=40.0)))
        for shift in ((2.2, -1.2, -0.2), (-2.2, 1.2, 0.2))
    )
    assert paler[Factor.ACID_AFTER] > 1.5 * deeper[Factor.ACID_AFTER]


def test_two_that_are_new_alike_are_ranked_by_their_kind() -> None:
    """A jar before a person; no lot before tells them apart."""
    found = ending(lot(10, shift=(-2.0, 1.0, 1.5), jar="J2", person="second"))
    assert [cause.factor for cause in found.causes[:2]] == [Factor.JAR, Factor.PERSON]
    assert found.causes[1].score == pytest.approx(0.7 * found.causes[0].score)


def test_a_slope_that_few_lots_tell_leaves_a_lot_in_doubt() -> None:
    """The same shift, once with the usual load and once with the largest so far."""
    lots = [replace(lot(n), load_g_per_l=18.0 if n == 5 else 25.0) for n in range(10)]
    shift = (0.75, 0.0, 0.0)
    usual = lot_causes([*lots, lot(10, shift=shift)])
    rare = lot_causes([*lots, lot(10, shift=shift, load_g_per_l=18.0)])
    assert usual.verdict is Drift.DRIFTED
    assert rare.verdict is not Drift.DRIFTED


def test_what_changed_before_and_moved_nothing_is_a_weak_suspect() -> None:
    """Pots go in turn and never mattered; the jar is new."""
    found = ending(lot(11, shift=(-2.0, 1.0, 1.5), jar="J2"))
    assert found.causes[0].factor is Factor.JAR
    assert scores(found).get(Factor.POT, 0.0) < 0.2 * found.causes[0].score


def test_what_moved_the_colour_the_same_way_before_is_a_strong_suspect() -> None:
    """Well water did it in lot 5; now it is used again, and a jar is new as well."""
    shift = (-2.0, 1.0, 1.5)
    lots = [lot(place) for place in range(12)]
    lots[5] = lot(5, shift=shift, water="well")
    found = lot_causes([*lots, lot(12, shift=shift, water="well", jar="J2")])
    first = found.causes[0]
    assert (first.factor, first.was, first.now) == (Factor.WATER, "rain", "well")
    assert first.score > 0.75
    assert first.expected == pytest.approx(shift, abs=0.6)
    assert first.words


def test_it_is_strong_only_if_it_is_the_same_way() -> None:
    shift = (-2.0, 1.0, 1.5)
    lots = [lot(place) for place in range(12)]
    lots[5] = lot(5, shift=(2.0, -1.0, -1.5), water="well")
    found = lot_causes([*lots, lot(12, shift=shift, water="well", jar="J2")])
    assert found.causes[0].factor is Factor.JAR


@pytest.mark.parametrize(
    ("factor", "value"),
    [
        (Factor.HOLD, 25.0),
        (Factor.LOAD, 45.0),
        (Factor.BOTTLE_AGE, 160.0),
    ],
)
def test_the_way_of_the_shift_counts(factor: Factor, value: float) -> None:
    """A short hold, much yarn and old stock dye paler, not deeper."""
    paler, deeper = (
        ending(lot(10, shift=way, pot="new", **{factor: value}))
        for way in ((2.2, -1.2, -0.2), (-2.2, 1.2, 0.2))
    )
    assert paler.causes[0].factor is factor
    assert deeper.causes[0].factor is Factor.POT
    assert scores(paler)[factor] > 2.0 * scores(deeper).get(factor, 0.05)


def test_a_number_in_its_range_is_no_suspect() -> None:
    found = ending(lot(10, shift=(2.2, -1.2, -0.2), bottle_age_days=12.0))
    assert Factor.BOTTLE_AGE not in scores(found)


def test_the_cause_may_lie_some_lots_back() -> None:
    """The jar was new in the lot before, which was off too and is not in the mean."""
    shift = (-2.0, 1.0, 1.5)
    found = ending(
        lot(10, shift=shift, jar="J2"), lot(11, shift=shift, jar="J2", bottle="B3")
    )
    first = found.causes[0]
    assert (first.factor, first.was, first.now) == (Factor.JAR, "J1", "J2")


@pytest.mark.parametrize(
    ("lots", "why"),
    [
        ([lot(0)], "no lot before it"),
        ([lot(0), lot(1, shift=(9, 0, 0))], "fewer than 3"),
        ([lot(0), lot(1), lot(2), lot(3, colour=None)], "not read"),
    ],
)
def test_too_little_is_told(lots: list[PastLot], why: str) -> None:
    found = lot_causes(lots)
    assert found.verdict is Drift.CANNOT_TELL
    assert why in found.why
    assert found.causes == ()


def test_no_lot_is_no_question() -> None:
    with pytest.raises(MissingError):
        lot_causes([])


def test_lots_that_were_never_read_are_passed_over() -> None:
    lots = [lot(place) for place in range(10)]
    lots[3] = replace(lots[3], colour=None)
    assert lot_causes([*lots, lot(10)]).verdict is Drift.WITHIN


def test_lots_may_differ_along_one_line_only() -> None:
    lots = [
        PastLot(number=f"{n}", colour=Lab(50 + n % 2 / 5, 10, 10)) for n in range(9)
    ]
    off = PastLot(number="off", colour=Lab(99, -90, 90), hold_min=1.0)
    assert lot_causes([*lots, off]).verdict is Drift.DRIFTED


@pytest.mark.parametrize("size", [4.0, 8.0, 30.0])
def test_a_shift_of_any_size_has_the_same_cause(size: float) -> None:
    found = ending(
        lot(10, shift=(0.87 * size, -0.48 * size, 0.0), hold_min=15.0, jar="J2")
    )
    assert found.causes[0].factor is Factor.HOLD
    assert found.causes[0].score > 0.6


def test_equal_lots_have_a_noise_all_the_same() -> None:
    """A file with whole numbers: nothing divides by nought."""
    lots = [PastLot(number=f"{n}", colour=RED) for n in range(8)]
    assert lot_causes(lots).verdict is Drift.WITHIN
    off = PastLot(number="off", colour=moved(RED, (3.0, 0.0, 0.0)))
    assert lot_causes([*lots, off]).verdict is Drift.DRIFTED


def test_the_expected_distance_is_that_of_noise() -> None:
    """By drawing lots of noise of 0.2: about as far as the answer says."""
    lots = [lot(place) for place in range(40)]
    found = lot_causes(lots)
    read = [each.colour for each in lots if each.colour]
    mean = Lab(*(sum(x) / 40 for x in zip(*read, strict=True)))
    away = [ciede2000(mean, each) for each in read]
    assert found.expected_de == pytest.approx(sum(away) / 40, rel=0.35)
