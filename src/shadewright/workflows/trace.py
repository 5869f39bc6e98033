"""Trace back: from a lot or a bottle to the jars, every missing link in plain sight."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from shadewright.core.quantities import amount_text, counted
from shadewright.core.solutions.ledger import BottleAct
from shadewright.records import lot_reads, reads, selling_reads
from shadewright.records.models import Bath, BottleLine, Lot, PowderJar
from shadewright.workflows.bottle_sources import Ledgers, ledgers_of
from shadewright.workflows.lot_lines import held
from shadewright.workflows.poured import Poured, poured_bath
from shadewright.workflows.trace_nodes import Kind, Node, day, joined, missing


def trace_lot(number: str) -> Node:
    """Return a lot with its bath, its bottles, the jars behind them, and the base."""
    lot = lot_reads.lot_row(number)
    bath = lot.bath
    poured = poured_bath(bath)
    doses = (_dose(dose, poured.ledgers) for dose in poured.doses)
    before = selling_reads.lot_corrected_by(bath)
    below = Node(
        kind=Kind.BATH,
        name=f"{bath.number}, {day(bath.dyed_on)}",
        more=joined(_pot(bath), _by(bath)),
        key=bath.number,
        below=(*doses, _base(bath)),
    )
    if before is None:
        return _lot(lot, below)
    return _lot(lot, below, replace(trace_lot(before), kind=Kind.LOT_BEFORE))


def trace_bottle(code: str) -> Node:
    """Return a bottle with everything that its dye came from."""
    row = reads.bottle_row(code)
    return bottle_node(row.pk, None, ledgers_of([row.pk]))


def bottle_node(
    bottle_id: int, until: int | None, ledgers: Ledgers, *, more: str = ""
) -> Node:
    """Return a bottle as it was before a line of a ledger, with what is behind it."""
    bottle = ledgers.bottles[bottle_id]
    strength = ledgers.strength_percent(bottle_id, until)
    came_in = ledgers.came_in(bottle_id, until)
    return Node(
        kind=Kind.BOTTLE,
        name=_named(f"{bottle.code} {bottle.dye.name}", strength),
        more=more,
        key=bottle.code,
        below=tuple(_sources(came_in, ledgers)),
    )


def jar_node(jar: PowderJar, *, more: str = "") -> Node:
    """Return a jar with its supplier's lot."""
    lot = f"lot {jar.lot}" if jar.lot else "supplier’s lot not written down"
    opened = f"opened {day(jar.opened_on)}" if jar.opened_on else ""
    return Node(
        kind=Kind.JAR, name=jar.code, more=joined(lot, opened, more), key=str(jar.pk)
    )


def _lot(lot: Lot, *below: Node) -> Node:
    said = held(lot.lines.all())
    recipe = lot.bath.version
    return Node(
        kind=Kind.LOT,
        name=lot.number,
        more=joined(
            f"{recipe.recipe.name}, version {recipe.number}",
            "" if said.skeins is None else counted(said.skeins, "skein"),
            "" if said.grams is None else amount_text(said.grams, "g"),
        ),
        key=lot.number,
        below=below,
    )


def _dose(dose: Poured, ledgers: Ledgers) -> Node:
    if dose.is_missed:
        return missing(Kind.DOSE, f"{dose.dye_name}: left out")
    if not dose.is_told:
        source = f"planned from {dose.bottle}" if dose.bottle else "planned dry"
        return missing(
            Kind.DOSE, f"{dose.dye_name}: not written down whether it went in", source
        )
    amount = _amount(dose)
    if dose.bottle_id is not None:
        return bottle_node(dose.bottle_id, dose.until, ledgers, more=amount)
    if dose.volume_ml is not None:
        unknown = missing(Kind.BOTTLE, "bottle not written down")
    else:
        unknown = missing(Kind.JAR, "weighed dry: jar not written down")
    return Node(kind=Kind.DOSE, name=dose.dye_name, more=amount, below=(unknown,))


def _amount(dose: Poured) -> str:
    if dose.weighed_g is not None:
        return amount_text(dose.weighed_g, "g")
    if dose.volume_ml is not None:
        return amount_text(dose.volume_ml, "ml")
    return "" if dose.dye_g is None else amount_text(dose.dye_g, "g")


def _sources(lines: Sequence[BottleLine], ledgers: Ledgers) -> Iterator[Node]:
    for line in lines:
        if line.other_id is not None:
            how = "diluted" if line.act == BottleAct.FILLED else "poured in"
            volume = "" if how == "diluted" else amount_text(line.volume_ml, "ml")
            more = joined(f"{volume} {how}".strip(), day(line.at))
            yield bottle_node(line.other_id, line.pk, ledgers, more=more)
        elif line.jar is not None:
            yield jar_node(line.jar, more=amount_text(line.powder_g, "g"))
        elif line.powder_g:
            more = f"{amount_text(line.powder_g, 'g')} of powder"
            yield missing(Kind.JAR, "jar not written down", more)
        else:
            yield missing(Kind.JAR, "entered as it stood: jar not known")


def _base(bath: Bath) -> Node:
    if bath.mill_lot is None:
        lot = missing(Kind.MILL_LOT, "not written down")
    else:
        lot = Node(
            kind=Kind.MILL_LOT, name=bath.mill_lot.lot, key=str(bath.mill_lot.base_id)
        )
    return Node(
        kind=Kind.BASE,
        name=bath.base.name,
        more=amount_text(bath.fibre_g, "g"),
        key=str(bath.base_id),
        below=(lot,),
    )


def _pot(bath: Bath) -> str:
    return "pot not written down" if bath.pot is None else f"pot {bath.pot.name}"


def _by(bath: Bath) -> str:
    named = bath.lines.filter(by__isnull=False).order_by("id")
    name = named.values_list("by__name", flat=True).first()
    return f"by {name}" if name else ""


def _named(words: str, strength_percent: float | None) -> str:
    if strength_percent is None:
        return words
    return f"{words}, {amount_text(strength_percent, '%')}"
