"""Pictures: numbers in, SVG text out.

Every drawing is a pure function of frozen values. Three rules hold for all:

* **Colour and length are SVG attributes**, never an inline style, because the
  pages forbid inline styles. Everything else is a class of the stylesheet.
* **Text is escaped** in one place, ``svg.text``; lengths pass ``svg.length``.
* **A picture has a name or is silent.** With a name it is ``role="img"``;
  without one it stands beside the same words and is hidden from a screen reader.

Contents: ``svg`` (the frame), ``icons``, ``bottle``, ``bars`` (fill, spread,
progress), ``budget`` (what a spread is made of), ``heat_curve`` (a temperature
programme), ``life_curve`` (bottles still clear by age), ``swatch``, ``chips`` (colours
that touch), ``strips`` (a dye from pale to deep), ``reach`` (what a palette can give),
``lanes`` (a dye day), ``drift`` (lot by lot), ``code_square`` (a QR code).
"""

from shadewright.drawing.bars import (
    fill_bar,
    progress_line,
    spread_bar,
)
from shadewright.drawing.bottle import Bottle, bottle, liquid_sample
from shadewright.drawing.budget import (
    BudgetBar,
    budget_bars,
    budget_rows,
    budget_words,
)
from shadewright.drawing.chips import colour_chips
from shadewright.drawing.code_square import code_square
from shadewright.drawing.difference import Difference, difference_bar
from shadewright.drawing.drift import (
    DRIFT_ROOMS,
    DriftPoint,
    DriftShown,
    drift_chart,
)
from shadewright.drawing.heat_curve import heat_curve
from shadewright.drawing.icons import ICONS, icon
from shadewright.drawing.lanes import LanesWidth, day_lanes, lane_sample
from shadewright.drawing.lanes_shown import (
    Bar,
    BarKind,
    Lane,
    LaneBath,
    LanesShown,
    Power,
)
from shadewright.drawing.life_curve import life_curve
from shadewright.drawing.reach import (
    REACH_SIDES,
    Aim,
    Outline,
    ReachShown,
    Spot,
    line_sample,
    reach_map,
)
from shadewright.drawing.strips import (
    STRIP_ROOMS,
    DyeStrip,
    Square,
    Told,
    dye_strip,
    strip_axis,
)
from shadewright.drawing.swatch import colour_field, colour_square, swatch

__all__ = [
    "DRIFT_ROOMS",
    "ICONS",
    "REACH_SIDES",
    "STRIP_ROOMS",
    "Aim",
    "Bar",
    "BarKind",
    "Bottle",
    "BudgetBar",
    "Difference",
    "DriftPoint",
    "DriftShown",
    "DyeStrip",
    "Lane",
    "LaneBath",
    "LanesShown",
    "LanesWidth",
    "Outline",
    "Power",
    "ReachShown",
    "Spot",
    "Square",
    "Told",
    "bottle",
    "budget_bars",
    "budget_rows",
    "budget_words",
    "code_square",
    "colour_chips",
    "colour_field",
    "colour_square",
    "day_lanes",
    "difference_bar",
    "drift_chart",
    "dye_strip",
    "fill_bar",
    "heat_curve",
    "icon",
    "lane_sample",
    "life_curve",
    "line_sample",
    "liquid_sample",
    "progress_line",
    "reach_map",
    "spread_bar",
    "strip_axis",
    "swatch",
]
