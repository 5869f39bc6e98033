"""The parts, the drawings and the words that every template may use.

Known to all templates without ``{% load %}``. A drawing escapes what it is
given, so its text goes into the page as it is.
"""

from datetime import date, datetime
from typing import Literal

from django import template
from django.forms import BaseForm, BoundField
from django.template import Context
from django.utils import timezone
from django.utils.safestring import SafeString

from shadewright import drawing
from shadewright.core.baths.curves import Curve
from shadewright.core.quantities import counted
from shadewright.core.quantities.writing import amount_text
from shadewright.core.solutions.age import AgeClass
from shadewright.core.solutions.keeping import DyeLife
from shadewright.core.uncertainty import BudgetLine
from shadewright.web.colours import ColourShown, ColourSize
from shadewright.web.parts import Caution, Chip, Measured, Step, TreeNode
from shadewright.web.sorting import Order

register = template.Library()

_WEEK = 7
_MONTH = 30.44
_YEAR = 365.25


# Drawings -------------------------------------------------------------------


@register.simple_tag
def icon(name: str) -> SafeString:
    """Draw a line icon: ``{% icon "drop" %}``."""
    return SafeString(drawing.icon(name))


@register.simple_tag
def bottle(shown: drawing.Bottle, number: int, name: str = "") -> SafeString:
    """Draw a bottle; the number is its own on the page."""
    return SafeString(drawing.bottle(shown, number=number, name=name))


@register.simple_tag
def liquid_sample(
    kind: AgeClass | Literal["reserved", "settled", "life"], number: int
) -> SafeString:
    """Draw the box of a legend: an age, ``"reserved"``, ``"settled"``, ``"life"``."""
    return SafeString(drawing.liquid_sample(kind, number=number))


@register.simple_tag
def fill_bar(full: float, state: Literal["", "low"] = "") -> SafeString:
    """Draw what is left as a share of the whole: ``{% fill_bar 0.2 "low" %}``."""
    return SafeString(drawing.fill_bar(full=full, is_low=state == "low"))


@register.simple_tag
def spread_bar(relative_spread: float) -> SafeString:
    """Draw a relative spread on its tape."""
    return SafeString(drawing.spread_bar(relative_spread=relative_spread))


@register.simple_tag
def budget_bars(lines: tuple[BudgetLine, ...]) -> SafeString:
    """Draw what a spread is made of: ``{% budget_bars row.budget %}``."""
    return SafeString(drawing.budget_bars(lines))


@register.simple_tag
def life_curve(life: DyeLife) -> SafeString:
    """Draw how many bottles of a dye are still clear: ``{% life_curve one.life %}``."""
    return SafeString(drawing.life_curve(life))


@register.simple_tag
def progress_line(step: int, steps: int) -> SafeString:
    """Draw how far a guided task has come."""
    return SafeString(drawing.progress_line(step=step, steps=steps))


@register.simple_tag
def heat_curve(curve: Curve) -> SafeString:
    """Draw a temperature programme: ``{% heat_curve page.curve %}``."""
    return SafeString(drawing.heat_curve(curve))


@register.simple_tag
def day_lanes(shown: drawing.LanesShown, width: drawing.LanesWidth) -> SafeString:
    """Draw a dye day as lanes: ``{% day_lanes page.lanes "wide" %}``."""
    return SafeString(drawing.day_lanes(shown, width=width))


@register.simple_tag
def lane_sample(kind: drawing.BarKind) -> SafeString:
    """Draw one box of the legend of lanes: hands, heat, hold or cool."""
    return SafeString(drawing.lane_sample(kind))


@register.simple_tag
def code_square(text: str, name: str) -> SafeString:
    """Draw a text as a QR code: ``{% code_square page.address "The address" %}``."""
    return SafeString(drawing.code_square(text, name=name))


@register.simple_tag
def dye_strip(
    shown: drawing.DyeStrip, width: Literal["wide", "narrow"], place: int
) -> SafeString:
    """Draw a dye from pale to deep: ``{% dye_strip row.drawn "wide" row.place %}``."""
    room = drawing.STRIP_ROOMS[width]
    return SafeString(drawing.dye_strip(shown, room=room, number=f"{width}-{place}"))


@register.simple_tag
def strip_axis(width: Literal["wide", "narrow"]) -> SafeString:
    """Draw the axis of depth below all strips."""
    return SafeString(drawing.strip_axis(room=drawing.STRIP_ROOMS[width]))


@register.simple_tag
def reach_map(
    shown: drawing.ReachShown, width: Literal["wide", "narrow"]
) -> SafeString:
    """Draw what a palette can give: ``{% reach_map reach.shown "wide" %}``."""
    return SafeString(drawing.reach_map(shown, side=drawing.REACH_SIDES[width]))


@register.simple_tag
def reach_line(kind: str) -> SafeString:
    """Draw one line of the legend of a reach: light, mid or dark."""
    return SafeString(drawing.line_sample(kind))


@register.simple_tag
def swatch(colour: str | None, evidence: str = "") -> SafeString:
    """Draw a colour in its booth, or a dashed gap where none is known."""
    return SafeString(drawing.swatch(colour, evidence=evidence))


