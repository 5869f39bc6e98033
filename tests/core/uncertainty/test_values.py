"""Values, and terms that come from one source."""

from math import inf, nan

import pytest
from hypothesis import given

from shadewright.core.uncertainty import Shape, Term, Value, bounded, exact, merged
from shadewright.errors import OutOfRangeError
from tests.core.uncertainty.terms import value, values


@pytest.mark.by_hand
def test_spreads_add_in_squares() -> None:
    # 3, 4 and 12: √(9 + 16 + 144) = 13
    assert value(130.0, scale=3.0, mark=-4.0, pour=12.0).u == 13.0
    assert value(-130.0, scale=3.0, mark=-4.0, pour=12.0).u_rel == 0.1


def test_what_is_exact_has_no_spread() -> None:
    assert (exact(5).u, exact(5).u_rel, exact(0).u_rel) == (0.0, 0.0, 0.0)


def test_at_nought_a_share_means_nothing() -> None:
    assert value(0.0, scale=0.1).u_rel == inf


@pytest.mark.by_hand
def test_terms_of_one_source_add_up_before_they_are_squared() -> None:
    one = Term(name="mark of the jug", source="jug", u=0.3)
    other = Term(name="mark of the jug, again", source="jug", u=0.4)
    scale = Term(name="scale", source="scale", u=2.4)
    both = merged([one, scale, other])
    assert [(term.name, term.u) for term in both] == [
        ("mark of the jug", 0.7),
        ("scale", 2.4),
    ]
    assert Value(value=1.0, terms=both).u == pytest.approx(2.5)  # √(0.49 + 5.76)


def test_what_cancels_is_gone() -> None:
    there = Term(name="scale", source="scale", u=0.3)
    back = Term(name="scale", source="scale", u=-0.3)
    assert merged([there, back]) == ()


def test_a_bound_of_nought_is_no_term() -> None:
    read = bounded(
        1.0, half_width=0.0, shape=Shape.RECTANGULAR, name="mark", source="mark"
    )
    assert read == exact(1.0)


@pytest.mark.parametrize("u", [nan, inf, -inf])
def test_a_term_that_is_no_number_is_refused(u: float) -> None:
    with pytest.raises(OutOfRangeError, match="spread"):
        merged([Term(name="scale", source="scale", u=u)])


@given(values())
def test_merging_twice_changes_nothing(given_value: Value) -> None:
    once = merged(given_value.terms)
    assert merged(once) == once == given_value.terms
