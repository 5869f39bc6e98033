"""The sums of stock and bath, gone through again in exact fractions.

The oracle knows nothing of the code: each sum is written out here from its
definition, with whole numbers, and nothing is rounded. Amounts are drawn as a
dyer writes them, with one or two decimals, so that limits are met exactly and
the noise of binary numbers would show.
"""

from fractions import Fraction

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from shadewright.core.baths import BathWanted, Dose, bath_sum
from shadewright.core.solutions import (
    Portion,
    blend,
    dilution,
    merged,
    powder_mass_g,
    powder_on_scale,
    powder_to_strengthen_g,
    rescue_dried,
    rescue_filled,
    rescue_weighed,
    stock_to_strengthen_ml,
)


def tenths(least: int, most: int) -> st.SearchStrategy[Fraction]:
    """Return amounts with one decimal, from ``least`` to ``most`` tenths."""
    return st.integers(least, most).map(lambda number: Fraction(number, 10))


def hundredths(least: int, most: int) -> st.SearchStrategy[Fraction]:
    """Return amounts with two decimals, from ``least`` to ``most`` hundredths."""
    return st.integers(least, most).map(lambda number: Fraction(number, 100))


def near(exact: Fraction) -> object:
    """Return what a float that should be this number must agree with."""
    return pytest.approx(float(exact), rel=1e-11, abs=1e-12)


POWDERS_G = hundredths(1, 20_000)
STRENGTHS = hundredths(1, 1000)
POWDER_STRENGTHS = tenths(100, 4000)
VOLUMES_ML = tenths(10, 50_000)
FIBRES_G = tenths(50, 20_000)
DEPTHS = hundredths(1, 600)
STOCKS = st.sampled_from([Fraction(n, 100) for n in (1, 5, 10, 30, 50, 100, 200, 350)])


@given(volume=VOLUMES_ML, strength=STRENGTHS, powder_strength=POWDER_STRENGTHS)
def test_powder(
    volume: Fraction, strength: Fraction, powder_strength: Fraction
) -> None:
    exact = strength / 100 * volume / (powder_strength / 100)
    assert powder_mass_g(
        volume_ml=float(volume),
        strength_percent=float(strength),
        powder_strength_percent=float(powder_strength),
    ) == near(exact)


@given(
    powder=POWDERS_G,
    strength=STRENGTHS,
    powder_strength=POWDER_STRENGTHS,
    short=VOLUMES_ML,
)
@example(
    powder=Fraction("25.19"),
    strength=Fraction("0.11"),
    powder_strength=Fraction("70.3"),
    short=Fraction(0),
)
def test_water_for_powder_that_was_weighed_wrongly(
    powder: Fraction, strength: Fraction, powder_strength: Fraction, short: Fraction
) -> None:
    """The vessel may hold all of it already: then there is nothing to add."""
    target = powder * (powder_strength / 100) / (strength / 100)
    assume(target < 1_000_000)
    short = min(short, target)
    rescued = rescue_weighed(
        powder_g=float(powder),
        strength_percent=float(strength),
        powder_strength_percent=float(powder_strength),
        in_vessel_ml=float(target - short),
    )
    assert rescued.make_up_to_ml == near(target)
    assert rescued.add_water_ml == pytest.approx(
        float(short), abs=1e-10 * float(target)
    )
    assert (rescued.add_water_ml == 0) == (short == 0)


@given(
    powder=POWDERS_G,
    strength=STRENGTHS,
    powder_strength=POWDER_STRENGTHS,
    beside=tenths(-500, 500),
)
def test_what_a_stock_that_was_filled_wrongly_wants(
    powder: Fraction, strength: Fraction, powder_strength: Fraction, beside: Fraction
) -> None:
    """Past the mark it wants powder, short of it water, at it nothing."""
    dye = powder * powder_strength / 100
    mark = 100 * dye / strength
    volume = mark + beside
    assume(volume > 0 and 100 * dye / volume <= 50)
    assume(max(volume, mark) < 1_000_000)
    filled = rescue_filled(
        powder_g=float(powder),
        strength_percent=float(strength),
        volume_ml=float(volume),
        powder_strength_percent=float(powder_strength),
    )
    assert filled.true_strength_percent == near(100 * dye / volume)
    assert (filled.add_powder_g is not None) == (volume > mark)
    assert (filled.add_water_ml is not None) == (volume < mark)
    if filled.add_powder_g is not None:
        missing = volume * strength / 100 - dye
        exact = float(missing / (powder_strength / 100))
        assert filled.add_powder_g == pytest.approx(exact, abs=1e-11 * float(powder))
    if filled.add_water_ml is not None:
        assert filled.make_up_to_ml == near(mark)
        assert filled.add_water_ml == pytest.approx(
            float(mark - volume), abs=1e-11 * float(mark)
        )


@given(strength=STRENGTHS, before=VOLUMES_ML, lost=tenths(0, 10_000))
def test_a_stock_that_dried(
    strength: Fraction, before: Fraction, lost: Fraction
) -> None:
    now = before - lost
    assume(now > 0 and strength * before / now <= 50)
    dried = rescue_dried(
        strength_percent=float(strength),
        volume_before_ml=float(before),
        volume_now_ml=float(now),
    )
    assert dried.true_strength_percent == near(strength * before / now)
    assert dried.add_water_ml == pytest.approx(float(lost), abs=1e-9)


