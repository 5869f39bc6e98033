"""Worked examples from textbooks, and what our chapter makes of them."""

from collections.abc import Callable

import pytest

from shadewright.core.solutions import (
    Portion,
    dilution,
    first_share,
    make_up_to_ml,
    mixture,
    powder_mass_g,
    ratio_ml_per_g,
    strength_of_ratio_percent,
)
from tests.published_cases import PublishedCase, published


def _thinned(*, take_ml: float, have_percent: float, to_ml: float) -> float:
    stock = Portion(volume_ml=take_ml, strength_percent=have_percent)
    water = Portion(volume_ml=to_ml - take_ml, strength_percent=0.0)
    return mixture([stock, water]).strength_percent


def _thinned_ratio(*, take_ml: float, have_ml_per_g: float, to_ml: float) -> float:
    have = strength_of_ratio_percent(ml_per_g=have_ml_per_g)
    thin = _thinned(take_ml=take_ml, have_percent=have, to_ml=to_ml)
    return ratio_ml_per_g(strength_percent=thin)


def _stock_l(*, have_percent: float, want_percent: float, volume_ml: float) -> float:
    plan = dilution(
        have_percent=have_percent, want_percent=want_percent, volume_ml=volume_ml
    )
    return plan.stock_ml / 1000.0


def _stock_of_ratio_ml(
    *, have_ml_per_g: float, want_ml_per_g: float, volume_ml: float
) -> float:
    return dilution(
        have_percent=strength_of_ratio_percent(ml_per_g=have_ml_per_g),
        want_percent=strength_of_ratio_percent(ml_per_g=want_ml_per_g),
        volume_ml=volume_ml,
    ).stock_ml


def _reaches_ml(*, take_ml: float, have_percent: float, want_ml_per_g: float) -> float:
    return make_up_to_ml(
        powder_g=powder_mass_g(volume_ml=take_ml, strength_percent=have_percent),
        strength_percent=strength_of_ratio_percent(ml_per_g=want_ml_per_g),
    )


def _mixed(*, portions: list[list[float]]) -> float:
    return mixture([
        Portion(volume_ml=ml, strength_percent=percent) for ml, percent in portions
    ]).strength_percent


def _first_to_second(
    *, first_percent: float, second_percent: float, want_percent: float
) -> float:
    share = first_share(
        first_percent=first_percent,
        second_percent=second_percent,
        want_percent=want_percent,
    )
    return share / (1.0 - share)


QUESTIONS: dict[str, Callable[..., float]] = {
    "thinned": _thinned,
    "thinned_ratio": _thinned_ratio,
    "stock_l": _stock_l,
    "stock_of_ratio_ml": _stock_of_ratio_ml,
    "reaches_ml": _reaches_ml,
    "mixed": _mixed,
    "first_to_second": _first_to_second,
}


@pytest.mark.parametrize("case", published("solutions"))
def test_the_worked_example_comes_out(case: PublishedCase) -> None:
    assert case.agrees(QUESTIONS[case.asks](**case.inputs))
