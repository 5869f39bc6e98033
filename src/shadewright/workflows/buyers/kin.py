"""Which lots share something with a lot: its bath, a bottle it took from, a jar.

What is wrong with one may be wrong with the others: the same bottle gave the same dye,
and a jar all that was ever made of its powder. A bottle counts with all that it was
poured into, and with all that was poured into it; a lot with every bath that its yarn
was in, and with every lot that its yarn became.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import chain

from shadewright.records import lot_reads, selling_reads
from shadewright.records.lot_reads import DyeFrom
from shadewright.workflows.bottle_sources import Ledgers
from shadewright.workflows.poured import PouredBath, poured_bath
from shadewright.workflows.trace_onwards import dye_of_bottle, dye_of_jar

_MOST_PERHAPS = 1000


class Sharing(StrEnum):
    """What lots have in common, from the closest on."""

    BATH = "bath"
    BOTTLE = "bottle"
    JAR = "jar"


@dataclass(frozen=True, kw_only=True)
class Circle:
    """Lots that share one thing with a lot; ``key`` is the thing’s own code.

    The lot itself is among them. ``perhaps`` are lots whose bath was planned from the
    thing, and whose doses nobody wrote down.
    """

    shares: Sharing
    key: str
    name: str
    lots: tuple[str, ...]
    perhaps: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Kin:
    """The circles around a lot, and what nobody wrote down of its dye."""

    number: str
    circles: tuple[Circle, ...]
    untold: tuple[str, ...]


def kin_of(number: str) -> Kin:
    """Return the lots that share a bath, a bottle or a jar with a lot."""
    baths = selling_reads.yarn_chain(lot_reads.lot_row(number).bath)
    poured = [poured_bath(bath) for bath in baths]
    found = chain(
        (_by_bath(bath.number, number) for bath in baths),
        *(_by_bottle(each, number) for each in poured),
        *(_by_jar(each, number) for each in poured),
    )
    circles = {(each.shares, each.key): each for each in found}
    untold = chain.from_iterable(map(_untold, poured))
    return Kin(
        number=number,
        circles=tuple(circles.values()),
        untold=tuple(dict.fromkeys(untold)),
    )


def _by_bath(bath: str, number: str) -> Circle:
    return Circle(
        shares=Sharing.BATH,
        key=bath,
        name=f"the bath {bath}",
        lots=_newest_first({bath, number}),
    )


def _by_bottle(poured: PouredBath, number: str) -> Iterator[Circle]:
    for pk in dict.fromkeys(_bottles(poured)):
        bottle = poured.ledgers.bottles[pk]
        yield _of_dye(
            dye_of_bottle(bottle.code),
            number,
            shares=Sharing.BOTTLE,
            key=bottle.code,
            name=f"bottle {bottle.code} of {bottle.dye.name}",
        )


def _by_jar(poured: PouredBath, number: str) -> Iterator[Circle]:
    for pk in dict.fromkeys(_jars(poured)):
        if pk is not None:
            code = poured.ledgers.jars[pk].code
            yield _of_dye(
                dye_of_jar(pk),
                number,
                shares=Sharing.JAR,
                key=code,
                name=f"jar {code}",
            )


def _of_dye(
    dye: DyeFrom, number: str, *, shares: Sharing, key: str, name: str
) -> Circle:
    told = {bath for _bottle, bath in lot_reads.bath_pairs(dye)}
    untold = lot_reads.untold_pairs(dye, most=_MOST_PERHAPS)
    lots = _newest_first({number, *_lots(told)})
    perhaps = _newest_first(_lots({bath for _bottle, bath in untold}))
    return Circle(
        shares=shares,
        key=key,
        name=name,
        lots=lots,
        perhaps=tuple(each for each in perhaps if each not in lots),
    )


def _bottles(poured: PouredBath) -> Iterator[int]:
    for dose in poured.doses:
        if dose.is_told and dose.bottle_id is not None:
            yield from _behind(poured.ledgers, dose.bottle_id, dose.until)


def _behind(ledgers: Ledgers, bottle_id: int, until: int | None) -> Iterator[int]:
    """Yield a bottle and those whose stock was in it before a line of its ledger.

    Yields
    ------
    int
        Their row numbers, the nearest first.
    """
    yield bottle_id
    for line in ledgers.came_in(bottle_id, until):
        if line.other_id is not None:
            yield from _behind(ledgers, line.other_id, line.pk)


def _jars(poured: PouredBath) -> Iterator[int | None]:
    for dose in poured.doses:
        if dose.is_told and dose.bottle_id is not None:
            yield from poured.ledgers.shares(dose.bottle_id, dose.until)


def _lots(bath_ids: set[int]) -> set[str]:
    """Return the lots of some baths, also one taken back of which skeins went out."""
    baths = lot_reads.reached_baths(bath_ids)
    out = selling_reads.standing_skeins_out().filter(lot__bath__in=bath_ids)
    sold = set(out.values_list("lot__number", flat=True))
    return {x.number for x in baths.values() if x.has_lot or x.number in sold}


def _newest_first(numbers: set[str]) -> tuple[str, ...]:
    return tuple(sorted(selling_reads.numbers_with_after(numbers), reverse=True))


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
