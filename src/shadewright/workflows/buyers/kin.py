"""Which lots share something with a lot: its bath, a bottle it took from, a jar.

What is wrong with one may be wrong with the others: the same bottle gave the same dye,
and a jar all that was ever made of its powder. Each circle is wider than the one before
and says what it rests on.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from shadewright.records import lot_reads
from shadewright.records.lot_reads import DyeFrom
from shadewright.workflows.poured import PouredBath, poured_bath
from shadewright.workflows.trace_onwards import dye_of_jar


class Sharing(StrEnum):
    """What lots have in common, from the closest on."""

    BATH = "bath"
    BOTTLE = "bottle"
    JAR = "jar"


@dataclass(frozen=True, kw_only=True)
class Circle:
    """Lots that share one thing with a lot; ``key`` is the thing's own code.

    The lot itself is among them.
    """

    shares: Sharing
    key: str
    name: str
    lots: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Kin:
    """The circles around a lot, and what nobody wrote down of its dye."""

    number: str
    circles: tuple[Circle, ...]
    untold: tuple[str, ...]


def kin_of(number: str) -> Kin:
    """Return the lots that share a bath, a bottle or a jar with a lot."""
    bath = lot_reads.lot_row(number).bath
    poured = poured_bath(bath)
    circles = (
        Circle(
            shares=Sharing.BATH, key=number, name=f"the bath {number}", lots=(number,)
        ),
        *_by_bottle(poured),
        *_by_jar(poured),
    )
    return Kin(
        number=number,
        circles=tuple(_with(each, number) for each in circles),
        untold=tuple(dict.fromkeys(_untold(poured))),
    )


def _with(circle: Circle, number: str) -> Circle:
    """Return a circle with the lot itself in it, the newest lots first."""
    lots = tuple(sorted({*circle.lots, number}, reverse=True))
    return Circle(shares=circle.shares, key=circle.key, name=circle.name, lots=lots)


def _by_bottle(poured: PouredBath) -> Iterator[Circle]:
    seen: dict[int, str] = {}
    for dose in poured.doses:
        if dose.is_told and dose.bottle_id is not None:
            seen[dose.bottle_id] = f"bottle {dose.bottle} of {dose.dye_name}"
    for bottle_id, name in seen.items():
        dye = DyeFrom(since={bottle_id: 0}, filled=frozenset({bottle_id}))
        code = poured.ledgers.bottles[bottle_id].code
        yield Circle(shares=Sharing.BOTTLE, key=code, name=name, lots=_lots(dye))


def _by_jar(poured: PouredBath) -> Iterator[Circle]:
    for pk in dict.fromkeys(_jars(poured)):
        if pk is not None:
            jar = poured.ledgers.jars[pk]
            yield Circle(
                shares=Sharing.JAR,
                key=jar.code,
                name=f"jar {jar.code}",
                lots=_lots(dye_of_jar(pk)),
            )


def _jars(poured: PouredBath) -> Iterator[int | None]:
    for dose in poured.doses:
        if dose.is_told and dose.bottle_id is not None:
            yield from poured.ledgers.shares(dose.bottle_id, dose.until)


def _lots(dye: DyeFrom) -> tuple[str, ...]:
    """Return the lots of the baths that took from some bottles."""
    baths = lot_reads.reached_baths({
        bath for _bottle, bath in lot_reads.bath_pairs(dye)
    })
    return tuple(each.number for each in baths.values() if each.has_lot)


def _untold(poured: PouredBath) -> Iterator[str]:
    for dose in poured.doses:
        if dose.is_missed:
            continue
        if not dose.is_told:
            yield f"{dose.dye_name}: not written down whether it went in."
        elif dose.bottle_id is None:
            yield f"{dose.dye_name}: its bottle or jar was not written down."
        elif None in poured.ledgers.shares(dose.bottle_id, dose.until):
            yield f"{dose.dye_name}: bottle {dose.bottle} has no jar written down."
