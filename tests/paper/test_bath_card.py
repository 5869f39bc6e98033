"""The bath card: the round's lines in their order, and room to write beside them."""

import datetime as dt
from dataclasses import replace
from typing import Any

import pypdfium2 as pdfium
import pytest

from shadewright.core.baths import Curve, Leg
from shadewright.core.baths.blanks import blanks_of
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.exchange import Scanned
from shadewright.exchange.label_photo import scanned_in_photo
from shadewright.paper import PAPERS, BathCard, bath_cards_pdf
from shadewright.paper.bath_card import MOST_CARDS, SAFETY, cards_data
from tests.paper.baths import card, cards
from tests.paper.pictures import phone_photo, signs_on, thermal_print, words_on

HOSTILE = (
    "W" * 120,
    "long words " + "Donaudampfschifffahrtsgesellschaftskapitän" * 3,
    '#panic("x") `raw` $x^2$ \\ "quoted" <b>bold</b>',
    "😀 שלום عربي 中文",
)


def printed(*which: BathCard, paper: str = "a4") -> bytes:
    return bath_cards_pdf(which, paper=paper, printed_on=dt.date(2026, 11, 25))


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def test_what_the_template_is_given() -> None:
    data = cards_data([card()], paper="a4")
    [texts] = data.pop("cards")  # type: ignore[attr-defined]
    assert data == {
        "title": "Bath cards: 261125-B2",
        "page_mm": (210.0, 297.0),
        "two_up": True,
        "safety": SAFETY,
    }
    steps = texts.pop("steps")
    assert texts.pop("square").startswith("<svg ")
    assert texts == {
        "number": "261125-B2",
        "name": "Low Tide",
        "version": "version 3",
        "facts": [
            {"word": "Base", "said": "Fell DK"},
            {"word": "Mill lot", "said": "F-118"},
            {"word": "Dry yarn", "said": "400\xa0g, 4 skeins"},
            {"word": "Pot", "said": "Big pot"},
            {"word": "Liquor", "said": "1\xa0:\xa030"},
            {"word": "Day", "said": "25\xa0Nov 2026"},
            {"word": "Who", "said": ""},
        ],
        "acidity": "",
        "advice": "",
        "notes": ["Paler at the ends is wanted."],
        "swatch": False,
        "demo": False,
    }
    assert steps[1] == {
        "place": 2,
        "key": "dose-1",
        "title": "Slate 1.04\xa0%",
        "planned_at": "",
        "code": "T7K",
        "number": "60",
        "unit": "ml",
        "scale": "60.5\xa0g on the scale",
        "sure": "",
        "text": "",
        "caution": "",
        "blanks": [
            {
                "words": "really",
                "unit": "ml",
                "wide": False,
                "short": False,
                "clock": False,
            },
            {"words": "at", "unit": "", "wide": False, "short": False, "clock": True},
            {
                "words": "other bottle",
                "unit": "",
                "wide": False,
                "short": False,
                "clock": False,
            },
        ],
        "lot": False,
        "done": False,
    }


def test_lines_are_those_of_the_round_in_their_order() -> None:
    one = card(doses=4)
    data: Any = cards_data([one], paper="a4")
    keys = [step["key"] for step in data["cards"][0]["steps"]]
    assert keys == [step.key for step in one.steps]
    words, place = words_on(printed(one)), 0
    for number, step in enumerate(one.steps, start=1):
        place = words.index(f"{number} {plain(step.title)}", place)
        rest = words[place:].partition(f" {number + 1} ")[0]
        for part in (step.code, *map(str, blanks_of(step))):
            assert part in rest


def test_cautions_stand_at_their_steps_and_end_in_the_data_sheet() -> None:
    words = words_on(printed(card(doses=4)))
    for part in (
        "do not carry them hot and alone",
        "Dry powder: fitted N95/FFP2 respirator or better",
        "Acid into water, never the reverse",
        "heat gloves, open a window",
        "only where your sewer authority allows",
    ):
        assert part in words
    # A bath of many doses has two parts, and the foot stands once, at the end.
    assert words.count(SAFETY) == 1


def test_a_helper_reads_what_to_do_and_what_to_write() -> None:
    words = words_on(printed(card()))
    for part in (
        "261125-B2 Low Tide version 3",
        "Base Fell DK Mill lot F-118 Dry yarn 400 g, 4 skeins Pot Big pot",
        "Liquor 1 : 30 Day 25 Nov 2026",
        "Note: Paler at the ends is wanted.",
        "Tick each box when it is done; write only what went differently",
        "60.5 g on the scale",
        "Ties: 4 loose ties. Turn gently every 5 minutes.",
        "Rise by 1 °C a minute. About 50 min to the top.",
        "Grey-green with yellow tips.",
        "rinses hung at : skeins dry g grade place",
        "notes",
    ):
        assert part in words
    assert "swatch" not in words
    assert "invented" not in words


def test_stock_by_weight_has_its_tare_steps_its_ml_and_its_spread() -> None:
    by_weight = tuple(
        replace(
            step,
            amount=60.5,
            unit="g",
            scale_g=None,
            volume_ml=60.0,
            text="Put the jug on the scale, press tare, pour to 60.5\xa0g.",
        )
        if step.key == "dose-1"
        else step
        for step in card().steps
    )
    sure = {"dose-1": "±\xa02\xa0%"}
    advice = "Surer Slate: weigh it on the scale."
    words = words_on(
        printed(replace(card(), steps=by_weight, sure=sure, advice=advice))
    )
    for part in (
        "bottle T7K jug on the scale, tare, pour to 60.5 g (60 ml) ± 2 % other",
        advice,
    ):
        assert part in words
    assert "60.5 g on the scale" not in words


