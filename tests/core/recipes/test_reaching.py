"""The reach is neither more nor less than what mixes really give."""

from itertools import pairwise

import numpy as np
import pytest
from numpy.typing import NDArray

from shadewright.core.colour import Light
from shadewright.core.colour.cielab import Lab
from shadewright.core.recipes import Wishes, matches, target_of_labs
from shadewright.core.recipes.colouring import labs_of
from shadewright.core.recipes.curves import curves_of
from shadewright.core.recipes.outlines import HALF_WIDTH, closed, outlines_of
from shadewright.core.recipes.reaching import is_well_inside, reached_cells, reaches
from shadewright.core.recipes.wishes import most_of_each
from shadewright.errors import NotFoundError, OutOfRangeError
from tests.core.recipes.palettes import palette

DYES = 7
FEW = Wishes(most_dyes=3)
Floats = NDArray[np.float64]


def only(*kept: int) -> Wishes:
    """Return wishes that leave out all other dyes."""
    names = palette().names.dyes
    others = tuple(names[dye] for dye in range(DYES) if dye not in kept)
    return Wishes(most_dyes=3, unwanted=others)


def grown(cells: "NDArray[np.bool_]") -> "NDArray[np.bool_]":
    """Return cells with their neighbours."""
    found = cells.copy()
    for axis in (0, 1):
        found |= np.roll(found, 1, axis) | np.roll(found, -1, axis)
    return found


@pytest.fixture(scope="module")
def mixed() -> Floats:
    """The colours of very many mixes of three dyes within the limits."""
    draws = np.random.default_rng(5)
    depths = np.zeros((40_000, DYES))
    for row in depths:
        three = draws.choice(DYES, 3, replace=False)
        row[three] = np.exp(draws.uniform(np.log(0.002), np.log(6.0), 3))
    names = palette().names.dyes
    most = np.array(most_of_each(FEW, palette(), names))
    may = (depths <= most).all(1) & (depths.sum(1) <= FEW.most_depth_percent)
    curves = curves_of(palette(), "wool", names)
    parts = np.array_split(depths[may], 20)
    return np.concatenate([labs_of(curves, part) for part in parts])


@pytest.mark.parametrize("lightness", [70.0, 50.0, 30.0])
def test_what_mixes_give_lies_inside(mixed: Floats, lightness: float) -> None:
    near = np.abs(mixed[:, 0] - lightness) < 0.15
    places = np.floor(mixed[near, 1:] + HALF_WIDTH).astype(int)
    cells = closed(reached_cells(palette(), base="wool", lightness=lightness))
    assert len(places) > 60
    assert cells[tuple(places.T)].mean() > 0.98
    assert grown(grown(cells))[tuple(places.T)].all()


@pytest.mark.parametrize("lightness", [60.0, 35.0])
def test_the_outline_is_where_the_search_ends_too(lightness: float) -> None:
    """A recipe search knows nothing of proportions and triangles."""
    (found,) = reaches(palette(), base="wool", lightnesses=[lightness])
    outline = np.array(found.outlines[0])
    outward = np.roll(outline, 1, 0) - np.roll(outline, -1, 0)
    outward = np.stack([-outward[:, 1], outward[:, 0]], 1)
    outward /= np.linalg.norm(outward, axis=1, keepdims=True)
    for place in range(0, len(outline), len(outline) // 4):
        misses = [
            _miss(lightness, outline[place] + away * outward[place])
            for away in (-1.5, 6.0)
        ]
        assert misses[0] < 0.5
        assert misses[1] > 1.5


def _miss(lightness: float, ab: Floats) -> float:
    """Return how far in Lab the nearest recipe of three dyes lies."""
    wanted = Lab(lightness, *ab.tolist())
    target = target_of_labs({Light.D65: wanted})
    found = matches(palette(), base="wool", target=target, wishes=FEW)
    return min(float(np.linalg.norm(np.subtract(x.lab, wanted))) for x in found.recipes)


def test_a_colour_well_inside_is_told_from_one_at_the_edge() -> None:
    (found,) = reaches(palette(), base="wool", lightnesses=[50.0])
    outline = np.array(found.outlines[0])
    middle = Lab(50.0, *(outline.max(0) + outline.min(0)).tolist())
    inside = Lab(50.0, middle.a / 2.0, middle.b / 2.0)
    edge = Lab(50.0, *outline[0].tolist())
    asked = (inside, edge, Lab(50.0, 127.9, -3.0), Lab(99.0, 0.0, 0.0))
    told = [is_well_inside(palette(), base="wool", lab=lab) for lab in asked]
    assert told == [True, False, False, False]
    assert _miss(50.0, np.array(inside[1:])) < 0.3


@pytest.mark.parametrize("lightness", [70.0, 30.0])
def test_a_further_dye_takes_nothing_away(lightness: float) -> None:
    cells = [
        reached_cells(palette(), base="wool", lightness=lightness, wishes=only(*kept))
        for kept in ((2,), (1, 2), (1, 2, 5), (0, 1, 2, 5), range(DYES))
    ]
    for fewer, more in pairwise(cells):
        assert (more >= fewer).all()
        assert more.sum() > fewer.sum()


def test_one_dye_is_one_colour_and_two_are_a_thread() -> None:
    one, two = (
        reached_cells(palette(), base="wool", lightness=50.0, wishes=only(*kept))
        for kept in ((2,), (1, 2))
    )
    assert one.sum() == 1
    a, b = np.argwhere(one)[0] - HALF_WIDTH + 0.5
    assert _miss(50.0, np.array([a, b])) < 1.0
    assert 10 < two.sum() < 300


def test_less_dye_reaches_less() -> None:
    pale = Wishes(most_dyes=3, most_depth_percent=1.0)
    whole, some = (
        reached_cells(palette(), base="wool", lightness=50.0, wishes=wishes)
        for wishes in (FEW, pale)
    )
    assert 0 < some.sum() < 0.8 * whole.sum()
    assert not (some & ~grown(grown(whole))).any()


def test_nothing_is_lighter_than_bare_yarn() -> None:
    (found,) = reaches(palette(), base="wool", lightnesses=[95.0])
    assert found.outlines == ()


def test_what_is_not_known_is_refused() -> None:
    with pytest.raises(NotFoundError, match="nettle"):
        reaches(palette(), base="nettle")
    with pytest.raises(OutOfRangeError, match=r"L\*"):
        reaches(palette(), base="wool", lightnesses=[101.0])


def test_an_outline_goes_round_cells_and_their_hole() -> None:
    cells = np.zeros((256, 256), dtype=bool)
    cells[128:158, 108:148] = True
    cells[138:143, 118:123] = False
    cells[20:22, 20:22] = True
    outside, hole = (np.array(each) for each in outlines_of(cells))
    np.testing.assert_allclose(outside.min(0), [0.0, -20.0], atol=0.01)
    np.testing.assert_allclose(outside.max(0), [30.0, 20.0], atol=0.01)
    np.testing.assert_allclose(hole.mean(0), [12.5, -7.5], atol=0.1)


def test_a_gap_of_one_cell_is_none() -> None:
    cells = np.zeros((256, 256), dtype=bool)
    cells[100:110, 100:110] = True
    whole = cells.copy()
    cells[104, 103:107] = False
    np.testing.assert_array_equal(closed(cells), whole)
