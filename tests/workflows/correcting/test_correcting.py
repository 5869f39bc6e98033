"""A lot that is off goes back into a bath, and its lot leads back to the first."""

from uuid import UUID

import pytest

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
)
from shadewright.records.lot_reads import lot_row
from shadewright.records.models import Base, BathLine, Correction, Lot, LotLine
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import LotAct
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.buyers.kin import kin_of
from shadewright.workflows.buyers.recall import recall_csv
from shadewright.workflows.correcting.correcting import corrected, dye_cost_of
from shadewright.workflows.correcting.keeping import (
    CorrectionKind,
    ToKeep,
    keep_correction,
)
from shadewright.workflows.correcting.off_shade import all_doses, off_shade
from shadewright.workflows.correcting.restock import lots_near, restock
from shadewright.workflows.correcting.sisters import sisters
from shadewright.workflows.days.pars import keep_par, pars
from shadewright.workflows.days.yields import yield_of
from shadewright.workflows.lot_lines import held
from shadewright.workflows.lot_skeins import skeins_of
from shadewright.workflows.recipes import recipes
from shadewright.workflows.shades.wanted import wanted_of_text
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.trace import trace_lot
from shadewright.workflows.trace_buyers import onwards_from_lot
from shadewright.workflows.trace_nodes import Kind
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded
from tests.workflows.correcting.off_lots import OFF, deeper_recipe, note, off_lot
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]

WANTED = wanted_of_text("56, -4, 20")


@pytest.fixture
def lot() -> tuple[Ready, str]:
    founded()
    return off_lot()


def kept(
    number: str, *, kind: CorrectionKind = CorrectionKind.CORRECT, **said: object
) -> str:
    answer = corrected(off_shade(number, wanted=WANTED))
    words = {"doses": answer.first, "fibre_g": 98.0, "dyed_on": today()} | said
    wish = ToKeep(number=number, kind=kind, **words)  # type: ignore[arg-type]
    return keep_correction(wish, stamp=stamp_now(by=None))


