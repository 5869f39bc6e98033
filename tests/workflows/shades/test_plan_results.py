"""The colours of a set, typed in one go, and the baths that they tell of."""

import pytest

from shadewright.errors import ConflictError
from shadewright.records.models import Base, ColourReading, Lot
from shadewright.records.models.lots import Grade
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.bath_pages import BathAct, BathStatus, bath_now
from shadewright.workflows.bath_shapes import PART
from shadewright.workflows.bench import Tap, keep_tap
from shadewright.workflows.lot_lines import held
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.shades.evidence import evidence
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.plan_pages import swatch_set
from shadewright.workflows.shades.plan_results import (
    SwatchResult,
    keep_results,
    unread,
)
from shadewright.workflows.shades.readings import ReadWords
from shadewright.workflows.stamps import Stamp, stamp_now
from shadewright.workflows.undo import undo
from tests.workflows.shades.planned import dye, ladder, standing

pytestmark = pytest.mark.django_db


@pytest.fixture
def plan_id() -> int:
    """A set of three swatches that nobody has begun."""
    base: Base = standing()
    wish = ladder(base, dye_ids=(dye("Gorse"),), rungs=3)
    return keep_plan(wish, stamp_now(by=None))


def result(number: str, colour: str = "#c9a53a") -> SwatchResult:
    read = ReadWords(read_by=ReadBy.EYE, texts=(colour,), meter_id=None)
    return SwatchResult(bath_number=number, read=read)


def numbers(plan_id: int) -> tuple[str, ...]:
    return swatch_set(plan_id).numbers


def kept(plan_id: int, *results: SwatchResult, stamp: Stamp | None = None) -> int:
    stamp = stamp or stamp_now(by=None)
    return len(keep_results(plan_id, results, stamp=stamp).swatches)


def test_a_colour_says_that_its_swatch_was_dyed_as_planned(plan_id: int) -> None:
    first, second, third = numbers(plan_id)
    taught = len(evidence())
    assert kept(plan_id, result(first), result(third)) == 2
    assert [x.bath_number for x in unread(swatch_set(plan_id))] == [second]
    bath = bath_now(third)
    assert bath.status is BathStatus.FINISHED
    assert all(each.is_done for each in bath.steps)
    dose = next(each for each in bath.steps if each.dose is not None)
    assert dose.ticks[0].value == pytest.approx(dose.step.amount)
    assert held(Lot.objects.get(number=third).lines.all()).grade == Grade.SWATCH
    assert len(evidence()) == taught + 2


def test_what_was_ticked_otherwise_stands(plan_id: int) -> None:
    number = numbers(plan_id)[0]
    dose = next(each for each in bath_now(number).steps if each.dose is not None)
    amount = (dose.step.amount or 0.0) * 1.5
    keep_tap(
        Tap(
            bath=number,
            act=BathAct.DOSED,
            step=dose.step.key,
            value=amount,
            unit=dose.step.unit,
            bottle=dose.step.code,
        ),
        stamp=stamp_now(by=None),
    )
    kept(plan_id, result(number))
    after = next(each for each in bath_now(number).steps if each.dose is not None)
    assert [tick.value for tick in after.ticks] == [pytest.approx(amount)]


def test_the_same_deed_twice_is_written_once(plan_id: int) -> None:
    number = numbers(plan_id)[1]
    stamp = stamp_now(by=None)
    assert kept(plan_id, result(number), stamp=stamp) == 1
    assert kept(plan_id, result(number), stamp=stamp) == 1
    assert ColourReading.objects.filter(swatch__bath__number=number).count() == 1


def test_one_undo_takes_all_its_colours_back(plan_id: int) -> None:
    stamp = stamp_now(by=None)
    kept(plan_id, *(result(number) for number in numbers(plan_id)), stamp=stamp)
    undo(deed=stamp.deed, stamp=stamp_now(by=None))
    waiting = unread(swatch_set(plan_id))
    assert [x.status for x in waiting] == [BathStatus.FINISHED] * 3
    assert kept(plan_id, result(waiting[0].bath_number, "#998811")) == 1


def test_all_or_none(plan_id: int) -> None:
    first, second, _third = numbers(plan_id)
    dose = next(x for x in bath_now(second).steps if x.dose is not None)
    part = Tap(
        bath=second,
        act=BathAct.DOSED,
        step=f"{dose.step.key}{PART}",
        value=(dose.step.amount or 0.0) / 2.0,
        unit=dose.step.unit,
        bottle=dose.step.code,
    )
    keep_tap(part, stamp=stamp_now(by=None))
    with pytest.raises(ConflictError, match=f"{second} stands in the middle of a dose"):
        kept(plan_id, result(first), result(second))
    assert bath_now(first).status is BathStatus.PLANNED
    assert not ColourReading.objects.filter(swatch__bath__number=first).exists()


def test_what_was_given_up_is_not_asked_for(plan_id: int) -> None:
    number = numbers(plan_id)[0]
    give_up(number=number, why="", stamp=stamp_now(by=None))
    assert len(unread(swatch_set(plan_id))) == 2
    assert kept(plan_id, result(number)) == 0
