"""Ten thousand studios of each kind: does the stated interval hold the truth?

Every tool is drawn within its tolerance, every reading honest: a scale rounds when
it is empty and again when it is full, a syringe that gives too much does so at each
filling. The stated interval is reckoned from what the dyer reads alone.
"""

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

import numpy as np
import pytest
from numpy.typing import NDArray

from shadewright.core.baths import Drawn, SureDepth, stock_density, sure_depth
from shadewright.core.quantities import Balance, MeasuringTool, measuring_tool
from shadewright.core.solutions.sureness import made_strength, weighed_volume
from shadewright.core.uncertainty import Value, quotient, scaled
from shadewright.core.uncertainty.tools import (
    half_width_ml,
    mass_read,
    unchecked_balance,
    volume_read,
)

SETUPS, DRAWS = 20, 500
POWDER_G, FILL_ML = 5.0, 500.0
POWDER_SCALE = unchecked_balance(step_g=0.01)
YARN_SCALE = unchecked_balance(step_g=1.0)
FILL = measuring_tool("cylinder 500ml B", name="Vessel")
Truth = NDArray[np.float64]


def seeded() -> Random:
    return Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage]


@dataclass(frozen=True, kw_only=True)
class Studio:
    """What a dyer says of a dose, and what it really was in so many studios."""

    sure: SureDepth
    truth: Truth


def _tool(words: str) -> MeasuringTool:
    return measuring_tool(words, name="Measure")


def _really_weighed(lots: np.random.Generator, scale: Balance, shown_g: float) -> Truth:
    """Return what lay on a scale that was tared and then showed so much."""
    half = scale.step_g / 2
    rounding = lots.uniform(-half, half, DRAWS) - lots.uniform(-half, half, DRAWS)
    own = scale.error_g or 0.0
    return shown_g + rounding + lots.uniform(-own, own, DRAWS)


def _really_measured(
    lots: np.random.Generator, tool: MeasuringTool, shown_ml: float
) -> Truth:
    """Return what a tool gave that is off by one share of its tolerance throughout."""
    share = lots.uniform(-1, 1, DRAWS)
    whole, rest_ml = divmod(shown_ml, tool.size_ml)
    fills = [tool.size_ml] * int(whole) + ([rest_ml] if rest_ml > 1e-9 else [])
    widths = [half_width_ml(tool=tool, volume_ml=each) for each in fills]
    return shown_ml + share * sum(widths)


def _strength() -> Value:
    powder = mass_read(POWDER_SCALE, POWDER_G, role="powder", key="a")
    mark = volume_read(FILL, FILL_ML, role="stock", key="b")
    return scaled(quotient(powder, mark), by=100)


def _true_strength(lots: np.random.Generator) -> Truth:
    powder_g = _really_weighed(lots, POWDER_SCALE, POWDER_G)
    return 100 * powder_g / _really_measured(lots, FILL, FILL_ML)


def _poured(
    lots: np.random.Generator, tool: MeasuringTool, dose_ml: float, yarn_g: float
) -> Studio:
    pour = volume_read(tool, dose_ml, role="Gorse", key="c")
    dye_g = _true_strength(lots) * _really_measured(lots, tool, dose_ml) / 100
    return Studio(
        sure=sure_depth(
            yarn=mass_read(YARN_SCALE, yarn_g, role="yarn", key="d"),
            stock=[Drawn(strength=_strength(), amount=pour)],
            generator=seeded(),
        ),
        truth=100 * dye_g / _really_weighed(lots, YARN_SCALE, yarn_g),
    )


def _from_cylinders(lots: np.random.Generator) -> Studio:
    size_ml = float(lots.choice([10, 25, 50, 100, 250]))
    tool = _tool(f"cylinder {size_ml:g}ml {lots.choice(['A', 'B'])}")
    dose_ml = size_ml * float(lots.uniform(0.15, 1))
    return _poured(lots, tool, dose_ml, float(lots.uniform(50, 500)))


def _from_syringes(lots: np.random.Generator) -> Studio:
    size_ml = float(lots.choice([5, 10, 20, 50]))
    dose_ml = size_ml * float(lots.uniform(0.3, 3))
    return _poured(
        lots, _tool(f"syringe {size_ml:g}ml"), dose_ml, float(lots.uniform(50, 500))
    )


