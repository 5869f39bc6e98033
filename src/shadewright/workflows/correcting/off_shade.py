"""Where a lot stands and where it should be: its dye, its colour, the colour wanted."""

from dataclasses import dataclass
from math import hypot, isclose

from shadewright.core.colour import Lab
from shadewright.errors import ConflictError, MissingError
from shadewright.records import judging_reads, lot_reads, selling_reads
from shadewright.records.models import Bath, Recipe, RecipeVersion, Standard
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.poured import poured_bath
from shadewright.workflows.shades.reading_spreads import usually_off
from shadewright.workflows.shades.swatches import Doses
from shadewright.workflows.shades.wanted import Wanted, wanted_of_lot


@dataclass(frozen=True, kw_only=True)
class Aim:
    """A colour that a lot is to have, in daylight, and what it is the colour of."""

    lab: Lab
    words: str
    read_by: ReadBy


@dataclass(frozen=True, kw_only=True)
class OffShade:
    """A lot with all dye that is on it, its colour as it was read, and its aim.

    Its recipe is that of the colourway that it is sold as.

    ``doses`` are in % on weight of fibre, of the lot’s bath and of every bath before.
    """

    number: str
    recipe_id: int
    recipe_name: str
    version_id: int
    base_id: int
    base_name: str
    fibre_g: float
    doses: Doses
    measured: Wanted
    aim: Aim | None


def off_shade(number: str, *, wanted: Wanted | None = None) -> OffShade:
    """Return where a lot stands; its aim is what is wanted, else its standard.

    Refused where its colour was never read, or not all of its dye is written down.
    """
    lot = lot_reads.lot_row(number)
    if not lot.lines.all():
        raise ConflictError(why=f"Lot {number} was taken back.")
    bath = lot.bath
    own = version_sold_as(bath)
    sold = own.recipe
    return OffShade(
        number=number,
        recipe_id=sold.pk,
        recipe_name=sold.name,
        version_id=own.pk,
        base_id=bath.base_id,
        base_name=bath.base.name,
        fibre_g=bath.fibre_g,
        doses=all_doses(bath),
        measured=wanted_of_lot(number),
        aim=_standard_aim(sold, bath) if wanted is None else _wanted_aim(wanted),
    )


def unsure_by(off: OffShade) -> float:
    """Return CIEDE2000 that a lot’s colour and its aim are usually off, together."""
    read = [(off.measured.lab, off.measured.read_by)]
    if off.aim is not None:
        read.append((off.aim.lab, off.aim.read_by))
    each = (usually_off(lab, ReadBy(by), sd=None, repeat=1) for lab, by in read)
    return hypot(*(one or 0.0 for one in each))


def all_doses(bath: Bath) -> Doses:
    """Return all dye on the yarn of a bath, what it had before too, by dye."""
    sums: dict[str, float] = {}
    for each in selling_reads.yarn_chain(bath):
        poured = poured_bath(each)
        for dye in poured.dyes:
            depth = poured.depth_percent(dye)
            if depth is None:
                raise MissingError(
                    name=f"How much {dye} went into bath {each.number}",
                    advice="Write it on the bath’s card first.",
                    argument="doses",
                )
            sums[dye] = sums.get(dye, 0.0) + depth
    return tuple((dye, d) for dye, d in sums.items() if not isclose(d, 0.0))


def version_sold_as(bath: Bath) -> RecipeVersion:
    """Return the version by which the yarn of a bath would be dyed again.

    Of a lot that was overdyed it is the newest of what it became.
    """
    sold, first = selling_reads.sold_as(bath), selling_reads.yarn_chain(bath)[-1]
    if first.version.recipe_id == sold.pk:
        return first.version
    return sold.versions.latest("number")


def _standard_aim(sold: Recipe, bath: Bath) -> Aim | None:
    row = judging_reads.standard_row(recipe_id=sold.pk, base_id=bath.base_id)
    lab = None if row is None else standard_lab(row)
    if row is None or lab is None:
        return None
    read_by = ReadBy(row.read_by or ReadBy.METER)
    return Aim(lab=lab, words="the standard", read_by=read_by)


def standard_lab(row: Standard) -> Lab | None:
    """Return the colour of a standard, if it was read."""
    light, a, b = row.colour_l, row.colour_a, row.colour_b
    if light is None or a is None or b is None:
        return None
    return Lab(light, a, b)


def _wanted_aim(wanted: Wanted) -> Aim:
    is_typed = wanted.name in {"", wanted.as_typed, wanted.key}
    words = "the colour wanted" if is_typed else wanted.name
    return Aim(lab=wanted.lab, words=words, read_by=wanted.read_by)
