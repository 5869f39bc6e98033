"""A day for the planner as the file that ``shadewright day plan`` reads.

Kept beside each plan, it tells years later what the plan was made from, and gives the
same plan again on the command line.
"""

from collections.abc import Mapping

from shadewright.core.planning import (
    Day,
    DayPerson,
    DayPot,
    DaySource,
    PlaceBefore,
    WantedBath,
)

File = dict[str, object]


def file_of(day: Day, before: Mapping[str, PlaceBefore]) -> File:
    """Return a day counted in minutes as its file."""
    return {
        "start": _clock(day, 0),
        "end": _clock(day, day.length),
        "now": _clock(day, day.now),
        "people": [_person(each, day) for each in day.people],
        "pots": [_pot(each, day) for each in day.pots],
        "circuits": [
            {"name": each.name, "limit_kw": each.limit_kw} for each in day.circuits
        ],
        "sources": [_source(each, day) for each in day.sources],
        "sinks": day.sinks,
        "rack_slots": day.rack_slots,
        "rack_used": day.rack_used,
        "washout_min": day.washout,
        "baths": [_bath(each, day) for each in day.baths],
        "before": [{"name": name, **_place(each)} for name, each in before.items()],
    }


def _person(each: DayPerson, day: Day) -> File:
    return {
        "name": each.name,
        "from": _clock(day, each.starts),
        "to": _clock(day, each.ends),
    }


def _pot(each: DayPot, day: Day) -> File:
    return _said(
        name=each.name,
        volume_l=each.volume_l,
        mass_kg=each.mass_kg,
        material=each.material,
        out_from=_clock_or_none(day, each.out_from),
    )


def _source(each: DaySource, day: Day) -> File:
    return _said(
        name=each.name,
        power_kw=each.power_kw,
        kind=str(each.kind),
        circuit=each.circuit or None,
        out_from=_clock_or_none(day, each.out_from),
        room_g=each.room_g,
    )


def _bath(each: WantedBath, day: Day) -> File:
    return _said(
        name=each.name,
        family=each.family,
        depth_percent=each.depth_percent,
        fibre_g=each.fibre_g,
        skeins=each.skeins,
        liquor_ratio=each.liquor_ratio,
        due=_clock_or_none(day, each.due),
        minutes={str(stage): length for stage, length in each.minutes.items()},
        touches=[
            {"stage": str(x.stage), "at_min": x.at, "minutes": x.minutes}
            for x in each.touches
        ],
        cools_on_source=each.cools_on_source,
        overnight=each.is_overnight or None,
        steamed=each.is_steamed or None,
        pinned=_pinned(each),
        minutes_by_place=[
            {"pot": pot, "source": source, "heat": heat, "ramp": ramp}
            for (pot, source), (heat, ramp) in each.minutes_by_place.items()
        ]
        or None,
        going=_going(each),
    )


def _pinned(each: WantedBath) -> File | None:
    pin = each.pin
    if pin is None:
        return None
    return _said(pot=pin.pot or None, source=pin.source or None, start_min=pin.start)


def _going(each: WantedBath) -> File | None:
    going = each.going
    if going is None:
        return None
    return _said(
        pot=going.pot or None,
        source=going.source or None,
        fill_start_min=going.fill_start,
        heat_start_min=going.heat_start,
        checked_min=going.checked_at,
        rinse_start_min=going.rinse_start,
    )


def _place(each: PlaceBefore) -> File:
    return _said(pot=each.pot or None, source=each.source, start_min=each.start)


def _said(**values: object) -> File:
    """Return what was said: a key without a value is left away."""
    return {key: value for key, value in values.items() if value is not None}


def _clock(day: Day, minutes: int) -> str:
    hours, rest = divmod(day.opens_min + minutes, 60)
    return f"{hours:02d}:{rest:02d}"


def _clock_or_none(day: Day, minutes: int | None) -> str | None:
    return None if minutes is None else _clock(day, minutes)
