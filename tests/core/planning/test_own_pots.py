"""Baths with pots of their own: as many as can be, the first first."""

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.own_pots import with_own_pots

POTS = st.lists(st.sets(st.integers(0, 3)), max_size=5)


def most(pots_by_bath: list[set[int]]) -> int:
    """Try every way to give a bath one of its pots, or none."""
    best = 0
    for choice in product(*[[None, *sorted(pots)] for pots in pots_by_bath]):
        given_out = [pot for pot in choice if pot is not None]
        if len(set(given_out)) == len(given_out):
            best = max(best, len(given_out))
    return best


@given(POTS)
def test_no_other_choice_serves_more(pots_by_bath: list[set[int]]) -> None:
    assert len(with_own_pots(pots_by_bath)) == most(pots_by_bath)


@given(POTS)
def test_a_bath_behind_takes_nothing_from_one_before(
    pots_by_bath: list[set[int]],
) -> None:
    for count in range(len(pots_by_bath)):
        before = with_own_pots(pots_by_bath[:count])
        assert with_own_pots(pots_by_bath)[: len(before)] == before
