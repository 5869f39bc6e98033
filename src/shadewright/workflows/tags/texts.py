"""What tags say of the maker and of a yarn, and what a region asks of them.

A region's list is the studio's own text, with its source and the day it was checked:
rules change, and the studio checks its local ones itself.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from django.db import transaction

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.records import reads, recipe_reads, selling_reads
from shadewright.records.models import Maker, TagRegion, TagText
from shadewright.workflows.stamps import past_date

CHECK_LOCALLY = "Check your local rules: nothing here says that a tag meets them."
MOST_ASKS = 30


@dataclass(frozen=True, kw_only=True)
class MakerWords:
    """What every tag says: maker, address, where it was dyed, care in words."""

    name: str = ""
    address: str = ""
    origin: str = ""
    care: str = ""


@dataclass(frozen=True, kw_only=True)
class YarnWords:
    """What tags say of a yarn: its fibres as a buyer may read them, its own care."""

    fibre_content: str = ""
    care: str = ""


@dataclass(frozen=True, kw_only=True)
class Region:
    """What a region asks of a tag, as the studio wrote it down; 0 is a new one."""

    id: int = 0
    name: str
    asks: tuple[str, ...] = ()
    source: str = ""
    checked_on: date | None = None
    is_used: bool = False


STARTERS = (
    Region(
        name="European Union",
        asks=(
            "Fibre content by its legal names, in per cent, the largest first.",
            "It stands on a label that lasts and stays with the yarn.",
            "Net weight.",
            "Lot or batch, so that it can be found again.",
            "Name and postal address of the maker, and a contact in the Union.",
        ),
        source="Regulations (EU) 1007/2011 and 2023/988, from memory",
    ),
    Region(
        name="United States",
        asks=(
            "Fibre content by generic names, in per cent by weight.",
            "Country of origin; yarn made elsewhere and dyed here says both.",
            "Name of the business that answers for it.",
            "Net weight.",
        ),
        source="Textile and Wool Acts (16 CFR 300 and 303), from memory",
    ),
)
"""Lists to begin from, never more than that."""


def maker_words() -> MakerWords:
    """Return what every tag says; the studio's name where nothing was written."""
    row = selling_reads.maker_row()
    if row is None:
        here = reads.studio_row()
        return MakerWords(name="" if here is None else here.name)
    return MakerWords(
        name=row.name, address=row.address, origin=row.origin, care=row.care
    )


@transaction.atomic
def keep_maker(said: MakerWords) -> None:
    """Write down what every tag says."""
    here = reads.studio_row()
    if here is None:
        raise ConflictError(why="The studio is not founded yet.")
    Maker.objects.update_or_create(
        studio=here,
        defaults={
            "name": said.name.strip(),
            "address": said.address.strip(),
            "origin": said.origin.strip(),
            "care": said.care.strip(),
        },
    )


def yarn_words(base_id: int) -> YarnWords:
    """Return what tags say of a yarn; its fibres as the shelf has them, until said."""
    row = selling_reads.tag_text_row(base_id)
    if row is None:
        return YarnWords(fibre_content=recipe_reads.base_row(base_id).fibres)
    return YarnWords(fibre_content=row.fibre_content, care=row.care)


@transaction.atomic
def keep_yarn_words(base_id: int, said: YarnWords) -> None:
    """Write down what tags say of a yarn."""
    base = recipe_reads.base_row(base_id)
    TagText.objects.update_or_create(
        base=base,
        defaults={
            "fibre_content": said.fibre_content.strip(),
            "care": said.care.strip(),
        },
    )


def regions() -> tuple[Region, ...]:
    """Return the regions' lists, by name."""
    return tuple(map(_region, selling_reads.region_rows()))


def region(region_id: int) -> Region:
    """Return one region's list."""
    row = selling_reads.region_rows().filter(pk=region_id).first()
    if row is None:
        raise NotFoundError(kind="region", key=str(region_id), argument="region")
    return _region(row)


@transaction.atomic
def keep_region(said: Region) -> int:
    """Keep a region's list, new or changed, and return its number."""
    name = " ".join(said.name.split())[:60]
    if not name:
        raise MissingError(
            name="The region", advice="A country, a market.", argument="name"
        )
    same = TagRegion.objects.filter(name__iexact=name).exclude(pk=said.id)
    if same.exists():
        raise ConflictError(why=f"There is a list for {name} already.", argument="name")
    row = TagRegion.objects.filter(pk=said.id).first() or TagRegion()
    row.name, row.asks = name, _asks(said.asks)
    row.source = said.source.strip()[:200]
    row.checked_on = past_date(said.checked_on, name="The day", argument="checked_on")
    row.is_used = said.is_used
    row.save()
    return row.pk


def _asks(lines: Iterable[str]) -> list[str]:
    asks = [words.strip() for words in lines if words.strip()]
    if len(asks) > MOST_ASKS:
        raise OutOfRangeError(
            name="What a region asks",
            given=f"{len(asks)} lines",
            allowed=f"at most {MOST_ASKS} lines",
            argument="asks",
        )
    return asks


def _region(row: TagRegion) -> Region:
    return Region(
        id=row.pk,
        name=row.name,
        asks=tuple(row.asks),
        source=row.source,
        checked_on=row.checked_on,
        is_used=row.is_used,
    )
