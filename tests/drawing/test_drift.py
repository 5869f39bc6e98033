"""Lots in their order as a picture."""

from xml.etree import ElementTree as ET  # ruff: ignore[suspicious-xml-etree-import]

import pytest

from shadewright import drawing
from shadewright.drawing import DRIFT_ROOMS, DriftPoint, DriftShown, drift_chart

NS = "{http://www.w3.org/2000/svg}"


def point(difference: float, *, lighter: float = 0.0, flag: int = 0) -> DriftPoint:
    return DriftPoint(
        label="2 Nov",
        difference=difference,
        off=0.3,
        lighter=lighter,
        flag=flag or None,
    )


def shown(*points: DriftPoint) -> DriftShown:
    return DriftShown(
        name="Two & more lots",
        more="It climbs.",
        points=points,
        noise=0.4,
        tolerance=1.0,
    )


def drawn(*points: DriftPoint, width: str = "wide") -> ET.Element:
    text = drift_chart(shown(*points), room=DRIFT_ROOMS[width])
    # Our own drawings are no danger to the parser.
    return ET.fromstring(text)  # ruff: ignore[suspicious-xml-element-tree-usage]


def heights(picture: ET.Element) -> list[float]:
    (trace,) = picture.iter(f"{NS}polyline")
    return [float(pair.split(",")[1]) for pair in trace.attrib["points"].split()]


@pytest.mark.parametrize("width", DRIFT_ROOMS)
def test_further_off_stands_higher_and_within_the_picture(width: str) -> None:
    found = heights(drawn(point(0.2), point(0.9), point(2.4), width=width))
    assert found == sorted(found, reverse=True)
    assert 0.0 < found[-1] < found[0] < DRIFT_ROOMS[width].bottom


def test_lighter_looks_up_darker_down_and_like_is_round() -> None:
    picture = drawn(point(1, lighter=2.0), point(1, lighter=-2.0), point(1), point(1))
    up, down = picture.findall(f"{NS}path[@class='dot']")
    assert up.attrib["d"].split("L")[0] != down.attrib["d"].split("L")[0]
    assert len(picture.findall(f"{NS}circle[@class='dot']")) == 1
    assert len(picture.findall(f"{NS}circle[@class='now']")) == 1


def test_a_flag_stands_where_something_was_new_and_is_numbered() -> None:
    picture = drawn(point(0.2), point(0.4, flag=1), point(0.4, flag=2))
    numbers = picture.findall(f"{NS}text[@class='flag-no']")
    assert [one.text for one in numbers] == ["1", "2"]


def test_a_name_is_escaped_and_one_lot_can_be_drawn() -> None:
    picture = drawn(point(0.0))
    assert picture.attrib["aria-label"] == "Two & more lots"
    assert heights(picture) == [drawing.DRIFT_ROOMS["wide"].bottom]
