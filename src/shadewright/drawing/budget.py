"""What a spread is made of, as bars: the longest is the one to mend.

A bar's length is its share of the variance. The first bar is dark, the others pale
with an edge, so that it prints in black and white. The words stand in the picture,
so that it keeps them when it is printed; its name says them in one sentence.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.quantities.writing import NO_BREAK, number_text
from shadewright.core.uncertainty import BudgetLine
from shadewright.drawing import svg

_MOST_BARS = 6
_ROW, _BAR = 38, 12
_WIDTH, _BAR_WIDTH = 320, 240
_LEAST = 0.005  # what has a row of its own
_MOST_SIGNS = 46


@dataclass(frozen=True, kw_only=True)
class BudgetBar:
    """One row: words, its share of the variance, and the spread alone in words."""

    name: str
    share: float
    spread: str

    @property
    def percent(self) -> str:
        """The share in words."""
        if self.share < _LEAST:
            return f"under 1{NO_BREAK}%"
        return f"{100 * self.share:.0f}{NO_BREAK}%"


def budget_rows(lines: Sequence[BudgetLine]) -> tuple[BudgetBar, ...]:
    """Return the rows of a budget, the small ones at its end as one."""
    shown = [line for line in lines[:_MOST_BARS] if line.share >= _LEAST]
    rest = lines[len(shown) :]
    rows = [_row(line.name, line.u_rel, line.share) for line in shown]
    if len(rest) == 1:
        rows += [_row(line.name, line.u_rel, line.share) for line in rest]
    elif rest:
        u_rel = sum(line.u_rel**2 for line in rest) ** 0.5
        share = sum(line.share for line in rest)
        rows.append(_row(f"{len(rest)} smaller ones", u_rel, share))
    return tuple(rows)


def budget_bars(lines: Sequence[BudgetLine]) -> str:
    """Draw a budget, its longest bar first; nothing where there is no line."""
    rows = budget_rows(lines)
    if not rows:
        return ""
    body = "".join(_drawn(row, place) for place, row in enumerate(rows))
    box = svg.Box(_WIDTH, _ROW * len(rows))
    return svg.drawing("budget-bars", box, body, name=budget_words(lines))


def budget_words(lines: Sequence[BudgetLine]) -> str:
    """Return the picture in one sentence."""
    said = "; ".join(
        f"{row.name} {row.percent} (±{NO_BREAK}{row.spread})"
        for row in budget_rows(lines)
    )
    return f"What the spread is made of: {said}."


def _row(name: str, u_rel: float, share: float) -> BudgetBar:
    spread = f"{number_text(100 * u_rel, digits=2)}{NO_BREAK}%"
    return BudgetBar(name=name, share=share, spread=spread)


def _drawn(row: BudgetBar, place: int) -> str:
    top = _ROW * place
    css = "most" if place == 0 else "other"
    return (
        svg.words(0, top + 14, _short(row.name), "name")
        + svg.rect(0, top + 20, _BAR_WIDTH, _BAR, "track")
        + svg.rect(0, top + 20, _BAR_WIDTH * svg.fraction(row.share), _BAR, css)
        + svg.words(_BAR_WIDTH + 8, top + 31, row.percent, "share")
    )


def _short(name: str) -> str:
    return name if len(name) <= _MOST_SIGNS else f"{name[: _MOST_SIGNS - 1]}…"
