"""A dye day as a JSON file, and its plan as an answer; docs/guide tells the fields."""

import json
from collections.abc import Iterable, Mapping
from itertools import pairwise

from shadewright.core.planning import (
    Day,
    DayCircuit,
    DayPerson,
    DayPlan,
    DayPot,
    DaySource,
    PlaceBefore,
    Stage,
    WantedBath,
)
from shadewright.core.tables.heat import Material, Source
from shadewright.errors import ConflictError, NotFoundError, UnreadableError
from shadewright.exchange.day_baths import MOST_MIN, bath_of, length, one_of
from shadewright.exchange.json_fields import Fields

TICKS = (1, 2, 4, 5, 10, 20, 60)
"""Parts of a minute in which a day may be counted. [1/min]"""


def read_day(text: str) -> Day:
    """Return the day of a file, or say in one sentence what is amiss."""
    fields = _whole(text)
    starts, ends = fields.clock("start"), fields.clock("end")
    if ends <= starts:
        raise fields.because(key="end", why="is not after the start")
    return _day(fields, starts, ends, _ticks(fields))


def read_before(text: str) -> dict[str, PlaceBefore]:
    """Return where each bath stood in the plan before, by its name; none if unsaid."""
    fields = _whole(text)
    ticks = _ticks(fields)
    return {
        each.text("name"): PlaceBefore(
            pot=each.text("pot", usual=""),
            source=each.text("source"),
            start=length(each, "start_min", ticks, least=-MOST_MIN),
        )
        for each in fields.each("before", "bath before")
    }


def _whole(text: str) -> Fields:
    try:
        whole = json.loads(text)
    except (ValueError, RecursionError):
        whole = None
    if not isinstance(whole, dict):
        raise UnreadableError(
            name="The day file",
            why="It is no JSON object.",
            advice='Begin it with { and "start": "08:00".',
        )
    return Fields(whole=whole, where="the day")


def plan_answer(plan: DayPlan, *, is_stopped: bool) -> dict[str, object]:
    """Return a plan as the command answers it; minutes count from the day's start."""
    return {
        "feasible": not plan.left_out and not plan.conflicts,
        "baths": [
            {
                "name": bath.name,
                "pot": bath.pot or None,
                "source": bath.source,
                "stages": [
                    {
                        "stage": str(each.stage),
                        "start_min": each.start_min,
                        "end_min": each.end_min,
                        "person": each.person or None,
                    }
                    for each in bath.stages
                ],
                "touches": [
                    {
                        "start_min": each.start_min,
                        "end_min": each.end_min,
                        "person": each.person or None,
                    }
                    for each in bath.touches
                ],
            }
            for bath in plan.baths
        ],
        "washouts": [
            {
                "pot": each.pot,
                "before": each.before,
                "start_min": each.start_min,
                "end_min": each.end_min,
                "person": each.person or None,
            }
            for each in plan.washouts
        ],
        "end_min": plan.end_min,
        "bound_min": plan.bound_min,
        "proved": plan.is_proved,
        "left_out": [{"name": each.name, "why": each.why} for each in plan.left_out],
        "conflicts": [{"name": each.name, "why": each.why} for each in plan.conflicts],
        "changes": [
            {
                "name": each.name,
                "was": _place(each.was, plan),
                "now": _place(each.now, plan),
            }
            for each in plan.changes
        ],
        "hands_min": plan.hands_min,
        "peak_kw_by_circuit": dict(plan.peak_kw),
        "stopped_by_clock": is_stopped,
        "orders": plan.orders,
        "method": plan.method,
    }


def _place(place: PlaceBefore | None, plan: DayPlan) -> dict[str, object] | None:
    if place is None:
        return None
    return {
        "pot": place.pot or None,
        "source": place.source,
        "start_min": place.start / plan.ticks_per_min,
    }


