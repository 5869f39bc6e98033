"""Temperature programmes: corners, minutes, what no pot can follow."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import Curve, Leg, curve_points, minute_at, minutes_to_top
from shadewright.core.baths.heating import PROGRAMMES
from shadewright.errors import OutOfRangeError


@st.composite
def curves(draw: st.DrawFn) -> Curve:
    temperatures = sorted(draw(st.lists(st.floats(0, 100), min_size=2, max_size=6)))
    legs = tuple(
        Leg(
            to_c=to_c,
            rise_c_per_min=draw(st.floats(0.05, 20)),
            hold_min=draw(st.floats(0, 600)),
        )
        for to_c in temperatures[1:]
    )
    return Curve(start_c=temperatures[0], legs=legs)


@pytest.mark.by_hand
def test_a_stop_on_the_way() -> None:
    """40 to 70 at 1: 30 min; 15 held; 70 to 98 at 0.8: 35 min; 45 held."""
    curve = Curve(
        start_c=40.0,
        legs=(
            Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0),
            Leg(to_c=98.0, rise_c_per_min=0.8, hold_min=45.0),
        ),
    )
    corners = [(round(p.minute, 9), p.temperature_c) for p in curve_points(curve)]
    assert corners == [(0, 40), (30, 70), (45, 70), (80, 98), (125, 98)]
    assert curve.rise_min == pytest.approx(80.0)
    assert curve.total_min == pytest.approx(125.0)
    assert curve.top_c == 98.0


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("at_c", "minute"),
    [(30, 0.0), (40, 0.0), (50, 10.0), (70, 30.0), (84, 62.5), (98, 80.0)],
)
def test_when_a_temperature_is_reached(at_c: float, minute: float) -> None:
    """40 to 70 at 1: 30 min; 15 held; (84 - 70)/0.8 = 17.5 min more; 35 to 98."""
    legs = (
        Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0),
        Leg(to_c=98.0, rise_c_per_min=0.8, hold_min=45.0),
    )
    curve = Curve(start_c=40.0, legs=legs)
    assert minute_at(curve=curve, temperature_c=at_c) == pytest.approx(minute)
    with pytest.raises(OutOfRangeError, match="at most the top"):
        minute_at(curve=curve, temperature_c=98.1)


@given(curves())
def test_a_curve_goes_on_and_never_down(curve: Curve) -> None:
    points = curve_points(curve)
    minutes = [point.minute for point in points]
    degrees = [point.temperature_c for point in points]
    assert minutes == sorted(minutes)
    assert degrees == sorted(degrees)
    assert degrees[-1] == curve.top_c
    held = sum(leg.hold_min for leg in curve.legs)
    slowest = min(leg.rise_c_per_min for leg in curve.legs)
    fastest = max(leg.rise_c_per_min for leg in curve.legs)
    rise = curve.top_c - curve.start_c
    slack = 1e-6 + 1e-9 * minutes[-1]
    assert rise / fastest - slack <= minutes[-1] - held <= rise / slowest + slack


@pytest.mark.by_hand
def test_a_weak_source_slows_the_legs_that_it_cannot_keep() -> None:
    """40 to 70 at 0.5, kept: 60; 15 held; 28 at 0.7 in place of 0.8: 40 for 35."""
    curve = Curve(
        start_c=40.0,
        legs=(
            Leg(to_c=70.0, rise_c_per_min=0.5, hold_min=15.0),
            Leg(to_c=98.0, rise_c_per_min=0.8, hold_min=45.0),
        ),
    )
    assert curve.rise_min == pytest.approx(60 + 15 + 35)
    found = minutes_to_top(curve=curve, fastest_c_per_min=0.7)
    assert found == pytest.approx(60 + 15 + 40)


@given(curves(), st.floats(0.05, 30))
def test_no_source_is_faster_than_the_recipe(curve: Curve, fastest: float) -> None:
    found = minutes_to_top(curve=curve, fastest_c_per_min=fastest)
    assert found >= curve.rise_min - 1e-9 * (1 + found)
    strong = minutes_to_top(curve=curve, fastest_c_per_min=100.0)
    assert strong == pytest.approx(curve.rise_min)


def test_no_rise_at_all_is_refused() -> None:
    curve = Curve(start_c=40.0, legs=(TOP,))
    with pytest.raises(OutOfRangeError):
        minutes_to_top(curve=curve, fastest_c_per_min=0.0)


@pytest.mark.parametrize("key", PROGRAMMES)
def test_a_programme_to_start_from(key: str) -> None:
    programme = PROGRAMMES[key]
    assert programme.source
    assert programme.curve.top_c < 100.0
    assert 60.0 <= programme.curve.total_min <= 200.0


def test_each_class_that_dyers_ask_for_has_its_programme() -> None:
    assert list(PROGRAMMES) == [
        "levelling",
        "milling",
        "super-milling",
        "metal-complex",
        "silk",
        "nylon",
    ]


def test_faster_dyes_are_not_hurried_more() -> None:
    """The faster a dye goes on, the longer the way to the top."""
    ways = [
        PROGRAMMES[key].curve.rise_min
        for key in ("levelling", "milling", "super-milling")
    ]
    assert ways == sorted(ways)


TOP = Leg(to_c=90.0, rise_c_per_min=1.0)


@pytest.mark.parametrize(
    ("start_c", "legs"),
    [
        (40.0, ()),
        (40.0, (TOP,) * 7),
        (95.0, (TOP,)),
        (-1.0, (TOP,)),
        (40.0, (TOP, Leg(to_c=80.0, rise_c_per_min=1.0))),
        (40.0, (Leg(to_c=90.0, rise_c_per_min=0.0),)),
        (40.0, (Leg(to_c=90.0, rise_c_per_min=1.0, hold_min=-1.0),)),
        (40.0, (Leg(to_c=120.0, rise_c_per_min=1.0),)),
    ],
)
def test_what_no_pot_can_follow(start_c: float, legs: tuple[Leg, ...]) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        Curve(start_c=start_c, legs=legs)
    assert refused.value.argument == "curve"
