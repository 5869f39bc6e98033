"""What stands in the way of an answer, and the ways out."""

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet

from shadewright.core.quantities import amount_text, counted
from shadewright.core.solutions.keeping import Purpose
from shadewright.web.baths.planning import stock_address
from shadewright.web.matching.pages import Trouble
from shadewright.web.pages import Link
from shadewright.web.parts import Chip
from shadewright.web.shelf.tasks import bottle_address
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.bottle_choice import short_words
from shadewright.workflows.shades.find_wishes import AtShelf
from shadewright.workflows.shades.finding import Found


def mind(troubles: Sequence[Trouble]) -> Chip | None:
    """Return how many things stand in the way, or None."""
    if not troubles:
        return None
    return Chip(words=f"{counted(len(troubles), 'thing')} to mind", kind="caution")


def said_above(found: Found, place: int) -> AbstractSet[int]:
    """Return the dyes of which an answer further up says already that none is here."""
    above = found.answers[: place - 1]
    return {x.dye_id for each in above for x in each.doses if _has_no_stock(x)}


def _has_no_stock(dose: PlannedDose) -> bool:
    return bool(dose.missing_g) and not dose.shares and not dose.kept_out


def troubles_of(
    doses: Sequence[PlannedDose], at: AtShelf, *, said: AbstractSet[int]
) -> Iterator[Trouble]:
    """Yield what stands in the way of doses, and the ways out.

    Yields
    ------
    Trouble
        No stock, too little, too small a dose, a bottle past its time.
    """
    none = [x for x in doses if _has_no_stock(x) and x.dye_id not in said]
    if none:
        names = [f"{x.dye_name} ({amount_text(x.dye_g, 'g')} of dye)" for x in none]
        yield Trouble(
            words=f"No stock on the shelf of {', '.join(names)}.",
            ways=tuple(map(_make, none)),
        )
    for dose in doses:
        if dose.missing_g and not _has_no_stock(dose):
            yield Trouble(words=_short(dose), ways=(_make(dose),))
        elif dose.advice and dose.dosed.tool is None:
            yield Trouble(words=f"{dose.dye_name}: {dose.advice}", ways=())
        yield from _past(dose, at)


def _short(dose: PlannedDose) -> str:
    return short_words(
        dye_name=dose.dye_name,
        missing_g=dose.missing_g,
        has_some=bool(dose.shares),
        kept_out=dose.kept_out,
        purpose=Purpose.USUAL,
    )


def _make(dose: PlannedDose) -> Link:
    address = stock_address(dose.dye_id, dose.missing_g)
    return Link(words=f"Make a stock of {dose.dye_name}", address=address)


def _past(dose: PlannedDose, at: AtShelf) -> Iterator[Trouble]:
    codes = {share.code for share in dose.shares}
    for bottle in at.offer.bottles:
        if bottle.code in codes and bottle.is_past:
            yield Trouble(
                words=(
                    f"Bottle {bottle.code} of {dose.dye_name} is past its time. Test "
                    "its strength before a pot that must repeat."
                ),
                ways=(
                    Link(
                        words=f"Bottle {bottle.code}",
                        address=bottle_address(bottle.code),
                    ),
                ),
            )
