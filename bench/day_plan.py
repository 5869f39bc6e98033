"""How soon a dye day is planned, and what more patience gains.

The day: 12 baths, half of them cooling overnight, 9 pots, 6 sources on 2 circuits, one
pair of hands, a rack of 40. Printed as ratios: the end after 2 and 10 seconds' budget
to the best of a budget of 120 seconds, the end to its bound, and the seconds that the
budget of 2 seconds took to 2. Then the same day at minute 100, when a pot is 20 minutes
late and a burner is out: seconds for a budget of 2, the end and how many pots, sources
and starts change, with the plan before and from nothing.

    python bench/day_plan.py [--days 4]
"""

import argparse
from dataclasses import replace
from random import Random
from time import perf_counter

from shadewright.cli.lots import Lots
from shadewright.core.planning import (
    Day,
    DayCircuit,
    DayPerson,
    DayPot,
    DaySource,
    Going,
    PlaceBefore,
    Stage,
    Touch,
    Tried,
    WantedBath,
    place_of,
    plan_of,
    searched_for,
)
from shadewright.core.tables.heat import Source

NOW, LATE, OUT = 100, 20, "S3"
"""When the day is planned anew, how late its first pot is, what is out. [min]"""


def day_of(seed: int) -> Day:
    """Return a day of 12 baths, made by chance."""
    draws = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    volumes = (10, 10, 10, 14, 14, 8, 8, 20, 20)
    return Day(
        length=600,
        people=(DayPerson(name="one", starts=0, ends=560),),
        pots=tuple(
            DayPot(name=f"P{n}", volume_l=litres, mass_kg=2.0, material="stainless")
            for n, litres in enumerate(volumes)
        ),
        circuits=(
            DayCircuit(name="A", limit_kw=5.5),
            DayCircuit(name="B", limit_kw=5.5),
        ),
        sources=tuple(
            DaySource(
                name=f"S{n}",
                power_kw=1.8 if n % 3 < 2 else 2.0,
                kind=Source.INDUCTION,
                circuit="AAABBB"[n],
            )
            for n in range(6)
        ),
        sinks=1,
        rack_slots=40,
        rack_used=0,
        washout=10,
        baths=tuple(_bath(draws, n) for n in range(12)),
    )


def _bath(draws: Random, number: int) -> WantedBath:
    return WantedBath(
        name=f"B{number}",
        family=draws.choice(["blue", "red", "yellow"]),
        depth_percent=draws.choice([0.2, 0.5, 1.0, 2.0]),
        fibre_g=draws.choice([200.0, 300.0, 400.0]),
        skeins=draws.choice([2, 3, 4]),
        liquor_ratio=20.0,
        minutes={
            Stage.FILL: 5,
            Stage.HEAT: draws.choice([15, 20, 25]),
            Stage.DOSE: draws.choice([4, 5, 6]),
            Stage.RAMP: draws.choice([30, 40, 45]),
            Stage.HOLD: draws.choice([30, 40, 45, 60]),
            Stage.CHECK: 2,
            Stage.COOL: draws.choice([60, 90]),
            Stage.RINSE: 10,
        },
        touches=(Touch(stage=Stage.RAMP, at=15, minutes=3),),
        is_overnight=number % 2 == 0,
    )


def best_of(
    day: Day, seconds: float, before: dict[str, PlaceBefore] | None = None
) -> tuple[Tried, float]:
    """Return the best plan of a budget, and the seconds that it took."""
    began = perf_counter()
    tried, _ = searched_for(
        day, seconds=seconds, draws=Lots(), before=before, goes_on=lambda _tried: True
    )
    return tried, perf_counter() - began


def begun(day: Day, tried: Tried) -> Day:
    """Return a planned day at its minute 100: the first pot is late, a burner out."""
    baths = list(day.baths)
    is_late = False
    for stay in sorted(tried.best.stays, key=lambda stay: stay.heat):
        bath = baths[stay.bath]
        if stay.fill.start > NOW:
            continue
        place, is_on = place_of(stay, day), stay.heat <= NOW
        if is_on and stay.checked > NOW and not is_late:
            is_late = True
            longer = {Stage.HOLD: bath.minutes[Stage.HOLD] + LATE}
            bath = replace(bath, minutes=bath.minutes | longer)
        going = Going(
            pot=place.pot,
            source=place.source if is_on else "",
            fill_start=place.start,
            heat_start=stay.heat if is_on else None,
        )
        baths[stay.bath] = replace(bath, going=going)
    sources = tuple(
        replace(each, out_from=NOW) if each.name == OUT else each
        for each in day.sources
    )
    return replace(day, now=NOW, baths=tuple(baths), sources=sources)


def changed(tried: Tried, day: Day, before: dict[str, PlaceBefore]) -> int:
    """Return how many pots, sources and starts are not as they were."""
    changes = plan_of(replace(tried, before=before), day).changes
    return sum(
        (each.was.pot != each.now.pot)
        + (each.was.source != each.now.source)
        + (each.was.start != each.now.start)
        for each in changes
        if each.now is not None
    )


def print_anew(day: Day, tried: Tried) -> None:
    """Print what it takes to plan a begun day anew, and how much it changes."""
    before = {day.baths[x.bath].name: place_of(x, day) for x in tried.best.stays}
    later = begun(day, tried)
    anew, took = best_of(later, 2.0, before)
    nothing, _took = best_of(later, 2.0)
    print(
        f"    at minute {NOW}: ends {anew.best.end} with "
        f"{changed(anew, later, before)} changes, {nothing.best.end} with "
        f"{changed(nothing, later, before)} from nothing; {took:.2f} s",
        flush=True,
    )


def main() -> None:
    """Print the ratios of some days."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--days", type=int, default=4)
    for seed in range(asked.parse_args().days):
        day = day_of(seed)
        soon, took = best_of(day, 2.0)
        print_anew(day, soon)
        later, _took = best_of(day, 10.0)
        patient, _took = best_of(day, 120.0)
        best = min(soon.best.end, later.best.end, patient.best.end)
        print(
            f"day {seed}: ends {soon.best.end}, {later.best.end}, "
            f"{patient.best.end} min, bound {later.bound}; 2 s / best "
            f"{soon.best.end / best:.3f}, 10 s / best {later.best.end / best:.3f}, "
            f"10 s / bound {later.best.end / later.bound:.3f}; "
            f"seconds / budget {took / 2.0:.2f}",
            flush=True,
        )


if __name__ == "__main__":
    main()
