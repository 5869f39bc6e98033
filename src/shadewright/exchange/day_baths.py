"""The baths of a day file: what is wished of each, and how far it has come."""

from collections.abc import Iterable, Mapping

from shadewright.core.planning import Going, Pin, Stage, Touch, WantedBath
from shadewright.core.tables.heat import Material, Source
from shadewright.errors import ConflictError
from shadewright.exchange.json_fields import Fields

MOST_MIN = 24.0 * 60.0
"""No length is longer, and nothing lies further before the day’s start. [min]"""
_FROM_MODEL = (Stage.HEAT, Stage.RAMP)
_STEPS = ("fill_start_min", "heat_start_min", "checked_min", "rinse_start_min")


def bath_of(each: Fields, *, starts: int, ticks: int, now: int) -> WantedBath:
    """Return a bath of the file; ``now`` is in ticks from the day's start."""
    is_overnight, is_steamed = each.flag("overnight"), each.flag("steamed")
    minutes = each.inner("minutes")
    due = (each.clock("due") - starts) * ticks if each.has("due") else None
    if is_overnight and due is not None:
        raise ConflictError(
            why=f"The {each.where} cools overnight and is due on the same day.",
            advice="Leave out one of the two.",
        )
    lengths = dict(_lengths(minutes, ticks, is_overnight=is_overnight))
    if is_steamed and not set(_FROM_MODEL) <= set(lengths):
        raise each.because(
            key="minutes",
            why="lacks heat or ramp, and how long steam takes is not reckoned",
        )
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
        is_steamed=is_steamed,
        minutes_by_place=dict(_by_place(each, ticks)),
        going=_going(each, ticks, now) if each.has("going") else None,
    )


def _by_place(
    each: Fields, ticks: int
) -> Iterable[tuple[tuple[str, str], tuple[int, int]]]:
    for known in each.each("minutes_by_place", "minutes_by_place"):
        named = Fields(whole=known.whole, where=f"minutes_by_place of {each.where}")
        place = named.text("pot", usual=""), named.text("source")
        yield place, (length(named, "heat", ticks), length(named, "ramp", ticks))


def _going(each: Fields, ticks: int, now: int) -> Going:
    going = each.inner("going")
    times = {
        key: length(going, key, ticks, least=-MOST_MIN)
        for key in _STEPS
        if key == "fill_start_min" or going.has(key)
    }
    latest = times["fill_start_min"]
    for key, at in times.items():
        if at > now:
            raise going.because(key=key, why="lies after now")
        if at < latest:
            raise going.because(key=key, why="lies before what comes before it")
        latest = at
    is_on = len(times) > 1
    return Going(
        pot="" if each.flag("steamed") else going.text("pot"),
        source=going.text("source") if is_on else "",
        fill_start=times["fill_start_min"],
        heat_start=times.get("heat_start_min"),
        checked_at=times.get("checked_min"),
        rinse_start=times.get("rinse_start_min"),
    )


def _lengths(
    minutes: Fields, ticks: int, *, is_overnight: bool
) -> Iterable[tuple[Stage, int]]:
    for stage in Stage:
        if minutes.has(stage):
            yield stage, length(minutes, stage, ticks)
        elif stage is Stage.COOL and is_overnight:
            continue
        elif stage is Stage.RINSE and is_overnight:
            yield stage, 0
        elif stage not in _FROM_MODEL:
            length(minutes, stage, ticks)


def _touches(each: Fields, lengths: Mapping[Stage, int], ticks: int) -> Iterable[Touch]:
    for place, touch in enumerate(each.each("touches", "touch"), start=1):
        named = Fields(whole=touch.whole, where=f"touch {place} of {each.where}")
        stage = Stage(one_of(named, "stage", Stage))
        if stage in {Stage.FILL, Stage.COOL, Stage.RINSE}:
            raise named.because(
                key="stage", why="is none between the heat and the check"
            )
        at, took = length(named, "at_min", ticks), length(named, "minutes", ticks)
        if stage in lengths and at + took > lengths[stage]:
            raise named.because(key="at_min", why="lies past the end of its stage")
        yield Touch(stage=stage, at=at, minutes=took)


def _pin(each: Fields, ticks: int) -> Pin:
    pin = each.inner("pinned")
    return Pin(
        pot=pin.text("pot", usual=""),
        source=pin.text("source", usual=""),
        start=length(pin, "start_min", ticks) if pin.has("start_min") else None,
    )


def length(fields: Fields, key: str, ticks: int, *, least: float = 0.0) -> int:
    """Return a length of the file, or a time after the day's start, in ticks."""
    minutes = fields.number(key, least=least, most=MOST_MIN, unit="min")
    return round(minutes * ticks)


def one_of(
    fields: Fields,
    key: str,
    kinds: type[Material] | type[Source] | type[Stage],
    usual: str | None = None,
) -> str:
    """Return a field that is one of some words."""
    value = fields.text(key, usual=usual)
    allowed = [str(kind) for kind in kinds]
    if value not in allowed:
        raise fields.because(
            key=key, why=f"is “{value}” and none of {', '.join(allowed)}"
        )
    return value
