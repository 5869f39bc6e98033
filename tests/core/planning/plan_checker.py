"""A checker of planned days, written apart from the planner: it knows the file alone.

It takes the day's JSON and the answer's JSON and returns what is wrong with the plan,
in sentences. Every rule of a dye day stands here once more, minute by minute.
"""

from collections.abc import Iterator
from itertools import pairwise
from typing import Any

ORDER = ["fill", "heat", "dose", "ramp", "hold", "check", "cool", "rinse"]
HANDS = {"fill", "dose", "check", "rinse"}
_NEAR = 1e-6

Doc = dict[str, Any]


def faults_of(day: Doc, answer: Doc) -> list[str]:
    """Return every rule that a plan breaks."""
    return list(_faults(day, answer))


def _faults(day: Doc, answer: Doc) -> Iterator[str]:
    wanted = {bath["name"]: bath for bath in day["baths"]}
    planned = {bath["name"]: bath for bath in answer["baths"]}
    left = {each["name"] for each in answer["left_out"]}
    if set(planned) & left or set(planned) | left != set(wanted):
        yield "baths are lost or doubled"
    if answer["feasible"] != (not left):
        yield "feasible does not say what is left out"
    for name, bath in planned.items():
        yield from _bath_faults(day, wanted[name], bath)
    yield from _hand_faults(day, answer)
    yield from _pot_faults(day, answer, wanted)
    yield from _source_faults(day, answer, wanted)
    yield from _sink_faults(day, answer)
    hung = sum(wanted[name]["skeins"] for name in planned if not _night(wanted[name]))
    if planned and hung and hung + day.get("rack_used", 0) > day["rack_slots"]:
        yield "the rack is too full"
    ends = [_end(bath) for bath in planned.values()]
    if abs(answer["end_min"] - max(ends, default=0.0)) > _NEAR:
        yield "the end is not that of the last bath"
    if not left and answer["bound_min"] > answer["end_min"] + _NEAR:
        yield "the bound lies after the end"


def _night(bath: Doc) -> bool:
    return bool(bath.get("overnight"))


def _stages(bath: Doc) -> Doc:
    return {each["stage"]: each for each in bath["stages"]}


def _end(bath: Doc) -> float:
    stages = _stages(bath)
    return float(stages["rinse" if "rinse" in stages else "check"]["end_min"])


def _length(day: Doc) -> float:
    return _clock(day["end"]) - _clock(day["start"])


def _clock(text: str) -> float:
    hours, minutes = text.split(":")
    return 60.0 * int(hours) + int(minutes)


def _bath_faults(day: Doc, wanted: Doc, bath: Doc) -> Iterator[str]:
    name, stages = wanted["name"], _stages(bath)
    kept = [stage for stage in ORDER if stage in stages]
    needs = ORDER[:6] if _night(wanted) else ORDER
    said = [each["stage"] for each in bath["stages"]]
    if said != kept or not set(needs) <= set(kept):
        yield f"{name}: stages are missing or out of order"
        return
    if _night(wanted) and "rinse" in stages:
        yield f"{name}: rinsed although it stays overnight"
    yield from _order_faults(name, stages, kept)
    for stage in kept:
        yield from _length_faults(day, wanted, stage, stages[stage])
    due = wanted.get("due")
    if due and stages["rinse"]["end_min"] > _clock(due) - _clock(day["start"]) + _NEAR:
        yield f"{name}: too late"
    yield from _place_faults(day, wanted, bath)
    yield from _touch_faults(wanted, bath)


def _order_faults(name: str, stages: Doc, kept: list[str]) -> Iterator[str]:
    for before, after in pairwise(kept):
        gap = stages[after]["start_min"] - stages[before]["end_min"]
        if gap < -_NEAR:
            yield f"{name}: {after} starts before {before} is over"
        if before in ORDER[1:5] and abs(gap) > _NEAR:
            yield f"{name}: a gap after {before}"


