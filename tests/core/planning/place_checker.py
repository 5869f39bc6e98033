"""The checker's rules of places: pots, sources, circuits, sinks and the rack."""

from collections.abc import Iterator
from itertools import combinations, pairwise

from tests.core.planning.plan_reading import (
    NEAR,
    Doc,
    Fault,
    Held,
    after_start,
    hours_of,
    is_night,
    is_on,
    length_of,
    now_of,
    stages_of,
)


def place_faults(day: Doc, answer: Doc, wanted: Doc) -> Iterator[Fault]:
    """Yield every rule about places that a plan breaks."""
    for bath in answer["baths"]:
        yield from _stand_faults(day, wanted[bath["name"]], bath)
        yield from _out_faults(day, wanted[bath["name"]], bath)
    yield from _pot_faults(day, answer, wanted)
    yield from _source_faults(day, answer, wanted)
    yield from _sink_faults(day, answer)
    hung = {x["name"] for x in answer["baths"] if not is_night(wanted[x["name"]])}
    skeins = sum(wanted[name]["skeins"] for name in hung)
    if skeins and skeins + day.get("rack_used", 0) > day["rack_slots"]:
        yield Held.of("the rack is too full", hung)


def _stand_faults(day: Doc, wanted: Doc, bath: Doc) -> Iterator[Fault]:
    name, pin, going = wanted["name"], wanted.get("pinned") or {}, wanted.get("going")
    if wanted.get("steamed"):
        if bath["pot"] is not None:
            yield f"{name}: steamed in a pot"
    else:
        pot = next(each for each in day["pots"] if each["name"] == bath["pot"])
        liquor = wanted["fibre_g"] * wanted["liquor_ratio"]
        if not going and liquor * 1.1 > pot["volume_l"] * 1000 + 1e-3:
            yield f"{name}: the pot is too small"
    if not is_on(wanted):
        yield from _steam_faults(day, wanted, bath)
    if going:
        pin = {"pot": going.get("pot"), "source": going.get("source", bath["source"])}
        pin["source"] = pin["source"] if is_on(wanted) else bath["source"]
    if pin.get("pot", bath["pot"]) != bath["pot"]:
        yield f"{name}: not in its pot"
    if pin.get("source", bath["source"]) != bath["source"]:
        yield f"{name}: not on its source"
    at, fill = pin.get("start_min"), stages_of(bath)["fill"]["start_min"]
    if at is not None and abs(fill - at) > NEAR:
        yield f"{name}: not begun when it was pinned"


def _steam_faults(day: Doc, wanted: Doc, bath: Doc) -> Iterator[Fault]:
    name = wanted["name"]
    source = next(each for each in day["sources"] if each["name"] == bath["source"])
    if bool(wanted.get("steamed")) != (source["kind"] == "steamer"):
        yield f"{name}: on the wrong kind of source"
    if wanted["fibre_g"] > source.get("room_g", wanted["fibre_g"]):
        yield f"{name}: too much yarn for its source"


def _out_faults(day: Doc, wanted: Doc, bath: Doc) -> Iterator[Fault]:
    """Yield where a bath is in or on what is out."""
    name, now = wanted["name"], now_of(day)
    for kind, key, end in (
        ("pots", "pot", _frees(day, bath)),
        ("sources", "source", _leaves(day, wanted, bath)),
    ):
        for each in day[kind]:
            if each["name"] == bath[key] and each.get("out_from"):
                out = max(after_start(day, each["out_from"]), now)
                if end > out + NEAR:
                    yield Held.of(f"{name}: {each['name']} is out", {name})


def _frees(day: Doc, bath: Doc) -> float:
    stages = stages_of(bath)
    return float(stages["rinse"]["start_min"] if "rinse" in stages else length_of(day))


def _leaves(day: Doc, wanted: Doc, bath: Doc) -> float:
    """Return until when a source has to be there; one that is going wants its heat."""
    if is_on(wanted):
        going = wanted["going"]
        is_checked = going.keys() & {"checked_min", "rinse_start_min"}
        return -1e9 if is_checked else float(stages_of(bath)["hold"]["end_min"])
    return _until(day, wanted, bath)


def _until(day: Doc, wanted: Doc, bath: Doc) -> float:
    """Return until when a bath stands on its source."""
    stages, going = stages_of(bath), wanted.get("going") or {}
    heavy = next(
        (x.get("mass_kg", 0.0) for x in day["pots"] if x["name"] == bath["pot"]), 0.0
    )
    heavy += wanted["fibre_g"] * (wanted["liquor_ratio"] + 1.0) / 1000.0
    stays = wanted.get("cools_on_source")
    stays = heavy > 10.0 and not wanted.get("steamed") if stays is None else stays
    end = float(stages["check"]["end_min"])
    if stays:
        end = length_of(day) if is_night(wanted) else end
        end = end if is_night(wanted) else max(end, float(stages["cool"]["end_min"]))
    return float(min(end, going.get("rinse_start_min", end)))


