"""Small bars that stand beside a number in words."""

from shadewright.drawing import svg

_TAPE_MIDDLE = 60.0
_TAPE_PER_PERCENT = 5.6
_TAPE_END_PERCENT = 10.0
_TAPE_TICKS_PERCENT = (-5, -2, 2, 5)


def fill_bar(*, full: float, is_low: bool = False) -> str:
    """Draw how much is left of a jar or a pot, as a share of the whole."""
    css = "full low" if is_low else "full"
    body = svg.rect(0, 0, 100, 12, "tank") + svg.rect(
        0, 0, 100 * svg.fraction(full), 12, css
    )
    return svg.drawing("fill-bar", svg.Box(100, 12, is_stretched=True), body)


def spread_bar(*, relative_spread: float) -> str:
    """Draw a relative standard uncertainty on a tape from -10 % to +10 %.

    Ticks stand at 2 and 5 %. A spread beyond the tape ends in arrow heads.
    """
    percent = 100 * svg.fraction(relative_spread)
    half = min(percent, _TAPE_END_PERCENT) * _TAPE_PER_PERCENT
    ticks = "".join(_tick(at) for at in _TAPE_TICKS_PERCENT)
    body = (
        svg.line(4, 8, 116, 8, "track")
        + ticks
        + svg.rect(_TAPE_MIDDLE - half, 3, 2 * half, 10, "band")
        + (_ARROWS if percent > _TAPE_END_PERCENT else "")
        + svg.rect(_TAPE_MIDDLE - 1.2, 0, 2.4, 16, "mid")
    )
    return svg.drawing("spread-bar", svg.Box(120, 16), body)


def progress_line(*, step: int, steps: int) -> str:
    """Draw how far a guided task has come: one piece a step."""
    pieces = "".join(
        svg.rect(100 * place, 0, 96, 8, _piece(place + 1, step))
        for place in range(steps)
    )
    box = svg.Box(100 * steps - 4, 8, is_stretched=True)
    return svg.drawing("progress-line", box, pieces, name=f"Step {step} of {steps}")


_ARROWS = '<path d="M4 2L-2 8L4 14ZM116 2L122 8L116 14Z" class="mid"/>'


def _tick(percent: float) -> str:
    x = _TAPE_MIDDLE + percent * _TAPE_PER_PERCENT
    return svg.line(x, 5, x, 11, "gate")


def _piece(place: int, step: int) -> str:
    if place < step:
        return "gone"
    return "now" if place == step else "to-come"
