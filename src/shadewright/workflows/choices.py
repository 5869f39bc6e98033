"""What can be chosen for a recipe or a bath: helpers, bases, pots, burners."""

from dataclasses import dataclass

from shadewright.core.quantities import amount_text
from shadewright.records.models import Auxiliary, Base, HeatSource, Pot


@dataclass(frozen=True, kw_only=True)
class Choice:
    """A thing of the catalogue, as a list offers it."""

    id: int
    words: str


@dataclass(frozen=True, kw_only=True)
class LotChoice(Choice):
    """A delivery of a base."""

    base_id: int


def helpers_in_use() -> tuple[Choice, ...]:
    """Return the acids and other helpers in use."""
    rows = Auxiliary.objects.filter(is_retired=False)
    return tuple(Choice(id=row.pk, words=row.name) for row in rows)


def bases_in_use() -> tuple[Choice, ...]:
    """Return the bases in use."""
    rows = Base.objects.filter(is_retired=False)
    return tuple(Choice(id=row.pk, words=row.name) for row in rows)


def lots_in_use() -> tuple[LotChoice, ...]:
    """Return the mill lots of the bases in use."""
    rows = Base.objects.filter(is_retired=False).prefetch_related("lots")
    return tuple(
        LotChoice(id=lot.pk, words=f"{base.name}, lot {lot.lot}", base_id=base.pk)
        for base in rows
        for lot in base.lots.all()
    )


def pots_in_use() -> tuple[Choice, ...]:
    """Return the pots in use, each with what it holds."""
    rows = Pot.objects.filter(is_retired=False)
    return tuple(
        Choice(id=row.pk, words=f"{row.name}, {amount_text(row.volume_l, 'l')}")
        for row in rows
    )


def sources_in_use() -> tuple[Choice, ...]:
    """Return the heat sources in use, each with its power."""
    rows = HeatSource.objects.filter(is_retired=False)
    return tuple(
        Choice(id=row.pk, words=f"{row.name}, {amount_text(row.power_kw, 'kW')}")
        for row in rows
    )
