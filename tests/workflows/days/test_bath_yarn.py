"""The yarn of a bath, as soak list and day sheet name it."""

import pytest

from shadewright.records.models import Bath, MillLot
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.correcting.correcting import corrected
from shadewright.workflows.correcting.keeping import (
    CorrectionKind,
    ToKeep,
    keep_correction,
)
from shadewright.workflows.correcting.off_shade import off_shade
from shadewright.workflows.days.bath_yarn import yarn_of_bath
from shadewright.workflows.days.soaking import soak_list
from shadewright.workflows.shades.wanted import wanted_of_text
from shadewright.workflows.stamps import stamp_now, today
from tests.paper.pictures import words_on
from tests.workflows.bench import founded
from tests.workflows.correcting.off_lots import off_lot
from tests.workflows.pots import ready

pytestmark = pytest.mark.django_db


def plain(words: str) -> str:
    return words.replace("\xa0", " ")


def test_undyed_yarn_is_named_by_its_base_and_delivery() -> None:
    founded()
    number = ready().number
    row = Bath.objects.get(number=number)
    row.mill_lot = MillLot.objects.create(base=row.base, lot="F-118")
    row.skeins = 1
    row.save()
    said = plain(yarn_of_bath(bath_now(number)))
    assert said == "Fell DK, mill lot F-118, 1 skein, 100 g"


def test_a_lot_that_is_dyed_again_is_soaked_and_no_undyed_yarn() -> None:
    founded()
    _pot, lot = off_lot()
    answer = corrected(off_shade(lot, wanted=wanted_of_text("56, -4, 20")))
    wish = ToKeep(
        number=lot,
        kind=CorrectionKind.CORRECT,
        doses=answer.first,
        fibre_g=98.0,
        dyed_on=today(),
    )
    bath = keep_correction(wish, stamp=stamp_now(by=None))
    said = plain(yarn_of_bath(bath_now(bath)))
    assert said == f"lot {lot}, dyed already, on Fell DK, 98 g"
    assert f"Lot {lot}, dyed already, on Fell DK" in words_on(soak_list(today()))
