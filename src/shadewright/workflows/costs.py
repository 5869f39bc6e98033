"""What a bath cost, from what is written down of it; what is not, is named."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from django.db.models import Sum

from shadewright.core.costing import (
    Cost,
    CostPart,
    dye_cost,
    time_cost,
    total_cost,
    weight_cost,
)
from shadewright.records import reads
from shadewright.records.models import Bath, BathLine, JarLine, PowderJar
from shadewright.records.models.baths import BathAct
from shadewright.records.models.ledgers import JarAct
from shadewright.workflows.bottle_sources import ledgers_of
from shadewright.workflows.poured import Poured, PouredBath

_NO_JAR = "jar not known"


@dataclass(frozen=True, kw_only=True)
class _Priced:
    """A jar with the powder that it came with, None where that is not known."""

    jar: PowderJar
    filled_g: float | None


def bath_cost(bath: Bath, poured: PouredBath, *, minutes: float | None) -> Cost:
    """Return what a bath cost: dye, acid and other helpers, yarn, time."""
    jars = _priced(poured.ledgers.jars)
    dyes = (_dye(dose, poured, jars) for dose in poured.doses if not dose.is_missed)
    parts = [*dyes, *_helpers(bath), _yarn(bath), *_time(minutes)]
    return total_cost(parts)


def stock_costs(held: Mapping[int, tuple[str, float]]) -> dict[int, CostPart]:
    """Return what the dye in some bottles cost, from each one's code and grams."""
    ledgers = ledgers_of(list(held))
    jars = _priced(ledgers.jars)
    return {
        pk: _of_stock(code, dye_g, ledgers.shares(pk, None), jars)
        for pk, (code, dye_g) in held.items()
    }


def cost_words(cost: Cost) -> str:
    """Return a cost in one line, with what is missing named."""
    gaps = "; ".join(_gaps(cost.missing))
    if cost.money is None:
        return f"Not known. {gaps}" if gaps else "Not known."
    said = f"{cost.money:.2f}"
    return f"{said}, without {gaps}" if gaps else said


def _gaps(missing: Sequence[CostPart]) -> Iterator[str]:
    for why in dict.fromkeys(each.why for each in missing):
        names = dict.fromkeys(each.name for each in missing if each.why == why)
        yield f"{', '.join(names)}: {why}"


def _priced(jars: Mapping[int, PowderJar]) -> dict[int, _Priced]:
    lines = JarLine.objects.filter(
        jar_id__in=jars, act=JarAct.FILLED, undone_by=None
    ).values("jar_id")
    held = {
        row["jar_id"]: row["grams"] for row in lines.annotate(grams=Sum("amount_g"))
    }
    return {
        pk: _Priced(jar=jar, filled_g=held.get(pk) or None) for pk, jar in jars.items()
    }


def _dye(dose: Poured, poured: PouredBath, jars: Mapping[int, _Priced]) -> CostPart:
    name = dose.dye_name
    if not dose.is_told:
        return CostPart(
            name=name, money=None, why="not written down whether it went in"
        )
    if dose.dye_g is None:
        return CostPart(name=name, money=None, why="amount not known")
    if dose.bottle_id is None:
        return CostPart(name=name, money=None, why=f"weighed dry, {_NO_JAR}")
    shares = poured.ledgers.shares(dose.bottle_id, dose.until)
    return replace(_of_stock(dose.bottle, dose.dye_g, shares, jars), name=name)


def _of_stock(
    code: str,
    dye_g: float,
    shares: Mapping[int | None, float],
    jars: Mapping[int, _Priced],
) -> CostPart:
    why = _gap(code, shares, jars)
    money = None if why else _money(dye_g, shares, jars)
    return CostPart(name=code, money=money, why=why)


def _gap(
    code: str, shares: Mapping[int | None, float], jars: Mapping[int, _Priced]
) -> str:
    """Say why the dye of a bottle has no price, if so."""
    if not shares or None in shares:
        return f"{_NO_JAR} of bottle {code}"
    behind = [jars[jar_id] for jar_id in shares if jar_id is not None]
    unpriced = [one.jar.code for one in behind if one.jar.price is None]
    if unpriced:
        return f"no price for {_jars(unpriced)}"
    empty = [one.jar.code for one in behind if one.filled_g is None]
    return f"grams not known of {_jars(empty)}" if empty else ""


def _jars(codes: Sequence[str]) -> str:
    return f"jar{'s' if codes[1:] else ''} {' and '.join(sorted(codes))}"


def _money(
    dye_g: float, shares: Mapping[int | None, float], jars: Mapping[int, _Priced]
) -> float:
    return sum(
        dye_cost(
            dye_g=dye_g * share,
            powder_strength_percent=jars[jar_id].jar.strength_percent,
            jar_price=float(jars[jar_id].jar.price or 0),
            jar_powder_g=jars[jar_id].filled_g or 0.0,
        )
        for jar_id, share in shares.items()
        if jar_id is not None
    )


def _helpers(bath: Bath) -> Iterator[CostPart]:
    # A liquid's ml count as grams: vinegar weighs nearly as much as water.
    rows = BathLine.objects.filter(bath=bath, act=BathAct.ADDED, undone_by=None)
    ticked = list(rows)
    for number, row in enumerate(bath.version.auxiliaries.all(), start=1):
        keys = {f"add-{number}", f"add-{number}a", f"add-{number}b"}
        helper = row.auxiliary
        mass_g = _ticked_g([line for line in ticked if line.step in keys])
        if mass_g is None:
            why = "amount not written down"
            yield CostPart(name=helper.name, money=None, why=why)
        elif helper.price_per_kg is None:
            yield CostPart(name=helper.name, money=None, why="no price for it")
        else:
            price = float(helper.price_per_kg)
            money = weight_cost(mass_g=mass_g, price_per_kg=price)
            yield CostPart(name=helper.name, money=money)


def _ticked_g(lines: Sequence[BathLine]) -> float | None:
    amounts = [line.value for line in lines]
    known = [amount for amount in amounts if amount is not None]
    return sum(known) if known and len(known) == len(amounts) else None


def _yarn(bath: Bath) -> CostPart:
    price = bath.base.price_per_kg
    if price is None:
        why = f"no price for {bath.base.name}"
        return CostPart(name="yarn", money=None, why=why)
    money = weight_cost(mass_g=bath.fibre_g, price_per_kg=float(price))
    return CostPart(name="yarn", money=money)


def _time(minutes: float | None) -> Iterator[CostPart]:
    studio = reads.studio_row()
    if studio is None or studio.rate_per_hour is None:
        return
    if minutes is None:
        yield CostPart(name="time", money=None, why="minutes not written down")
        return
    rate = float(studio.rate_per_hour)
    money = time_cost(minutes=minutes, rate_per_hour=rate)
    yield CostPart(name="time", money=money)