@register.simple_tag
def colour_field(colour: str, name: str) -> SafeString:
    """Draw a colour large enough to be judged, for the booth."""
    return SafeString(drawing.colour_field(colour, name=name))


@register.simple_tag
def colour_square(
    shown: ColourShown, size: ColourSize = "square", names: Literal["", "silent"] = ""
) -> SafeString:
    """Draw a colour alone, named with all that must be said, or silent beside words."""
    css = f"{size} told" if shown.is_foretold else size
    title = "" if names else shown.title
    return SafeString(
        drawing.colour_square(
            shown.hex_code, name=title, css=css, is_true=shown.is_true
        )
    )


@register.simple_tag
def colour_chips(colours: tuple[str, ...], name: str, css: str = "") -> SafeString:
    """Draw colours that touch: ``{% colour_chips row.hexes row.said "low" %}``."""
    return SafeString(drawing.colour_chips(colours, name=name, css=css))


@register.simple_tag
def difference_bar(shown: drawing.Difference) -> SafeString:
    """Draw how far a colour will lie off its target: ``{% difference_bar x.bar %}``."""
    return SafeString(drawing.difference_bar(shown))


# Parts ----------------------------------------------------------------------


@register.inclusion_tag("parts/sure.html")
def sure(value: Measured, css: str = "") -> dict[str, object]:
    """Show a number with its unit and spread."""
    return {"value": value, "css": css}


@register.inclusion_tag("parts/chip.html")
def chip(state: Chip) -> dict[str, object]:
    """Show a state in words with its sign."""
    return {"chip": state}


@register.inclusion_tag("parts/colour.html")
def colour(shown: ColourShown, size: ColourSize = "square") -> dict[str, object]:
    """Show a colour with its source and spread: ``{% colour row.colour "large" %}``."""
    return {"shown": shown, "size": size}


@register.inclusion_tag("parts/caution.html")
def caution(note: Caution) -> dict[str, object]:
    """Show a caution at its step, or a refusal."""
    return {"note": note}


@register.inclusion_tag("parts/steps.html")
def step_list(steps: tuple[Step, ...]) -> dict[str, object]:
    """Show the steps of guided work."""
    return {"steps": steps}


@register.inclusion_tag("parts/field.html")
def field(bound: BoundField, unit: str = "") -> dict[str, object]:
    """Show a form field: label above, unit inside, hint and fault below.

    An ``AmountField`` brings its own unit.
    """
    own = getattr(bound.field, "unit", "")
    return {"field": bound, "unit": unit or own, "kind": bound.widget_type}


@register.inclusion_tag("parts/cell.html")
def cell(bound: BoundField, unit: str = "") -> dict[str, object]:
    """Show a field of a row that may stay empty: label, field and fault."""
    return {"bound": bound, "unit": unit}


@register.inclusion_tag("parts/faults.html")
def faults(form: BaseForm) -> dict[str, object]:
    """Show what must be mended in a form, and take the focus."""
    return {"form": form}


@register.inclusion_tag("parts/sort_head.html", takes_context=True)
def sort_head(
    context: Context, order: Order, column: str, words: str, css: str = ""
) -> dict[str, object]:
    """Show a column head that sorts: ``{% sort_head page.order "age" "Age" %}``."""
    asked = context["request"].GET.copy()
    asked["sort"] = order.next_for(column)
    return {
        "address": f"?{asked.urlencode()}",
        "aria": order.aria(column),
        "words": words,
        "css": css,
    }


@register.inclusion_tag("parts/trace_tree.html")
def trace_tree(node: TreeNode) -> dict[str, object]:
    """Show a trace as nested lists: ``{% trace_tree page.back %}``."""
    return {"node": node}


# Words ----------------------------------------------------------------------


@register.filter
def amount(value: float, unit: str) -> str:
    """Write an amount with its unit: ``{{ row.left_ml|amount:"ml" }}``."""
    return amount_text(value, unit)


@register.filter
def day(value: date | datetime) -> str:
    """Write a day in words; the year only when it is not this one."""
    local = _local(value)
    year = "" if local.year == timezone.localdate().year else f" {local.year}"
    return f"{local.day} {local:%B}{year}"


@register.filter
def moment(value: datetime) -> str:
    """Write a time of a ledger: ``24 Nov 09:24``."""
    local = timezone.localtime(value)
    year = "" if local.year == timezone.localdate().year else f" {local.year}"
    return f"{local.day} {local:%b}{year} {local:%H:%M}"


@register.filter
def age(days: int | None) -> str:
    """Write an age: ``today``, ``9 days``, ``5 weeks``, ``8 months``, ``2 years``."""
    if days is None:
        return "age not known"
    if days < 1:
        return "today"
    if days < 2 * _WEEK:
        return counted(days, "day")
    if days < 10 * _WEEK:
        return counted(days // _WEEK, "week")
    if days < 2 * _YEAR:
        return counted(int(days / _MONTH), "month")
    return counted(int(days / _YEAR), "year")


def _local(value: date | datetime) -> date:
    return timezone.localtime(value).date() if isinstance(value, datetime) else value
