"""The oracle's rules of pots: which bath follows which, and what is washed out."""

from itertools import permutations
from typing import TYPE_CHECKING, Any

from ortools.sat.python import cp_model

if TYPE_CHECKING:
    from tests.core.planning.cp_sat import Model

Doc = dict[str, Any]


def put_in_pots(on: "Model") -> None:
    """Each pair of baths in one pot is in order, washed out where they follow."""
    count = len(on.parts)
    for pot in range(len(on.day["pots"])):
        here = [part["pots"][pot] for part in on.parts]
        # a circuit through the baths of a pot; node 0 is the empty pot
        arcs = [(0, 0, on.model.new_bool_var("unused"))]
        arcs += [(n + 1, n + 1, here[n].negated()) for n in range(count)]
        for n in range(count):
            arcs.append((0, n + 1, on.model.new_bool_var("first")))
            arcs.append((n + 1, 0, on.model.new_bool_var("last")))
        for one, other in permutations(range(count), 2):
            follows = on.model.new_bool_var("follows")
            arcs.append((one + 1, other + 1, follows))
            _follow(on, on.parts[one], on.parts[other], follows)
        on.model.add_circuit(arcs)


def _follow(on: "Model", before: Doc, after: Doc, follows: cp_model.IntVar) -> None:
    if before["night"]:
        on.model.add(follows == 0)
        return
    begun = [each["bath"].get("going") or {} for each in (before, after)]
    if begun[1]:
        first, second = (each.get("fill_start_min", 1e9) for each in begun)
        if first > second:
            on.model.add(follows == 0)
        frees = before["frees"]
        on.model.add(after["fill"] >= frees).only_enforce_if(follows)
        return
    one, other, washout = before["bath"], after["bath"], on.day["washout_min"]
    is_paler = other["depth_percent"] < one["depth_percent"]
    if one["family"] == other["family"] and not is_paler:
        on.model.add(after["fill"] >= before["frees"]).only_enforce_if(follows)
        return
    wash, who = on.time("wash"), []
    on.model.add(wash >= before["frees"]).only_enforce_if(follows)
    on.model.add(wash + washout <= after["fill"]).only_enforce_if(follows)
    for person, intervals in enumerate(on.by_person):
        does = on.model.new_bool_var("washes")
        who.append(does)
        intervals.append(
            on.model.new_optional_fixed_size_interval_var(wash, washout, does, "wash")
        )
        comes, goes = on.hours_of_person(person)
        on.model.add(wash >= comes).only_enforce_if(does)
        on.model.add(wash + washout <= goes).only_enforce_if(does)
    on.model.add(sum(who) == 1).only_enforce_if(follows)
