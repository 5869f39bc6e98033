"""A lot held against its standard, what is decided, and what is taken back."""

from datetime import timedelta

import pytest

from shadewright.core.quality import Band, Decision, Evenness, Tolerances
from shadewright.errors import ConflictError, OutOfRangeError
from shadewright.records import judging_reads
from shadewright.records.models import ColourReading
from shadewright.records.models.lots import Grade
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.judging.deciding import Choice, decide
from shadewright.workflows.judging.dry_checks import CheckNow, last_check
from shadewright.workflows.judging.snips import keep_snip, snip_of
from shadewright.workflows.judging.standards import (
    Piece,
    hold_again,
    lot_as_standard,
    of_lot,
    standard_of,
    trail_of,
)
from shadewright.workflows.judging.tolerances import (
    StudioTolerances,
    keep_tolerances,
    tolerances_now,
)
from shadewright.workflows.judging.tone_bands import keep_tone_band
from shadewright.workflows.lot_pages import lot_now
from shadewright.workflows.shades.wanted import wanted_of_lot
from shadewright.workflows.stamps import as_of, stamp_now, this_moment
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded, now
from tests.workflows.judging.checked import check, held_to_standard, lot_of
from tests.workflows.pots import ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def test_a_lot_without_a_standard_is_read_and_gets_no_verdict() -> None:
    founded()
    lot = lot_of(ready())
    found = check(lot, "50, 0, 0\n50.2, 0, 0")
    assert found is not None
    assert (found.verdict, found.difference) == (None, None)
    assert abs(wanted_of_lot(lot).lab.L - 50.1) < 1e-6


def test_a_lot_is_judged_and_what_was_read_is_its_colour() -> None:
    _pot, first, lot = held_to_standard()
    found = check(lot, "51.6, 0, 0\n51.6, 0, 0\n51.5, 0, 0\n51.7, 0, 0")
    assert found is not None
    assert found.standard is not None
    assert found.standard.lot == first
    assert (found.words, found.verdict) == ("a little lighter", Decision.ALTERNATE)
    assert found.difference == pytest.approx(1.5, abs=0.05)
    assert found.skeins == 2
    assert abs(wanted_of_lot(lot).lab.L - 51.6) < 1e-6


def test_near_a_tolerance_nobody_can_tell() -> None:
    _pot, _first, lot = held_to_standard()
    found = check(lot, "51.1, 0, 0\n51.1, 0, 0")
    assert found is not None
    assert found.verdict is Decision.CANNOT_TELL
    assert found.could_be == (Decision.MATCH, Decision.ALTERNATE)


def test_a_photo_cannot_tell_what_a_meter_can() -> None:
    _pot, _first, lot = held_to_standard()
    found = check(lot, "#777777", read_by=ReadBy.PHOTO)
    assert found is not None
    assert found.verdict is Decision.CANNOT_TELL


def test_nothing_passes_wet() -> None:
    _pot, _first, lot = held_to_standard()
    assert check(lot, "40, 0, 0", is_wet=True) is None
    assert last_check(lot) is None
    keep_snip(lot, minutes=20.0, stamp=now())
    with pytest.raises(ConflictError, match="dries until"):
        check(lot, "50, 0, 0\n50, 0, 0")
    snip = snip_of(lot)
    assert snip is not None
    assert snip.minutes_left == 20
    with as_of(this_moment() + timedelta(minutes=21)):
        assert check(lot, "50, 0, 0\n50, 0, 0") is not None


def test_a_tonal_yarn_is_held_against_its_band() -> None:
    _pot, _first, lot = held_to_standard()
    spots = "47, 0, 0\n53, 0, 0\n47, 0, 0\n53, 0, 0"
    level = check(lot, spots)
    assert level is not None
    assert level.evenness is Evenness.TOO_UNEVEN
    keep_tone_band(of_lot(lot).recipe_id, Band(least=2.0, most=5.0))
    tonal = last_check(lot)
    assert tonal is not None
    assert tonal.evenness is Evenness.AS_WANTED


def test_a_check_is_one_deed_and_taken_back_as_one() -> None:
    _pot, _first, lot = held_to_standard()
    stamp = stamp_now(by=None)
    for _twice in range(2):
        check(lot, "51, 0, 0\n51, 0, 0", stamp=stamp)
    assert ColourReading.objects.filter(deed=stamp.deed).count() == 1
    undo(deed=stamp.deed, stamp=now())
    assert last_check(lot) is None


def test_a_one_off_is_graded_so_and_both_are_taken_back() -> None:
    _pot, _first, lot = held_to_standard()
    stamp = stamp_now(by=None)
    decide(lot, Choice.ONE_OFF, stamp=stamp)
    held = lot_now(lot).held
    assert (held.grade, held.decided) == (Grade.ONE_OFF, Choice.ONE_OFF)
    undo(deed=stamp.deed, stamp=now())
    held = lot_now(lot).held
    assert (held.grade, held.decided) == (Grade.FIRST, "")


def test_a_standard_is_replaced_with_a_trail() -> None:
    _pot, first, lot = held_to_standard()
    check(lot, "49, 0, 0\n49, 0, 0")
    stamp = stamp_now(by=None)
    for _twice in range(2):
        lot_as_standard(lot, piece=Piece(why="The first one faded."), stamp=stamp)
    what = of_lot(lot)
    ids = {"recipe_id": what.recipe_id, "base_id": what.base_id}
    held = standard_of(**ids)
    assert held is not None
    assert (held.lot, held.age_days) == (lot, 0)
    old = trail_of(**ids)[1]
    assert (old.lot, old.where) == (first, "Tin 3")
    hold_again(old.id, stamp=now())
    assert [each.lot for each in trail_of(**ids)] == [first, lot, first]
    assert judging_reads.standard_rows().count() == 1


def test_a_standard_made_by_mistake_is_taken_back() -> None:
    _pot, first, lot = held_to_standard()
    check(lot, "49, 0, 0\n49, 0, 0")
    what = of_lot(lot)
    ids = {"recipe_id": what.recipe_id, "base_id": what.base_id}
    wrong = lot_as_standard(lot, piece=Piece(), stamp=stamp_now(by=None))
    check(first, "51, 0, 0\n51, 0, 0")
    assert shown(first).difference is not None
    undo(deed=wrong.deed, stamp=now())
    held = standard_of(**ids)
    assert held is not None
    assert (held.lot, held.may_undo) == (first, True)
    assert [(x.lot, x.is_undone) for x in trail_of(**ids)] == [
        (lot, True),
        (first, False),
    ]
    against_it = shown(first)  # what was held against it has no verdict any more
    assert (against_it.difference, against_it.verdict) == (None, None)
    undo(deed=held.deed, stamp=now())
    assert standard_of(**ids) is None
    hold_again(wrong.id, stamp=now())
    again = standard_of(**ids)
    assert again is not None
    assert again.lot == lot


def shown(number: str) -> CheckNow:
    found = last_check(number)
    assert found is not None
    return found


def test_tolerances_rise_and_are_the_studios_own() -> None:
    founded()
    steps = Tolerances(match=0.5, alternate=1.5, new_lot=2.5)
    keep_tolerances(StudioTolerances(steps=steps))
    assert tolerances_now().steps == steps
    wrong = Tolerances(match=2.0, alternate=1.5, new_lot=2.5)
    with pytest.raises(OutOfRangeError, match="above 2"):
        keep_tolerances(StudioTolerances(steps=wrong))
