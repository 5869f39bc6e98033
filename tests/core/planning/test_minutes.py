"""Minutes as bits, against a list of minutes."""

from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.minutes import first, last, span, starts

free_minutes = st.integers(min_value=0, max_value=2**70 - 1)


@given(free=free_minutes, length=st.integers(min_value=1, max_value=40))
def test_a_span_starts_where_every_minute_is_free(free: int, length: int) -> None:
    """Bit by bit."""
    found = starts(free, length)
    for at in range(70):
        is_free = all(free >> minute & 1 for minute in range(at, at + length))
        assert bool(found >> at & 1) is is_free


@given(free=free_minutes, at=st.integers(min_value=0, max_value=80))
def test_the_first_and_the_last(free: int, at: int) -> None:
    """As a list has them."""
    minutes = [minute for minute in range(70) if free >> minute & 1]
    later = [minute for minute in minutes if minute >= at]
    earlier = [minute for minute in minutes if minute <= at]
    assert first(free, least=at) == (later[0] if later else None)
    assert last(free, most=at) == (earlier[-1] if earlier else None)


def test_a_span_backwards_is_none() -> None:
    """Nothing lies between an end and a later start."""
    assert span(5, end=5) == span(7, end=3) == 0
