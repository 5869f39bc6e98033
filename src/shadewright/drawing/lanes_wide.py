"""A dye day as lanes for the desk: time runs to the right, a lane for each source.

Above the lanes stand what each circuit carries under its limit, and the moments that
want hands. A bar takes its shade from its stage; what is off the source is thin.
"""

from collections.abc import Iterator

from shadewright.drawing import svg
from shadewright.drawing.lanes_shown import Bar, Lane, LaneBath, LanesShown, Power

_WIDTH, _LEFT, _RIGHT = 1150.0, 104.0, 12.0
_TOP = 22.0
_POWER, _POWER_APART = 56.0, 22.0
_HANDS, _HANDS_APART = 18.0, 24.0
_LABEL, _BAR, _THIN, _ROW, _FOOT = 16.0, 24.0, 10.0, 12.0, 14.0
_SIGN = 7.6
_MOST_NAME = 13


class _Plane:
    """From minutes to the picture, and from lanes to their heights."""

    def __init__(self, shown: LanesShown) -> None:
        self.per_min = (_WIDTH - _LEFT - _RIGHT) / max(shown.length, 1.0)
        self.hands = _TOP + 8.0 + len(shown.powers) * (_POWER + _POWER_APART)
        tops, y = [], self.hands + _HANDS + _HANDS_APART
        for lane in shown.lanes:
            tops.append(y)
            y += _height(lane)
        self.tops, self.bottom = tops, y

    def x(self, minute: float) -> float:
        return _LEFT + minute * self.per_min


def lanes_wide(shown: LanesShown) -> str:
    """Draw a day's lanes for a wide page."""
    plane = _Plane(shown)
    body = "".join([
        *_hours(shown, plane),
        *(_power(each, n, shown, plane) for n, each in enumerate(shown.powers)),
        svg.words(0, plane.hands + 13, "Hands", "strong"),
        *(_hand(start, end, plane) for start, end in shown.hands),
        *(_lane(each, n, plane) for n, each in enumerate(shown.lanes)),
        *(_bath(each, shown, plane) for each in shown.baths),
        _now(shown, plane),
    ])
    picture = svg.drawing(
        "chart lanes wide",
        svg.Box(_WIDTH, plane.bottom + 18.0),
        body,
        name=shown.name,
        more=shown.more,
    )
    scale = f'data-opens="{shown.opens_min}" data-per-min="{plane.per_min:.5f}"'
    return picture.replace("<svg ", f"<svg {scale} ", 1)


def _height(lane: Lane) -> float:
    return _LABEL + _BAR + _ROW * max(lane.rows, 1) + _FOOT


def _hours(shown: LanesShown, plane: _Plane) -> Iterator[str]:
    for minute, said in shown.hours:
        x = plane.x(minute)
        yield svg.line(x, _TOP, x, plane.bottom, "grid")
        is_last = x > _WIDTH - 24.0
        yield svg.words(
            _WIDTH if is_last else x, 14, said, "end" if is_last else "middle"
        )


def _power(power: Power, place: int, shown: LanesShown, plane: _Plane) -> str:
    foot = _TOP + 8.0 + place * (_POWER + _POWER_APART) + _POWER
    per_kw = _POWER / power.most_kw
    path = f"M{svg.length(plane.x(0))} {svg.length(foot)}"
    for _start, end, kw in power.spans(shown.length):
        path += f"V{svg.length(foot - kw * per_kw)}H{svg.length(plane.x(end))}"
    limit = foot - power.limit_kw * per_kw
    said = f"limit {power.limit_kw:.3g}, peak {power.peak_kw:.3g}"
    end = _WIDTH - _RIGHT
    return (
        svg.words(0, foot - 34, _short(power.name), "strong")
        + svg.words(0, foot - 18, "kW", "quiet-text")
        + f'<path d="{path}V{svg.length(foot)}Z" class="area"/>'
        + svg.line(_LEFT, limit, end, limit, "limit")
        + svg.words(end - 4, limit + 15, said, "end")
    )


def _hand(start: float, end: float, plane: _Plane) -> str:
    width = max(3.0, (end - start) * plane.per_min)
    return svg.rect(plane.x(start), plane.hands, width, _HANDS, "hands")


def _lane(lane: Lane, place: int, plane: _Plane) -> str:
    y = plane.tops[place]
    room = svg.rect(0, y - 8, _WIDTH, _height(lane), "room")
    room = room.replace("<rect ", f'<rect data-source="{svg.text(lane.name)}" ', 1)
    return (
        room
        + svg.line(0, y - 8, _WIDTH, y - 8, "grid")
        + svg.words(0, y + 22, _short(lane.name), "strong")
        + svg.words(0, y + 38, lane.power, "quiet-text")
    )


def _bath(bath: LaneBath, shown: LanesShown, plane: _Plane) -> str:
    top = plane.tops[bath.lane]
    bars = "".join(_bar(bar, bath, top, plane) for bar in bath.bars)
    name = svg.words(
        plane.x(bath.named_at), top + 10, _room_for(bath, shown, plane), "strong"
    )
    source = shown.lanes[bath.lane].name
    said = (
        f'data-bath="{svg.text(bath.number)}" data-source="{svg.text(source)}" '
        f'data-starts="{round(bath.starts)}"'
    )
    return f'<g class="bath" {said}>{bars}{name}</g>'


def _bar(bar: Bar, bath: LaneBath, top: float, plane: _Plane) -> str:
    y = top + _LABEL + (_BAR + 1.0 + _ROW * bath.row if bar.is_thin else 0.0)
    x, height = plane.x(bar.starts), _THIN if bar.is_thin else _BAR
    width = (bar.ends - bar.starts) * plane.per_min
    return svg.rect(x, y, width, height, bar.kind) + svg.rect(
        x, y, width, height, "box"
    )


def _room_for(bath: LaneBath, shown: LanesShown, plane: _Plane) -> str:
    """Return the name of a bath as far as the next one in its lane lets it go."""
    later = [
        each.named_at
        for each in shown.baths
        if each.lane == bath.lane and each.named_at > bath.named_at
    ]
    room = (min([*later, shown.length]) - bath.named_at) * plane.per_min
    signs = int(room // _SIGN)
    if len(bath.name) <= signs:
        return bath.name
    if signs > len(bath.short) + 3:
        return f"{bath.name[: signs - 1]}…"
    return bath.short if signs >= len(bath.short) else ""


def _now(shown: LanesShown, plane: _Plane) -> str:
    if shown.now is None or not 0.0 <= shown.now <= shown.length:
        return ""
    x = plane.x(shown.now)
    is_late = x > _WIDTH - 90.0
    said = svg.words(
        x - 5 if is_late else x + 5,
        plane.bottom + 13,
        shown.now_words,
        "strong end" if is_late else "strong",
    )
    return svg.line(x, _TOP, x, plane.bottom + 4, "now") + said


def _short(name: str) -> str:
    return name if len(name) <= _MOST_NAME else f"{name[: _MOST_NAME - 1]}…"
