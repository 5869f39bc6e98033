"""A temperature programme as a picture."""

from xml.etree import ElementTree as ET  # ruff: ignore[suspicious-xml-etree-import]

from shadewright import drawing
from shadewright.core.baths import Curve, Leg

NS = "{http://www.w3.org/2000/svg}"
SLOW = Curve(
    start_c=40.0,
    legs=(
        Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0),
        Leg(to_c=98.0, rise_c_per_min=0.8, hold_min=45.0),
    ),
)


def parsed(text: str) -> ET.Element:
    # Our own drawings are no danger to the parser.
    return ET.fromstring(text)  # ruff: ignore[suspicious-xml-element-tree-usage]


def corners(curve: Curve) -> list[tuple[float, float]]:
    (line,) = parsed(drawing.heat_curve(curve)).iter(f"{NS}polyline")
    pairs = (pair.split(",") for pair in line.attrib["points"].split())
    return [(float(x), float(y)) for x, y in pairs]


def test_a_curve_goes_right_and_never_down() -> None:
    found = corners(SLOW)
    assert len(found) == 5
    assert [x for x, _ in found] == sorted(x for x, _ in found)
    assert [y for _, y in found] == sorted((y for _, y in found), reverse=True)


def test_a_curve_says_its_degrees_and_its_minutes() -> None:
    words = [one.text for one in parsed(drawing.heat_curve(SLOW)).iter(f"{NS}text")]
    said = [str(word).replace("\u00a0", " ") for word in words]
    assert said == ["98 °C", "70 °C", "40 °C", "80 min", "125 min"]


def test_a_curve_that_only_waits_can_be_drawn() -> None:
    leg = Leg(to_c=40.0, rise_c_per_min=1.0, hold_min=30.0)
    assert len(corners(Curve(start_c=40.0, legs=(leg,)))) == 2
    still = Curve(start_c=40.0, legs=(Leg(to_c=40.0, rise_c_per_min=1.0),))
    assert len(corners(still)) == 1
