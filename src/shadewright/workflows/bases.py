"""The bare yarns, for whoever names one or brings a new one."""

from dataclasses import dataclass

from shadewright.errors import MissingError
from shadewright.records.models import Base
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.stamps import Stamp


@dataclass(frozen=True, kw_only=True)
class ShelfBase:
    """A bare yarn."""

    id: int
    name: str
    fibres: str


def bases() -> tuple[ShelfBase, ...]:
    """Return the bases in use, by name."""
    return tuple(_shaped(row) for row in Base.objects.filter(is_retired=False))


def named_base(name: str) -> ShelfBase | None:
    """Return the base of that name, in use or retired; capitals do not matter."""
    row = Base.objects.filter(name__iexact=_tidy(name)).first()
    return None if row is None else _shaped(row)


def add_base(name: str, fibres: str, stamp: Stamp) -> ShelfBase:
    """Add a base by its name and its fibres; the rest can be filled in later."""
    wanted, made_of = _tidy(name), _tidy(fibres)
    if not wanted:
        raise MissingError(
            name="The yarn’s name",
            advice="Write what you call it.",
            argument="base",
        )
    if not made_of:
        raise MissingError(
            name="What the yarn is made of",
            advice="It is new here: write its fibres, like 80 % wool, 20 % nylon.",
            argument="fibres",
        )
    row = Base(name=wanted, fibres=made_of)
    keep_item(row, stamp)
    return _shaped(row)


def _tidy(name: str) -> str:
    return " ".join(name.split())


def _shaped(row: Base) -> ShelfBase:
    return ShelfBase(id=row.pk, name=row.name, fibres=row.fibres)
