"""Bleed and rub tests: grades by halves, undone for the day, said on the lot."""

from uuid import uuid4

import pytest

from shadewright.errors import MissingError, OutOfRangeError
from shadewright.workflows.judging.fastness import (
    FastnessKind,
    FastnessWords,
    fastness_of,
    keep_test,
)
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.workflows.dyed import finished
from tests.workflows.pots import ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def lot() -> str:
    return finished(ready().number, is_sure=True, skeins=4)


def words(**staining: float) -> FastnessWords:
    return FastnessWords(kind=FastnessKind.BLEED, staining=staining)


def test_a_test_is_kept_once_and_taken_back(lot: str) -> None:
    deed = uuid4()
    stamp = stamp_now(by=None, deed=deed)
    keep_test(number=lot, said=words(wool=3.5, cotton=5), stamp=stamp)
    keep_test(number=lot, said=words(wool=3.5, cotton=5), stamp=stamp)
    (found,) = fastness_of(lot)
    assert found.staining == (("wool", 3.5), ("cotton", 5))
    assert found.is_weak
    undo(deed=deed, stamp=stamp_now(by=None))
    assert fastness_of(lot) == ()


def test_clean_cloths_are_not_weak(lot: str) -> None:
    keep_test(number=lot, said=words(wool=4.5), stamp=stamp_now(by=None))
    assert not fastness_of(lot)[0].is_weak


@pytest.mark.parametrize("grade", [0.5, 5.5, 3.2])
def test_a_grade_that_the_scale_has_not_is_refused(lot: str, grade: float) -> None:
    with pytest.raises(OutOfRangeError, match="in halves"):
        keep_test(number=lot, said=words(wool=grade), stamp=stamp_now(by=None))


def test_no_grade_at_all_is_refused(lot: str) -> None:
    with pytest.raises(MissingError):
        keep_test(number=lot, said=words(), stamp=stamp_now(by=None))
