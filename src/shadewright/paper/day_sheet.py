"""The day sheet: who does what when, on one wall, in black and white.

First the burners as lanes beside the hours, each bath a box with its times; then
every job of the hands in the order of the clock, to tick; last the baths, with blanks
for what the rack and the lot want. A day without a plan has only its baths.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.errors import MissingError
from shadewright.paper.bath_card import SAFETY
from shadewright.paper.papers import paper_size
from shadewright.paper.typeset import printable, typeset
from shadewright.paper.words import day_words

_HOUR_MIN = 60
_LANES = {"a5": 4}
_MOST_LANES = 6
_MOST_CALLED = 32


@dataclass(frozen=True, kw_only=True)
class LaneBlock:
    """A bath on its burner, in minutes from the day's start.

    ``cools_to`` is when it is off the burner where it cools there, else None.
    """

    starts: float
    ends: float
    title: str
    lines: tuple[str, ...]
    cools_to: float | None = None


@dataclass(frozen=True, kw_only=True)
class Lane:
    """A burner and its baths."""

    name: str
    said: str
    blocks: tuple[LaneBlock, ...]


@dataclass(frozen=True, kw_only=True)
class DayJob:
    """Something that hands do at a time; ``who`` is empty where it is not planned.

    ``is_over`` says that it was ticked when the sheet was printed.
    """

    at: str
    bath: str
    what: str
    where: str
    who: str
    is_over: bool = False


@dataclass(frozen=True, kw_only=True)
class SheetBath:
    """A bath in the day's order; empty times where there is no plan."""

    number: str
    name: str
    yarn: str
    pot: str
    source: str
    begins: str
    off: str
    rinse: str


@dataclass(frozen=True, kw_only=True)
class DaySheet:
    """A day; ``opens`` is the clock at which its minutes begin, in min after midnight.

    ``length`` is the last minute of the lanes. ``notes`` say what the plan leaves out.
    """

    day: dt.date
    opens: int = 0
    length: float = 0.0
    facts: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()
    lanes: tuple[Lane, ...] = ()
    jobs: tuple[DayJob, ...] = ()
    baths: tuple[SheetBath, ...] = ()
    is_demo: bool = False


def day_sheet_pdf(sheet: DaySheet, *, paper: str = "a4", printed_on: dt.date) -> bytes:
    """Return the sheet as a PDF, on as many pages as it takes."""
    return typeset("day_sheet.typ", data=sheet_data(sheet, paper=paper), on=printed_on)


def sheet_data(sheet: DaySheet, *, paper: str) -> Mapping[str, object]:
    """Return what the template is given: the paper's size and the texts."""
    if not sheet.baths:
        raise MissingError(
            name="A bath", advice="Put one on this day first.", argument="day"
        )
    most = _LANES.get(paper, _MOST_LANES)
    used = [lane for lane in sheet.lanes if lane.blocks]
    return {
        "title": f"Dye day {day_words(sheet.day)}",
        "page_mm": paper_size(paper),
        "name": f"{sheet.day:%A} {day_words(sheet.day)}",
        "facts": [{"word": word, "said": said} for word, said in sheet.facts],
        "notes": [printable(note[:300]) for note in sheet.notes],
        "length": sheet.length,
        "hours": [_hour(sheet, at) for at in _marks(sheet)],
        "boards": [
            [_lane(lane) for lane in used[at : at + most]]
            for at in range(0, len(used), most)
        ],
        "jobs": [_job(job) for job in sheet.jobs],
        "baths": [_bath(bath) for bath in sheet.baths],
        "safety": SAFETY,
        "demo": sheet.is_demo,
    }


def _marks(sheet: DaySheet) -> Sequence[int]:
    """Return the full hours of the day, in minutes from its start."""
    first = -sheet.opens % _HOUR_MIN
    return range(first, int(sheet.length) + 1, _HOUR_MIN)


def _hour(sheet: DaySheet, at: int) -> Mapping[str, object]:
    hours = (sheet.opens + at) // _HOUR_MIN
    return {"at": at, "words": f"{hours % 24:02}:00"}


def _lane(lane: Lane) -> Mapping[str, object]:
    return {
        "name": printable(lane.name[:40]),
        "said": printable(lane.said[:60]),
        "blocks": [
            {
                "starts": block.starts,
                "ends": block.ends,
                "cools_to": block.cools_to,
                "title": printable(block.title[:60]),
                "lines": [printable(line[:60]) for line in block.lines],
            }
            for block in lane.blocks
        ],
    }


def _job(job: DayJob) -> Mapping[str, object]:
    return {
        "is_over": job.is_over,
        "at": job.at,
        "bath": _shortened(printable(job.bath), _MOST_CALLED),
        "what": printable(job.what[:120]),
        "where": printable(job.where[:80]),
        "who": printable(job.who[:40]),
    }


def _bath(bath: SheetBath) -> Mapping[str, str]:
    return {
        "number": bath.number,
        "name": printable(bath.name[:60]),
        "yarn": printable(bath.yarn[:100]),
        "pot": printable(bath.pot[:40]),
        "source": printable(bath.source[:40]),
        "begins": bath.begins,
        "off": bath.off,
        "rinse": bath.rinse,
    }


def _shortened(words: str, most: int) -> str:
    """Return words that keep to a line; the number in front always stays."""
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"
