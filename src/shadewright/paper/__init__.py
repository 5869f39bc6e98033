"""Core results to paper: labels and sheets, as PDFs that a screen reader can read.

- ``bath_card``: one pot on paper, the twin of the bench page
- ``invented_sheet``: the data sheet of a dye of the demo
- ``label_formats``: the sizes of label that can be printed
- ``labels``: bottle labels
- ``mixing_sheet``: the printed twin of the guided making of a stock
- ``papers``: the papers to choose from
- ``squares``: a text as a square code
- ``swatch_plan``: a set of swatches on one sheet
- ``swatch_tags``: tags for dry swatches, numbers for the tags in the pot
- ``typeset``: a template and its data to the bytes of a PDF
- ``words``: dates in words

The templates (``*.typ``) lay out; they are never given anything but text.
"""

from shadewright.paper.bath_card import BathCard, bath_cards_pdf
from shadewright.paper.label_formats import LABEL_FORMATS, LabelFormat, label_format
from shadewright.paper.labels import BottleLabel, labels_pdf, labels_png
from shadewright.paper.mixing_sheet import MixingSheet, mixing_sheet_pdf
from shadewright.paper.papers import PAPERS
from shadewright.paper.swatch_plan import SwatchPlanSheet, swatch_plan_pdf
from shadewright.paper.swatch_tags import SwatchTag, swatch_tags_pdf

__all__ = [
    "LABEL_FORMATS",
    "PAPERS",
    "BathCard",
    "BottleLabel",
    "LabelFormat",
    "MixingSheet",
    "SwatchPlanSheet",
    "SwatchTag",
    "bath_cards_pdf",
    "label_format",
    "labels_pdf",
    "labels_png",
    "mixing_sheet_pdf",
    "swatch_plan_pdf",
    "swatch_tags_pdf",
]
