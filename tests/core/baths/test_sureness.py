from math import sqrt
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import Drawn, depth_value, stock_density, sure_depth
from shadewright.core.quantities import balance, measuring_tool
from shadewright.core.solutions.shares import diluted_strength
from shadewright.core.solutions.sureness import made_strength, weighed_volume
from shadewright.core.uncertainty import Term, Value, budget, exact, quotient, scaled
from shadewright.core.uncertainty.tools import mass_read, volume_read
from shadewright.errors import OutOfRangeError

STRONG = Value(
    value=1.0, terms=(Term(name="strength of T7KK", source="bottle T7KK", u=0.02),)
)


def seeded() -> Random:
    return Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


def _volume(words: str, volume_ml: float, *, role: str = "Gorse") -> Value:
    tool = measuring_tool(words, name="Measure")
    return volume_read(tool, volume_ml, role=role, key=words)


def _mass(step: str, mass_g: float, *, role: str) -> Value:
    return mass_read(balance(step, name="Balance"), mass_g, role=role, key=step)


@pytest.mark.by_hand
def test_the_pour_dominates_a_usual_dose() -> None:
    # powder 10 g on 0.01 g, tared: 0.01/√6 = 0.00408 g, 0.041 %
    # to 1000 ml in a cylinder of ±10 ml: 10/√3 = 5.774 ml, 0.577 %; together 0.579 %
    # 50 ml from a cylinder of ±1 ml: 1/√3 = 0.577 ml, 1.155 %
    # yarn 100 g on 1 g, tared: 1/√6 = 0.408 g, 0.408 %
    # √(0.579² + 1.155² + 0.408²) = 1.354 %
    powder = _mass("0.01g", 10, role="powder")
    strength = scaled(
        quotient(powder, _volume("cylinder 1000ml B", 1000, role="stock")), by=100
    )
    pour = _volume("cylinder 100ml B", 50)
    depth = depth_value(
        yarn=_mass("1g", 100, role="yarn"),
        stock=[Drawn(strength=strength, amount=pour)],
    )
    assert strength.u_rel == pytest.approx(0.00579, abs=5e-6)
    assert depth.value == pytest.approx(0.5)
    assert depth.u == pytest.approx(0.00677, abs=5e-6)
    assert depth.u_rel == pytest.approx(0.01354, abs=1e-5)
    most = budget(depth)[0]
    assert most.name == "mark of the 100\u00a0ml cylinder"
    assert most.share == pytest.approx(1.3333 / 1.8350, abs=5e-4)


@pytest.mark.by_hand
def test_doses_from_one_bottle_share_its_error() -> None:
    # 2 % of the strength is 2 % of the depth, in one dose as in two
    half = Drawn(strength=STRONG, amount=exact(25))
    depth = depth_value(yarn=exact(100), stock=[half, half])
    assert depth.value == pytest.approx(0.5)
    assert depth.u_rel == pytest.approx(0.02)


@pytest.mark.by_hand
def test_two_bottles_that_share_nothing_average_out() -> None:
    # two halves of 2 % each: 0.25 x √(0.02² + 0.02²) / 0.5 = 0.02/√2
    other = Value(value=1.0, terms=(Term(name="other", source="bottle K9WW", u=0.02),))
    doses = [Drawn(strength=each, amount=exact(25)) for each in (STRONG, other)]
    depth = depth_value(yarn=exact(100), stock=doses)
    assert depth.u_rel == pytest.approx(0.02 / sqrt(2))


@pytest.mark.by_hand
def test_bottles_of_one_weighing_share_that_part() -> None:
    # both were made from one stock: 1 % in each is 1 % in both together
    jar = Term(name="powder", source="making 1 powder", u=0.01)
    fill = [Term(name="fill", source=f"fill {n}", u=0.01) for n in (1, 2)]
    doses = [
        Drawn(strength=Value(value=1.0, terms=(jar, each)), amount=exact(25))
        for each in fill
    ]
    depth = depth_value(yarn=exact(100), stock=doses)
    # √(1² + 1²/2) %
    assert depth.u_rel == pytest.approx(0.01 * sqrt(1.5))


@pytest.mark.by_hand
def test_a_dose_weighed_dry() -> None:
    # 0.5 g on 0.1 g, tared: 0.1/√6 = 0.0408 g, 8.16 %; yarn 100 g: 0.041 %
    depth = depth_value(
        yarn=_mass("0.1g", 100, role="yarn"), dry=[_mass("0.1g", 0.5, role="Gorse")]
    )
    assert depth.value == pytest.approx(0.5)
    assert depth.u_rel == pytest.approx(sqrt(0.08165**2 + 0.000408**2), abs=1e-5)


@pytest.mark.by_hand
def test_a_dose_by_weight_of_a_stock_filled_by_weight() -> None:
    # 5 g in 504.1 g: 1 % by S = m (rho/(M - m)); 60.49 g of it hold 60.49/504.1 x 5 g
    filled = weighed_volume(filled=exact(504.1), powder=exact(5), key="T7KK")
    strength = made_strength(powder=exact(5), volume=filled)
    assert strength.u_rel > 0.005
    dose = Drawn(
        strength=strength,
        amount=_mass("0.1g", 60.492, role="Gorse"),
        density=stock_density(strength=strength, key="T7KK"),
    )
    depth = depth_value(yarn=exact(100), stock=[dose])
    assert depth.value == pytest.approx(60.492 / 504.1 * 5, rel=1e-9)
    # however much room the dye takes up: 0.1/√6 g of 60.49 g is all
    assert depth.u_rel == pytest.approx(0.0408248 / 60.492, rel=1e-5)
    assert [line.name for line in budget(depth)] == ["reading the scale, Gorse"]


