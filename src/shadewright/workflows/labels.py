"""Bottle labels: what each says, the PDF, and remembering that it was printed."""

from collections.abc import Sequence

from django.db import transaction

from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK, spread_text
from shadewright.core.uncertainty import Value, half_width
from shadewright.errors import MissingError
from shadewright.exchange import label_text
from shadewright.paper import BottleLabel, label_format, labels_pdf, labels_png
from shadewright.records import reads
from shadewright.records.models import StockBottle
from shadewright.workflows.shelf import ShelfBottle, shaped_bottle, shelf
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio


def bottles_to_label() -> tuple[ShelfBottle, ...]:
    """Return the bottles whose label was never printed or no longer holds."""
    return tuple(bottle for bottle in shelf() if bottle.wants_label)


def label_sheet(*, codes: Sequence[str], format_key: str, skip_first: int = 0) -> bytes:
    """Return the labels of these bottles as a PDF, in the order they are named."""
    return labels_pdf(
        _labels(codes),
        format=label_format(format_key),
        skip_first=skip_first,
        printed_on=today(),
    )


def label_preview(
    *, codes: Sequence[str], format_key: str, skip_first: int = 0
) -> bytes:
    """Return a picture of the first page of what would be printed."""
    cut = label_format(format_key)
    return labels_png(_labels(codes), cut=cut, skip_first=skip_first)


@transaction.atomic
def print_labels(
    *, codes: Sequence[str], format_key: str, skip_first: int = 0
) -> bytes:
    """Return the labels, and remember of each bottle what its label now says."""
    sheet = label_sheet(codes=codes, format_key=format_key, skip_first=skip_first)
    for code in codes:
        row = reads.locked_bottle(code)
        row.labelled_percent = shaped_bottle(row).strength_percent
        row.save(update_fields=["labelled_percent"])
    return sheet


def _labels(codes: Sequence[str]) -> list[BottleLabel]:
    if not codes:
        raise MissingError(
            name="A bottle", advice="Tick at least one to label.", argument="codes"
        )
    here = studio()
    is_demo = here is not None and here.is_demo
    return [_label(reads.bottle_row(code), is_demo=is_demo) for code in codes]


def _label(row: StockBottle, *, is_demo: bool) -> BottleLabel:
    bottle = shaped_bottle(row)
    jar = row.jar
    return BottleLabel(
        code=row.code,
        qr_text=label_text(row.code),
        dye_name=row.dye.name,
        strength_percent=bottle.strength_percent,
        strength_words=amount_text(bottle.strength_percent, "%"),
        spread_words="" if bottle.lacks else spread_words(bottle.strength),
        is_strength_guess=bottle.is_strength_guess,
        made_on=row.made_on,
        made_by="" if row.made_by is None else row.made_by.name,
        jar_lot="" if jar is None else " ".join(filter(None, (jar.code, jar.lot))),
        discard_by=row.discard_by,
        hazard_words=row.dye.hazard_words,
        water=row.water,
        mix_note=_note(row),
        is_demo=is_demo,
    )


def spread_words(strength: Value) -> str:
    """Return how far a strength may be off, as paper says it; empty if not known."""
    if not strength.terms:
        return ""
    return f"±{NO_BREAK}{spread_text(half_width(strength))}"


def _note(row: StockBottle) -> str:
    notes = (
        ("mix fresh", row.dye.is_mix_fresh),
        ("day made is a guess", row.is_date_about),
    )
    return ", ".join(words for words, is_so in notes if is_so)
