"""Small days proved by constraint programming, as an oracle for the planner.

Every rule of a dye day as a model for CP-SAT, from the file alone; it ends with a proof
for days of a few baths. Overnight baths, pins and due times are in; heat and rise must
be given.
"""

from itertools import permutations
from typing import Any

from ortools.sat.python import cp_model

Doc = dict[str, Any]
BLOCK = ("heat", "dose", "ramp", "hold", "check")


def least_end(day: Doc, *, seconds: float = 60.0) -> float | None:
    """Return the earliest end of a day on which every bath is dyed, proved.

    None where no plan holds all baths.
    """
    model = _Model(day)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    status = solver.solve(model.model)
    if status == cp_model.INFEASIBLE:
        return None
    assert status == cp_model.OPTIMAL, solver.status_name(status)
    return float(solver.objective_value)


class _Model:
    def __init__(self, day: Doc) -> None:
        self.day, self.model = day, cp_model.CpModel()
        self.length = _clock(day["end"]) - _clock(day["start"])
        self.by_person: list[list[Any]] = [[] for _each in day["people"]]
        self.by_source: list[list[Any]] = [[] for _each in day["sources"]]
        self.power: dict[str, list[tuple[Any, int]]] = {}
        self.sinks: list[Any] = []
        self.parts = [self._bath(bath) for bath in day["baths"]]
        self._pots()
        self._people()
        for intervals in self.by_source:
            self.model.add_no_overlap(intervals)
        for circuit in day["circuits"]:
            loads = self.power.get(circuit["name"], [])
            self.model.add_cumulative(
                [load[0] for load in loads],
                [load[1] for load in loads],
                round(1000 * circuit["limit_kw"]),
            )
        self.model.add_cumulative(
            self.sinks, [1] * len(self.sinks), day.get("sinks", 1)
        )
        end = self.model.new_int_var(0, self.length, "end")
        for part in self.parts:
            self.model.add(end >= part["end"])
        self.model.minimize(end)

    def _time(self, name: str) -> cp_model.IntVar:
        return self.model.new_int_var(0, self.length, name)

    def _bath(self, bath: Doc) -> Doc:
        minutes, night = bath["minutes"], bool(bath.get("overnight"))
        fill, heat = self._time("fill"), self._time("heat")
        block = sum(minutes[stage] for stage in BLOCK)
        self.model.add(fill + minutes["fill"] <= heat)
        self.model.add(heat + block <= self.length)
        self._by_hand(fill, minutes["fill"])
        at = 0
        for stage in BLOCK:
            if stage in {"dose", "check"}:
                self._by_hand(heat + at, minutes[stage])
            for touch in bath.get("touches", []):
                if touch["stage"] == stage:
                    self._by_hand(heat + at + touch["at_min"], touch["minutes"])
            at += minutes[stage]
        part = {"bath": bath, "fill": fill, "end": heat + block, "night": night}
        cooled = heat + block + minutes.get("cool", 0)
        if night:
            part["frees"] = self.length
        else:
            rinse = self._time("rinse")
            self.model.add(rinse >= cooled)
            self.model.add(rinse + minutes["rinse"] <= self.length)
            self._by_hand(rinse, minutes["rinse"])
            self.sinks.append(
                self.model.new_fixed_size_interval_var(rinse, minutes["rinse"], "sink")
            )
            if bath.get("due"):
                due = _clock(bath["due"]) - _clock(self.day["start"])
                self.model.add(rinse + minutes["rinse"] <= due)
            part |= {"frees": rinse, "end": rinse + minutes["rinse"]}
        self._places(part, heat, block)
        return part

    def _by_hand(self, start: cp_model.LinearExprT, length: int) -> None:
        if not length:
            return
        who = []
        for person, intervals in enumerate(self.by_person):
            here = self.model.new_bool_var("who")
            who.append(here)
            intervals.append(
                self.model.new_optional_fixed_size_interval_var(
                    start, length, here, "hands"
                )
            )
            comes, goes = self._hours(person)
            self.model.add(start >= comes).only_enforce_if(here)
            self.model.add(start + length <= goes).only_enforce_if(here)
        self.model.add_exactly_one(who)

    def _hours(self, person: int) -> tuple[int, int]:
        each, opens = self.day["people"][person], _clock(self.day["start"])
        return _clock(each["from"]) - opens, _clock(each["to"]) - opens

    def _places(self, part: Doc, heat: cp_model.IntVar, block: int) -> None:
        bath, minutes = part["bath"], part["bath"]["minutes"]
        part["pots"], sources = [], []
        power = block - minutes["check"]
        pin = bath.get("pinned") or {}
        for pot in self.day["pots"]:
            part["pots"].append(self.model.new_bool_var("pot"))
            needed = bath["fibre_g"] * bath["liquor_ratio"] * 1.1
            if (
                needed > pot["volume_l"] * 1000
                or pin.get("pot", pot["name"]) != pot["name"]
            ):
                self.model.add(part["pots"][-1] == 0)
        self.model.add_exactly_one(part["pots"])
        if "start_min" in pin:
            self.model.add(part["fill"] == pin["start_min"])
        for place, source in enumerate(self.day["sources"]):
            here = self.model.new_bool_var("source")
            sources.append(here)
            if pin.get("source", source["name"]) != source["name"]:
                self.model.add(here == 0)
            taken = block
            if bath["cools_on_source"]:
                taken += minutes.get("cool", 0)
            if bath["cools_on_source"] and part["night"]:
                end = self.length
                size = self.model.new_int_var(0, self.length, "size")
                self.by_source[place].append(
                    self.model.new_optional_interval_var(heat, size, end, here, "on")
                )
            else:
                self.by_source[place].append(
                    self.model.new_optional_fixed_size_interval_var(
                        heat, taken, here, "on"
                    )
                )
            if source.get("circuit"):
                self.power.setdefault(source["circuit"], []).append((
                    self.model.new_optional_fixed_size_interval_var(
                        heat, power, here, "power"
                    ),
                    round(1000 * source["power_kw"]),
                ))
        self.model.add_exactly_one(sources)
        inside = []
        for person in range(len(self.by_person)):
            comes, goes = self._hours(person)
            here = self.model.new_bool_var("in")
            inside.append(here)
            self.model.add(heat >= comes).only_enforce_if(here)
            self.model.add(heat + power <= goes).only_enforce_if(here)
        self.model.add_at_least_one(inside)

    def _people(self) -> None:
        for intervals in self.by_person:
            self.model.add_no_overlap(intervals)

    def _pots(self) -> None:
        """Each pair of baths in one pot is in order, washed out where they follow."""
        count = len(self.parts)
        for pot in range(len(self.day["pots"])):
            here = [part["pots"][pot] for part in self.parts]
            # a circuit through the baths of a pot; node 0 is the empty pot
            arcs = [(0, 0, self.model.new_bool_var("unused"))]
            arcs += [(n + 1, n + 1, here[n].negated()) for n in range(count)]
            for n in range(count):
                arcs.append((0, n + 1, self.model.new_bool_var("first")))
                arcs.append((n + 1, 0, self.model.new_bool_var("last")))
            for one, other in permutations(range(count), 2):
                follows = self.model.new_bool_var("follows")
                arcs.append((one + 1, other + 1, follows))
                self._follow(self.parts[one], self.parts[other], follows)
            self.model.add_circuit(arcs)

    def _follow(self, before: Doc, after: Doc, follows: cp_model.IntVar) -> None:
        if before["night"]:
            self.model.add(follows == 0)
            return
        one, other, washout = before["bath"], after["bath"], self.day["washout_min"]
        is_paler = other["depth_percent"] < one["depth_percent"]
        if one["family"] == other["family"] and not is_paler:
            self.model.add(after["fill"] >= before["frees"]).only_enforce_if(follows)
            return
        wash, who = self._time("wash"), []
        self.model.add(wash >= before["frees"]).only_enforce_if(follows)
        self.model.add(wash + washout <= after["fill"]).only_enforce_if(follows)
        for person, intervals in enumerate(self.by_person):
            does = self.model.new_bool_var("washes")
            who.append(does)
            intervals.append(
                self.model.new_optional_fixed_size_interval_var(
                    wash, washout, does, "wash"
                )
            )
            comes, goes = self._hours(person)
            self.model.add(wash >= comes).only_enforce_if(does)
            self.model.add(wash + washout <= goes).only_enforce_if(does)
        self.model.add(sum(who) == 1).only_enforce_if(follows)


def _clock(text: str) -> int:
    hours, minutes = text.split(":")
    return 60 * int(hours) + int(minutes)