def _length_faults(day: Doc, wanted: Doc, stage: str, at: Doc) -> Iterator[str]:
    name, given = wanted["name"], wanted["minutes"].get(stage)
    took = at["end_min"] - at["start_min"]
    if given is not None and stage != "cool" and abs(took - given) > _NEAR:
        yield f"{name}: {stage} takes {took}, not {given}"
    is_cooled = stage == "cool" and given is not None and not _night(wanted)
    if is_cooled and took < given - _NEAR:
        yield f"{name}: cooled too short"
    if at["start_min"] < -_NEAR or took < -_NEAR:
        yield f"{name}: {stage} outside the day"
    if at["end_min"] > _length(day) + _NEAR:
        yield f"{name}: {stage} ends after the day"


def _place_faults(day: Doc, wanted: Doc, bath: Doc) -> Iterator[str]:
    name, pin = wanted["name"], wanted.get("pinned") or {}
    pot = next(each for each in day["pots"] if each["name"] == bath["pot"])
    if wanted["fibre_g"] * wanted["liquor_ratio"] * 1.1 > pot["volume_l"] * 1000 + 1e-3:
        yield f"{name}: the pot is too small"
    if pin.get("pot", bath["pot"]) != bath["pot"]:
        yield f"{name}: not in its pot"
    if pin.get("source", bath["source"]) != bath["source"]:
        yield f"{name}: not on its source"
    at, fill = pin.get("start_min"), _stages(bath)["fill"]["start_min"]
    if at is not None and abs(fill - at) > _NEAR:
        yield f"{name}: not begun when it was pinned"


def _touch_faults(wanted: Doc, bath: Doc) -> Iterator[str]:
    name, stages, touches = wanted["name"], _stages(bath), wanted.get("touches", [])
    if len(touches) != len(bath["touches"]):
        yield f"{name}: touches are lost"
    for asked, done in zip(touches, bath["touches"], strict=False):
        start = stages[asked["stage"]]["start_min"] + asked["at_min"]
        if abs(done["start_min"] - start) > _NEAR:
            yield f"{name}: a touch at the wrong time"
        if abs(done["end_min"] - start - asked["minutes"]) > _NEAR:
            yield f"{name}: a touch of the wrong length"


def _wanting(answer: Doc) -> Iterator[tuple[float, float, str, str]]:
    """Yield start, end, who and what of everything that wants hands."""
    for bath in answer["baths"]:
        stages = [each for each in bath["stages"] if each["stage"] in HANDS]
        for each in [*stages, *bath["touches"]]:
            yield each["start_min"], each["end_min"], each["person"], bath["name"]
    for each in answer["washouts"]:
        yield each["start_min"], each["end_min"], each["person"], each["pot"]


def _hand_faults(day: Doc, answer: Doc) -> Iterator[str]:
    people = {each["name"]: each for each in day["people"]}
    spans: dict[str, list[tuple[float, float, str]]] = {name: [] for name in people}
    total = sum(end - start for start, end, _who, _what in _wanting(answer))
    if abs(total - answer["hands_min"]) > 1e-3:
        yield "the minutes of the hands do not add up"
    for start, end, who, what in _wanting(answer):
        if end - start <= _NEAR:
            continue
        if who in spans:
            spans[who].append((start, end, what))
        else:
            yield f"{what}: nobody does it at {start}"
    opens = _clock(day["start"])
    for who, doing in spans.items():
        comes, goes = (_clock(people[who][key]) - opens for key in ("from", "to"))
        for one, other in pairwise(sorted(doing)):
            if other[0] < one[1] - _NEAR:
                yield f"{who} is in two places: {one} and {other}"
        for one in doing:
            if one[0] < comes - _NEAR or one[1] > goes + _NEAR:
                yield f"{who} is not in: {one}"


def _pot_faults(day: Doc, answer: Doc, wanted: Doc) -> Iterator[str]:
    by_pot: dict[str, list[Doc]] = {}
    for bath in answer["baths"]:
        by_pot.setdefault(bath["pot"], []).append(bath)
    washed = {each["before"]: each for each in answer["washouts"]}
    needed = set()
    for baths in by_pot.values():
        baths.sort(key=lambda bath: _stages(bath)["fill"]["start_min"])
        for one, other in pairwise(baths):
            if _is_washed(wanted[one["name"]], wanted[other["name"]]):
                needed.add(other["name"])
            wash = washed.get(other["name"])
            yield from _change_faults(day, one, other, wash)
    if set(washed) != needed:
        yield "pots are washed for nothing, or not at all"


