"""Bottle labels: what a stock bottle must say to whoever finds it on the shelf.

Each label carries the square code and the short code, the dye's name, the true
strength, the date, the hazard words and 'Not for food'; these never go. What
else fits is shown, and goes in the order of ``DROP_ORDER`` where it does not.
Text first shrinks, then wraps; only a dye's name is ever cut, with an ellipsis.
"""

import datetime as dt
from collections.abc import Generator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

import typst

from shadewright.core.quantities import amount_text
from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper.label_formats import LabelFormat
from shadewright.paper.squares import square_svg
from shadewright.paper.typeset import first_page_png, printable, typeset
from shadewright.paper.words import day_words

DROP_ORDER = (
    *("note", "water", "maker"),
    *("grams_per_litre", "spread", "jar", "discard"),
)
_TOO_SMALL = "hazard words do not fit: "


@dataclass(frozen=True)
class BottleLabel:
    """What one label says; an empty text means that it was not written down.

    ``qr_text`` is what the square code says, ``strength_words`` the true
    strength as the studio writes it ("1.04 %"), ``spread_words`` how far it may
    be off ("± 0.02"), ``mix_note`` a line for the dyer ("mix fresh").
    """

    code: str
    qr_text: str
    dye_name: str
    strength_percent: float
    strength_words: str
    spread_words: str = ""
    is_strength_guess: bool = False
    made_on: dt.date | None = None
    made_by: str = ""
    jar_lot: str = ""
    discard_by: dt.date | None = None
    hazard_words: str = ""
    water: str = ""
    mix_note: str = ""
    is_demo: bool = False


def labels_pdf(
    labels: Sequence[BottleLabel],
    *,
    format: LabelFormat,  # ruff: ignore[builtin-argument-shadowing]
    skip_first: int = 0,
    printed_on: dt.date,
) -> bytes:
    """Return the labels as a PDF, leaving the first places of a part-used sheet."""
    with _refusals(format):
        data = labels_data(labels, cut=format, skip_first=skip_first)
        return typeset("labels.typ", data=data, on=printed_on)


def labels_png(
    labels: Sequence[BottleLabel], *, cut: LabelFormat, skip_first: int = 0
) -> bytes:
    """Return the first page of the labels as a picture, set as the PDF is."""
    with _refusals(cut):
        data = labels_data(labels, cut=cut, skip_first=skip_first)
        return first_page_png("labels.typ", data=data, width_mm=cut.page_mm[0])


def labels_data(
    labels: Sequence[BottleLabel],
    *,
    cut: LabelFormat,
    skip_first: int = 0,
) -> Mapping[str, object]:
    """Return what the template is given: the sheet's measures and the texts."""
    if not labels:
        raise MissingError(
            name="A bottle", advice="Choose at least one to label.", argument="labels"
        )
    _check_skip(skip_first, cut)
    names = ", ".join(label.code for label in labels[:12])
    places = [None] * skip_first + [_texts(label) for label in labels]
    return {
        "title": f"Bottle labels: {names}{', …' if labels[12:] else ''}",
        "page_mm": cut.page_mm,
        "label_mm": cut.label_mm,
        "inset_mm": cut.inset_mm,
        "square_code_mm": cut.square_code_mm,
        "corners_mm": cut.corners_mm,
        "drop_order": DROP_ORDER,
        "pages": _pages(places, per_page=cut.per_page),
    }


@contextmanager
def _refusals(cut: LabelFormat) -> Generator[None]:
    """Turn what the typesetter says of a label that is too small into a sentence."""
    try:
        yield
    except typst.TypstError as refusal:
        raise _too_small(refusal, cut) from refusal


def _check_skip(skip_first: int, label_format: LabelFormat) -> None:
    most = label_format.per_page - 1
    if not 0 <= skip_first <= most:
        raise OutOfRangeError(
            name="The number of labels already used",
            given=str(skip_first),
            allowed=f"from 0 to {most}" if most else "0 for single labels",
            argument="skip_first",
        )


def _pages(
    places: list[Mapping[str, object] | None], *, per_page: int
) -> list[list[Mapping[str, object] | None]]:
    return [places[i : i + per_page] for i in range(0, len(places), per_page)]


def _texts(label: BottleLabel) -> Mapping[str, object]:
    made = f"Made {day_words(label.made_on)}" if label.made_on else "Date not known"
    discard = f"Discard by {day_words(label.discard_by)}" if label.discard_by else ""
    grams_per_litre = 10.0 * label.strength_percent
    return {
        "code": label.code,
        "square": square_svg(label.qr_text),
        "name": printable(label.dye_name[:120]) or "Dye not named",
        "strength": label.strength_words,
        "spread": label.spread_words,
        "guess": label.is_strength_guess,
        "grams_per_litre": amount_text(grams_per_litre, "g/l"),
        "made": made,
        "maker": f"by {label.made_by[:60]}" if label.made_by else "",
        "jar": f"Jar {label.jar_lot[:60]}" if label.jar_lot else "Jar not known",
        "discard": discard,
        "hazard": label.hazard_words,
        "water": f"Water: {label.water[:80]}" if label.water else "",
        "note": label.mix_note[:120],
        "demo": label.is_demo,
    }


def _too_small(refusal: typst.TypstError, label_format: LabelFormat) -> Exception:
    """Return the sentence for hazard words that no size of type makes fit."""
    _, found, code = refusal.message.partition(_TOO_SMALL)
    if not found:
        return refusal
    return OutOfRangeError(
        name=f"The label of bottle {code[:4].strip()}",
        given=label_format.name,
        allowed="large enough for its hazard words, which are never cut",
        advice="Choose a larger label.",
        argument="format",
    )
