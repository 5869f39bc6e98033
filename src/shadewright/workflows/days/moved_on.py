"""What is otherwise by now than when a day was planned: its hours, people, places."""

from collections.abc import Iterator
from datetime import time

from shadewright.records import day_reads
from shadewright.workflows.days.day_now import DayNow
from shadewright.workflows.days.schedules import Schedule


def moved_on(now: DayNow, plan: Schedule) -> tuple[str, ...]:
    """Return what the plan of a day was reckoned with and is otherwise now, in words.

    Baths are not looked at: those that came later are named by themselves.
    """
    return tuple(_moved(now, plan))


def _moved(now: DayNow, plan: Schedule) -> Iterator[str]:
    asked = plan.asked
    if (asked["start"], asked["end"]) != (_at(now.opens_at), _at(now.closes_at)):
        yield "the hours"
    people = [(x.name, _at(x.starts_at), _at(x.ends_at)) for x in now.people]
    if people != [(x["name"], x["from"], x["to"]) for x in asked["people"]]:
        yield "who is in"
    if asked["sinks"] != now.sinks:
        yield "the sinks"
    if asked["rack_slots"] != now.rack_slots:
        yield "the rack"
    if asked["washout_min"] != round(now.room.washout_min):
        yield "washing a pot out"
    yield from _places(now, plan)


def _places(now: DayNow, plan: Schedule) -> Iterator[str]:
    # A pot that was retired keeps the bath it holds, so only what is in use counts.
    asked = plan.asked
    pots = {x["name"]: (x["volume_l"], x.get("mass_kg", 0.0)) for x in asked["pots"]}
    sources = {x["name"]: (x["power_kw"], x.get("circuit")) for x in asked["sources"]}
    limits = {x["name"]: x["limit_kw"] for x in asked["circuits"]}
    pot_rows, source_rows = day_reads.pot_rows(), day_reads.source_rows()
    if any(pots.get(x.name) != (x.volume_l, x.mass_kg or 0.0) for x in pot_rows):
        yield "the pots"
    for row in source_rows:
        circuit = row.circuit
        named = None if circuit is None or circuit.is_retired else circuit.name
        if sources.get(row.name) != (row.power_kw, named):
            yield "the burners"
            break
    if limits != {x.name: x.limit_kw for x in day_reads.circuit_rows()}:
        yield "the fuses"
    known = {row.name for row in (*pot_rows, *source_rows)}
    each = (*asked["pots"], *asked["sources"])
    was_out = {x["name"] for x in each if "out_from" in x} & known
    if was_out != {x.name for x in now.outages} & known:
        yield "what is out"


def _at(clock: time) -> str:
    return f"{clock:%H:%M}"