@pytest.mark.by_hand
def test_thinned_the_room_in_the_first_stock_does_not_fall_out() -> None:
    # 10 g in 500 ml take up to 10 ml: 2 %/√3 = 1.155 % in 2 %, and in 0.1 % of it;
    # a millilitre of the thinned one is unsure by 0.1 %/√3 = 0.058 %: √(…) = 1.156 %
    filled = weighed_volume(filled=exact(509.1), powder=exact(10), key="T7KK")
    first = made_strength(powder=exact(10), volume=filled)
    weak = diluted_strength(
        stock_percent=first, stock_ml=exact(25), filled=exact(500 * first.value / 2)
    )
    dose = Drawn(
        strength=weak,
        amount=exact(60),
        density=stock_density(strength=weak, key="G4RR"),
    )
    depth = depth_value(yarn=exact(100), stock=[dose])
    assert depth.u_rel == pytest.approx(0.01156, abs=1e-5)


@pytest.mark.by_hand
def test_of_a_strong_powder_the_weight_says_less() -> None:
    # 5 g of 200 % in 504.1 g are 2 %; 50 ml of 2 % are asked for as 50.91 g, and
    # 50.91 g hold 50.91/504.1 x 10 g = 1.0099 g: the interval must reach that
    filled = weighed_volume(filled=exact(504.1), powder=exact(5), key="T7KK")
    strength = made_strength(
        powder=exact(5), volume=filled, powder_strength_percent=200
    )
    density = stock_density(strength=strength, key="T7KK")
    asked = exact(50 * density.value)
    found = sure_depth(
        yarn=exact(100),
        stock=[Drawn(strength=strength, amount=asked, density=density)],
    )
    assert found.interval.low < asked.value / 504.1 * 10 < found.interval.high


@pytest.mark.by_hand
def test_dye_takes_up_no_room_or_all_of_its_weight_in_water() -> None:
    # filled to a mark, 1 ml of 2 % weighs 0.9982 g and up to 0.02 g more or less
    density = stock_density(strength=exact(2), key="T7KK")
    assert density.value == pytest.approx(1.0182, abs=5e-5)
    assert density.u == pytest.approx(0.02 / sqrt(3))
    (term,) = density.terms
    assert term.source == "room T7KK"


def test_a_sure_dose_has_an_even_interval() -> None:
    pour = _volume("cylinder 100ml B", 50)
    found = sure_depth(
        yarn=exact(100),
        stock=[Drawn(strength=exact(1), amount=pour)],
        generator=seeded(),
    )
    assert not found.is_drawn
    # one rectangle of ±1 ml: 95 % of it
    assert found.interval.low == pytest.approx(0.49 + 0.0005, abs=1e-6)
    assert found.interval.high == pytest.approx(0.51 - 0.0005, abs=1e-6)


@pytest.mark.by_hand
def test_a_dose_near_nought_is_drawn() -> None:
    # 0.2 ml from a 10 ml syringe: ±(0.15 + 0.002) ml, so 0.048 to 0.352 ml
    pour = _volume("syringe 10ml", 0.2)
    found = sure_depth(
        yarn=exact(10),
        stock=[Drawn(strength=exact(1), amount=pour)],
        generator=seeded(),
    )
    assert found.is_drawn
    # 2.5 % of the rectangle cut off at each end: ±0.95 x 0.152 ml of 1 % on 10 g
    assert found.interval.low == pytest.approx((0.2 - 0.1444) / 10, abs=2e-4)
    assert found.interval.high == pytest.approx((0.2 + 0.1444) / 10, abs=2e-4)


def test_nothing_below_nought_is_drawn_or_said() -> None:
    pour = _volume("cylinder 100ml B", 0.5)
    stock = [Drawn(strength=exact(1), amount=pour)]
    for generator in (seeded(), None):
        found = sure_depth(yarn=exact(100), stock=stock, generator=generator)
        assert found.interval.low == 0.0


def test_one_seed_gives_one_interval() -> None:
    stock = [Drawn(strength=STRONG, amount=_volume("syringe 10ml", 0.5))]
    one, two = (
        sure_depth(yarn=exact(10), stock=stock, generator=seeded()) for _ in range(2)
    )
    assert one == two


def test_no_yarn_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        depth_value(yarn=exact(0), dry=[exact(1)])


@given(ml=st.floats(1, 500), percent=st.floats(0.05, 5), yarn_g=st.floats(10, 2000))
def test_a_dose_in_two_pours_of_one_bottle_is_the_dose(
    ml: float, percent: float, yarn_g: float
) -> None:
    strength = scaled(STRONG, by=percent)
    yarn = _mass("1g", yarn_g, role="yarn")
    whole = depth_value(yarn=yarn, stock=[Drawn(strength=strength, amount=exact(ml))])
    halves = [Drawn(strength=strength, amount=exact(ml / 2))] * 2
    split = depth_value(yarn=yarn, stock=halves)
    assert split.value == pytest.approx(whole.value, rel=1e-12)
    assert split.u == pytest.approx(whole.u, rel=1e-9)
