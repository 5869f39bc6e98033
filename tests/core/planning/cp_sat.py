"""Small days proved by constraint programming, as an oracle for the planner.

Every rule of a dye day as a model for CP-SAT, from the file alone; it ends with a proof
for days of a few baths. Overnight baths, pins, due times, what is going and what is out
are in; steam and learned minutes are not, and heat and rise must be given.
"""

from typing import Any

from ortools.sat.python import cp_model

from tests.core.planning.cp_sat_pots import put_in_pots

Doc = dict[str, Any]
BLOCK = ("heat", "dose", "ramp", "hold", "check")


def least_end(day: Doc, *, seconds: float = 60.0) -> float | None:
    """Return the earliest end of a day on which every bath is dyed, proved.

    None where no plan holds all baths.
    """
    model = Model(day)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    status = solver.solve(model.model)
    if status == cp_model.INFEASIBLE:
        return None
    assert status == cp_model.OPTIMAL, solver.status_name(status)
    return float(solver.objective_value)


class Model:
    """Variables and rules of a day."""

    def __init__(self, day: Doc) -> None:
        self.day, self.model = day, cp_model.CpModel()
        self.length = _clock(day["end"]) - _clock(day["start"])
        self.now = _clock(day["now"]) - _clock(day["start"]) if "now" in day else 0
        self.by_person: list[list[Any]] = [[] for _each in day["people"]]
        self.by_source: list[list[Any]] = [[] for _each in day["sources"]]
        self.power: dict[str, list[tuple[Any, int]]] = {}
        self.sinks: list[Any] = []
        self.parts = [self._bath(bath) for bath in day["baths"]]
        put_in_pots(self)
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

    def time(self, name: str) -> cp_model.IntVar:
        """Return a time of the day that is to be found."""
        return self.model.new_int_var(0, self.length, name)

    def _bath(self, bath: Doc) -> Doc:
        going = bath.get("going") or {}
        if "heat_start_min" in going:
            return self._on_heat(bath, going)
        minutes, night = bath["minutes"], bool(bath.get("overnight"))
        fill, heat = self.time("fill"), self.time("heat")
        block = sum(minutes[stage] for stage in BLOCK)
        self.model.add(fill + minutes["fill"] <= heat)
        self.model.add(heat + block <= self.length)
        self.model.add(heat >= self.now)
        if going:
            self.model.add(fill == round(going["fill_start_min"]))
            self._rest(round(going["fill_start_min"]), minutes["fill"])
        else:
            self.model.add(fill >= self.now)
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
        self._rinse(part, heat + block + minutes.get("cool", 0))
        self._places(part, heat, block)
        return part

    def _rinse(self, part: Doc, cooled: cp_model.LinearExprT) -> None:
        bath, minutes = part["bath"], part["bath"]["minutes"]
        if part["night"]:
            part["frees"] = self.length
            return
        rinse = self.time("rinse")
        self.model.add(rinse >= cooled)
        self.model.add(rinse >= self.now)
        self.model.add(rinse + minutes["rinse"] <= self.length)
        self._by_hand(rinse, minutes["rinse"])
        self.sinks.append(
            self.model.new_fixed_size_interval_var(rinse, minutes["rinse"], "sink")
        )
        if bath.get("due"):
            due = _clock(bath["due"]) - _clock(self.day["start"])
            self.model.add(rinse + minutes["rinse"] <= due)
        part |= {"frees": rinse, "end": rinse + minutes["rinse"]}

    def _rest(self, start: int, length: int) -> None:
        """Claim hands for what is left of a span."""
        left = start + length - max(start, self.now)
        if left > 0:
            self._by_hand(max(start, self.now), left)

    def _on_heat(self, bath: Doc, going: Doc) -> Doc:
        """Model a bath whose times are settled up to the check, if not to the rinse."""
        minutes, night = bath["minutes"], bool(bath.get("overnight"))
        heat = at = round(going["heat_start_min"])
        if "checked_min" not in going:
            for stage in BLOCK:
                if stage in {"dose", "check"}:
                    self._rest(at, minutes[stage])
                for touch in bath.get("touches", []):
                    if touch["stage"] == stage:
                        self._rest(at + touch["at_min"], touch["minutes"])
                at += minutes[stage]
        checked = round(going.get("checked_min", at))
        cooled = checked + minutes.get("cool", 0)
        fill = round(going["fill_start_min"])
        part = {"bath": bath, "fill": fill, "end": checked, "night": night}
        if "rinse_start_min" in going:
            rinse = cooled = round(going["rinse_start_min"])
            self._rest(rinse, minutes["rinse"])
            left = rinse + minutes["rinse"] - self.now
            if left > 0:
                self.sinks.append(
                    self.model.new_fixed_size_interval_var(self.now, left, "sink")
                )
            part |= {"frees": rinse, "end": rinse + minutes["rinse"]}
        else:
            self._rinse(part, cooled)
        if checked > self.length:
            self.model.add_bool_or([])
        off = heat if "checked_min" in going else checked - minutes["check"]
        stands = checked
        if bath["cools_on_source"]:
            stands = self.length if night else cooled
        self._settled(part, going, off, stands)
        return part

    def _settled(self, part: Doc, going: Doc, off: int, stands: int) -> None:
        """Put a bath where it is, as long as it needs its source."""
        here = self.model.new_constant(1)
        away = self.model.new_constant(0)
        part["pots"] = [
            here if pot["name"] == going["pot"] else away for pot in self.day["pots"]
        ]
        for place, source in enumerate(self.day["sources"]):
            if source["name"] != going["source"]:
                continue
            if stands > self.now:
                self.by_source[place].append(
                    self.model.new_fixed_size_interval_var(
                        self.now, stands - self.now, "stands"
                    )
                )
            if off > self.now:
                if off > self._out(source) or not self._somebody(self.now, off):
                    self.model.add_bool_or([])
                if source.get("circuit"):
                    self.power.setdefault(source["circuit"], []).append((
                        self.model.new_fixed_size_interval_var(
                            self.now, off - self.now, "power"
                        ),
                        round(1000 * source["power_kw"]),
                    ))
        for pot in self.day["pots"]:
            if pot["name"] == going["pot"]:
                self.model.add(part["frees"] <= max(self._out(pot), self.now))

    def _out(self, each: Doc) -> int:
        """Return from when on a pot or a source is out; never is after the day."""
        if "out_from" not in each:
            return self.length
        return _clock(each["out_from"]) - _clock(self.day["start"])

    def _somebody(self, start: int, end: int) -> bool:
        """Return whether somebody is in at every minute of a span."""
        hours = [
            self.hours_of_person(person) for person in range(len(self.day["people"]))
        ]
        return all(
            any(comes <= at < goes for comes, goes in hours) for at in range(start, end)
        )

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
            comes, goes = self.hours_of_person(person)
            self.model.add(start >= comes).only_enforce_if(here)
            self.model.add(start + length <= goes).only_enforce_if(here)
        self.model.add_exactly_one(who)

    def hours_of_person(self, person: int) -> tuple[int, int]:
        """Return when somebody is still in."""
        each, opens = self.day["people"][person], _clock(self.day["start"])
        comes, goes = _clock(each["from"]) - opens, _clock(each["to"]) - opens
        return max(comes, self.now), goes

    def _in_pots(self, part: Doc) -> Doc:
        """Let a bath be in one pot that holds it; return what it is pinned to."""
        bath, part["pots"] = part["bath"], []
        going, pin = bath.get("going") or {}, dict(bath.get("pinned") or {})
        if going:
            pin.pop("start_min", None)
            pin["pot"] = going["pot"]
        for pot in self.day["pots"]:
            part["pots"].append(self.model.new_bool_var("pot"))
            needed = bath["fibre_g"] * bath["liquor_ratio"] * 1.1
            is_small = needed > pot["volume_l"] * 1000 and not going
            if is_small or pin.get("pot", pot["name"]) != pot["name"]:
                self.model.add(part["pots"][-1] == 0)
            out = max(self._out(pot), self.now)
            self.model.add(part["frees"] <= out).only_enforce_if(part["pots"][-1])
        self.model.add_exactly_one(part["pots"])
        if "start_min" in pin:
            self.model.add(part["fill"] == pin["start_min"])
        return pin

    def _places(self, part: Doc, heat: cp_model.IntVar, block: int) -> None:
        bath, minutes = part["bath"], part["bath"]["minutes"]
        sources = []
        power = block - minutes["check"]
        pin = self._in_pots(part)
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
                if self._out(source) < end:
                    self.model.add(here == 0)
            else:
                self.model.add(heat + taken <= self._out(source)).only_enforce_if(here)
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
            comes, goes = self.hours_of_person(person)
            here = self.model.new_bool_var("in")
            inside.append(here)
            self.model.add(heat >= comes).only_enforce_if(here)
            self.model.add(heat + power <= goes).only_enforce_if(here)
        self.model.add_at_least_one(inside)

    def _people(self) -> None:
        for intervals in self.by_person:
            self.model.add_no_overlap(intervals)


def _clock(text: str) -> int:
    hours, minutes = text.split(":")
    return 60 * int(hours) + int(minutes)