def _day(fields: Fields, starts: int, ends: int, ticks: int) -> Day:
    now = (fields.clock("now") - starts) * ticks if fields.has("now") else 0
    if not starts <= starts + now / ticks <= ends:
        raise fields.because(key="now", why="lies outside the day")
    pots = tuple(_pot(each, starts, ticks) for each in fields.each("pots", "pot"))
    circuits = tuple(
        DayCircuit(
            name=each.text("name"),
            limit_kw=each.number("limit_kw", most=1000.0, unit="kW"),
        )
        for each in fields.each("circuits", "circuit")
    )
    sources = tuple(
        _source(each, starts, ticks) for each in fields.each("sources", "source")
    )
    people = tuple(
        DayPerson(
            name=each.text("name"),
            starts=(each.clock("from") - starts) * ticks,
            ends=(each.clock("to") - starts) * ticks,
        )
        for each in fields.each("people", "person")
    )
    baths = tuple(
        bath_of(each, starts=starts, ticks=ticks, now=now)
        for each in fields.each("baths", "bath")
    )
    for named in (pots, circuits, sources, baths):
        _require_own_names([each.name for each in named])
    _require_own_hours(people)
    _require_known(baths, sources, circuits, pots)
    return Day(
        length=(ends - starts) * ticks,
        people=people,
        pots=pots,
        circuits=circuits,
        sources=sources,
        sinks=fields.count("sinks", most=50, usual=1),
        rack_slots=fields.count("rack_slots", most=100_000),
        rack_used=fields.count("rack_used", most=100_000, usual=0),
        washout=length(fields, "washout_min", ticks),
        baths=baths,
        ticks_per_min=ticks,
        opens_min=starts,
        now=now,
    )


def _pot(each: Fields, starts: int, ticks: int) -> DayPot:
    return DayPot(
        name=each.text("name"),
        volume_l=each.number("volume_l", most=1000.0, unit="l"),
        mass_kg=each.number("mass_kg", most=500.0, unit="kg", usual=0.0),
        material=one_of(each, "material", Material, usual=Material.STAINLESS),
        out_from=_out_from(each, starts, ticks),
    )


def _source(each: Fields, starts: int, ticks: int) -> DaySource:
    return DaySource(
        name=each.text("name"),
        power_kw=each.number("power_kw", most=100.0, unit="kW"),
        kind=Source(one_of(each, "kind", Source)),
        circuit=each.text("circuit", usual=""),
        out_from=_out_from(each, starts, ticks),
        room_g=(
            each.number("room_g", most=100_000.0, unit="g")
            if each.has("room_g")
            else None
        ),
    )


def _out_from(each: Fields, starts: int, ticks: int) -> int | None:
    if not each.has("out_from"):
        return None
    return max(0, each.clock("out_from") - starts) * ticks


def _ticks(fields: Fields) -> int:
    """Return in which part of a minute every length of the file is whole."""
    numbers = list(_every_length(fields.whole))
    for ticks in TICKS:
        if all(abs(each * ticks - round(each * ticks)) < 1e-6 for each in numbers):
            return ticks
    raise fields.because(
        key="minutes", why="has parts that are no tenths, quarters or sixtieths"
    )


def _every_length(value: object, key: str = "") -> Iterable[float]:
    if isinstance(value, Mapping):
        stages = {str(stage) for stage in Stage}
        for name, inner in value.items():
            is_length = (
                name in stages or name == "minutes" or str(name).endswith("_min")
            )
            yield from _every_length(inner, "length" if is_length else "")
    elif isinstance(value, list):
        for inner in value:
            yield from _every_length(inner)
    elif key and isinstance(value, int | float) and abs(value) < MOST_MIN:
        yield float(value)


def _require_own_names(names: list[str]) -> None:
    twice = sorted({name for name in names if names.count(name) > 1})
    if twice:
        raise ConflictError(
            why=f"Two things of a kind are called “{twice[0]}”.",
            advice="Give each a name of its own.",
        )


def _require_own_hours(people: tuple[DayPerson, ...]) -> None:
    # Somebody may come twice a day, but not twice at once.
    by_name = sorted(people, key=lambda each: (each.name, each.starts))
    for one, other in pairwise(by_name):
        if one.name == other.name and other.starts < one.ends:
            raise ConflictError(
                why=f"“{one.name}” is in twice at once.",
                advice="Give each person a name of their own.",
            )


def _require_known(
    baths: tuple[WantedBath, ...],
    sources: tuple[DaySource, ...],
    circuits: tuple[DayCircuit, ...],
    pots: tuple[DayPot, ...],
) -> None:
    pins = [bath.pin for bath in baths if bath.pin]
    goings = [bath.going for bath in baths if bath.going]
    known = [
        *((each.pot, each.source) for each in pins),
        *((each.pot, each.source) for each in goings),
        *(place for bath in baths for place in bath.minutes_by_place),
    ]
    for kind, wanted, there in (
        ("circuit", [each.circuit for each in sources], circuits),
        ("pot", [pot for pot, _source in known], pots),
        ("source", [source for _pot, source in known], sources),
    ):
        names = {each.name for each in there}
        for name in wanted:
            if name and name not in names:
                raise NotFoundError(
                    kind=f"{kind} in the day file",
                    key=name,
                    advice=f"It holds {', '.join(sorted(names)) or 'none'}.",
                )
