"""A dye day on paper: burners beside the hours, jobs by the clock, the baths."""

import datetime as dt
from dataclasses import replace

import pypdfium2 as pdfium
import pytest

from shadewright.errors import MissingError
from shadewright.paper import PAPERS
from shadewright.paper.day_sheet import (
    DayJob,
    DaySheet,
    Lane,
    LaneBlock,
    SheetBath,
    day_sheet_pdf,
    sheet_data,
)
from shadewright.paper.tick_lists import DayList, ListColumn, ListPart, day_list_pdf
from tests.paper.pictures import signs_on, words_on

DAY = dt.date(2026, 11, 26)
LONG = ("W" * 120, "wide " * 40, '#panic("x") `$\\')


def lane(place: int = 1, *, text: str = "Burner") -> Lane:
    block = LaneBlock(
        starts=30.0 * place,
        ends=30.0 * place + 100,
        title=f"B{place} {text}",
        lines=("Pot 8 l", "08:30 heat on", "10:05 look, heat off"),
        cools_to=30.0 * place + 200,
    )
    return Lane(name=f"{text} {place}", said="1.8 kW", blocks=(block,))


def sheet(*, text: str = "Low Tide", lanes: int = 1, jobs: int = 1) -> DaySheet:
    job = DayJob(
        at="08:00", bath=f"B1 {text}", what=f"Fill {text}", where=text, who="Ines"
    )
    bath = SheetBath(
        number="261126-B1",
        name=text,
        yarn=text,
        pot=text,
        source=text,
        begins="08:00",
        off="10:05",
        rinse="",
    )
    return DaySheet(
        day=DAY,
        opens=450,
        length=600.0,
        facts=(("In", text),),
        notes=(f"Not in the plan: {text}",),
        lanes=tuple(lane(place, text=text) for place in range(1, lanes + 1)),
        jobs=(job,) * jobs,
        baths=(bath,) * 12,
    )


def printed(what: DaySheet, paper: str = "a4") -> bytes:
    return day_sheet_pdf(what, paper=paper, printed_on=DAY)


def test_the_hours_are_full_ones() -> None:
    hours = sheet_data(sheet(), paper="a4")["hours"]  # from 7:30 to 17:30
    assert isinstance(hours, list)
    assert hours[0] == {"at": 30, "words": "08:00"}
    assert hours[-1] == {"at": 570, "words": "17:00"}


@pytest.mark.parametrize(("paper", "boards"), [("a4", [6, 1]), ("a5", [4, 3])])
def test_lanes_that_are_too_many_go_on(paper: str, boards: list[int]) -> None:
    found = sheet_data(sheet(lanes=7), paper=paper)["boards"]
    assert isinstance(found, list)
    assert [len(board) for board in found] == boards


def test_a_burner_without_a_bath_takes_no_room() -> None:
    idle = Lane(name="Idle", said="", blocks=())
    found = sheet_data(replace(sheet(), lanes=(idle, lane())), paper="a4")["boards"]
    assert isinstance(found, list)
    assert [each["name"] for each in found[0]] == ["Burner 1"]


def test_a_person_finds_everything_in_black_and_white() -> None:
    words = words_on(printed(sheet()))
    for part in (
        "Thursday 26 Nov 2026",
        "10:05 look, heat off",
        "cools here",
        "08:00 B1 Low Tide Fill Low Tide Low Tide Ines",
        "On the rack at",
        "safety data sheet",
    ):
        assert part in words, part


def test_a_day_without_a_bath_is_told() -> None:
    with pytest.raises(MissingError, match="A bath"):
        printed(replace(sheet(), baths=()))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("text", LONG)
def test_no_text_leaves_the_sheet(paper: str, text: str) -> None:
    stays_on(paper, printed(sheet(text=text, lanes=6, jobs=40), paper=paper))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("text", LONG)
def test_no_text_leaves_a_list(paper: str, text: str) -> None:
    columns = (
        ListColumn(head="Bottle", share=1, is_large=True),
        ListColumn(head="Baths", share=2),
    )
    part = ListPart(name="Bottles", said=text, columns=columns, rows=((text,) * 2,) * 9)
    what = DayList(name="Pull list", day=DAY, parts=(part,), cautions=(text,))
    stays_on(paper, day_list_pdf(what, paper=paper, printed_on=DAY))


def stays_on(paper: str, pdf: bytes) -> None:
    width, height = PAPERS[paper]
    for page in range(len(pdfium.PdfDocument(pdf))):
        for sign in signs_on(pdf, page):
            assert 5 < sign.left < sign.right < width - 5, sign
            assert 5 < sign.top < sign.bottom < height - 5, sign
