"""A strip keeps its axis, its ribbon has no gap, and its squares say what they are."""

import re
from itertools import pairwise

import pytest

from shadewright.drawing import STRIP_ROOMS, DyeStrip, Square, Told, dye_strip
from shadewright.drawing.strips import Room

WIDE = STRIP_ROOMS["wide"]
DEPTHS = (0.03, 0.1, 0.3464, 1.2, 4.0)


def told(*, vivid: tuple[float, ...] = (), off: float = 1.0) -> tuple[Told, ...]:
    return tuple(
        Told(
            depth_percent=depth,
            fill=f"#2030{place}0",
            is_true=depth not in vivid,
            within_90=off,
        )
        for place, depth in enumerate(DEPTHS)
    )


def square(depth: float, *, is_out: bool = False, is_true: bool = True) -> Square:
    return Square(depth_percent=depth, fill="#804020", is_true=is_true, is_out=is_out)


def drawn(*squares: Square, ribbon: tuple[Told, ...] | None = None) -> str:
    shown = DyeStrip(
        name="Gorse", more="<measured>", told=ribbon or told(), squares=squares
    )
    return dye_strip(shown, room=WIDE, number="1")


def boxes(text: str) -> list[tuple[float, float]]:
    """Return where each square begins and how wide it is."""
    return [
        (float(x), float(width))
        for x, width in re.findall(
            r'<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"', text
        )
    ]


def test_equal_ratios_are_equally_far_apart() -> None:
    xs = [x for x, _width in boxes(drawn(*map(square, (0.05, 0.2, 0.8, 3.2))))]
    steps = [right - left for left, right in pairwise(xs)]
    assert steps == pytest.approx([steps[0]] * 3, abs=0.02)


def test_the_ribbon_is_one_shape_with_every_colour_in_its_place() -> None:
    text = drawn()
    assert text.count('fill="url(#ribbon-1)"') == 1
    stops = re.findall(r'<stop offset="([\d.]+)" stop-color="(#\w+)"', text)
    assert [colour for _at, colour in stops] == [each.fill for each in told()]
    assert [float(at) for at, _colour in stops] == pytest.approx(
        [0.0, 0.246, 0.5, 0.7539, 1.0], abs=0.001
    )


@pytest.mark.parametrize(
    ("off", "thick"), [(0.4, 16.0), (1.0, 16.0), (2.0, 8.0), (4.0, 4.0), (50.0, 3.0)]
)
def test_the_ribbon_is_thinner_where_less_sure(off: float, thick: float) -> None:
    path = re.search(r'<path d="M([^Z]*)Z" fill="url', drawn(ribbon=told(off=off)))
    assert path is not None
    ys = {float(point.split()[1]) for point in path[1].split("L")}
    assert max(ys) - min(ys) == pytest.approx(thick)


def test_squares_that_would_cover_each_other_touch() -> None:
    found = boxes(drawn(square(1.0), square(1.0), square(1.05), square(0.1)))
    assert len(found) == 4
    for (left, width), (right, _width) in pairwise(found[1:]):
        assert left + width == pytest.approx(right, abs=0.02)
    assert found[0][0] + found[0][1] < found[1][0]


@pytest.mark.parametrize("room", STRIP_ROOMS.values(), ids=STRIP_ROOMS)
def test_no_square_covers_another(room: Room) -> None:
    """A group that grows wider takes in the neighbours that it would cover."""
    depths = (0.05, 0.078, 0.08, 0.08, 0.08, 0.4, 0.5, 3.9, 4.0, 4.0, 4.0, 4.0, 9.0)
    shown = DyeStrip(
        name="Kelp", more="", told=told(), squares=tuple(map(square, depths))
    )
    found = boxes(dye_strip(shown, room=room, number="1"))
    assert len(found) == len(depths)
    for (left, width), (right, _width) in pairwise(found):
        assert left + width <= right + 0.02
    assert found[-1][0] + found[-1][1] <= room.width + 0.02


@pytest.mark.parametrize("depth", [0.001, 0.03, 4.0, 20.0])
def test_a_square_stays_on_the_strip(depth: float) -> None:
    ((left, width),) = boxes(drawn(square(depth)))
    assert 0.0 <= left <= left + width <= WIDE.width


def test_what_is_left_out_is_dashed_and_what_is_too_vivid_is_marked() -> None:
    text = drawn(square(0.3, is_out=True), square(1.0, is_true=False))
    assert text.count('class="measured out"') == 1
    assert text.count('class="cut"') == 1
    assert 'class="vivid"' not in text
    vivid = drawn(ribbon=told(vivid=(1.2, 4.0)))
    assert vivid.count('class="vivid"') == 1


def test_words_are_escaped() -> None:
    text = drawn()
    assert 'role="img" aria-label="Gorse"' in text
    assert "<desc>&lt;measured&gt;</desc>" in text
