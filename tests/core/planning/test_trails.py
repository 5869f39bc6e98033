"""What orders have in common is placed once, and the plans are the same."""

import json
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.core.planning.beginnings import rules_of_thumb
from shadewright.core.planning.neighbours import neighbour
from shadewright.core.planning.sequences import Drawn, Work, drawn
from shadewright.core.planning.trails import Trail
from shadewright.exchange.day_file import read_day
from tests.core.planning.made_days import made_day, with_steam


def said(plan: Drawn) -> list[object]:
    """Return all that a plan says, to be compared."""
    return [plan.cost, plan.left_out, *map(str, plan.stays)]


@settings(max_examples=30)
@given(seed=st.integers(min_value=0, max_value=10**6))
def test_a_trail_changes_no_plan(seed: int) -> None:
    """Thirty orders, of which every third is followed, each placed from nothing too."""
    draws = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    day = read_day(json.dumps(with_steam(made_day(seed), seed)))
    work = Work.of(day, {})
    at = next(rules_of_thumb(work))
    trail = Trail(work, at)
    for number in range(30):
        order = neighbour(at, draws, work)
        assert said(trail.drawn(order)) == said(drawn(work, order))
        if number % 3 == 0:
            at = order
            trail.follow(at)


def test_a_trail_looks_at_fewer_spots() -> None:
    """The same order twice: the second time only its end is placed."""
    work = Work.of(read_day(json.dumps(made_day(21))), {})
    order = next(rules_of_thumb(work))
    trail = Trail(work, order)
    assert 2 * min(trail.drawn(order).spots for _time in range(2)) < (
        drawn(work, order).spots
    )