def _is_washed(before: Doc, after: Doc) -> bool:
    is_paler = after["depth_percent"] < before["depth_percent"]
    return bool(before["family"] != after["family"] or is_paler)


def _change_faults(day: Doc, one: Doc, other: Doc, wash: Doc | None) -> Iterator[str]:
    pot, opens = one["pot"], _stages(other)["fill"]["start_min"]
    if "rinse" not in _stages(one):
        yield f"{pot}: {one['name']} is in it overnight"
        return
    frees = _stages(one)["rinse"]["start_min"]
    if opens < frees - _NEAR:
        yield f"{pot}: two baths at once"
    if wash is None:
        return
    took = wash["end_min"] - wash["start_min"]
    if wash["start_min"] < frees - _NEAR or wash["end_min"] > opens + _NEAR:
        yield f"{pot}: washed at the wrong time"
    if abs(took - day["washout_min"]) > _NEAR or wash["pot"] != pot:
        yield f"{pot}: washed wrongly"


def _source_faults(day: Doc, answer: Doc, wanted: Doc) -> Iterator[str]:
    sources = {each["name"]: each for each in day["sources"]}
    pots = {each["name"]: each for each in day["pots"]}
    taken: dict[str, list[tuple[float, float]]] = {}
    on: list[tuple[float, float, str, float]] = []
    for bath in answer["baths"]:
        stages, asked = _stages(bath), wanted[bath["name"]]
        heavy = pots[bath["pot"]].get("mass_kg", 0.0)
        heavy += asked["fibre_g"] * (asked["liquor_ratio"] + 1.0) / 1000.0
        stays = asked.get("cools_on_source")
        stays = heavy > 10.0 if stays is None else stays
        end = stages["check"]["end_min"]
        if stays:
            end = _length(day) if _night(asked) else stages["cool"]["end_min"]
        start = stages["heat"]["start_min"]
        taken.setdefault(bath["source"], []).append((start, end))
        source = sources[bath["source"]]
        off = stages["hold"]["end_min"]
        on.append((start, off, source.get("circuit", ""), source["power_kw"]))
    for name, spans in taken.items():
        for one, other in pairwise(sorted(spans)):
            if other[0] < one[1] - _NEAR:
                yield f"{name}: two pots at once"
    yield from _power_faults(day, answer, on)


def _power_faults(
    day: Doc, answer: Doc, on: list[tuple[float, float, str, float]]
) -> Iterator[str]:
    start = _clock(day["start"])
    people = [
        (_clock(each["from"]) - start, _clock(each["to"]) - start)
        for each in day["people"]
    ]
    for circuit in day["circuits"]:
        peak = 0.0
        for at, _off, _name, _kw in on:
            load = sum(
                kw
                for begins, ends, name, kw in on
                if name == circuit["name"] and begins - _NEAR <= at < ends - _NEAR
            )
            peak = max(peak, load)
        if peak > circuit["limit_kw"] + 1e-6:
            yield f"circuit {circuit['name']} carries {peak}"
        if abs(answer["peak_kw_by_circuit"][circuit["name"]] - peak) > 1e-6:
            yield f"the peak of circuit {circuit['name']} is {peak}"
    for begins, ends, _name, _kw in on:
        edges = [begins, *(edge for span in people for edge in span)]
        for at in edges:
            if begins - _NEAR <= at < ends - _NEAR and not any(
                one <= at + _NEAR and at + _NEAR < end for one, end in people
            ):
                yield f"a source is on at {at} while nobody is in"


def _sink_faults(day: Doc, answer: Doc) -> Iterator[str]:
    rinses = [
        (each["start_min"], each["end_min"])
        for bath in answer["baths"]
        for each in bath["stages"]
        if each["stage"] == "rinse" and each["end_min"] > each["start_min"]
    ]
    for at, _end_at in rinses:
        busy = sum(1 for start, end in rinses if start <= at + _NEAR < end)
        if busy > day.get("sinks", 1):
            yield f"{busy} rinses at {at} in {day.get('sinks', 1)} sinks"
