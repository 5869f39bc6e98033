"""A checker of planned days, written apart from the planner: it knows the file alone.

It takes the day's JSON and the answer's JSON and returns what is wrong with the plan,
in sentences. Every rule of a dye day stands here once more, minute by minute. What is
going may break a rule if the plan names it among its conflicts, and only then.
"""

from collections.abc import Iterator
from itertools import pairwise

from tests.core.planning.place_checker import place_faults
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

ORDER = ["fill", "heat", "dose", "ramp", "hold", "check", "cool", "rinse"]
HANDS = {"fill", "dose", "check", "rinse"}


def faults_of(day: Doc, answer: Doc) -> list[str]:
    """Return every rule that a plan breaks."""
    said = {each["name"] for each in answer["conflicts"]}
    going = {bath["name"] for bath in day["baths"] if bath.get("going")}
    faults, excused = [], set[str]()
    for fault in _faults(day, answer):
        who = fault.who & going & said if isinstance(fault, Held) else set()
        excused |= who
        if not who:
            faults.append(fault.said if isinstance(fault, Held) else fault)
    faults += [f"{name}: a conflict for nothing" for name in sorted(said - excused)]
    return faults


def _faults(day: Doc, answer: Doc) -> Iterator[Fault]:
    wanted = {bath["name"]: bath for bath in day["baths"]}
    planned = {bath["name"]: bath for bath in answer["baths"]}
    left = {each["name"] for each in answer["left_out"]}
    if set(planned) & left or set(planned) | left != set(wanted):
        yield "baths are lost or doubled"
    if answer["feasible"] != (not left and not answer["conflicts"]):
        yield "feasible does not say what is left out"
    for name, bath in planned.items():
        yield from _bath_faults(day, wanted[name], bath)
    yield from _hand_faults(day, answer)
    yield from place_faults(day, answer, wanted)
    yield from _change_faults(day, answer)
    ends = [_end(bath) for bath in planned.values()]
    if abs(answer["end_min"] - max(ends, default=0.0)) > NEAR:
        yield "the end is not that of the last bath"
    if not left and answer["bound_min"] > answer["end_min"] + NEAR:
        yield "the bound lies after the end"


def _end(bath: Doc) -> float:
    stages = stages_of(bath)
    return float(stages["rinse" if "rinse" in stages else "check"]["end_min"])


def _bath_faults(day: Doc, wanted: Doc, bath: Doc) -> Iterator[Fault]:
    name, stages = wanted["name"], stages_of(bath)
    kept = [stage for stage in ORDER if stage in stages]
    needs = ORDER[:6] if is_night(wanted) else ORDER
    if [each["stage"] for each in bath["stages"]] != kept:
        yield f"{name}: stages are out of order"
    if not set(needs) <= set(kept):
        yield Held.of(f"{name}: stages are missing", {name})
    if is_night(wanted) and "rinse" in stages:
        yield f"{name}: rinsed although it stays overnight"
    if is_on(wanted):
        yield from _as_it_is_faults(wanted, bath)
    else:
        yield from _order_faults(day, wanted, stages, kept)
    if not (wanted.get("going") or {}).keys() & {"checked_min", "rinse_start_min"}:
        for stage in kept:
            yield from _length_faults(day, wanted, bath, stage)
        yield from _touch_faults(wanted, bath)
    due = wanted.get("due")
    rinsed = stages["rinse"]["end_min"] if "rinse" in stages else 0.0
    if due and rinsed > after_start(day, due) + NEAR:
        yield Held.of(f"{name}: too late", {name})


def _order_faults(
    day: Doc, wanted: Doc, stages: Doc, kept: list[str]
) -> Iterator[Fault]:
    name, going = wanted["name"], wanted.get("going")
    for before, after in pairwise(kept):
        gap = stages[after]["start_min"] - stages[before]["end_min"]
        if gap < -NEAR:
            yield f"{name}: {after} starts before {before} is over"
        if before in ORDER[1:5] and abs(gap) > NEAR:
            yield f"{name}: a gap after {before}"
    begun = stages["fill"]["start_min"]
    if going and abs(begun - going["fill_start_min"]) > NEAR:
        yield f"{name}: not filled when it was"
    if stages["heat" if going else "fill"]["start_min"] < now_of(day) - NEAR:
        yield f"{name}: begins before now"


def _as_it_is_faults(wanted: Doc, bath: Doc) -> Iterator[Fault]:
    """Yield where a plan tells of what is over otherwise than it was."""
    name, going, stages = wanted["name"], wanted["going"], stages_of(bath)
    for key, stage, edge in (
        ("fill_start_min", "fill", "start_min"),
        ("heat_start_min", "heat", "start_min"),
        ("checked_min", "check", "end_min"),
        ("rinse_start_min", "rinse", "start_min"),
    ):
        if key in going and abs(stages[stage][edge] - going[key]) > NEAR:
            yield f"{name}: {stage} is not where it was"
    for before, after in pairwise(ORDER[1:]):
        gap = stages.get(after, {"start_min": 1e9})["start_min"]
        if gap < stages[before]["end_min"] - NEAR:
            yield f"{name}: {after} starts before {before} is over"


