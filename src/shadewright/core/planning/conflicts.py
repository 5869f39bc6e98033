"""What is going and cannot go on as it stands: each in one sentence.

Nothing here is mended by the plan. A bath that is on the heat is left where it is, and
somebody has to look: carry it over, hold it longer, stay longer, or ask for help.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shadewright.core.planning.board import Stay, Taken
from shadewright.core.planning.day import Day, Going, Stage
from shadewright.core.planning.fitting import pot_of

_DEEDS = {Stage.DOSE: "dose it", Stage.CHECK: "check it"}
_SPARE_KW = 1e-9


@dataclass(frozen=True, kw_only=True)
class Conflict:
    """A bath that is going, and what stands against it, in one sentence."""

    name: str
    why: str


def conflicts_of(stays: Sequence[Stay], day: Day) -> Iterator[Conflict]:
    """Yield what is going and cannot go on as it stands, bath by bath.

    Parameters
    ----------
    stays : sequence of Stay
        A plan. [min]
    day : Day
        The day. [-]

    Yields
    ------
    Conflict
        Which bath, and why. [-]
    """
    hung = day.rack_used
    for stay in stays:
        bath = day.baths[stay.bath]
        if bath.going is None:
            continue
        hung += 0 if bath.is_overnight else bath.skeins
        for why in _whys(stay, bath.going, stays, day):
            yield Conflict(name=bath.name, why=why)
        if hung > day.rack_slots and not bath.is_overnight:
            yield Conflict(name=bath.name, why="The rack has no room for its skeins.")


def _whys(stay: Stay, going: Going, stays: Sequence[Stay], day: Day) -> Iterator[str]:
    yield from _without_hands(stay, day)
    if going.has_heat:
        yield from _without_power(stay, stays, day)
    yield from _too_late(stay, day)
    yield from _beside_others(stay, stays, day)
    pot = pot_of(day, stay.pot)
    frees = day.length if stay.rinse is None else stay.rinse.start
    if pot.out_from is not None and max(pot.out_from, day.now) < frees:
        out = clock(pot.out_from, day)
        yield f"{pot.name} is out from {out}, and it is in there until then and later."


def _without_hands(stay: Stay, day: Day) -> Iterator[str]:
    wanted = [(stay.fill, "fill it")]
    for each, taken in zip(stay.way.hands, stay.hands, strict=True):
        deed = _DEEDS.get(each.what, "") if isinstance(each.what, Stage) else ""
        wanted.append((taken, deed or "do what its program wants"))
    if stay.rinse is not None:
        wanted.append((stay.rinse, "rinse it"))
    for taken, deed in wanted:
        if taken.length and taken.person is None:
            yield f"Nobody is free at {_from(taken, day)} to {deed}."


def _from(taken: Taken, day: Day) -> str:
    return clock(taken.start, day)


def _without_power(stay: Stay, stays: Sequence[Stay], day: Day) -> Iterator[str]:
    source = day.sources[stay.way.source]
    off = stay.heat + stay.way.power
    if off > day.now:
        if source.out_from is not None and source.out_from < off:
            yield (
                f"{source.name} is out from {clock(source.out_from, day)}, "
                f"and it wants heat there until {clock(off, day)}."
            )
        alone = _nobody_in(max(stay.heat, day.now), off, day)
        if alone is not None:
            yield (
                f"{source.name} is on for it until {clock(off, day)}, "
                f"and nobody is in at {clock(alone, day)}."
            )
        yield from _overloads(stay, stays, day)
    others = [day.baths[each.bath].name for each in _on_the_same(stay, stays, day)]
    if others:
        yield f"{source.name} is taken by {', '.join(others)} too."


def _nobody_in(start: int, end: int, day: Day) -> int | None:
    """Return the first minute of a span at which nobody is in."""
    at = start
    while at < end:
        ends = [each.ends for each in day.people if each.starts <= at < each.ends]
        if not ends:
            return at
        at = max(ends)
    return None


def _overloads(stay: Stay, stays: Sequence[Stay], day: Day) -> Iterator[str]:
    limits = {each.name: each.limit_kw for each in day.circuits}
    circuit = day.sources[stay.way.source].circuit
    on = [
        each
        for each in stays
        if day.sources[each.way.source].circuit == circuit
        and each.heat + each.way.power > day.now
    ]
    start, off = max(stay.heat, day.now), stay.heat + stay.way.power
    for at in sorted({max(each.heat, day.now) for each in on}):
        load_kw = sum(
            each.way.power_kw
            for each in on
            if each.heat <= at < each.heat + each.way.power
        )
        if start <= at < off and load_kw > limits.get(circuit, load_kw) + _SPARE_KW:
            yield (
                f"Circuit {circuit} carries {load_kw:.3g} kW at {clock(at, day)} "
                f"and holds {limits[circuit]:.3g} kW."
            )
            return


def _on_the_same(stay: Stay, stays: Sequence[Stay], day: Day) -> Iterator[Stay]:
    # Yields others on the source of a bath at a time at which it is there.
    start, end = _on_source(stay, day)
    for other in stays:
        begins, ends = _on_source(other, day)
        is_same = other.bath != stay.bath and other.way.source == stay.way.source
        if is_same and max(begins, start, day.now) < min(ends, end):
            yield other


def _on_source(stay: Stay, day: Day) -> tuple[int, int]:
    taken = stay.way.taken
    return stay.heat, day.length if taken is None else stay.heat + taken


def _beside_others(stay: Stay, stays: Sequence[Stay], day: Day) -> Iterator[str]:
    baths = [day.baths[each.bath] for each in stays if each.pot == stay.pot]
    inside = [x.name for x in baths if x.going and x.going.rinse_start is None]
    name = day.baths[stay.bath].name
    others = [each for each in inside if each != name]
    if others and name in inside:
        yield (
            f"{pot_of(day, stay.pot).name} holds {', '.join(others)} too, as it is "
            "written: tick the one that is out of it as rinsed."
        )


def _too_late(stay: Stay, day: Day) -> Iterator[str]:
    bath = day.baths[stay.bath]
    if stay.checked > day.length:
        yield f"It is checked at {clock(stay.checked, day)}, after the day is over."
    if stay.rinse is None:
        if not bath.is_overnight:
            yield "It cannot be rinsed any more: hands, a sink or hours run out."
        return
    end = stay.rinse.start + stay.rinse.length
    if bath.due is not None and end > bath.due:
        yield (
            f"It is rinsed at {clock(end, day)}, and was due at {clock(bath.due, day)}."
        )


def clock(tick: int, day: Day) -> str:
    """Return a tick of a day as the clock on the wall says it.

    Parameters
    ----------
    tick : int
        Counted from the day’s start. [min]
    day : Day
        Its start, and how long a tick is. [min]

    Returns
    -------
    str
        Such as 10:05; the next day goes on from 00:00. [-]
    """
    hours, minutes = divmod(day.opens_min + tick // day.ticks_per_min, 60)
    return f"{hours % 24:02d}:{minutes:02d}"