def test_what_is_not_known_leaves_a_line() -> None:
    bare = replace(
        card(), mill_lot="", pot_name="", skeins=None, is_swatch=True, is_demo=True
    )
    words = words_on(printed(bare))
    assert "Mill lot Dry yarn 400 g Pot Liquor" in words
    assert "swatch" in words
    assert "demo: all names are invented" in words


@pytest.mark.parametrize(("paper", "pages"), [("a4", 1), ("letter", 1), ("a5", 2)])
def test_two_cards_share_a_large_page(paper: str, pages: int) -> None:
    pdf = printed(*cards(2, 2), paper=paper)
    document = pdfium.PdfDocument(pdf)
    assert len(document) == pages
    size = PAPERS[paper] if paper == "a5" else PAPERS[paper][::-1]
    wanted = [side * 72 / 25.4 for side in size]
    assert document[0].get_size() == pytest.approx(wanted, abs=0.1)


@pytest.mark.parametrize("doses", [6, 12, 18])
def test_many_doses_flow_on_and_both_halves_share_a_sheet(doses: int) -> None:
    pdf = printed(*cards(2, doses, 2))
    first, text = (
        pdfium.PdfDocument(pdf)[page].get_textpage().get_text_bounded()
        for page in (0, 1)
    )
    assert "261125-B2" not in first
    assert "261125-B2" in text
    assert "goes on with part 2" in text
    assert "part 2: Low Tide" in text


def test_the_number_is_read_from_afar() -> None:
    # At 1 m figures want at least 4 mm (common practice: distance / 250).
    signs = signs_on(printed(card(doses=2)))
    tall = sorted(x.bottom - x.top for x in signs if x.text.isdigit())
    digits_of_number, digits_of_amounts = 7, 13  # 261125-B2; 11.5 60 12.5 8 90 90
    assert min(tall[-digits_of_number:]) > 7
    assert min(tall[-(digits_of_number + digits_of_amounts) :]) > 4


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("text", HOSTILE, ids=["wide", "long", "code", "scripts"])
def test_no_text_leaves_its_half(paper: str, text: str) -> None:
    pdf = printed(*(card(text=text), card(text=text, doses=6)), paper=paper)
    width, height = PAPERS[paper] if paper == "a5" else PAPERS[paper][::-1]
    seen = 0
    for page in range(len(pdfium.PdfDocument(pdf))):
        for sign in signs_on(pdf, page):
            middle = width if paper == "a5" else width / 2
            left = 0 if sign.left < middle else middle
            assert left + 8 < sign.left, sign
            assert sign.right < left + middle - 8, sign
            assert 8 < sign.top < sign.bottom < height - 8, sign
            seen += 1
    assert seen > 800


def test_a_phone_reads_the_bath_from_the_card() -> None:
    sheet = thermal_print(printed(card(), paper="a5"))
    corner = sheet.crop((sheet.width // 2, 0, sheet.width, sheet.height // 4))
    assert scanned_in_photo(phone_photo(corner)) == Scanned("bath", "261125-B2")


def test_a_long_note_says_where_the_rest_is() -> None:
    wordy = replace(card(), notes=("word " * 200,))
    assert "(the rest is on the bath’s page)" in words_on(printed(wordy))


def test_the_square_has_words_for_those_who_listen() -> None:
    assert b"Square code of bath 261125-B2" in printed(card())


def test_no_bath_no_card() -> None:
    with pytest.raises(MissingError, match="Choose at least one to print"):
        printed()


def test_too_many_cards_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match=f"at most {MOST_CARDS}") as refusal:
        printed(*[card()] * (MOST_CARDS + 1))
    assert refusal.value.argument == "number"


def test_an_unknown_paper_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="one of a4, a5, letter"):
        printed(card(), paper="a0")


def test_a_curve_is_drawn_at_the_heat_and_nowhere_else() -> None:
    curve = Curve(
        start_c=40.0,
        legs=(
            Leg(to_c=70.0, rise_c_per_min=1.0, hold_min=15.0),
            Leg(to_c=90.0, rise_c_per_min=1.0, hold_min=35.0),
        ),
    )
    drawn = replace(card(), curve=curve)
    data: Any = cards_data([drawn], paper="a4")
    steps = {step["key"]: step for step in data["cards"][0]["steps"]}
    assert [key for key, step in steps.items() if "curve" in step] == ["heat"]
    picture = steps["heat"]["curve"]
    assert [x for x, _ in picture["corners"]] == [0.0, 0.3, 0.45, 0.65, 1.0]
    assert picture["corners"][-1] == [1.0, 1.0]
    words = words_on(printed(drawn))
    assert "90 °C, 100 min in all" in words
    assert "in all" not in words_on(printed(card()))


def test_the_plan_of_the_day_stands_at_its_steps() -> None:
    planned = replace(
        card(), times={"heat": "08:21"}, order="3 of 12", source_name="Burner 2"
    )
    words = words_on(printed(planned, paper="a5"))
    assert "Heat on plan 08:21" in words
    assert "On Burner 2" in words
    assert "Card 3 of 12" in words
    assert words.count("plan ") == 1


def test_four_doses_stand_closer_before_a_card_takes_two_halves() -> None:
    assert len(pdfium.PdfDocument(printed(card(doses=4), paper="a5"))) == 1
