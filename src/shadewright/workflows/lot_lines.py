"""What is true of a lot now: the newest line of each kind that nobody took back."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from shadewright.exchange.colour_text import Lab, on_screen
from shadewright.records.models import LotLine
from shadewright.records.models.lots import ColourEvidence, Grade, LotAct


@dataclass(frozen=True, kw_only=True)
class NotedColour:
    """A colour that somebody noted of a lot: what a screen shows, and what it rests on.

    ``lab`` is None for a screen's own colour; ``is_shown`` is False where a
    screen can only show the nearest.
    """

    hex_code: str
    lab: Lab | None
    evidence: str
    is_shown: bool

    @property
    def words(self) -> str:
        """The colour as it was noted."""
        if self.lab is None:
            return self.hex_code
        light, a, b = (f"{part:g}".replace("-", "−") for part in self.lab)
        return f"L {light}, a {a}, b {b}"


@dataclass(frozen=True, kw_only=True)
class Held:
    """What is said of a lot; None or empty where it is not written down."""

    grade: Grade | None = None
    place: str = ""
    grams: float | None = None
    skeins: int | None = None
    minutes: float | None = None
    colour: NotedColour | None = None
    photo: int | None = None
    decided: str = ""
    decided_at: datetime | None = None
    notes: tuple[str, ...] = ()

    @property
    def grade_words(self) -> str:
        """The grade as a page says it."""
        return "not written down" if self.grade is None else self.grade.label


def held(lines: Iterable[LotLine]) -> Held:
    """Return what holds, from the lines that stand, oldest first."""
    every = tuple(lines)
    newest = {LotAct(line.act): line for line in every}
    grade, place = newest.get(LotAct.GRADED), newest.get(LotAct.PLACED)
    counted, photo = newest.get(LotAct.COUNTED), newest.get(LotAct.PHOTO)
    decided = newest.get(LotAct.DECIDED)
    return Held(
        grade=None if grade is None else Grade(grade.words),
        place="" if place is None else place.words,
        grams=_value(newest.get(LotAct.WEIGHED)),
        skeins=None if counted is None else int(counted.value or 0),
        minutes=_value(newest.get(LotAct.TIMED)),
        colour=noted_colour(newest.get(LotAct.COLOURED)),
        photo=None if photo is None else photo.pk,
        decided="" if decided is None else decided.words,
        decided_at=None if decided is None else decided.at,
        notes=tuple(line.words for line in every if line.act == LotAct.NOTE),
    )


def noted_colour(line: LotLine | None) -> NotedColour | None:
    """Return the colour that a line notes."""
    if line is None:
        return None
    evidence = ColourEvidence(line.evidence).label
    lab = _lab(line)
    if lab is None:
        return NotedColour(
            hex_code=line.words, lab=None, evidence=evidence, is_shown=True
        )
    shown = on_screen(lab)
    return NotedColour(
        hex_code=shown.hex_code, lab=lab, evidence=evidence, is_shown=shown.is_true
    )


def _lab(line: LotLine) -> Lab | None:
    light, a, b = line.colour_l, line.colour_a, line.colour_b
    return None if light is None or a is None or b is None else (light, a, b)


def _value(line: LotLine | None) -> float | None:
    return None if line is None else line.value
