"""Lots whose colour is known and of which nobody has said whether they teach."""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.colour import Lab
from shadewright.exchange.colour_text import TypedColour, measured_lab
from shadewright.records import lot_reads
from shadewright.records.models import Lot
from shadewright.records.models.lots import ColourEvidence
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.lot_lines import held
from shadewright.workflows.shades.swatches import Standing, SwatchNow

_READ_BY = {
    ColourEvidence.HEX: ReadBy.EYE,
    ColourEvidence.PHOTO: ReadBy.PHOTO,
    ColourEvidence.METER: ReadBy.METER,
}
_OF_LABEL = {kind.label: _READ_BY[kind] for kind in ColourEvidence}


@dataclass(frozen=True, kw_only=True)
class NotedLot:
    """A lot’s colour as it was noted on its page."""

    lab: Lab
    read_by: ReadBy
    as_typed: str


@dataclass(frozen=True, kw_only=True)
class LotOnOffer:
    """A lot that could teach: its colour in daylight, and how that was come by."""

    number: str
    recipe_name: str
    base_name: str
    lab: Lab
    read_by: ReadBy
    sd: float | None = None
    repeat: int = 1


def offers_among(swatches: Sequence[SwatchNow]) -> tuple[LotOnOffer, ...]:
    """Return the lots on offer, the newest first, given every swatch."""
    of_bath = {each.bath_number: each for each in swatches if each.is_lot}
    rows = {row.number: row for row in lot_reads.coloured_lot_rows(list(of_bath))}
    return tuple(
        offer
        for number, row in rows.items()
        if (offer := _offer(row, of_bath.get(number))) is not None
    )


def noted_lot(lot: Lot) -> NotedLot | None:
    """Return a lot’s colour as it was noted, in daylight; None where none was."""
    colour = held(lot.lines.all()).colour
    if colour is None:
        return None
    typed = TypedColour(lab=colour.lab, hex_code=colour.hex_code)
    lab = Lab(*measured_lab(typed))
    return NotedLot(lab=lab, read_by=_OF_LABEL[colour.evidence], as_typed=colour.words)


def _offer(lot: Lot, swatch: SwatchNow | None) -> LotOnOffer | None:
    if swatch is not None and swatch.reading is not None:
        if swatch.standing is not Standing.OFFERED:
            return None
        read = swatch.reading
        return _shaped(lot, read.lab, read.read_by, sd=read.sd, repeat=read.repeat)
    noted = noted_lot(lot)
    return None if noted is None else _shaped(lot, noted.lab, noted.read_by)


def _shaped(
    lot: Lot, lab: Lab, read_by: ReadBy, *, sd: float | None = None, repeat: int = 1
) -> LotOnOffer:
    return LotOnOffer(
        number=lot.number,
        recipe_name=lot.bath.version.recipe.name,
        base_name=lot.bath.base.name,
        lab=lab,
        read_by=read_by,
        sd=sd,
        repeat=repeat,
    )
