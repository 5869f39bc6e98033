"""The data sheet of a demo dye: one page that says that there is no such dye."""

import datetime as dt

from shadewright.paper.typeset import typeset


def invented_sheet_pdf(
    *, dye_name: str, hazard_words: str, printed_on: dt.date
) -> bytes:
    """Return the sheet of an invented dye as a PDF."""
    data = {
        "title": f"{dye_name}: invented data sheet",
        "dye": dye_name,
        "hazard": hazard_words,
    }
    return typeset("invented_sheet.typ", data=data, on=printed_on)