def _pot_faults(day: Doc, answer: Doc, wanted: Doc) -> Iterator[Fault]:
    by_pot: dict[str, list[Doc]] = {}
    for bath in answer["baths"]:
        if bath["pot"] is not None:
            by_pot.setdefault(bath["pot"], []).append(bath)
    washed = {each["before"]: each for each in answer["washouts"]}
    needed = set()
    for baths in by_pot.values():
        baths.sort(key=lambda bath: stages_of(bath)["fill"]["start_min"])
        for one, other in pairwise(baths):
            after = wanted[other["name"]]
            if not after.get("going") and _is_washed(wanted[one["name"]], after):
                needed.add(other["name"])
            wash = washed.get(other["name"])
            yield from _wash_faults(day, one, other, wash)
        for one, other in combinations(baths, 2):
            yield from _share_faults(one, other, wanted)
    if set(washed) != needed:
        yield "pots are washed for nothing, or not at all"


def _is_washed(before: Doc, after: Doc) -> bool:
    is_paler = after["depth_percent"] < before["depth_percent"]
    return bool(before["family"] != after["family"] or is_paler)


def _share_faults(one: Doc, other: Doc, wanted: Doc) -> Iterator[Fault]:
    """Yield where two baths are in one pot; two that are going may say so."""
    goings = [wanted[each["name"]].get("going") for each in (one, other)]
    if all(goings):
        if not any("rinse_start_min" in each for each in goings):
            names = {one["name"], other["name"]}
            yield Held.of(f"{one['pot']}: holds two baths", names)
        return
    if "rinse" not in stages_of(one):
        yield f"{one['pot']}: {one['name']} is in it to the end of the day"
    elif _opens(other) < stages_of(one)["rinse"]["start_min"] - NEAR:
        yield f"{one['pot']}: two baths at once"


def _opens(bath: Doc) -> float:
    return float(stages_of(bath)["fill"]["start_min"])


def _wash_faults(day: Doc, one: Doc, other: Doc, wash: Doc | None) -> Iterator[Fault]:
    if wash is None:
        return
    pot, frees = one["pot"], stages_of(one).get("rinse", {"start_min": 1e9})
    took = wash["end_min"] - wash["start_min"]
    is_early = wash["start_min"] < frees["start_min"] - NEAR
    if is_early or wash["end_min"] > _opens(other) + NEAR:
        yield f"{pot}: washed at the wrong time"
    if abs(took - day["washout_min"]) > NEAR or wash["pot"] != pot:
        yield f"{pot}: washed wrongly"


def _source_faults(day: Doc, answer: Doc, wanted: Doc) -> Iterator[Fault]:
    sources, now = {each["name"]: each for each in day["sources"]}, now_of(day)
    taken: dict[str, list[tuple[float, float, str]]] = {}
    on: list[tuple[float, float, str, float, str]] = []
    for bath in answer["baths"]:
        stages, name = stages_of(bath), bath["name"]
        start = max(stages["heat"]["start_min"], now)
        span = start, _until(day, wanted[name], bath), name
        if span[1] > start + NEAR:
            taken.setdefault(bath["source"], []).append(span)
        source, off = sources[bath["source"]], stages["hold"]["end_min"]
        going = wanted[name].get("going") or {}
        if off > start and not going.keys() & {"checked_min", "rinse_start_min"}:
            kw = source["power_kw"]
            on.append((start, off, source.get("circuit", ""), kw, name))
    for name, spans in taken.items():
        for one, other in pairwise(sorted(spans)):
            if other[0] < one[1] - NEAR:
                yield Held.of(f"{name}: two pots at once", {one[2], other[2]})
    yield from _power_faults(day, answer, on)
    yield from _presence_faults(day, on)


def _power_faults(
    day: Doc, answer: Doc, on: list[tuple[float, float, str, float, str]]
) -> Iterator[Fault]:
    for circuit in day["circuits"]:
        peak = 0.0
        for at, _off, _name, _kw, _who in on:
            loads = [
                (kw, who)
                for begins, ends, name, kw, who in on
                if name == circuit["name"] and begins - NEAR <= at < ends - NEAR
            ]
            load = sum(kw for kw, _who in loads)
            if load > circuit["limit_kw"] + 1e-6:
                who = {who for _kw, who in loads}
                yield Held.of(f"circuit {circuit['name']} carries {load} at {at}", who)
            peak = max(peak, load)
        if abs(answer["peak_kw_by_circuit"][circuit["name"]] - peak) > 1e-6:
            yield f"the peak of circuit {circuit['name']} is {peak}"


def _presence_faults(
    day: Doc, on: list[tuple[float, float, str, float, str]]
) -> Iterator[Fault]:
    people = [span for spans in hours_of(day).values() for span in spans]
    for begins, ends, _name, _kw, who in on:
        edges = [begins, *(edge for span in people for edge in span)]
        for at in edges:
            if begins - NEAR <= at < ends - NEAR and not any(
                one <= at + NEAR and at + NEAR < end for one, end in people
            ):
                yield Held.of(f"{who}: heated at {at} while nobody is in", {who})


def _sink_faults(day: Doc, answer: Doc) -> Iterator[Fault]:
    now = now_of(day)
    rinses = [
        (max(each["start_min"], now), each["end_min"])
        for bath in answer["baths"]
        for each in bath["stages"]
        if each["stage"] == "rinse" and each["end_min"] > max(each["start_min"], now)
    ]
    for at, _end_at in rinses:
        busy = sum(1 for start, end in rinses if start <= at + NEAR < end)
        if busy > day.get("sinks", 1):
            yield f"{busy} rinses at {at} in {day.get('sinks', 1)} sinks"
