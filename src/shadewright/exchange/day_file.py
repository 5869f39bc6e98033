"""A dye day as a JSON file, and its plan as an answer; docs/guide tells the fields."""

import json
from collections.abc import Iterable, Mapping

from shadewright.core.planning import (
    Day,
    DayCircuit,
    DayPerson,
    DayPlan,
    DayPot,
    DaySource,
    Pin,
    Stage,
    Touch,
    WantedBath,
)
from shadewright.core.tables.heat import Material, Source
from shadewright.errors import ConflictError, NotFoundError, UnreadableError
from shadewright.exchange.json_fields import Fields

TICKS = (1, 2, 4, 5, 10, 20, 60)
"""Parts of a minute in which a day may be counted. [1/min]"""
_MOST_MIN = 24.0 * 60.0
_FROM_MODEL = (Stage.HEAT, Stage.RAMP)


def read_day(text: str) -> Day:
    """Return the day of a file, or say in one sentence what is amiss."""
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
    fields = Fields(whole=whole, where="the day")
    starts, ends = fields.clock("start"), fields.clock("end")
    if ends <= starts:
        raise fields.because(key="end", why="is not after the start")
    ticks = _ticks(whole, fields)
    return _day(fields, starts, ends, ticks)


def plan_answer(plan: DayPlan, *, is_stopped: bool) -> dict[str, object]:
    """Return a plan as the command answers it; minutes count from the day's start."""
    return {
        "feasible": not plan.left_out,
        "baths": [
            {
                "name": bath.name,
                "pot": bath.pot,
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
                        "person": each.person,
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
                "person": each.person,
            }
            for each in plan.washouts
        ],
        "end_min": plan.end_min,
        "bound_min": plan.bound_min,
        "proved": plan.is_proved,
        "left_out": [{"name": each.name, "why": each.why} for each in plan.left_out],
        "hands_min": plan.hands_min,
        "peak_kw_by_circuit": dict(plan.peak_kw),
        "stopped_by_clock": is_stopped,
        "orders": plan.orders,
        "method": plan.method,
    }


def _day(fields: Fields, starts: int, ends: int, ticks: int) -> Day:
    pots = tuple(_pot(each) for each in fields.each("pots", "pot"))
    circuits = tuple(
        DayCircuit(
            name=each.text("name"),
            limit_kw=each.number("limit_kw", most=1000.0, unit="kW"),
        )
        for each in fields.each("circuits", "circuit")
    )
    sources = tuple(_source(each) for each in fields.each("sources", "source"))
    people = tuple(
        DayPerson(
            name=each.text("name"),
            starts=(each.clock("from") - starts) * ticks,
            ends=(each.clock("to") - starts) * ticks,
        )
        for each in fields.each("people", "person")
    )
    baths = tuple(_bath(each, starts, ticks) for each in fields.each("baths", "bath"))
    for named in (pots, circuits, sources, people, baths):
        _require_own_names([each.name for each in named])
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
        washout=_length(fields, "washout_min", ticks),
        baths=baths,
        ticks_per_min=ticks,
        opens_min=starts,
    )


def _pot(each: Fields) -> DayPot:
    return DayPot(
        name=each.text("name"),
        volume_l=each.number("volume_l", most=1000.0, unit="l"),
        mass_kg=each.number("mass_kg", most=500.0, unit="kg", usual=0.0),
        material=_one_of(each, "material", Material, usual=Material.STAINLESS),
    )


def _source(each: Fields) -> DaySource:
    return DaySource(
        name=each.text("name"),
        power_kw=each.number("power_kw", most=100.0, unit="kW"),
        kind=Source(_one_of(each, "kind", Source)),
        circuit=each.text("circuit", usual=""),
    )


def _bath(each: Fields, starts: int, ticks: int) -> WantedBath:
    is_overnight = each.flag("overnight")
    minutes = each.inner("minutes")
    due = (each.clock("due") - starts) * ticks if each.has("due") else None
    if is_overnight and due is not None:
        raise ConflictError(
            why=f"The {each.where} cools overnight and is due on the same day.",
            advice="Leave out one of the two.",
        )
    lengths = dict(_lengths(minutes, ticks, is_overnight=is_overnight))
    return WantedBath(
        name=each.text("name"),
        family=each.text("family", usual=""),
        depth_percent=each.number("depth_percent", most=100.0, unit="%", usual=0.0),
        fibre_g=each.number("fibre_g", least=0.1, most=100_000.0, unit="g"),
        skeins=each.count("skeins", most=100_000, usual=1),
        liquor_ratio=each.number("liquor_ratio", least=0.1, most=1000.0),
        minutes=lengths,
        due=due,
        touches=tuple(_touches(each, lengths, ticks)),
        cools_on_source=(
            each.flag("cools_on_source") if each.has("cools_on_source") else None
        ),
        is_overnight=is_overnight,
        pin=_pin(each, ticks) if each.has("pinned") else None,
    )


