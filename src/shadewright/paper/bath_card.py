"""The bath card: one pot on paper, line for line as the bench page.

It shows the same steps in the same order and words, each with a box to tick and
blanks for what went differently, so that it is typed back line by line. Two
cards share an A4 or Letter page; a bath with many doses takes both halves.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from shadewright.core.baths.blanks import Blank, blank_unit, blanks_of
from shadewright.core.baths.curves import Curve
from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.quantities import NO_BREAK, amount_text, number_text
from shadewright.core.quantities.writing import beside_text
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper.heat_picture import heat_picture
from shadewright.paper.papers import TWO_UP, paper_size
from shadewright.paper.squares import square_svg
from shadewright.paper.typeset import printable, typeset
from shadewright.paper.words import day_words

MOST_CARDS = 60
SAFETY = (
    "Dyes and acids: follow the safety data sheet and your local rules. "
    "Dye pots and spoons are never used for food again."
)
_FOLLOW = "Follow the"
_MOST_NOTE = 300


@dataclass(frozen=True, kw_only=True)
class BathCard:
    """One bath; ``qr_text`` is what the square code says.

    ``strengths_percent`` holds the strength of each dose's stock by the key of
    its step, ``sure`` how sure its depth then is, ``advice`` what would help that
    most, ``acidity`` how sour the bath should be, in a line; an empty
    ``pot_name`` or ``mill_lot`` leaves a line to write on. ``times`` are the clock
    that the day's plan has for a step, ``order`` the bath's place in that day.
    ``done`` says of each step that is over what was done, ``begun`` of one that is
    over in part: who gets a card in the middle of a bath must not pour again.
    """

    number: str
    qr_text: str
    recipe_name: str
    version_number: int
    base_name: str
    fibre_g: float
    liquor_ratio: float
    dyed_on: dt.date
    steps: tuple[RoundStep, ...]
    strengths_percent: Mapping[str, float] = field(default_factory=dict)
    sure: Mapping[str, str] = field(default_factory=dict)
    advice: str = ""
    mill_lot: str = ""
    skeins: int | None = None
    pot_name: str = ""
    source_name: str = ""
    order: str = ""
    times: Mapping[str, str] = field(default_factory=dict)
    done: Mapping[str, str] = field(default_factory=dict)
    begun: Mapping[str, str] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    curve: Curve | None = None
    acidity: str = ""
    is_swatch: bool = False
    is_demo: bool = False


def bath_cards_pdf(
    cards: Sequence[BathCard], *, paper: str = "a4", printed_on: dt.date
) -> bytes:
    """Return the cards as a PDF; A4 and Letter hold two side by side."""
    return typeset("bath_card.typ", data=cards_data(cards, paper=paper), on=printed_on)


def cards_data(cards: Sequence[BathCard], *, paper: str) -> Mapping[str, object]:
    """Return what the template is given: the paper's size and the texts."""
    _check_count(cards)
    names = ", ".join(card.number for card in cards[:6])
    return {
        "title": f"Bath cards: {names}{', …' if cards[6:] else ''}",
        "page_mm": paper_size(paper),
        "two_up": paper in TWO_UP,
        "safety": SAFETY,
        "cards": [_texts(card) for card in cards],
    }


def _check_count(cards: Sequence[BathCard]) -> None:
    if not cards:
        raise MissingError(
            name="A bath", advice="Choose at least one to print.", argument="number"
        )
    if len(cards) > MOST_CARDS:
        raise OutOfRangeError(
            name="The number of cards",
            given=str(len(cards)),
            allowed=f"at most {MOST_CARDS} at a time",
            argument="number",
        )


