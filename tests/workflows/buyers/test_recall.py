"""Who must be told: the same bath, the same bottle, the same jar; and the list."""

import csv
import io

import pytest

from shadewright.records.models import Lot, LotLine, PowderJar
from shadewright.records.models.baths import BathAct
from shadewright.workflows.buyers.kin import Sharing, kin_of
from shadewright.workflows.buyers.recall import HEAD, reaches_of, recall_csv
from shadewright.workflows.lot_skeins import Sending, send_out
from shadewright.workflows.mending import merge
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.trace_onwards import onwards_from_jar
from shadewright.workflows.undo import undo
from tests.workflows.bench import made, new_jar
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def dosed(number: str, code: str) -> str:
    tapped(number, BathAct.DOSED, "dose-1", value=30.0, unit="ml", bottle=code)
    return finished(number, skeins=4, is_sure=True)


def sent(number: str, to_whom: str, skeins: int = 1, reach: str = "") -> None:
    said = Sending(skeins=skeins, to_whom=to_whom, reach=reach)
    send_out(number=number, said=said, stamp=stamp_now(by=None))


def reached(number: str) -> dict[str, set[str]]:
    return {each.name: set(each.lots) for each in kin_of(number).circles}


def jar_name(jar_id: int) -> str:
    return f"jar {PowderJar.objects.get(pk=jar_id).code}"


@pytest.fixture
def pot() -> Ready:
    return ready()


def test_circles_widen_from_bath_to_bottle_to_jar(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    first, second = made(pot.slate_dye, jar), made(pot.slate_dye, jar)
    ours = dosed(pot.number, first.code)
    same_bottle = dosed(pot.another(), first.code)
    same_jar = dosed(pot.another(), second.code)
    other = finished(pot.another(), skeins=4, is_sure=True)
    circles = {each.shares: set(each.lots) for each in kin_of(ours).circles}
    assert circles[Sharing.BATH] == {ours}
    assert circles[Sharing.BOTTLE] == {ours, same_bottle}
    assert circles[Sharing.JAR] == {ours, same_bottle, same_jar}
    assert other not in circles[Sharing.JAR]


def test_three_lots_two_jars_and_a_merged_bottle(pot: Ready) -> None:
    """By hand: the second bottle is poured into the first after lot A."""
    jars = [new_jar(pot.slate_dye), new_jar(pot.slate_dye)]
    first, second = (made(pot.slate_dye, jar) for jar in jars)
    lot_a, lot_c = dosed(pot.number, first.code), dosed(pot.another(), second.code)
    merge(code=first.code, from_codes=[second.code], stamp=stamp_now(by=None))
    lot_b = dosed(pot.another(), first.code)
    assert reached(lot_a) == {
        f"the bath {lot_a}": {lot_a},
        f"bottle {first.code} of Slate": {lot_a, lot_b},
        jar_name(jars[0]): {lot_a, lot_b},
    }
    assert reached(lot_c) == {
        f"the bath {lot_c}": {lot_c},
        f"bottle {second.code} of Slate": {lot_c, lot_b},
        jar_name(jars[1]): {lot_c, lot_b},
    }
    assert reached(lot_b) == {
        f"the bath {lot_b}": {lot_b},
        f"bottle {first.code} of Slate": {lot_a, lot_b},
        f"bottle {second.code} of Slate": {lot_c, lot_b},
        jar_name(jars[0]): {lot_a, lot_b},
        jar_name(jars[1]): {lot_c, lot_b},
    }


def test_a_lot_whose_doses_nobody_wrote_down_is_in_the_list_perhaps(
    pot: Ready,
) -> None:
    ours = dosed(pot.number, pot.slate)
    untold = finished(pot.another(), skeins=3, is_sure=True)
    (circle,) = (x for x in kin_of(ours).circles if x.shares is Sharing.BOTTLE)
    assert (circle.lots, circle.perhaps) == ((ours,), (untold,))
    last = recall_csv(circle).splitlines()[-1]
    assert last.startswith(untold)
    assert last.endswith(f"perhaps bottle {pot.slate} of Slate")


def test_a_lot_taken_back_after_skeins_went_out_is_not_forgotten(pot: Ready) -> None:
    ours, other = dosed(pot.number, pot.slate), dosed(pot.another(), pot.slate)
    sent(other, "Bo")
    for deed in set(
        LotLine.objects.values_list("deed", flat=True).filter(lot__number=other)
    ):
        undo(deed=deed, stamp=stamp_now(by=None))
    assert not Lot.objects.get(number=other).lines.filter(undone_by=None, undoes=None)
    (circle,) = (x for x in kin_of(ours).circles if x.shares is Sharing.BOTTLE)
    assert other in circle.lots


def test_what_nobody_wrote_down_is_said(pot: Ready) -> None:
    ours = dosed(pot.number, pot.slate)  # a bottle that stood there: jar unknown
    untold = kin_of(ours).untold
    assert any("no jar written down" in words for words in untold)
    assert any("Gorse: not written down" in words for words in untold)


def test_the_list_names_everybody_and_what_is_still_here(pot: Ready) -> None:
    ours = dosed(pot.number, pot.slate)
    sent(ours, "Bo", 2, "bo@example.org")
    sent(ours, "=Tam")
    circle = kin_of(ours).circles[0]
    table = list(csv.reader(io.StringIO(recall_csv(circle).removeprefix("\ufeff"))))
    assert table[0] == list(HEAD)
    assert [row[3:6] for row in table[1:]] == [
        ["2", "Bo", "bo@example.org"],
        ["1", "'=Tam", ""],
        ["1", "still here: place not written", ""],
    ]


def test_a_reach_counts_buyers_once(pot: Ready) -> None:
    ours = dosed(pot.number, pot.slate)
    sent(ours, "Bo")
    sent(ours, "bo")
    reach = reaches_of(kin_of(ours))[0]
    assert (reach.out, reach.buyers, reach.here) == (2, ("Bo",), 2)


def test_a_jar_leads_to_its_buyers(pot: Ready) -> None:
    jar = new_jar(pot.slate_dye)
    ours = dosed(pot.number, made(pot.slate_dye, jar).code)
    sent(ours, "Bo")
    names = [node.name for node in onwards_from_jar(jar).tree.every()]
    assert names[-1] == "Bo" or "Bo" in names