@given(have=STRENGTHS, weaker=hundredths(1, 100), volume=VOLUMES_ML)
def test_a_dilution(have: Fraction, weaker: Fraction, volume: Fraction) -> None:
    want = have * weaker
    thinned = dilution(
        have_percent=float(have), want_percent=float(want), volume_ml=float(volume)
    )
    assert thinned.stock_ml == near(volume * weaker)
    assert thinned.stock_ml + thinned.water_ml == near(volume)


@given(first=STRENGTHS, second=STRENGTHS, share=hundredths(0, 100), volume=VOLUMES_ML)
def test_two_stocks_to_reach_a_third(
    first: Fraction, second: Fraction, share: Fraction, volume: Fraction
) -> None:
    assume(abs(first - second) >= Fraction(1, 10))
    want = share * first + (1 - share) * second
    mixed = blend(
        first_percent=float(first),
        second_percent=float(second),
        want_percent=float(want),
        volume_ml=float(volume),
    )
    assert mixed.first_ml == pytest.approx(float(share * volume), abs=1e-8)
    assert mixed.second_ml == pytest.approx(float((1 - share) * volume), abs=1e-8)


@given(bottles=st.lists(st.tuples(VOLUMES_ML, STRENGTHS), min_size=1, max_size=8))
def test_bottles_poured_together(bottles: list[tuple[Fraction, Fraction]]) -> None:
    together = merged([
        Portion(volume_ml=float(volume), strength_percent=float(strength))
        for volume, strength in bottles
    ])
    volume = sum((volume for volume, _strength in bottles), Fraction(0))
    dye = sum((volume * strength for volume, strength in bottles), Fraction(0))
    assert together.volume_ml == near(volume)
    assert together.strength_percent == near(dye / volume)


@given(
    volume=VOLUMES_ML,
    have=STRENGTHS,
    more=hundredths(1, 500),
    above=hundredths(10, 500),
    s=POWDER_STRENGTHS,
)
def test_a_bottle_made_stronger(
    volume: Fraction, have: Fraction, more: Fraction, above: Fraction, s: Fraction
) -> None:
    """With powder, or with a stock that is ``above`` the strength wanted."""
    want = have + more
    grams = powder_to_strengthen_g(
        volume_ml=float(volume),
        have_percent=float(have),
        want_percent=float(want),
        powder_strength_percent=float(s),
    )
    assert grams == pytest.approx(float(volume * more / s), rel=1e-9)
    millilitres = stock_to_strengthen_ml(
        volume_ml=float(volume),
        have_percent=float(have),
        want_percent=float(want),
        stronger_percent=float(want + above),
    )
    assert millilitres == pytest.approx(float(volume * more / above), rel=1e-9)


@given(steps=st.integers(1, 500), step=st.sampled_from(["1", "0.1", "0.01", "0.05"]))
def test_powder_of_whole_steps_is_never_too_little(steps: int, step: str) -> None:
    powder = steps * Fraction(step)
    shown = powder_on_scale(powder_g=float(powder), step_g=float(step), volume_ml=500.0)
    assert shown.powder_g == near(powder)
    assert not shown.warning


@given(
    fibre=FIBRES_G,
    doses=st.lists(st.tuples(DEPTHS, STOCKS), min_size=1, max_size=5),
    spare=tenths(0, 20_000),
    wet=tenths(0, 5000),
)
def test_a_bath_and_its_water(
    fibre: Fraction,
    doses: list[tuple[Fraction, Fraction]],
    spare: Fraction,
    wet: Fraction,
) -> None:
    """Stock and wet yarn may be the whole liquor: no water, and no caution."""
    stocks = [fibre * depth / strength for depth, strength in doses]
    liquor = sum(stocks, spare) + wet
    ratio = liquor / fibre
    assume(ratio <= 1000 and liquor < 1_000_000)
    bath = bath_sum(
        wanted=BathWanted(
            fibre_mass_g=float(fibre),
            doses=tuple(
                Dose(
                    dye=f"dye {place}",
                    depth_percent=float(depth),
                    strength_percent=float(strength),
                )
                for place, (depth, strength) in enumerate(doses)
            ),
            liquor_ratio=float(ratio),
            wet_yarn_g=float(fibre + wet),
        )
    )
    noise = 1e-9 * float(liquor)
    assert bath.water.liquor_ml == near(liquor)
    assert bath.water.fresh_water_ml == pytest.approx(float(spare), abs=noise)
    assert (bath.water.fresh_water_ml == 0) == (spare == 0)
    assert bath.water.excess_ml == 0
    assert not any("more than the liquor" in told for told in bath.warnings)
    for dose, stock, (depth, _strength) in zip(bath.doses, stocks, doses, strict=True):
        assert dose.dye_g == near(fibre * depth / 100)
        assert dose.stock_ml == near(stock)
        assert (dose.advice is not None) == (stock < 5)
    total = sum((depth for depth, _strength in doses), Fraction(0))
    assert bath.total_depth_percent == near(total)
    assert any("All dyes together" in told for told in bath.warnings) == (total > 6)
