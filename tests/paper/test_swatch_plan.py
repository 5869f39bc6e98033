"""The sheet of a set of swatches: every jar in a row, to tick."""

import datetime as dt
from dataclasses import replace

import pypdfium2 as pdfium
import pytest

from shadewright.errors import MissingError
from shadewright.paper import PAPERS, SwatchPlanSheet, swatch_plan_pdf
from shadewright.paper.swatch_plan import SheetDose, SheetSwatch, plan_data
from tests.paper.pictures import signs_on, words_on

DAY = dt.date(2026, 11, 26)


def row(place: int = 1, *, text: str = "Gorse", doses: int = 2) -> SheetSwatch:
    dose = SheetDose(
        dye=text,
        depth="0.5\xa0%",
        bottle="N7KK",
        strength="1\xa0%",
        amount="5\xa0ml",
        beside="5.04\xa0g",
    )
    return SheetSwatch(
        place=place,
        number=f"261126-S{place}",
        doses=(dose,) * doses,
        water="490\xa0ml water",
        helpers=(f"0.2\xa0g {text} acid",),
    )


def sheet(*rows: SheetSwatch, text: str = "Swatches 26 Nov") -> SwatchPlanSheet:
    return SwatchPlanSheet(
        name=text,
        facts=(("Base", text[:60]), ("Jars", "15 of 750\xa0ml or more")),
        first=(f"{text}: 25 ml of N7KK 1 % made up to 250 ml gives 0.1 %",),
        heat="to 90\xa0°C, hold 30\xa0min",
        swatches=rows or (row(),),
        dyed_on=DAY,
        cautions=("Acid into water, never the reverse.",),
    )


def printed(what: SwatchPlanSheet, paper: str = "a4") -> bytes:
    return swatch_plan_pdf(what, paper=paper, printed_on=DAY)


def test_what_the_template_is_given() -> None:
    data = plan_data(sheet(), paper="letter")
    assert data["title"] == "Swatches to dye: Swatches 26 Nov"
    assert data["page_mm"] == (215.9, 279.4)
    assert data["swatches"] == [
        {
            "place": "1",
            "number": "261126-S1",
            "doses": [
                {
                    "dye": "Gorse",
                    "depth": "0.5\xa0%",
                    "bottle": "N7KK",
                    "strength": "1\xa0%",
                    "amount": "5\xa0ml",
                    "beside": "5.04\xa0g",
                }
            ]
            * 2,
            "water": "490\xa0ml water",
            "helpers": ["0.2\xa0g Gorse acid"],
        }
    ]


def test_a_person_finds_everything_in_black_and_white() -> None:
    words = words_on(printed(sheet()))
    for part in (
        "Have these stocks first",
        "25 ml of N7KK 1 % made up to 250 ml gives 0.1 %",
        "in-pot tag",
        "261126-S1",
        "5 ml",
        "5.04 g",
        "490 ml water",
        "to 90 °C, hold 30 min",
        "Acid into water",
        "safety data sheet",
    ):
        assert part in words, part


def test_fifteen_mixes_fit_on_a_page() -> None:
    many = sheet(*(row(place) for place in range(1, 16)))
    assert len(pdfium.PdfDocument(printed(many))) == 1


def test_nothing_to_print_is_told() -> None:
    with pytest.raises(MissingError, match="A swatch"):
        printed(replace(sheet(), swatches=()))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("text", ["W" * 120, "wide " * 40, '#panic("x") `$\\'])
def test_no_text_leaves_the_page(paper: str, text: str) -> None:
    rows = [row(n, text=text, doses=3) for n in range(1, 30)]
    pdf = printed(sheet(*rows, text=text), paper=paper)
    width, height = PAPERS[paper]
    for page in range(len(pdfium.PdfDocument(pdf))):
        for sign in signs_on(pdf, page):
            assert 5 < sign.left < sign.right < width - 5, sign
            assert 5 < sign.top < sign.bottom < height - 5, sign
