"""The mixing sheet: making a stock on paper, the twin of the guided screen.

It shows the same steps in the same order, with boxes to tick and lines for
what was really weighed and filled, so that it is typed in line by line.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.core.quantities import (
    amount_text,
    number_text,
    water_density_g_per_ml,
)
from shadewright.core.solutions import MakingStep, StockPlan, making_steps
from shadewright.errors import MissingError
from shadewright.paper.papers import TWO_UP, paper_size
from shadewright.paper.typeset import printable, typeset


@dataclass(frozen=True, kw_only=True)
class MixingSheet:
    """One stock to be made; what is empty leaves a line to write on.

    ``filled_g`` is what the finished stock weighs, where it is made up on a scale;
    ``spread_words`` is how far its strength may be off ("± 0.02").
    """

    dye_name: str
    plan: StockPlan
    jar: str = ""
    code: str = ""
    scale: str = ""
    ware: str = ""
    filled_g: float | None = None
    spread_words: str = ""
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
    blanks = _blanks(sheet)
    strength = amount_text(plan.strength_percent, "%")
    steps = making_steps(plan, filled_g=sheet.filled_g)
    return {
        "dye": printable(sheet.dye_name[:120]) or "Dye not named",
        "wanted": f"{amount_text(plan.final_volume_ml, 'ml')} at {strength}",
        "jar": sheet.jar[:60],
        "code": sheet.code,
        "scale": printable(sheet.scale[:40]),
        "ware": printable(sheet.ware[:40]),
        "hazard": sheet.hazard_words,
        "warnings": plan.warnings,
        "steps": [_step_texts(step, blanks) for step in steps],
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


def _blanks(sheet: MixingSheet) -> Mapping[str, Mapping[str, str]]:
    """Return the lines to write on, by the step's key, each with its sum."""
    plan = sheet.plan
    strength = amount_text(plan.strength_percent, "%")
    ml_per_g = number_text(plan.final_volume_ml / plan.powder_g, digits=4)
    powder_strength = number_text(plan.powder_strength_percent, digits=4)
    exactly = f"for {strength} exactly, fill to {ml_per_g} ml for each gram"
    return {
        "weigh": {
            "planned": amount_text(plan.powder_g, "g"),
            "label": "really weighed",
            "unit": "g",
            "sum": "" if sheet.filled_g else exactly,
        },
        "make_up": _filled(sheet),
        "label": {
            "planned": f"{strength} {sheet.spread_words}".strip(),
            "label": "true strength",
            "unit": "%",
            "sum": f"{powder_strength} × grams of powder ÷ millilitres",
        },
    }


def _filled(sheet: MixingSheet) -> Mapping[str, str]:
    """Return the line for the mark, or for the weight that stands for it."""
    if sheet.filled_g is None:
        return {
            "planned": amount_text(sheet.plan.final_volume_ml, "ml"),
            "label": "really filled to",
            "unit": "ml",
            "sum": "",
        }
    density = number_text(water_density_g_per_ml(temperature_c=20.0), digits=4)
    return {
        "planned": amount_text(sheet.filled_g, "g"),
        "label": "the scale shows",
        "unit": "g",
        "sum": f"millilitres: (this − powder) ÷ {density}",
    }
