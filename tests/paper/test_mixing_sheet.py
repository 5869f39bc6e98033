import datetime as dt
from dataclasses import replace

import pypdfium2 as pdfium
import pytest

from shadewright.core.solutions import making_steps, stock_plan
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper import PAPERS, MixingSheet, mixing_sheet_pdf
from tests.paper.pictures import signs_on, words_on


@pytest.fixture
def slate_sheet() -> MixingSheet:
    return MixingSheet(
        dye_name="Slate",
        jar="J-14",
        code="T7K",
        plan=stock_plan(volume_ml=500.0, strength_percent=1.0),
        hazard_words="May irritate eyes and skin",
    )


@pytest.fixture
def peat_sheet() -> MixingSheet:
    return MixingSheet(
        dye_name="Peat black",
        plan=stock_plan(
            volume_ml=240.0,
            strength_percent=2.0,
            powder_strength_percent=95.0,
            is_metal_complex=True,
            mix_fresh=True,
        ),
        is_demo=True,
    )


def test_steps_stand_in_the_screens_order_with_their_cautions(
    slate_sheet: MixingSheet, day: dt.date
) -> None:
    words = words_on(mixing_sheet_pdf([slate_sheet], printed_on=day))
    place = 0
    for number, step in enumerate(making_steps(slate_sheet.plan), start=1):
        for part in (f"{number} {step.title}", step.text, step.caution):
            place = words.index(part.replace("\N{NO-BREAK SPACE}", " "), place)


def test_sheet_says_what_is_wanted_and_leaves_lines_for_what_was(
    slate_sheet: MixingSheet, day: dt.date
) -> None:
    words = words_on(mixing_sheet_pdf([slate_sheet], printed_on=day))
    for part in (
        "Slate",
        "Stock to make: 500 ml at 1 %",
        "Jar J-14",
        "Bottle code T7K",
        "Who",
        "Date",
        "May irritate eyes and skin",
        "planned 5 g really weighed g",
        "planned 500 ml really filled to ml",
        "planned 1 % true strength %",
    ):
        assert part in words
    assert "invented" not in words


@pytest.mark.by_hand
def test_sums_to_do_by_hand(peat_sheet: MixingSheet, day: dt.date) -> None:
    # 240 ml at 2 % of a 95 % powder: 4.8 / 0.95 = 5.0526 g; 240 / 5.0526 = 47.5 ml a g.
    # True strength of 5.0526 g in 240 ml: 95 * 5.0526 / 240 = 2 %.
    words = words_on(mixing_sheet_pdf([peat_sheet], printed_on=day))
    assert "for 2 % exactly, fill to 47.5 ml for each gram" in words
    assert "95 × grams of powder ÷ millilitres" in words


def test_warnings_and_the_demo_say_so(peat_sheet: MixingSheet, day: dt.date) -> None:
    words = words_on(mixing_sheet_pdf([peat_sheet], printed_on=day))
    for warning in peat_sheet.plan.warnings:
        assert warning in words
    assert "Demo studio: the dyes and people are invented." in words


@pytest.mark.parametrize("paper", PAPERS)
def test_one_stock_takes_one_page(
    paper: str, peat_sheet: MixingSheet, day: dt.date
) -> None:
    pdf = mixing_sheet_pdf([peat_sheet], paper=paper, printed_on=day)
    [page] = pdfium.PdfDocument(pdf)
    width, height = (side * 72 / 25.4 for side in PAPERS[paper])
    assert page.get_size() == pytest.approx((width, height), abs=0.1)


@pytest.mark.parametrize(("paper", "pages"), [("a4", 1), ("letter", 1), ("a5", 2)])
def test_two_stocks_share_a_large_sheet(
    paper: str,
    pages: int,
    slate_sheet: MixingSheet,
    peat_sheet: MixingSheet,
    day: dt.date,
) -> None:
    both = [slate_sheet, peat_sheet]
    pdf = mixing_sheet_pdf(both, paper=paper, printed_on=day)
    assert len(pdfium.PdfDocument(pdf)) == pages


def test_what_does_not_fit_beside_another_gets_its_own_page(
    slate_sheet: MixingSheet, day: dt.date
) -> None:
    wordy = replace(slate_sheet, hazard_words="Follow the data sheet. " * 120)
    pdf = mixing_sheet_pdf([wordy, slate_sheet], printed_on=day)
    assert len(pdfium.PdfDocument(pdf)) == 2


@pytest.mark.parametrize("paper", PAPERS)
def test_hostile_words_stay_on_the_page(
    paper: str, slate_sheet: MixingSheet, day: dt.date
) -> None:
    sheet = replace(
        slate_sheet, dye_name='#panic("x")' + "W" * 120, jar="`$\\" * 30, code="T7K"
    )
    pdf = mixing_sheet_pdf([sheet, sheet], paper=paper, printed_on=day)
    width, height = PAPERS[paper]
    if paper != "a5":
        width, height = height, width
    for sign in signs_on(pdf):
        assert 9 < sign.left < sign.right < width - 9
        assert 9 < sign.top < sign.bottom < height - 9
    assert '#panic("x")' in words_on(pdf)


def test_an_unknown_paper_is_refused(slate_sheet: MixingSheet, day: dt.date) -> None:
    with pytest.raises(OutOfRangeError, match="one of a4, a5, letter") as refusal:
        mixing_sheet_pdf([slate_sheet], paper="a0", printed_on=day)
    assert refusal.value.argument == "paper"


def test_no_stock_no_sheet(day: dt.date) -> None:
    with pytest.raises(MissingError, match="Choose at least one"):
        mixing_sheet_pdf([], printed_on=day)


def test_tools_stand_on_the_sheet_and_how_sure_the_strength_will_be(
    slate_sheet: MixingSheet, day: dt.date
) -> None:
    told = replace(
        slate_sheet, scale="Bench scale", ware="Tall cylinder", spread_words="± 0.02"
    )
    words = words_on(mixing_sheet_pdf([told], printed_on=day))
    for part in ("Scale Bench scale", "Made up in Tall cylinder", "1 % ± 0.02"):
        assert part in words


def test_by_weight_the_sheet_asks_for_grams_and_says_how_to_reckon(
    slate_sheet: MixingSheet, day: dt.date
) -> None:
    told = replace(slate_sheet, ware="Yarn scale", filled_g=504.1)
    words = words_on(mixing_sheet_pdf([told], printed_on=day))
    for part in ("planned 504.1 g", "the scale shows", "(this − powder) ÷ 0.9982"):
        assert part in words
    assert "fill to 100 ml" not in words
    assert "Made up while hot" not in words