def test_a_pale_lot_gets_more_dye_and_comes_nearer(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    answer = corrected(off_shade(number, wanted=WANTED))
    assert answer.additions
    assert all(each.whole_percent > each.first_percent > 0 for each in answer.additions)
    assert answer.found.de_after < 0.35 * answer.found.de_before
    assert answer.after.expected > 0
    assert all(each.first.shares for each in answer.additions)
    assert dye_cost_of(answer.additions).money is None  # bottles without a priced jar


def test_without_standard_or_wish_it_asks(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    with pytest.raises(ConflictError, match="which colour"):
        corrected(off_shade(number))


def test_a_lot_whose_colour_nobody_read_is_refused() -> None:
    founded()
    number = finished(ready().number, is_sure=True)
    with pytest.raises(MissingError):
        off_shade(number)


def test_dye_that_nobody_wrote_down_is_no_nought() -> None:
    founded()
    pot = ready()
    number = finished(pot.number, is_sure=True)
    note(number, OFF)
    with pytest.raises(MissingError, match="How much"):
        off_shade(number)


def test_the_bath_is_a_child_with_its_own_number(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    bath = kept(number)
    assert bath != number
    row = Correction.objects.get()
    assert (row.lot.number, row.kind) == (number, "correct")
    assert row.recipe_id not in {each.id for each in recipes()}
    decided = LotLine.objects.get(act=LotAct.DECIDED)
    assert bath in decided.words
    (after,) = (n for n in onwards_from_lot(number).below if n.kind is Kind.LOT_AFTER)
    assert after.name == bath


def test_sent_twice_it_is_planned_once(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    answer = corrected(off_shade(number, wanted=WANTED))
    wish = ToKeep(
        number=number,
        kind=CorrectionKind.CORRECT,
        doses=answer.first,
        fibre_g=98.0,
        dyed_on=today(),
    )
    stamp = stamp_now(by=None)
    assert keep_correction(wish, stamp=stamp) == keep_correction(wish, stamp=stamp)
    assert Correction.objects.count() == 1


def test_the_corrected_lot_holds_the_dye_of_both_baths(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    before = dict(off_shade(number).doses)
    bath = kept(number)
    row = Lot.objects.get(number=number).bath
    child = finished(bath, is_sure=True)
    traced = trace_lot(child)
    assert traced.below[-1].kind is Kind.LOT_BEFORE
    assert traced.below[-1].name == number
    assert dict(all_doses(row)) == before
    with pytest.raises(MissingError):  # its additions are not ticked yet
        all_doses(Lot.objects.get(number=child).bath)


def test_nothing_to_add_is_no_bath(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    wish = ToKeep(
        number=number,
        kind=CorrectionKind.CORRECT,
        doses=(),
        fibre_g=98.0,
        dyed_on=today(),
    )
    with pytest.raises(MissingError, match="What to add"):
        keep_correction(wish, stamp=stamp_now(by=None))


def test_a_deeper_sister_is_found(lot: tuple[Ready, str]) -> None:
    pot, number = lot
    recipe_id = deeper_recipe(pot)
    (found,) = sisters(off_shade(number))
    assert found.recipe_id == recipe_id
    assert found.found.de_after < 3.0
    assert OFF[0] > found.after.lab.L


def test_a_restock_says_what_to_dye_now(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    found = restock(number)
    assert found.now is not None
    assert {dye for dye, _depth in found.now.doses} == {"Slate", "Gorse"}
    assert found.now.de < 3.0
    assert not found.newest


def test_an_old_skein_finds_the_lot_it_looks_like(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    near = lots_near(wanted_of_text("61, -3.5, 22"))
    assert near[0].number == number
    assert near[0].difference < 1.5


def test_skeins_that_went_back_are_no_skeins_of_the_first_lot(
    lot: tuple[Ready, str],
) -> None:
    _pot, number = lot
    bath = kept(number, skeins=3)
    planned = skeins_of(number)
    assert (planned.left, planned.here) == (1, 4)
    assert yield_of(number).skeins == 1  # of a kind that orders may still have
    with pytest.raises(OutOfRangeError, match="from 1 to 1"):
        kept(number, skeins=2)
    child = finished(bath, is_sure=True, skeins=3)
    assert (skeins_of(number).here, skeins_of(child).left) == (1, 3)
    kept(number)
    with pytest.raises(ConflictError, match="No skein"):
        kept(number)


def test_corrected_yarn_is_stock_of_its_colourway(lot: tuple[Ready, str]) -> None:
    pot, number = lot
    Base.objects.filter(pk=pot.base).update(skein_g=100.0)
    recipe_id = off_shade(number).recipe_id
    keep_par(recipe_id=recipe_id, base_id=pot.base, skeins=6, skein_g=100.0)
    assert [(par.on_shelf, par.coming) for par in pars()] == [(4, 0)]
    bath = kept(number, skeins=1)
    assert [(par.on_shelf, par.coming) for par in pars()] == [(3, 1)]
    finished(bath, is_sure=True, skeins=1)
    assert [(par.on_shelf, par.coming, par.short) for par in pars()] == [(4, 0, 2)]
    assert yield_of(bath).recipe_id == recipe_id


def test_overdyed_yarn_is_stock_of_what_it_became(lot: tuple[Ready, str]) -> None:
    pot, number = lot
    Base.objects.filter(pk=pot.base).update(skein_g=100.0)
    becomes, own = deeper_recipe(pot), off_shade(number).recipe_id
    bath = kept(number, kind=CorrectionKind.OVERDYE, becomes_id=becomes, skeins=1)
    finished(bath, is_sure=True, skeins=1)
    for recipe_id in (becomes, own):
        keep_par(recipe_id=recipe_id, base_id=pot.base, skeins=4, skein_g=100.0)
    assert {par.recipe_id: par.on_shelf for par in pars()} == {becomes: 1, own: 3}


def test_a_bath_given_up_gives_the_skeins_back(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    tapped(kept(number), BathAct.GIVEN_UP, "finish")
    assert skeins_of(number).left == 4


def test_undo_of_the_decision_gives_the_bath_up(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    bath = kept(number)
    line = LotLine.objects.get(act=LotAct.DECIDED)
    undo(deed=line.deed, stamp=stamp_now(by=None))
    assert bath_now(bath).status is BathStatus.GIVEN_UP
    assert skeins_of(number).left == 4
    assert not held(lot_row(number).lines.all()).decided
    again = kept(number)
    tapped(again, BathAct.GIVEN_UP, "finish")
    undo(deed=_decided(again), stamp=stamp_now(by=None))  # nothing more to give up
    assert BathLine.objects.filter(bath__number=again).count() == 1


def test_undo_of_the_decision_is_refused_once_the_bath_began(
    lot: tuple[Ready, str],
) -> None:
    _pot, number = lot
    bath = kept(number)
    tapped(bath, BathAct.STARTED, "fill", value=2.9, unit="l")
    with pytest.raises(ConflictError, match=f"Bath {bath} has begun"):
        undo(deed=_decided(bath), stamp=stamp_now(by=None))
    assert LotLine.objects.filter(act=LotAct.DECIDED, undone_by=None).exists()
    assert bath_now(bath).status is BathStatus.GOING


def _decided(bath: str) -> UUID:
    return LotLine.objects.get(act=LotAct.DECIDED, words__endswith=bath).deed


def test_more_yarn_than_the_lot_has_is_refused(lot: tuple[Ready, str]) -> None:
    _pot, number = lot
    with pytest.raises(OutOfRangeError, match="went into the bath of this lot"):
        kept(number, fibre_g=500.0)


def test_a_dye_or_colourway_that_is_not_there_is_refused(
    lot: tuple[Ready, str],
) -> None:
    _pot, number = lot
    with pytest.raises(NotFoundError):
        kept(number, doses=((99999, 0.1),))
    with pytest.raises(NotFoundError):
        kept(number, becomes_id=99999)


def test_a_recall_follows_the_yarn_into_its_later_bath(lot: tuple[Ready, str]) -> None:
    pot, number = lot
    bath = kept(number)
    assert f'the rest,"to go, or in the pot, in bath {bath}"' in recall_csv(
        kin_of(number).circles[0]
    )
    child = finished(bath, is_sure=True, skeins=4)
    circles = {x.name: set(x.lots) for x in kin_of(child).circles}
    assert circles[f"the bath {number}"] == {number, child}
    assert circles[f"bottle {pot.slate} of Slate"] == {number, child}
    assert {number, child} == set(kin_of(number).circles[0].lots)


def test_an_overdyed_lot_is_held_against_what_it_became(
    lot: tuple[Ready, str],
) -> None:
    pot, number = lot
    deeper = deeper_recipe(pot)
    bath = kept(number, kind=CorrectionKind.OVERDYE, becomes_id=deeper)
    child = finished(dyed(pot, bath), skeins=4)
    note(child, (40.0, -3.0, 9.0))
    off = off_shade(child)
    assert (off.recipe_id, off.recipe_name) == (deeper, "Dark Tide")
    assert lots_near(wanted_of_text("40, -3, 9"))[0].recipe_name == "Dark Tide"
