"""The page of each step of a stock in the making."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.quantities import amount_text, number_text
from shadewright.core.uncertainty import exact
from shadewright.web import parts
from shadewright.web.pages import Link
from shadewright.web.parts import Caution, measured
from shadewright.web.stocks.forms import (
    FillByWeightForm,
    FillForm,
    LabelForm,
    StepForm,
    WeighForm,
)
from shadewright.web.stocks.pages import (
    FillByWeightPage,
    FillPage,
    LabelPage,
    StepPage,
    WeighPage,
)
from shadewright.web.stocks.words import (
    DONE_WORDS,
    caution_title,
    cautions,
    data_sheet,
    filled_by_weight_outcome,
    filled_outcome,
    shown_spread,
    so_far,
    stock_name,
    weighed_outcome,
)
from shadewright.web.sureness import SureStrength, sure_strength
from shadewright.workflows.dye_lives import suggested_discard_day
from shadewright.workflows.makings import Making
from shadewright.workflows.outcomes import if_weighed
from shadewright.workflows.stamps import today
from shadewright.workflows.stock_tools import scales, ware
from shadewright.workflows.studio import studio
from shadewright.workflows.tools import ToolNow

SHELF = Link(words="Shelf", address="/shelf/")


def step_page(
    stock: Making,
    key: str,
    *,
    form: StepForm | None = None,
    typed: Mapping[str, str] | None = None,
) -> StepPage:
    """Return the page of a step; with a form that was refused, or what is typed."""
    shared = _shared(stock, key)
    given = typed or {}
    if key == "weigh":
        return _weigh_page(stock, shared, form, given)
    if key == "make_up" and stock.is_by_weight:
        return _fill_by_weight_page(stock, shared, form, given)
    if key == "make_up":
        return _fill_page(stock, shared, form, given)
    if key == "label":
        return _label_page(stock, shared, form)
    return StepPage(**shared, form=form or StepForm(initial={"step": key}))


def _shared(stock: Making, key: str) -> dict[str, Any]:
    keys = [step.key for step in stock.steps]
    place = keys.index(key)
    step = stock.steps[place]
    return {
        "title": stock_name(stock.stock),
        "fact": f"Step {place + 1} of {len(keys)}",
        "crumbs": (SHELF,),
        "number": place + 1,
        "count": len(keys),
        "step_title": step.title,
        "text": step.text,
        "caution": Caution(title=caution_title(stock, key), text=step.caution),
        "warnings": cautions(stock.stock.plan.warnings) if place == 0 else (),
        "steps": parts.steps(tuple(one.title for one in stock.steps), now=place + 1),
        "so_far": so_far(stock) if key not in {"weigh", "label"} else (),
        "done_words": DONE_WORDS[key],
        "data_sheet": data_sheet(stock.stock),
        "sheet": reverse("making-sheet", args=[stock.id]),
        "give_up": reverse("give-up-making", args=[stock.id]),
    }


def _weigh_page(
    stock: Making,
    shared: dict[str, Any],
    form: StepForm | None,
    typed: Mapping[str, str],
) -> WeighPage:
    text = _text(form, "powder_g", typed, stock.powder_g)
    scale = _tool(typed.get("scale"), stock.made_with.scale)
    jar = stock.stock.jar_code
    blank = WeighForm(initial={"step": "weigh", "powder_g": text, "scale": _id(scale)})
    return WeighPage(
        **shared,
        form=form if isinstance(form, WeighForm) else blank,
        asked=measured(stock.stock.plan.powder_g, "g"),
        whence=f"Into the weighing cup, from jar {jar}" if jar else "Into the cup",
        outcome=weighed_outcome(stock, text, replace(stock.made_with, scale=scale)),
    )


def _fill_page(
    stock: Making,
    shared: dict[str, Any],
    form: StepForm | None,
    typed: Mapping[str, str],
) -> FillPage:
    text = _text(form, "final_ml", typed, stock.final_ml)
    ware = _tool(typed.get("ware"), stock.made_with.ware)
    initial = {
        "step": "make_up",
        "final_ml": text,
        "ware": _id(ware),
        "is_cold": stock.final_ml is not None,
        "water": _water(stock),
    }
    return FillPage(
        **shared,
        form=form if isinstance(form, FillForm) else FillForm(initial=initial),
        asked=measured(stock.stock.plan.final_volume_ml, "ml"),
        quick=_quick_levels(stock),
        outcome=filled_outcome(stock, text, replace(stock.made_with, ware=ware)),
    )


def _fill_by_weight_page(
    stock: Making,
    shared: dict[str, Any],
    form: StepForm | None,
    typed: Mapping[str, str],
) -> FillByWeightPage:
    text = _text(form, "filled_g", typed, stock.made_with.filled_g)
    initial = {"step": "make_up", "filled_g": text, "water": _water(stock)}
    blank = FillByWeightForm(initial=initial)
    ware = stock.made_with.ware
    return FillByWeightPage(
        **shared,
        form=form if isinstance(form, FillByWeightForm) else blank,
        asked=measured(stock.fill_to_g, "g"),
        scale="" if ware is None else ware.name,
        outcome=filled_by_weight_outcome(stock, text),
    )


def _water(stock: Making) -> str:
    here = studio()
    return stock.water or ("" if here is None else here.water)


def _tool(typed: str | None, kept: ToolNow | None) -> ToolNow | None:
    """Return the tool that was just chosen, or none; without a choice the one kept."""
    if typed is None:
        return kept
    offered = (*scales(), *ware())
    return next((tool for tool in offered if str(tool.id) == typed), None)


def _id(tool: ToolNow | None) -> int | None:
    return None if tool is None else tool.id


def _suggested_day(stock: Making) -> date | None:
    """Return the day that the studio's own looks at this dye suggest, if they do."""
    return suggested_discard_day(stock.stock.dye_id, made_on=today())


def _label_page(
    stock: Making, shared: dict[str, Any], form: StepForm | None
) -> LabelPage:
    initial = {
        "step": "label",
        "place": stock.place,
        "discard_by": stock.discard_by or _suggested_day(stock),
        "notes": stock.notes,
    }
    return LabelPage(
        **shared,
        form=form if isinstance(form, LabelForm) else LabelForm(initial=initial),
        weighed=amount_text(stock.powder_g or 0.0, "g"),
        filled=amount_text(stock.final_ml or 0.0, "ml"),
        strength=_label_strength(stock),
    )


def _label_strength(stock: Making) -> SureStrength:
    if stock.spread is None:
        return sure_strength(exact(0.0), ())
    return shown_spread(stock.spread)


def _quick_levels(stock: Making) -> tuple[Link, ...]:
    """Return the volume as planned, and the one that is exact, one tap each."""
    planned = stock.stock.plan.final_volume_ml
    levels = {planned: "as planned"}
    if stock.powder_g is not None:
        exact = round(if_weighed(stock, powder_g=stock.powder_g).exact_ml)
        percent = amount_text(stock.stock.plan.strength_percent, "%")
        if exact != planned:
            levels[exact] = f"{percent} exactly"
    return tuple(
        Link(
            words=f"{amount_text(level, 'ml')}, {why}",
            address=f"?{urlencode({'final_ml': number_text(level, digits=4)})}",
        )
        for level, why in levels.items()
    )


def _text(
    form: StepForm | None,
    name: str,
    typed: Mapping[str, str],
    kept: float | None,
) -> str:
    """Return what stands in a field: refused, typed a moment ago, or kept."""
    if form is not None:
        return str(form[name].value() or "")
    if name in typed:
        return typed[name]
    return "" if kept is None else number_text(kept, digits=6)