def _lengths(
    minutes: Fields, ticks: int, *, is_overnight: bool
) -> Iterable[tuple[Stage, int]]:
    for stage in Stage:
        if minutes.has(stage):
            yield stage, _length(minutes, stage, ticks)
        elif stage is Stage.COOL and is_overnight:
            continue
        elif stage is Stage.RINSE and is_overnight:
            yield stage, 0
        elif stage not in _FROM_MODEL:
            _length(minutes, stage, ticks)


def _touches(each: Fields, lengths: Mapping[Stage, int], ticks: int) -> Iterable[Touch]:
    for place, touch in enumerate(each.each("touches", "touch"), start=1):
        named = Fields(whole=touch.whole, where=f"touch {place} of {each.where}")
        stage = Stage(_one_of(named, "stage", Stage))
        if stage in {Stage.FILL, Stage.COOL, Stage.RINSE}:
            raise named.because(
                key="stage", why="is none between the heat and the check"
            )
        at, length = _length(named, "at_min", ticks), _length(named, "minutes", ticks)
        if stage in lengths and at + length > lengths[stage]:
            raise named.because(key="at_min", why="lies past the end of its stage")
        yield Touch(stage=stage, at=at, minutes=length)


def _pin(each: Fields, ticks: int) -> Pin:
    pin = each.inner("pinned")
    return Pin(
        pot=pin.text("pot", usual=""),
        source=pin.text("source", usual=""),
        start=_length(pin, "start_min", ticks) if pin.has("start_min") else None,
    )


def _length(fields: Fields, key: str, ticks: int) -> int:
    minutes = fields.number(key, most=_MOST_MIN, unit="min")
    return round(minutes * ticks)


def _one_of(
    fields: Fields,
    key: str,
    kinds: type[Material] | type[Source] | type[Stage],
    usual: str | None = None,
) -> str:
    value = fields.text(key, usual=usual)
    allowed = [str(kind) for kind in kinds]
    if value not in allowed:
        raise fields.because(
            key=key, why=f"is “{value}” and none of {', '.join(allowed)}"
        )
    return value


def _ticks(whole: Mapping[str, object], fields: Fields) -> int:
    """Return in which part of a minute every length of the file is whole."""
    numbers = list(_every_length(whole))
    for ticks in TICKS:
        if all(abs(each * ticks - round(each * ticks)) < 1e-6 for each in numbers):
            return ticks
    raise fields.because(
        key="minutes", why="has parts that are no tenths, quarters or sixtieths"
    )


def _every_length(value: object, key: str = "") -> Iterable[float]:
    if isinstance(value, dict):
        stages = {str(stage) for stage in Stage}
        for name, inner in value.items():
            is_length = (
                name in stages or name == "minutes" or str(name).endswith("_min")
            )
            yield from _every_length(inner, "length" if is_length else "")
    elif isinstance(value, list):
        for inner in value:
            yield from _every_length(inner)
    elif key and isinstance(value, int | float) and abs(value) < _MOST_MIN:
        yield float(value)


def _require_own_names(names: list[str]) -> None:
    twice = sorted({name for name in names if names.count(name) > 1})
    if twice:
        raise ConflictError(
            why=f"Two things of a kind are called “{twice[0]}”.",
            advice="Give each a name of its own.",
        )


def _require_known(
    baths: tuple[WantedBath, ...],
    sources: tuple[DaySource, ...],
    circuits: tuple[DayCircuit, ...],
    pots: tuple[DayPot, ...],
) -> None:
    pins = [bath.pin for bath in baths if bath.pin is not None]
    for kind, wanted, there in (
        ("circuit", [each.circuit for each in sources], circuits),
        ("pot", [pin.pot for pin in pins], pots),
        ("source", [pin.source for pin in pins], sources),
    ):
        names = {each.name for each in there}
        for name in wanted:
            if name and name not in names:
                raise NotFoundError(
                    kind=f"{kind} in the day file",
                    key=name,
                    advice=f"It holds {', '.join(sorted(names)) or 'none'}.",
                )