def _near_nought(lots: np.random.Generator) -> Studio:
    tool = _tool(f"syringe {lots.choice([5, 10]):g}ml")
    return _poured(lots, tool, float(lots.uniform(0.1, 0.5)), 100.0)


def _by_weight(lots: np.random.Generator) -> Studio:
    """Stock that was filled on a scale, and is weighed out of it again."""
    scale, shown_g = unchecked_balance(step_g=0.1), float(lots.uniform(5, 150))
    yarn_g = float(lots.uniform(50, 500))
    filled_g = 504.1
    powder = mass_read(POWDER_SCALE, POWDER_G, role="powder", key="a")
    filled = mass_read(scale, filled_g, role="stock", key="b")
    strength = made_strength(
        powder=powder, volume=weighed_volume(filled=filled, powder=powder, key="T7KK")
    )
    dose = Drawn(
        strength=strength,
        amount=mass_read(scale, shown_g, role="Gorse", key="c"),
        density=stock_density(strength=strength, key="T7KK"),
    )
    dye_g = (
        _really_weighed(lots, POWDER_SCALE, POWDER_G)
        / _really_weighed(lots, scale, filled_g)
        * _really_weighed(lots, scale, shown_g)
    )
    return Studio(
        sure=sure_depth(
            yarn=mass_read(YARN_SCALE, yarn_g, role="yarn", key="d"),
            stock=[dose],
            generator=seeded(),
        ),
        truth=100 * dye_g / _really_weighed(lots, YARN_SCALE, yarn_g),
    )


def _dry(lots: np.random.Generator) -> Studio:
    scale = unchecked_balance(step_g=float(lots.choice([0.01, 0.1])))
    shown_g = scale.step_g * float(lots.integers(3, 80))
    yarn_g = float(lots.uniform(50, 500))
    return Studio(
        sure=sure_depth(
            yarn=mass_read(YARN_SCALE, yarn_g, role="yarn", key="d"),
            dry=[mass_read(scale, shown_g, role="Gorse", key="c")],
            generator=seeded(),
        ),
        truth=100
        * np.maximum(_really_weighed(lots, scale, shown_g), 0)
        / _really_weighed(lots, YARN_SCALE, yarn_g),
    )


def _over_two_bottles(lots: np.random.Generator) -> Studio:
    """One making in two bottles, both poured from with one cylinder."""
    tool, yarn_g = _tool("cylinder 100ml B"), float(lots.uniform(50, 500))
    first_ml, second_ml = (float(each) for each in lots.uniform(20, 100, 2))
    stock = [
        Drawn(
            strength=_strength(),
            amount=volume_read(tool, each, role="Gorse", key="c"),
        )
        for each in (first_ml, second_ml)
    ]
    error_ml = half_width_ml(tool=tool, volume_ml=100) * lots.uniform(-1, 1, DRAWS)
    dye_g = _true_strength(lots) * (first_ml + second_ml + 2 * error_ml) / 100
    return Studio(
        sure=sure_depth(
            yarn=mass_read(YARN_SCALE, yarn_g, role="yarn", key="d"),
            stock=stock,
            generator=seeded(),
        ),
        truth=100 * dye_g / _really_weighed(lots, YARN_SCALE, yarn_g),
    )


@pytest.mark.by_hand
@pytest.mark.parametrize(
    "kind",
    [
        _from_cylinders,
        _from_syringes,
        _near_nought,
        _by_weight,
        _dry,
        _over_two_bottles,
    ],
)
def test_the_interval_holds_the_truth_19_times_in_20(
    kind: Callable[[np.random.Generator], Studio],
) -> None:
    lots = np.random.default_rng(20261125)
    held = [
        np.mean(
            (studio.sure.interval.low <= studio.truth)
            & (studio.truth <= studio.sure.interval.high)
        )
        for studio in (kind(lots) for _ in range(SETUPS))
    ]
    assert len(held) * DRAWS == 10_000
    assert 0.93 <= float(np.mean(held)) <= 0.98