def _texts(card: BathCard) -> Mapping[str, object]:
    return {
        "number": card.number,
        "square": square_svg(card.qr_text),
        "name": printable(card.recipe_name[:80]) or "Not named",
        "version": f"version {card.version_number}",
        "facts": [{"word": word, "said": said} for word, said in _facts(card)],
        "acidity": printable(card.acidity[:200]),
        "advice": _shortened(card.advice),
        "notes": [_shortened(note) for note in card.notes if note.strip()],
        "swatch": card.is_swatch,
        "demo": card.is_demo,
        "steps": [
            _done_texts(card, place, step)
            if step.key in card.done
            else _step_texts(card, place, step)
            for place, step in enumerate(card.steps, start=1)
        ],
    }


def _facts(card: BathCard) -> tuple[tuple[str, str], ...]:
    skeins = {None: "", 1: ", 1 skein"}.get(card.skeins, f", {card.skeins} skeins")
    ratio = number_text(card.liquor_ratio, digits=3)
    return (
        ("Base", card.base_name[:80]),
        ("Mill lot", card.mill_lot[:60]),
        ("Dry yarn", f"{amount_text(card.fibre_g, 'g')}{skeins}"),
        ("Pot", card.pot_name[:60]),
        *((("On", card.source_name[:60]),) if card.source_name else ()),
        ("Liquor", f"1{NO_BREAK}:{NO_BREAK}{ratio}"),
        ("Day", day_words(card.dyed_on)),
        *((("Card", card.order),) if card.order else ()),
        ("Who", ""),
    )


def _step_texts(card: BathCard, place: int, step: RoundStep) -> Mapping[str, object]:
    number, _, unit = _amount(step).partition(NO_BREAK)
    return {
        "place": place,
        "key": step.key,
        "title": _title(card, step),
        "planned_at": card.times.get(step.key, ""),
        "code": step.code,
        "number": number,
        "unit": unit,
        "scale": _beside(step),
        "sure": card.sure.get(step.key, ""),
        "text": card.begun.get(
            step.key, "" if step.volume_ml is not None else step.text
        ),
        "caution": _in_short(step.caution),
        "blanks": [_blank(blank, step) for blank in blanks_of(step)],
        "lot": step.kind is StepKind.FINISH,
        "done": False,
        **(heat_picture(card.curve) if step.kind is StepKind.HEAT else {}),
    }


def _done_texts(card: BathCard, place: int, step: RoundStep) -> Mapping[str, object]:
    """Return a line that is over: ticked, with what was done, and nothing to do."""
    empty = dict.fromkeys(
        ("planned_at", "code", "number", "unit", "scale", "sure", "caution"), ""
    )
    return empty | {
        "place": place,
        "key": step.key,
        "title": _title(card, step),
        "text": printable(card.done[step.key]),
        "blanks": [],
        "lot": False,
        "done": True,
    }


def _beside(step: RoundStep) -> str:
    """Return stock in the other unit; where it is weighed, with the steps of taring."""
    if step.scale_g is not None:
        return f"{beside_text(step.scale_g)} on the scale"
    if step.volume_ml is None:
        return ""
    volume = amount_text(step.volume_ml, "ml")
    return f"jug on the scale, tare, pour to {_amount(step)} ({volume})"


def _amount(step: RoundStep) -> str:
    return "" if step.amount is None else amount_text(step.amount, step.unit)


def _title(card: BathCard, step: RoundStep) -> str:
    strength = card.strengths_percent.get(step.key)
    said = "" if strength is None else f" {amount_text(strength, '%')}"
    return printable(step.title[:80]) + said


def _in_short(caution: str) -> str:
    """Return a caution without its last sentence, which the foot says for all."""
    return caution.partition(_FOLLOW)[0].strip()


def _blank(blank: Blank, step: RoundStep) -> Mapping[str, object]:
    return {
        "words": str(blank),
        "unit": blank_unit(blank, step),
        "wide": blank is Blank.LOOKED,
        "short": blank is Blank.RINSES,
        "clock": blank in {Blank.TIME, Blank.RACK},
    }


def _shortened(note: str) -> str:
    plain = " ".join(note.split())
    if len(plain) <= _MOST_NOTE:
        return plain
    return f"{plain[:_MOST_NOTE].rsplit(' ', 1)[0]} … (the rest is on the bath’s page)"
