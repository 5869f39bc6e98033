"""The bar of a difference: what lies where on it."""

import re

from shadewright.drawing import Difference, difference_bar


def at(css: str, drawn: str) -> list[float]:
    """Return where the line or rectangle of a class begins and ends."""
    tag = re.search(rf'<(?:line|rect)[^>]*class="{css}"[^>]*>', drawn)
    assert tag is not None
    found = dict(re.findall(r'(x1|x2|x|width)="([\d.]+)"', tag[0]))
    if "width" in found:
        first = float(found["x"])
        return [first, first + float(found["width"])]
    return [float(found["x1"]), float(found["x2"])]


def test_zone_ends_at_the_gate_and_the_band_holds_the_point() -> None:
    """All on one axis from 0 to 4: one is a quarter of the way."""
    drawn = difference_bar(Difference(usual=2.0, low=1.0, high=3.0, tolerance=1.0))
    assert at("axis", drawn) == [4.0, 296.0]
    assert at("gate", drawn) == [77.0, 77.0]
    assert at("zone", drawn) == [4.0, 77.0]
    assert at("band", drawn) == [77.0, 223.0]
    assert 'cx="150"' in drawn


def test_axis_grows_with_what_it_must_hold() -> None:
    """A wide spread, or a wide tolerance, still lies on the picture."""
    drawn = difference_bar(Difference(usual=8.0, low=5.0, high=11.0, tolerance=1.0))
    assert ">12</text>" in drawn
    assert max(at("band", drawn)) < 296.0
    wide = difference_bar(Difference(usual=1.0, low=0.5, high=2.0, tolerance=8.0))
    assert ">10</text>" in wide


def test_nought_gives_way_to_a_gate_beside_it() -> None:
    """Far out of reach the gate stands near the beginning, and its words there."""
    far = difference_bar(Difference(usual=18.0, low=17.0, high=19.0, tolerance=1.0))
    assert ">1 passes</text>" in far
    assert ">0</text>" not in far
