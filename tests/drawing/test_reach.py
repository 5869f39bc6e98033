"""On a reach everything is where it is, and names make way for each other."""

import re
from itertools import combinations

import pytest

from shadewright.drawing import REACH_SIDES, Aim, Outline, ReachShown, Spot, reach_map

LOOP = ((-20.0, -10.0), (40.0, -10.0), (40.0, 50.0), (-20.0, 50.0))
CSS = {"redder": "way end", "greener": "way", "yellower": "way", "bluer": "way"}


def drawn(*aims: Aim, spots: tuple[Spot, ...] = (), side: float = 440.0) -> str:
    shown = ReachShown(
        name="Reach on Hollow",
        more="Wide to the red.",
        outlines=(Outline(kind="mid", loops=(LOOP,)), Outline(kind="dark", loops=())),
        spots=spots,
        aims=aims,
    )
    return reach_map(shown, side=side)


def words(text: str) -> dict[str, tuple[float, float, float, float]]:
    """Return about how much room each name takes: left, top, right, bottom."""
    found = re.findall(
        r'<text x="(-?[\d.]+)" y="(-?[\d.]+)" class="aim-name">([^<]*)<', text
    )
    return {
        said: (float(x), float(y) - 11, float(x) + 6.4 * len(said), float(y) + 3)
        for x, y, said in found
    }


@pytest.mark.parametrize("side", REACH_SIDES.values())
def test_names_do_not_collide_and_stay_inside(side: float) -> None:
    near = {
        "Wet Fern": (0.0, 2.0),
        "Kingcup": (9.0, 8.0),
        "Deep Water": (8.0, -6.0),
        "Old Brick": (34.0, 8.0),
    }
    text = drawn(*(Aim(at=at, name=name) for name, at in near.items()), side=side)
    places = words(text)
    assert list(places) == list(near)
    for one, other in combinations(places.values(), 2):
        apart = one[0] > other[2] or other[0] > one[2]
        assert apart or one[1] > other[3] or other[1] > one[3]
    for left, top, right, bottom in places.values():
        assert left >= 0
        assert top >= 0
        assert max(right, bottom) <= side


def test_a_name_without_room_is_a_number() -> None:
    crowd = [Aim(at=(10.0, 10.0), name=f"Long Colour {place}") for place in range(12)]
    said = list(words(drawn(*crowd, side=300.0)))
    assert said[0] == "Long Colour 0"
    assert "12" in said


def test_everything_is_where_it_is() -> None:
    spots = tuple(Spot(at=at, fill="#123456") for at in ((0.0, 0.0), (30.0, 40.0)))
    text = drawn(spots=spots)
    found = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="5"', text)
    (x0, y0), (x1, y1) = ((float(x), float(y)) for x, y in found)
    scale = 440.0 / 88.0  # an outline of 60 units with 14 on either side
    assert x1 - x0 == pytest.approx(30.0 * scale)
    assert y0 - y1 == pytest.approx(40.0 * scale)
    assert text.count('class="hull mid"') == 1
    assert "hull dark" not in text


def test_without_anything_there_are_still_the_axes() -> None:
    shown = ReachShown(name="Nothing", more="", outlines=(), spots=(), aims=())
    text = reach_map(shown, side=300.0)
    for said, css in CSS.items():
        assert f'class="{css}">{said}<' in text


def test_words_are_escaped() -> None:
    text = drawn(Aim(at=(0.0, 0.0), name="<b>"))
    assert "<b>" not in text
    assert "<desc>Wide to the red.</desc>" in text
