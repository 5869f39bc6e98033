"""Enter what teaches: an old swatch, bare yarn, or a bath that was dyed."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from django.db import transaction
from django.db.models import F

from shadewright.core.mixing.swatches import checked_doses
from shadewright.errors import ConflictError
from shadewright.records import recipe_reads
from shadewright.records.models import Base, Dye, Swatch, SwatchDose
from shadewright.workflows.bases import add_base, named_base
from shadewright.workflows.depths import depths_of
from shadewright.workflows.dyes import add_dye, named_dye
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.swatches import Doses
from shadewright.workflows.stamps import Stamp, past_date

_LONGEST_LABEL = 60


@dataclass(frozen=True, kw_only=True)
class SwatchWords:
    """A swatch as somebody tells of it; without doses it is bare yarn.

    ``base`` and the dyes are names. ``fibres`` is asked for where the base is new,
    ``label`` is what stands on its tag; empty, its doses stand there.
    """

    base: str
    doses: Doses = ()
    fibres: str = ""
    label: str = ""
    dyed_on: date | None = None
    session: str = ""
    note: str = ""


@transaction.atomic
def keep_swatch(*, words: SwatchWords, stamp: Stamp) -> int:
    """Keep a swatch, with the base and the dyes that are new, and return its number."""
    kept = Swatch.objects.filter(deed=stamp.deed).first()
    if kept is not None:
        return kept.pk
    past_date(words.dyed_on, name="The day it was dyed", argument="dyed_on")
    return kept_on(base_said(words.base, words.fibres, stamp), words, stamp)


@transaction.atomic
def swatch_of_bath(number: str, *, stamp: Stamp) -> int:
    """Return the swatch of a bath that was dyed; its first reading makes it one."""
    bath = recipe_reads.locked_bath(number)
    kept = Swatch.objects.filter(bath=bath).first()
    if kept is not None:
        return kept.pk
    if not hasattr(bath, "lot") and not any(x.is_given for x in depths_of(number)):
        raise ConflictError(
            why=f"No dye went into bath {number} yet, so it has no colour to read.",
            advice="Tick its doses first.",
        )
    row = Swatch.objects.create(
        deed=stamp.deed,
        label=number,
        base=bath.base,
        bath=bath,
        dyed_on=bath.dyed_on,
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    return row.pk


def swatch_id_of_bath(number: str) -> int | None:
    """Return the swatch that a bath became, if it was read."""
    return (
        Swatch.objects.filter(bath__number=number).values_list("pk", flat=True).first()
    )


def last_base() -> str:
    """Return the name of the base of the newest swatch, or nothing."""
    row = Swatch.objects.select_related("base").order_by("-id").first()
    return "" if row is None else row.base.name


def taken_back() -> frozenset[int]:
    """Return the swatches whose first reading, that came with them, was undone."""
    rows = Swatch.objects.filter(
        readings__deed=F("deed"), readings__undone_by__isnull=False
    )
    return frozenset(rows.values_list("pk", flat=True))


def doses_label(doses: Sequence[tuple[str, float]]) -> str:
    """Return what stands on a swatch’s tag: its dyes, each with its depth."""
    said = mix_words(doses)
    fits = len(said) <= _LONGEST_LABEL
    return said if fits else f"{said[: _LONGEST_LABEL - 1]}…"


def kept_on(base: Base, words: SwatchWords, stamp: Stamp) -> int:
    """Keep a swatch of a base that is known, and return its number."""
    _require_once(words.doses)
    row = Swatch.objects.create(
        deed=stamp.deed,
        label=words.label or doses_label(words.doses),
        base=base,
        dyed_on=words.dyed_on,
        session=words.session,
        note=words.note,
        created_at=stamp.at,
        created_by_id=stamp.by,
    )
    for position, (dye, depth) in enumerate(checked_doses(words.doses), start=1):
        SwatchDose.objects.create(
            swatch=row, position=position, dye=_dye(dye, stamp), depth_percent=depth
        )
    return row.pk


def _require_once(doses: Doses) -> None:
    names = [dye.casefold() for dye, _depth in doses]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise ConflictError(
            why=f"{twice.capitalize()} stands twice in one swatch.",
            advice="Add the two depths.",
            argument="doses",
        )


def base_said(name: str, fibres: str, stamp: Stamp) -> Base:
    """Return the base of that name; a new one is added."""
    found = named_base(name) or add_base(name, fibres, stamp)
    return Base.objects.get(pk=found.id)


def _dye(name: str, stamp: Stamp) -> Dye:
    found = named_dye(name) or add_dye(name, stamp)
    return Dye.objects.get(pk=found.id)
