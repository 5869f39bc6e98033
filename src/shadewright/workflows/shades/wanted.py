"""A colour that is wanted: typed, read of a swatch or a lot, or kept under a name."""

from dataclasses import dataclass
from enum import StrEnum

from django.db import transaction
from django.db.models import QuerySet

from shadewright.core.colour import Lab, Light
from shadewright.core.recipes import Target, target_of_labs, target_of_spectrum
from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.exchange.colour_text import measured_lab, on_screen, typed_colour
from shadewright.records import lot_reads
from shadewright.records.models import Swatch, WantedColour
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.shades.kinds import Labs
from shadewright.workflows.shades.offering import noted_lot
from shadewright.workflows.shades.swatches import ReadColour, SwatchNow, swatch_now
from shadewright.workflows.stamps import Stamp

MOST_NAME = 60


class CameFrom(StrEnum):
    """Where a wanted colour stands written, as an address names it."""

    COLOUR = "colour"
    SPECTRUM = "spectrum"
    SWATCH = "swatch"
    LOT = "lot"
    WANTED = "wanted"


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """A colour that is wanted, and how it was come by.

    ``labs`` is Lab (10°) by light, D65 always among them; ``spectrum`` 31
    reflectances from 400 to 700 nm, or empty. ``came_from`` with ``key`` finds it
    again: the text that was typed, or the number of a swatch, a lot or a kept colour.
    """

    name: str
    read_by: ReadBy
    labs: Labs
    spectrum: tuple[float, ...] = ()
    as_typed: str = ""
    base_id: int | None = None
    came_from: CameFrom = CameFrom.COLOUR
    key: str = ""

    @property
    def lab(self) -> Lab:
        """The colour in daylight (D65/10°)."""
        return Lab(*self.labs[Light.D65])

    @property
    def wanted_id(self) -> int | None:
        """The number under which it is kept, if it is."""
        return int(self.key) if self.came_from is CameFrom.WANTED else None


def target_of(wanted: Wanted, *, lights: tuple[Light, ...] = (Light.A,)) -> Target:
    """Return a wanted colour as core searches for it; a spectrum under these lights."""
    if wanted.spectrum:
        return target_of_spectrum(wanted.spectrum, lights=lights)
    known = {Light(light): Lab(*lab) for light, lab in wanted.labs.items()}
    return target_of_labs(known)


def wanted_of_text(text: str, *, name: str = "") -> Wanted:
    """Return a colour that was typed: #556f4a, a colour’s name, or Lab (D65, 10°)."""
    typed = typed_colour(text, argument="colour")
    as_typed = " ".join(text.split())[:200]
    lab = measured_lab(typed)
    return Wanted(
        name=_tidy(name) or as_typed.removeprefix("Lab=").strip(),
        read_by=ReadBy.EYE if typed.lab is None else ReadBy.METER,
        labs={Light.D65: (lab[0], lab[1], lab[2])},
        as_typed=as_typed,
        key=typed.hex_code or as_typed,
    )


def wanted_of_spectrum(
    spectrum: tuple[float, ...], *, name: str = "", as_typed: str = ""
) -> Wanted:
    """Return a colour known by 31 reflectances from 400 to 700 nm."""
    aim = target_of_spectrum(spectrum)
    return Wanted(
        name=_tidy(name) or "A spectrum",
        read_by=ReadBy.SPECTRUM,
        labs={light: (lab.L, lab.a, lab.b) for light, lab in aim.labs},
        spectrum=spectrum,
        as_typed=as_typed,
        came_from=CameFrom.SPECTRUM,
        key=",".join(f"{part:.4g}" for part in spectrum),
    )


def wanted_of_swatch(swatch: SwatchNow) -> Wanted:
    """Return the colour of a swatch as it was read last, dry."""
    if swatch.reading is None:
        raise MissingError(
            name=f"The colour of {swatch.label}",
            advice="Read it first, rinsed and dry.",
            argument="swatch",
        )
    return _of_reading(
        swatch.reading,
        name=swatch.label[:MOST_NAME],
        base_id=swatch.base_id,
        came_from=CameFrom.SWATCH,
        key=str(swatch.id),
    )


def read_swatches() -> list[tuple[str, str]]:
    """Return the swatches that were read dry, by number and in words."""
    rows = Swatch.objects.filter(readings__is_wet=False).select_related("base")
    return [(str(row.pk), f"{row.label}, {row.base.name}") for row in rows.distinct()]


