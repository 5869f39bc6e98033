"""Days that have begun: a planned day, some hours on, when reality has moved."""

from random import Random

from tests.core.planning.made_days import Doc, clock
from tests.core.planning.plan_reading import after_start, length_of, stages_of

STEPS = (
    ("fill_start_min", "fill", "start_min"),
    ("heat_start_min", "heat", "start_min"),
    ("checked_min", "check", "end_min"),
    ("rinse_start_min", "rinse", "start_min"),
)


def begun_day(day: Doc, answer: Doc, seed: int) -> Doc:
    """Return a planned day at some time of it; something is late, out, or gone."""
    draws = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    now = draws.randrange(0, int(length_of(day)), 5)
    planned = {bath["name"]: bath for bath in answer["baths"]}
    baths = [
        _begun(draws, bath, planned.get(bath["name"]), now) for bath in day["baths"]
    ]
    begun = day | {"now": clock(now), "baths": baths, "before": _before(answer)}
    begun["people"] = [_leaving(draws, day, each) for each in day["people"]]
    for kind in ("sources", "pots"):
        begun[kind] = [
            each | {"out_from": clock(now + draws.choice([-10, 0, 60]))}
            if draws.random() < 0.15
            else each
            for each in day[kind]
        ]
    return begun


def _before(answer: Doc) -> list[Doc]:
    return [
        {
            "name": bath["name"],
            "pot": bath["pot"],
            "source": bath["source"],
            "start_min": stages_of(bath)["fill"]["start_min"],
        }
        for bath in answer["baths"]
    ]


def _begun(draws: Random, bath: Doc, planned: Doc | None, now: int) -> Doc:
    """Return a bath with what of it is past, and perhaps with a longer rise or hold."""
    if planned is None:
        return bath
    stages = stages_of(planned)
    going = {
        key: stages[stage][edge]
        for key, stage, edge in STEPS
        if stage in stages and stages[stage][edge] <= now
    }
    if not going or "fill_start_min" not in going:
        return bath
    going |= {"pot": planned["pot"], "source": planned["source"]}
    known = {
        stage: int(each["end_min"] - each["start_min"])
        for stage, each in stages.items()
        if stage in {"heat", "ramp"}
    }
    minutes = bath["minutes"] | known
    if "heat_start_min" in going and "checked_min" not in going:
        for stage in ("ramp", "hold"):
            if stages[stage]["end_min"] > now and draws.random() < 0.4:
                minutes |= {stage: minutes[stage] + draws.choice([5, 15, 30])}
    return bath | {"going": going, "minutes": minutes}


def _leaving(draws: Random, day: Doc, person: Doc) -> Doc:
    if draws.random() > 0.2:
        return person
    comes, goes = (int(after_start(day, person[key])) for key in ("from", "to"))
    return person | {"to": clock(max(comes, goes - 60))}
