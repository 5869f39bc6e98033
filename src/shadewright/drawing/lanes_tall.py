"""A dye day as lanes for a phone: turned by a quarter, so that time runs down."""

from collections.abc import Iterator

from shadewright.drawing import svg
from shadewright.drawing.lanes_shown import Bar, LaneBath, LanesShown, Power

_WIDTH, _TOP, _PER_MIN = 340.0, 44.0, 1.25
_LINE = 13.0
_HANDS_X, _HANDS = 44.0, 22.0
_FIRST, _LAST = 80.0, 300.0
_POWER_X, _POWER = 306.0, 32.0
_MOST_APART, _MOST_BAR = 58.0, 20.0
_SIGN = 6.6


class _Plane:
    """From minutes to the picture, and from lanes to their places across it."""

    def __init__(self, shown: LanesShown) -> None:
        last = _LAST if shown.powers else _WIDTH
        self.apart = min(_MOST_APART, (last - _FIRST) / max(len(shown.lanes), 1))
        self.bar = min(_MOST_BAR, self.apart * 0.42)
        self.thin = min(8.0, self.apart * 0.16)
        self.bottom = _TOP + shown.length * _PER_MIN

    def x(self, lane: int) -> float:
        return _FIRST + lane * self.apart

    @staticmethod
    def y(minute: float) -> float:
        return _TOP + minute * _PER_MIN


def lanes_tall(shown: LanesShown) -> str:
    """Draw a day's lanes for a phone."""
    plane = _Plane(shown)
    body = "".join([
        *_hours(shown, plane),
        *_heads(shown, plane),
        *(_power(each, n, shown, plane) for n, each in enumerate(shown.powers)),
        *(_hand(start, end, plane) for start, end in shown.hands),
        *(_bath(each, plane) for each in shown.baths),
        *(_name(each, shown, plane) for each in shown.baths),
        _now(shown, plane),
    ])
    return svg.drawing(
        "chart lanes tall",
        svg.Box(_WIDTH, plane.bottom + 10.0),
        body,
        name=f"{shown.name}, time running down",
        more=shown.more,
    )


def _hours(shown: LanesShown, plane: _Plane) -> Iterator[str]:
    for minute, said in shown.hours:
        y = plane.y(minute)
        yield svg.line(36, y, _WIDTH, y, "grid")
        yield svg.words(0, y + 4, said, "hour")


def _heads(shown: LanesShown, plane: _Plane) -> Iterator[str]:
    yield svg.words(36, 14, "Hands", "strong")
    signs = max(1, int(plane.apart // _SIGN))
    has_room = all(len(lane.power) <= signs for lane in shown.lanes)
    for place, lane in enumerate(shown.lanes):
        x, is_numbered = plane.x(place), len(lane.name) > signs
        said = str(place + 1) if is_numbered else lane.name
        yield svg.words(x, 14, said, "strong")
        if has_room:
            yield svg.words(x, 30, lane.power, "quiet-text")
    if shown.powers:
        yield svg.words(_WIDTH, 14, "kW", "strong end")
    if len(shown.powers) == 1:
        said = f"of {shown.powers[0].limit_kw:.3g}"
        yield svg.words(_WIDTH, 30, said, "quiet-text end")


def _power(power: Power, place: int, shown: LanesShown, plane: _Plane) -> str:
    room = _POWER / len(shown.powers)
    foot = _POWER_X + place * room
    per_kw = (room - 2.0) / power.most_kw
    path = f"M{svg.length(foot)} {svg.length(plane.y(0))}"
    for _start, end, kw in power.spans(shown.length):
        path += f"H{svg.length(foot + kw * per_kw)}V{svg.length(plane.y(end))}"
    limit = foot + power.limit_kw * per_kw
    return f'<path d="{path}H{svg.length(foot)}Z" class="area"/>' + svg.line(
        limit, plane.y(0), limit, plane.bottom, "limit"
    )


def _hand(start: float, end: float, plane: _Plane) -> str:
    height = max(3.0, (end - start) * _PER_MIN)
    return svg.rect(_HANDS_X, plane.y(start), _HANDS, height, "hands")


def _bath(bath: LaneBath, plane: _Plane) -> str:
    return "".join(_bar(bar, bath, plane.x(bath.lane), plane) for bar in bath.bars)


def _name(bath: LaneBath, shown: LanesShown, plane: _Plane) -> str:
    """Write a bath's short name, unless the next in its lane would cover it."""
    later = (
        each.named_at - bath.named_at
        for each in shown.baths
        if each.lane == bath.lane and each.named_at > bath.named_at
    )
    if min(later, default=shown.length) * _PER_MIN < _LINE:
        return ""
    x = plane.x(bath.lane) + plane.bar + 3.0
    return svg.words(x, plane.y(bath.named_at) + 13, bath.short, "strong")


def _bar(bar: Bar, bath: LaneBath, x: float, plane: _Plane) -> str:
    y, height = plane.y(bar.starts), (bar.ends - bar.starts) * _PER_MIN
    width = plane.thin if bar.is_thin else plane.bar
    left = x + plane.bar + 1.0 + plane.thin * bath.row if bar.is_thin else x
    return svg.rect(left, y, width, height, bar.kind) + svg.rect(
        left, y, width, height, "box"
    )


def _now(shown: LanesShown, plane: _Plane) -> str:
    if shown.now is None or not 0.0 <= shown.now <= shown.length:
        return ""
    y = plane.y(shown.now)
    said = shown.now_words.rpartition(" ")[2]
    return svg.line(36, y, _WIDTH, y, "now") + svg.words(0, y + 4, said, "strong")
