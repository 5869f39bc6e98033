"""How deep each dye is: as it went in, else as planned, and how sure."""

import pytest

from shadewright.records.models import BathDose
from shadewright.records.models.baths import BathAct
from shadewright.workflows.depths import depths_of
from shadewright.workflows.dosing import NOT_REMEMBERED
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


@pytest.mark.by_hand
def test_what_went_in_counts_and_the_plan_where_nobody_said(pot: Ready) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66, unit="ml", bottle=pot.slate)
    slate, gorse = depths_of(pot.number)
    # 66 ml of 1 % on 100 g
    assert slate.depth_percent == pytest.approx(0.66)
    assert slate.is_given
    assert slate.how_sure.sure is not None
    assert slate.how_sure.sure.depth.value == pytest.approx(0.66)
    assert (gorse.dye_name, gorse.depth_percent, gorse.is_given) == (
        "Gorse",
        0.3,
        False,
    )
    assert "what Gorse is measured with" in gorse.how_sure.lacks


def test_a_dose_left_out_is_nought(pot: Ready) -> None:
    tapped(pot.number, BathAct.MISSED, "dose-1")
    assert (
        depths_of(pot.number)[0].depth_percent,
        depths_of(pot.number)[0].is_given,
    ) == (
        0,
        True,
    )


def test_a_bath_of_the_time_before_says_so(pot: Ready) -> None:
    BathDose.objects.update(spread=[], spread_method="")
    assert {depth.how_sure for depth in depths_of(pot.number)} == {NOT_REMEMBERED}
