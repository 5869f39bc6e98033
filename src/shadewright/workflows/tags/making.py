"""The tags of a lot: filled in from what is written down, and what they still lack."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.core.quantities import amount_text
from shadewright.errors import ConflictError
from shadewright.exchange.label_code import bath_text
from shadewright.paper.skein_tags import SkeinTag, skein_tags_pdf
from shadewright.records import lot_reads, selling_reads
from shadewright.records.models import Lot
from shadewright.records.models.lots import Grade
from shadewright.workflows.judging.fastness import FastnessKind, weak_kinds
from shadewright.workflows.lot_lines import Held, held
from shadewright.workflows.lot_skeins import skeins_of
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio
from shadewright.workflows.tags.texts import maker_words, yarn_words

_OF_GRADE = {
    Grade.SECOND: "Second quality.",
    Grade.ONE_OFF: "One of a kind: it cannot be dyed again.",
}
_BLEEDS, _RUBS = "May give off colour: wash it apart.", "May rub off on pale cloth."
_OF_TEST = {
    FastnessKind.BLEED: _BLEEDS,
    FastnessKind.WASH: _BLEEDS,
    FastnessKind.RUB_DRY: _RUBS,
    FastnessKind.RUB_WET: _RUBS,
}


@dataclass(frozen=True, kw_only=True)
class LotTags:
    """What a lot's tags would say, how many to print, and what they lack."""

    tag: SkeinTag
    count: int
    base_id: int
    lacks: tuple[str, ...]


def tags_of(number: str) -> LotTags:
    """Return the tags of a lot; refused for one that was taken back or a swatch."""
    lot = lot_reads.lot_row(number)
    lines = tuple(lot.lines.all())
    said = held(lines)
    if not lines:
        raise ConflictError(why=f"Lot {number} was taken back: it has no skeins.")
    if said.grade is Grade.SWATCH:
        raise ConflictError(
            why=f"Lot {number} is a swatch, which is not for sale.",
            advice="Swatches have tags of their own on the page of their set.",
        )
    tag = _tag(lot, said)
    skeins = skeins_of(number)
    return LotTags(
        tag=tag,
        count=skeins.left or said.skeins or 1,
        base_id=lot.bath.base_id,
        lacks=tuple(_lacks(tag, said)),
    )


def lot_tags_pdf(number: str, *, count: int, shape: str, paper: str) -> bytes:
    """Return a lot's tags as a PDF."""
    tag = tags_of(number).tag
    return skein_tags_pdf([tag] * count, shape=shape, paper=paper, printed_on=today())


def _tag(lot: Lot, said: Held) -> SkeinTag:
    maker, yarn, here = maker_words(), yarn_words(lot.bath.base_id), studio()
    grams = _skein_g(lot, said)
    return SkeinTag(
        lot=lot.number,
        qr_text=bath_text(lot.number),
        colourway=selling_reads.sold_as(lot.bath).name,
        base=lot.bath.base.name,
        fibre_content=yarn.fibre_content,
        weight="" if grams is None else amount_text(round(grams), "g"),
        length=_length(lot, grams),
        care=yarn.care or maker.care,
        origin=maker.origin,
        maker=maker.name,
        address=maker.address,
        remark=_remark(lot.number, said),
        is_demo=here is not None and here.is_demo,
    )


def _skein_g(lot: Lot, said: Held) -> float | None:
    """Return what one skein weighs: weighed dry, else as the base has it."""
    if said.grams and said.skeins:
        return said.grams / said.skeins
    return lot.bath.base.skein_g


def _length(lot: Lot, grams: float | None) -> str:
    metres = lot.bath.base.metres_per_100_g
    if metres is None or grams is None:
        return ""
    return amount_text(round(metres * grams / 100), "m")


def _remark(number: str, said: Held) -> str:
    graded = "" if said.grade is None else _OF_GRADE.get(said.grade, "")
    tested = dict.fromkeys(_OF_TEST[kind] for kind in weak_kinds(number))
    return " ".join(filter(None, (graded, *tested)))


def _lacks(tag: SkeinTag, said: Held) -> Iterator[str]:
    names = {
        "fibre content": tag.fibre_content,
        "net weight": tag.weight,
        "length": tag.length,
        "care": tag.care,
        "origin": tag.origin,
        "maker": tag.maker,
        "address": tag.address,
    }
    yield from (name for name, text in names.items() if not text)
    if said.grams is None:
        yield "a dry weight of this lot: the tag has the base’s"