def wanted_of_lot(number: str) -> Wanted:
    """Return the colour of a lot: read of its end, or else noted of it."""
    lot = lot_reads.lot_row(number)
    name = f"{lot.bath.version.recipe.name} {number}"[:MOST_NAME]
    swatch_id = getattr(getattr(lot.bath, "swatch", None), "pk", None)
    reading = None if swatch_id is None else swatch_now(swatch_id).reading
    base_id = lot.bath.base_id
    if reading is not None:
        return _of_reading(
            reading, name=name, base_id=base_id, came_from=CameFrom.LOT, key=number
        )
    noted = noted_lot(lot)
    if noted is None:
        raise MissingError(
            name=f"The colour of lot {number}",
            advice="Note it on the lot’s page, or read its colour there.",
            argument="lot",
        )
    return Wanted(
        name=name,
        read_by=noted.read_by,
        labs={Light.D65: (noted.lab.L, noted.lab.a, noted.lab.b)},
        as_typed=noted.as_typed,
        base_id=base_id,
        came_from=CameFrom.LOT,
        key=number,
    )


def wanted_of_row(row: WantedColour) -> Wanted:
    """Return a colour that was kept under a name."""
    return Wanted(
        name=row.name,
        read_by=ReadBy(row.read_by),
        labs={light: tuple(lab) for light, lab in row.labs.items()},
        spectrum=tuple(row.spectrum),
        as_typed=row.as_typed,
        base_id=row.base_id,
        came_from=CameFrom.WANTED,
        key=str(row.pk),
    )


def wanted_colour(wanted_id: int) -> Wanted:
    """Return one kept colour, in use or retired."""
    return wanted_of_row(_row(wanted_id))


def wanted_colours(*, is_retired: bool = False) -> tuple[Wanted, ...]:
    """Return the colours that are kept, by name."""
    return tuple(map(wanted_of_row, _rows().filter(is_retired=is_retired)))


@transaction.atomic
def keep_wanted(
    wanted: Wanted, *, name: str, base_id: int | None = None, stamp: Stamp
) -> Wanted:
    """Keep a colour under a name of its own, for a base or for any."""
    row = WantedColour(
        name=_free_name(name),
        base_id=base_id,
        read_by=wanted.read_by,
        labs=wanted.labs,
        spectrum=list(wanted.spectrum),
        as_typed=wanted.as_typed or _screen_words(wanted),
    )
    keep_item(row, stamp)
    return wanted_of_row(row)


def retire_wanted(wanted_id: int, *, stamp: Stamp, is_retired: bool = True) -> None:
    """Take a colour out of the list, or back into it; nothing is deleted."""
    row = _row(wanted_id)
    row.is_retired = is_retired
    keep_item(row, stamp)


def _of_reading(
    reading: ReadColour, *, name: str, base_id: int, came_from: CameFrom, key: str
) -> Wanted:
    return Wanted(
        name=name,
        read_by=reading.read_by,
        labs=reading.labs,
        spectrum=reading.spectrum,
        base_id=base_id,
        came_from=came_from,
        key=key,
    )


def _rows() -> QuerySet[WantedColour]:
    return WantedColour.objects.order_by("name")


def _row(wanted_id: int) -> WantedColour:
    row = _rows().filter(pk=wanted_id).first()
    if row is None:
        raise NotFoundError(kind="wanted colour", key=str(wanted_id), argument="wanted")
    return row


def _free_name(name: str) -> str:
    tidy = _tidy(name)
    if not tidy:
        raise MissingError(
            name="The name", advice="Give the colour a name.", argument="name"
        )
    if len(tidy) > MOST_NAME:
        raise OutOfRangeError(
            name="The name",
            given=f"{len(tidy)} characters",
            allowed=f"at most {MOST_NAME} characters",
            argument="name",
        )
    twin = WantedColour.objects.filter(name__iexact=tidy).first()
    if twin is not None:
        raise ConflictError(
            why=f"There is a wanted colour “{twin.name}” already"
            + (", among the retired." if twin.is_retired else "."),
            advice="Choose another name.",
            argument="name",
        )
    return tidy


def _screen_words(wanted: Wanted) -> str:
    return on_screen(wanted.lab).hex_code


def _tidy(name: str) -> str:
    return " ".join(name.split())
