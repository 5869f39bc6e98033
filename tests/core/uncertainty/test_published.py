"""Worked examples of spread, and what our chapter makes of them."""

from collections.abc import Callable, Sequence
from math import sqrt

import pytest

from shadewright.core.uncertainty import (
    Shape,
    Term,
    Value,
    coverage_factor,
    half_width,
    standard_uncertainty,
    total,
)
from tests.core.uncertainty.terms import shaped
from tests.published_cases import PublishedCase, published


def _rectangular(*, half_width: float) -> float:
    return standard_uncertainty(half_width=half_width, shape=Shape.RECTANGULAR)


def _triangular(*, half_width: float) -> float:
    return standard_uncertainty(half_width=half_width, shape=Shape.TRIANGULAR)


def _mix(
    *,
    normal: Sequence[float] = (),
    rectangular: Sequence[float] = (),
    triangular: Sequence[float] = (),
    rectangular_u: Sequence[float] = (),
) -> Value:
    return shaped(
        *((u, Shape.NORMAL) for u in normal),
        *((a, Shape.RECTANGULAR) for a in rectangular),
        *((a, Shape.TRIANGULAR) for a in triangular),
        *((u * sqrt(3), Shape.RECTANGULAR) for u in rectangular_u),
    )


def _in_squares(**parts: Sequence[float]) -> float:
    return _mix(**parts).u


def _of_one_source(*, u: float, times: int) -> float:
    part = Value(value=1.0, terms=(Term(name="standard", source="standard", u=u),))
    return total(*[part] * times).u


def _half_width(**parts: Sequence[float]) -> float:
    return half_width(_mix(**parts))


def _factor(*, coverage: float, normal: Sequence[float]) -> float:
    return coverage_factor(_mix(normal=normal), coverage=coverage)


QUESTIONS: dict[str, Callable[..., float]] = {
    "rectangular": _rectangular,
    "triangular": _triangular,
    "in squares": _in_squares,
    "of one source": _of_one_source,
    "half-width": _half_width,
    "factor": _factor,
}


@pytest.mark.parametrize("case", published("uncertainty"))
def test_the_worked_example_comes_out(case: PublishedCase) -> None:
    assert case.agrees(QUESTIONS[case.asks](**case.inputs))
