"""The data sheet of a demo dye says that there is no such dye."""

import datetime as dt

import pypdfium2 as pdfium

from shadewright.paper.invented_sheet import invented_sheet_pdf


def words(pdf: bytes) -> str:
    with pdfium.PdfDocument(pdf) as document:
        assert len(document) == 1
        return " ".join(document[0].get_textpage().get_text_range().split())


def test_it_says_that_the_dye_is_invented(day: dt.date) -> None:
    said = words(
        invented_sheet_pdf(
            dye_name="Peat", hazard_words="Irritates eyes", printed_on=day
        )
    )
    assert said.startswith("Peat Invented for the demo: no real dye.")
    assert "Irritates eyes" in said


def test_it_leaves_out_what_no_jar_says(day: dt.date) -> None:
    pdf = invented_sheet_pdf(dye_name="Gorse", hazard_words="", printed_on=day)
    assert "On the jar" not in words(pdf)
