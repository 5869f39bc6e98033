"""Orders that differ a little, each by draws that are written down."""

import json
from random import Random

import pytest

from shadewright.core.planning.beginnings import rules_of_thumb
from shadewright.core.planning.day import PlaceBefore
from shadewright.core.planning.neighbours import neighbour
from shadewright.core.planning.sequences import KEPT, Order, Work
from shadewright.exchange.day_file import read_day
from tests.core.planning.made_days import made_day


class Written:
    """Draws that were written down, used up one by one."""

    def __init__(self, *draws: float) -> None:
        self._left = iter(draws)

    def random(self) -> float:
        """Return the next one."""
        return next(self._left)

    def gauss(self, mu: float, sigma: float) -> float:
        """Return no normal number: nothing here asks for one."""
        raise NotImplementedError

    @property
    def is_used_up(self) -> bool:
        """Whether all were drawn."""
        return next(self._left, None) is None


def work_of(*, is_anew: bool = False) -> Work:
    """Return a day of six baths; planned anew the first of them has a place."""
    day = read_day(json.dumps(made_day(21)))
    work = Work.of(day, {})
    if not is_anew:
        return work
    way = work.ways[0][0]
    pot, source = day.pots[way.pots[0]].name, day.sources[way.source].name
    return Work.of(
        day, {day.baths[0].name: PlaceBefore(pot=pot, source=source, start=0)}
    )


def begun(work: Work, **choices: int) -> Order:
    """Return the first order of a day, some baths (``b1=1``) on other spots."""
    order = next(rules_of_thumb(work))
    spots = [choices.get(f"b{n}", 0) for n in range(len(order.choices))]
    return Order(moves=order.moves, choices=tuple(spots))


@pytest.mark.by_hand
def test_a_move_goes_elsewhere() -> None:
    """The first of all is put last; each bath is placed as often as before."""
    work = work_of()
    order, draws = begun(work), Written(0.59, 0.0, 0.999)
    other = neighbour(order, draws, work)
    assert other.moves == (*order.moves[1:], order.moves[0])
    assert draws.is_used_up


@pytest.mark.by_hand
def test_two_moves_are_swapped() -> None:
    """The first with the last."""
    work = work_of()
    order = begun(work)
    first, *middle, last = order.moves
    other = neighbour(order, Written(0.94, 0.0, 0.999), work)
    assert other.moves == (last, *middle, first)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("draws", "spots"),
    [
        ((0.95, 0.79, 0.0), {"b4": 2}),
        ((0.95, 0.79, 0.5), {"b1": 1}),
        ((0.95, 0.80, 0.0, 0.5), {"b0": 2, "b1": 1, "b4": 2}),
    ],
)
def test_most_changes_of_a_spot_lead_back(
    draws: tuple[float, ...], spots: dict[str, int]
) -> None:
    """Of two that strayed one goes back, below 0.8; above it any bath strays."""
    work, written = work_of(), Written(*draws)
    order = begun(work, b1=1, b4=2)
    assert neighbour(order, written, work) == begun(work, **spots)
    assert written.is_used_up


@pytest.mark.by_hand
def test_spots_change_more_often_where_a_plan_stood() -> None:
    """A draw of 0.85: a swap on a new day, the place before on one planned anew."""
    new, anew = work_of(), work_of(is_anew=True)
    assert neighbour(begun(new), Written(0.85, 0.0, 0.999), new).choices == (0,) * 6
    changed = neighbour(begun(anew), Written(0.85, 0.0, 0.49), anew)
    assert changed == begun(anew, b0=KEPT)


def test_few_baths_stray() -> None:
    """A thousand changes in a row, each kept: not one bath in six is off its spot."""
    work, strayed = work_of(), 0
    draws = Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    order = begun(work)
    for _time in range(1000):
        order = neighbour(order, draws, work)
        strayed += sum(1 for choice in order.choices if choice)
    assert 0 < strayed <= 6 * 1000 / 6