def _length_faults(day: Doc, wanted: Doc, bath: Doc, stage: str) -> Iterator[Fault]:
    name, at = wanted["name"], stages_of(bath)[stage]
    given = wanted["minutes"].get(stage)
    for known in [] if is_on(wanted) else wanted.get("minutes_by_place", []):
        if [known.get("pot"), known["source"]] == [bath["pot"], bath["source"]]:
            given = known.get(stage, given)
    took = at["end_min"] - at["start_min"]
    if given is not None and stage != "cool" and abs(took - given) > NEAR:
        yield f"{name}: {stage} takes {took}, not {given}"
    is_cooled = stage == "cool" and given is not None and not is_night(wanted)
    if is_cooled and took < given - NEAR:
        yield f"{name}: cooled too short"
    if took < -NEAR and stage != "cool":
        yield f"{name}: {stage} outside the day"
    if at["end_min"] > length_of(day) + NEAR:
        yield Held.of(f"{name}: {stage} ends after the day", {name})


def _touch_faults(wanted: Doc, bath: Doc) -> Iterator[Fault]:
    name, stages, touches = wanted["name"], stages_of(bath), wanted.get("touches", [])
    if len(touches) != len(bath["touches"]):
        yield f"{name}: touches are lost"
    for asked, done in zip(touches, bath["touches"], strict=False):
        start = stages[asked["stage"]]["start_min"] + asked["at_min"]
        if abs(done["start_min"] - start) > NEAR:
            yield f"{name}: a touch at the wrong time"
        if abs(done["end_min"] - start - asked["minutes"]) > NEAR:
            yield f"{name}: a touch of the wrong length"


def _wanting(day: Doc, answer: Doc) -> Iterator[tuple[float, float, str, str]]:
    """Yield start, end, who and what of everything that still wants hands."""
    now, wanted = now_of(day), {bath["name"]: bath for bath in day["baths"]}
    for bath in answer["baths"]:
        going = wanted[bath["name"]].get("going") or {}
        is_checked = going.keys() & {"checked_min", "rinse_start_min"}
        stages = [each for each in bath["stages"] if each["stage"] in HANDS]
        for each in [*stages, *bath["touches"]]:
            stage = each.get("stage")
            is_over = is_on(wanted[bath["name"]]) if stage == "fill" else is_checked
            if each["end_min"] <= now or (is_over and stage != "rinse"):
                continue
            start = max(each["start_min"], now)
            yield start, each["end_min"], each["person"], bath["name"]
    for each in answer["washouts"]:
        yield each["start_min"], each["end_min"], each["person"], each["pot"]


def _hand_faults(day: Doc, answer: Doc) -> Iterator[Fault]:
    hours = hours_of(day)
    spans: dict[str, list[tuple[float, float, str]]] = {name: [] for name in hours}
    total = sum(end - start for start, end, _who, _what in _wanting(day, answer))
    if abs(total - answer["hands_min"]) > 1e-3:
        yield f"the minutes of the hands do not add up to {total}"
    for start, end, who, what in _wanting(day, answer):
        if end - start <= NEAR:
            continue
        if who in spans:
            spans[who].append((start, end, what))
        else:
            yield Held.of(f"{what}: nobody does it at {start}", {what})
    for who, doing in spans.items():
        yield from _person_faults(day, who, doing)


def _person_faults(
    day: Doc, who: str, doing: list[tuple[float, float, str]]
) -> Iterator[Fault]:
    hours = hours_of(day)
    for one, other in pairwise(sorted(doing)):
        if other[0] < one[1] - NEAR:
            yield f"{who} is in two places: {one} and {other}"
    for start, end, what in doing:
        if not any(
            comes <= start + NEAR and end <= goes + NEAR for comes, goes in hours[who]
        ):
            yield f"{who} is not in for {what} at {start}"
        if start < now_of(day) - NEAR:
            yield f"{who} begins before now: {what}"


def _change_faults(day: Doc, answer: Doc) -> Iterator[Fault]:
    """Yield where the changes are not those between the plans."""
    places = {
        bath["name"]: {
            "pot": bath["pot"],
            "source": bath["source"],
            "start_min": stages_of(bath)["fill"]["start_min"],
        }
        for bath in answer["baths"]
    }
    names = {bath["name"] for bath in day["baths"]}
    expected = []
    for each in day.get("before", []):
        was = {key: each[key] for key in ("pot", "source", "start_min")}
        now = places.get(each["name"])
        if each["name"] in names and was != now:
            expected.append({"name": each["name"], "was": was, "now": now})
    told = sorted(answer["changes"], key=lambda each: str(each["name"]))
    if told != sorted(expected, key=lambda each: str(each["name"])):
        yield "the changes are not those between the plans"
