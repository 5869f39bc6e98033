"""The same sums by the general-purpose package ``uncertainties``, term by term."""

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given
from uncertainties import ufloat

from shadewright.core.uncertainty import Value, product, quotient, scaled, total
from tests.core.uncertainty.terms import SOURCES, values


def unit_errors() -> dict[str, Any]:
    """One error a source, of standard uncertainty 1, shared by all values."""
    return {source: ufloat(0.0, 1.0, source) for source in SOURCES}


def theirs(one: Value, errors: Mapping[str, Any]) -> Any:  # ruff: ignore[any-type]
    return one.value + sum(term.u * errors[term.source] for term in one.terms)


def same(ours: Value, other: Any) -> None:  # ruff: ignore[any-type]
    found = {e.tag: d for e, d in other.derivatives.items()}
    assert ours.value == pytest.approx(other.nominal_value)
    assert ours.u == pytest.approx(other.std_dev, rel=1e-9, abs=1e-9)
    signed = {term.source: term.u for term in ours.terms}
    for source in SOURCES:
        wanted = found.get(source, 0.0)
        assert signed.get(source, 0.0) == pytest.approx(wanted, rel=1e-9, abs=1e-9)


@given(values(), values(), values())
def test_sums_products_and_quotients_agree(a: Value, b: Value, c: Value) -> None:
    errors = unit_errors()
    x, y, z = (theirs(each, errors) for each in (a, b, c))
    zero = errors["scale"] * 0.0
    same(total(a, b, scaled(c, by=-1.0)), x + y - z + zero)
    same(product(a, b, c), x * y * z + zero)
    same(quotient(a, b), x / y + zero)
    ours = scaled(quotient(product(a, b), total(b, c)), by=100.0)
    same(ours, x * y / (y + z) * 100.0 + zero)
