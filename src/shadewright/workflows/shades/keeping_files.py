"""Keep the good lines of a file as swatches with their colours; hand them out again."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import starmap

from django.db import transaction

from shadewright.core.mixing import Swatch as Taught
from shadewright.errors import ConflictError, MissingError
from shadewright.exchange.swatch_file import written_swatches
from shadewright.records import reads
from shadewright.records.models import Base, ColourReading, Dye, Swatch, SwatchDose
from shadewright.records.writes import keep_colour_readings
from shadewright.workflows.bases import named_base
from shadewright.workflows.dyes import add_dye, named_dye
from shadewright.workflows.shades.entering_swatches import base_said, doses_label
from shadewright.workflows.shades.evidence import day_of
from shadewright.workflows.shades.kinds import reading_of
from shadewright.workflows.shades.readings import row_of
from shadewright.workflows.shades.swatch_files import FileLine
from shadewright.workflows.shades.swatches import (
    Standing,
    SwatchNow,
    swatches_now,
)
from shadewright.workflows.stamps import Stamp

MOST_NEW_NAMES = 300


@dataclass(frozen=True, kw_only=True)
class NewNames:
    """Names of a file that the catalogue does not have."""

    bases: tuple[str, ...]
    dyes: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class NamesSaid:
    """What a name of the file means: a name of the catalogue, or itself, to be made.

    ``fibres`` is what a base that is made consists of, by the file’s name.
    """

    bases: Mapping[str, str] = field(default_factory=dict)
    dyes: Mapping[str, str] = field(default_factory=dict)
    fibres: Mapping[str, str] = field(default_factory=dict)


def new_names(lines: Iterable[FileLine]) -> NewNames:
    """Return the names of bases and dyes that the catalogue does not have."""
    bases: dict[str, str] = {}
    dyes: dict[str, str] = {}
    for line in lines:
        bases.setdefault(line.base.casefold(), line.base)
        for dye, _depth in line.doses:
            dyes.setdefault(dye.casefold(), dye)
    return NewNames(
        bases=tuple(name for name in bases.values() if named_base(name) is None),
        dyes=tuple(name for name in dyes.values() if named_dye(name) is None),
    )


@transaction.atomic
def keep_lines(lines: Sequence[FileLine], *, names: NamesSaid, stamp: Stamp) -> int:
    """Keep swatches with their colours in one deed; return how many it holds."""
    reads.lock_shelf()
    kept = Swatch.objects.filter(deed=stamp.deed).count()
    if kept:
        return kept
    if not lines:
        raise MissingError(
            name="A line to keep", advice="Mend one, or type the doses of a sample."
        )
    bases = {name: _base(name, names, stamp) for name in {x.base for x in lines}}
    named = {dye for line in lines for dye, _depth in line.doses}
    dyes = {name: _dye(names.dyes.get(name, name), stamp) for name in sorted(named)}
    swatches = Swatch.objects.bulk_create([
        _swatch(line, bases[line.base], dyes, stamp) for line in lines
    ])
    both = list(zip(swatches, lines, strict=True))
    SwatchDose.objects.bulk_create(
        SwatchDose(swatch=swatch, position=place, dye=dyes[dye], depth_percent=depth)
        for swatch, line in both
        for place, (dye, depth) in enumerate(line.doses, start=1)
    )
    keep_colour_readings(list(starmap(_reading, both)), stamp)
    return len(swatches)


def _base(name: str, names: NamesSaid, stamp: Stamp) -> Base:
    return base_said(names.bases.get(name, name), names.fibres.get(name, ""), stamp)


def _dye(name: str, stamp: Stamp) -> Dye:
    found = named_dye(name) or add_dye(name, stamp)
    return Dye.objects.get(pk=found.id)


def _swatch(
    line: FileLine, base: Base, dyes: Mapping[str, Dye], stamp: Stamp
) -> Swatch:
    meant = [dyes[dye].pk for dye, _depth in line.doses]
    if len(set(meant)) != len(meant):
        raise ConflictError(
            why=f"In line {line.line} two names mean the same dye.",
            advice="Choose another dye for one of them, or add it.",
        )
    doses = [(dyes[dye].name, depth) for dye, depth in line.doses]
    return Swatch(
        deed=stamp.deed,
        label=line.label or doses_label(doses),
        base=base,
        dyed_on=line.dyed_on,
        session=line.session,
        note=line.note,
        created_at=stamp.at,
        created_by_id=stamp.by,
    )


def _reading(swatch: Swatch, line: FileLine) -> ColourReading:
    row = row_of(line.new)
    row.swatch = swatch
    return row


def all_swatches_text() -> str:
    """Return every swatch that was read dry as a table that can be read again."""
    swatches = [each for each in reversed(swatches_now()) if each.reading is not None]
    readings = ColourReading.objects.in_bulk(list(map(_held, swatches)))
    return written_swatches(
        [_taught(each, readings[_held(each)]) for each in swatches],
        dates={each.id: day_of(each) for each in swatches},
        notes={each.id: _note(each) for each in swatches},
    )


def _held(now: SwatchNow) -> int:
    return 0 if now.reading is None else now.reading.id


def _taught(now: SwatchNow, row: ColourReading) -> Taught:
    return Taught(
        number=now.id,
        base=now.base_name,
        doses=now.doses,
        reading=reading_of(row),
        session=day_of(now),
    )


def _note(now: SwatchNow) -> str:
    aside = "Set aside." if now.standing is Standing.SET_ASIDE else ""
    return f"{aside} {now.note}".strip()
