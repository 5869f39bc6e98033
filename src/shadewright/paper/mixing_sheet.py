"""The mixing sheet: making a stock on paper, the twin of the guided screen.

It shows the same steps in the same order, with boxes to tick and lines for
what was really weighed and filled, so that it is typed in line by line.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.quantities import amount_text, number_text
from shadewright.core.solutions import MakingStep, StockPlan, making_steps
from shadewright.errors import MissingError
from shadewright.paper.papers import TWO_UP, paper_size
from shadewright.paper.typeset import printable, typeset


@dataclass(frozen=True, kw_only=True)
class MixingSheet:
    """One stock to be made; an empty ``code`` or ``jar`` leaves a line to write on."""

    dye_name: str
    plan: StockPlan
    jar: str = ""
    code: str = ""
    hazard_words: str = ""
    is_demo: bool = False


def mixing_sheet_pdf(
    sheets: Sequence[MixingSheet], *, paper: str = "a4", printed_on: dt.date
) -> bytes:
    """Return the sheets as a PDF; A4 and Letter hold two side by side if they fit."""
    if not sheets:
        raise MissingError(
            name="A stock", advice="Choose at least one to make.", argument="sheets"
        )
    data = mixing_sheet_data(sheets, paper=paper)
    return typeset("mixing_sheet.typ", data=data, on=printed_on)


def mixing_sheet_data(
    sheets: Sequence[MixingSheet], *, paper: str
) -> Mapping[str, object]:
    """Return what the template is given: the paper's size and the texts."""
    dyes = ", ".join(sheet.dye_name[:40] for sheet in sheets[:4])
    return {
        "title": f"Mixing sheet: {dyes}{', …' if sheets[4:] else ''}",
        "page_mm": paper_size(paper),
        "two_up": paper in TWO_UP,
        "sheets": [_texts(sheet) for sheet in sheets],
    }


def _texts(sheet: MixingSheet) -> Mapping[str, object]:
    plan = sheet.plan
    blanks = _blanks(plan)
    return {
        "dye": printable(sheet.dye_name[:120]) or "Dye not named",
        "wanted": f"{blanks['make_up']['planned']} at {blanks['label']['planned']}",
        "jar": sheet.jar[:60],
        "code": sheet.code,
        "hazard": sheet.hazard_words,
        "warnings": plan.warnings,
        "steps": [_step_texts(step, blanks) for step in making_steps(plan)],
        "demo": sheet.is_demo,
    }


def _step_texts(
    step: MakingStep, blanks: Mapping[str, Mapping[str, str]]
) -> Mapping[str, object]:
    return {
        "title": step.title,
        "text": step.text,
        "caution": step.caution,
        "blanks": [blanks[step.key]] if step.key in blanks else [],
    }


def _blanks(plan: StockPlan) -> Mapping[str, Mapping[str, str]]:
    """Return the lines to write on, by the step's key, each with its sum."""
    strength = amount_text(plan.strength_percent, "%")
    ml_per_g = number_text(plan.final_volume_ml / plan.powder_g, digits=4)
    powder_strength = number_text(plan.powder_strength_percent, digits=4)
    return {
        "weigh": {
            "planned": amount_text(plan.powder_g, "g"),
            "label": "really weighed",
            "unit": "g",
            "sum": f"for {strength} exactly, fill to {ml_per_g} ml for each gram",
        },
        "make_up": {
            "planned": amount_text(plan.final_volume_ml, "ml"),
            "label": "really filled to",
            "unit": "ml",
            "sum": "",
        },
        "label": {
            "planned": strength,
            "label": "true strength",
            "unit": "%",
            "sum": f"{powder_strength} × grams ÷ millilitres",
        },
    }
