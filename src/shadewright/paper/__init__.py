"""Core results to paper: labels and sheets, as PDFs that a screen reader can read.

- ``label_formats``: the sizes of label that can be printed
- ``labels``: bottle labels
- ``mixing_sheet``: the printed twin of the guided making of a stock
- ``typeset``: a template and its data to the bytes of a PDF
- ``words``: dates in words

The templates (``*.typ``) lay out; they are never given anything but text.
"""

from shadewright.paper.label_formats import LABEL_FORMATS, LabelFormat, label_format
from shadewright.paper.labels import BottleLabel, labels_pdf, labels_png
from shadewright.paper.mixing_sheet import PAPERS, MixingSheet, mixing_sheet_pdf

__all__ = [
    "LABEL_FORMATS",
    "PAPERS",
    "BottleLabel",
    "LabelFormat",
    "MixingSheet",
    "label_format",
    "labels_pdf",
    "labels_png",
    "mixing_sheet_pdf",
]
