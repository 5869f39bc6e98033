"""Trace both ways, with every link that is missing in plain sight."""

from uuid import UUID

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from shadewright.records.models import Base, Bath, MillLot
from shadewright.records.models.baths import BathAct
from shadewright.workflows.filling import Particulars
from shadewright.workflows.mending import add_powder, dilute, merge
from shadewright.workflows.trace import trace_bottle, trace_lot
from shadewright.workflows.trace_nodes import Kind, Node
from shadewright.workflows.trace_onwards import (
    onwards_from_bottle,
    onwards_from_jar,
)
from shadewright.workflows.undo import undo
from tests.workflows.bench import entered, founded, made, new_jar, now
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def words(tree: Node, depth: int = 0) -> list[str]:
    """Return a tree as lines, each level two blanks further in."""
    mark = "! " if tree.is_missing else ""
    own = f"{'  ' * depth}{mark}{tree.kind} {tree.name}".replace("\u00a0", " ")
    return [own, *(line for node in tree.below for line in words(node, depth + 1))]


def kinds(tree: Node, kind: Kind) -> list[Node]:
    return [node for node in tree.every() if node.kind is kind]


def test_a_lot_leads_to_its_bottles_and_says_what_is_not_known(pot: Ready) -> None:
    tree = trace_lot(finished(dyed(pot)))
    day = f"{Bath.objects.get().dyed_on:%Y}"
    found = words(tree)
    assert found[0] == f"lot {pot.number}"
    assert found[1].startswith(f"  bath {pot.number}, ")
    assert found[1].endswith(day)
    assert found[2:] == [
        f"    bottle {pot.slate} Slate, 1 %",
        "      ! jar entered as it stood: jar not known",
        f"    bottle {pot.gorse} Gorse, 1 %",
        "      ! jar entered as it stood: jar not known",
        "    base Fell DK",
        "      ! mill lot not written down",
    ]


def test_a_mill_lot_that_is_known_is_named(pot: Ready) -> None:
    lot = MillLot.objects.create(base=Base.objects.get(), lot="77")
    Bath.objects.update(mill_lot=lot)
    assert "      mill lot 77" in words(trace_lot(finished(dyed(pot))))


def test_a_lot_leads_through_a_merged_bottle_to_both_jars(pot: Ready) -> None:
    jars = [new_jar(pot.slate_dye), new_jar(pot.slate_dye)]
    first, second = made(pot.slate_dye, jars[0]), made(pot.slate_dye, jars[1])
    merge(code=first.code, from_codes=[second.code], stamp=now())
    _dose(pot, first.code)
    tree = trace_lot(finished(pot.number))
    assert [node.key for node in kinds(tree, Kind.JAR)] == [str(jar) for jar in jars]
    bottles = [node.key for node in kinds(tree, Kind.BOTTLE)]
    assert bottles[:2] == [first.code, second.code]


def test_what_came_into_a_bottle_after_the_dose_is_not_behind_the_lot(
    pot: Ready,
) -> None:
    jar, later = new_jar(pot.slate_dye), new_jar(pot.slate_dye)
    bottle = made(pot.slate_dye, jar)
    _dose(pot, bottle.code)
    add_powder(code=bottle.code, powder_g=1.0, jar_id=later, stamp=now())
    tree = trace_lot(finished(pot.number))
    assert [node.key for node in kinds(tree, Kind.JAR)] == [str(jar)]
    assert onwards_from_jar(later).baths == 0
    assert onwards_from_jar(jar).baths == 1
    now_behind = kinds(trace_bottle(bottle.code), Kind.JAR)
    assert [node.key for node in now_behind] == [str(jar), str(later)]


def test_doses_left_out_dry_or_not_told_are_gaps(pot: Ready) -> None:
    tapped(pot.number, BathAct.STARTED, "fill")
    tapped(pot.number, BathAct.MISSED, "dose-1")
    found = words(trace_lot(finished(pot.number)))
    assert "    ! dose Slate: left out" in found
    assert "    ! dose Gorse: not written down whether it went in" in found
    dry = pot.another()
    tapped(dry, BathAct.DOSED, "dose-1", value=0.6, unit="g")
    found = words(trace_lot(finished(dry)))
    assert "    dose Slate" in found
    assert "      ! jar weighed dry: jar not written down" in found


def test_a_dose_that_was_undone_is_not_in_the_trace(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    bottle = made(pot.slate_dye, jar)
    deed = _dose(pot, bottle.code)
    undo(deed=deed, stamp=now())
    assert onwards_from_jar(jar).baths == 0


def test_a_jar_leads_to_every_lot_through_dilution_and_merger(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    strong = made(pot.slate_dye, jar, powder_g=10.0)
    thin = dilute(
        code=strong.code,
        want_percent=0.5,
        volume_ml=200.0,
        stamp=now(),
        about=Particulars(),
    )
    old = entered(pot.slate_dye)
    before = pot.another()
    _dose(pot, old.code, bath=before)
    merge(code=old.code, from_codes=[thin.code], stamp=now())
    after = pot.another()
    _dose(pot, old.code, bath=after)
    _dose(pot, strong.code)
    for number in (before, after, pot.number):
        finished(number)
    found = onwards_from_jar(jar)
    assert found.baths == 2
    assert sorted(x.key for x in kinds(found.tree, Kind.LOT)) == [pot.number, after]
    chain = [node.key for node in kinds(found.tree, Kind.BOTTLE) if node.key]
    assert chain == [strong.code, thin.code, old.code]
    own = onwards_from_bottle(thin.code)
    assert [node.key for node in kinds(own.tree, Kind.LOT)] == [after]


def test_a_jars_trace_names_what_may_be_of_it(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    found = words(onwards_from_jar(jar).tree)
    said = "1 bottle of Slate without a jar: perhaps of this one"
    assert f"  ! bottle {said}" in found


def test_a_bath_that_was_only_planned_from_a_bottle_is_marked(pot: Ready) -> None:
    finished(pot.number, is_sure=True)
    tree = onwards_from_bottle(pot.slate).tree
    (lot,) = kinds(tree, Kind.LOT)
    assert lot.is_missing
    assert "not written down whether it went in" in lot.more


def test_a_bath_without_its_lot_is_shown_as_a_bath(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    _dose(pot, made(pot.slate_dye, jar).code)
    tree = onwards_from_jar(jar).tree
    assert kinds(tree, Kind.LOT) == []
    assert [node.more for node in kinds(tree, Kind.BATH)] == ["Low Tide, no lot"]


def test_the_trace_asks_as_often_for_many_lots_as_for_few(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    bottle = made(pot.slate_dye, jar)
    _dose(pot, bottle.code)
    finished(pot.number)
    with CaptureQueriesContext(connection) as few:
        onwards_from_jar(jar)
    for _time in range(5):
        number = pot.another()
        _dose(pot, bottle.code, bath=number)
        finished(number)
    with CaptureQueriesContext(connection) as many:
        assert onwards_from_jar(jar).baths == 6
    assert len(many) == len(few)


def _dose(pot: Ready, code: str, *, bath: str = "") -> UUID:
    number = bath or pot.number
    return tapped(number, BathAct.DOSED, "dose-1", value=30.0, unit="ml", bottle=code)
