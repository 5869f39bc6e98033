"""Additions too small to measure: the least, a weaker stock, or none."""

import pytest

from shadewright.workflows.correcting.correcting import Addition, Corrected, corrected
from shadewright.workflows.correcting.off_shade import off_shade
from shadewright.workflows.correcting.too_small import Instead
from shadewright.workflows.shades.wanted import wanted_of_text
from tests.workflows.bench import founded
from tests.workflows.correcting.off_lots import off_lot
from tests.workflows.pots import Ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]

SLATE_SHORT = "60, -3, 22"
"""A little Slate is wanted of 1 %: less than 5 ml at first, more than that in all."""
BOTH_SHORT = "60.5, -4, 21.5"
"""Of both dyes less than 5 ml is wanted in all."""


@pytest.fixture
def lot() -> tuple[Ready, str]:
    founded()
    return off_lot()


def asked(number: str, colour: str, **instead: Instead) -> Corrected:
    off = off_shade(number, wanted=wanted_of_text(colour))
    ids = {each.dye_name: each.dye_id for each in corrected(off).additions}
    return corrected(off, instead={ids[dye]: what for dye, what in instead.items()})


def of(found: Corrected, dye: str) -> Addition:
    return next(each for each in found.additions if each.dye_name == dye)


def test_a_dose_below_the_least_offers_a_weaker_stock(lot: tuple[Ready, str]) -> None:
    found = asked(lot[1], SLATE_SHORT)
    assert of(found, "Gorse").small is None
    slate = of(found, "Slate").small
    assert slate is not None
    # 98 g of yarn: 5 ml of 1 % hold 0.05 g, which is 0.05 % on 100 g in this bath.
    grams = found.off.fibre_g
    assert slate.least_ml == 5.0
    assert slate.least_percent == pytest.approx(100 * 0.05 / grams)
    assert slate.volume_ml == pytest.approx(of(found, "Slate").first_percent * grams)
    assert slate.draw is not None
    assert slate.draw.volume_ml > 5.0
    assert slate.first is not None
    assert slate.first.new.from_code == lot[0].slate


def test_the_least_goes_in_where_that_is_no_more_than_it_needs(
    lot: tuple[Ready, str],
) -> None:
    found = asked(lot[1], SLATE_SHORT, Slate=Instead.LEAST)
    slate = of(found, "Slate")
    assert slate.small is None
    (share,) = slate.first.shares
    assert share.volume_ml == pytest.approx(5.0)
    assert dict(found.first)[slate.dye_id] == slate.first_percent
    too_much = asked(lot[1], BOTH_SHORT, Slate=Instead.LEAST)
    assert of(too_much, "Slate").small is not None  # 5 ml would be more than in all


def test_what_is_left_out_goes_into_no_bath(lot: tuple[Ready, str]) -> None:
    whole = asked(lot[1], SLATE_SHORT)
    found = asked(lot[1], SLATE_SHORT, Slate=Instead.LEAVE)
    assert found.left_out == ("Slate",)
    assert [each.dye_name for each in found.additions] == ["Gorse"]
    assert found.found.de_after > whole.found.de_after
    assert of(whole, "Slate").moved == pytest.approx(
        found.found.de_after, abs=whole.found.de_after + 0.2
    )
    none = asked(lot[1], BOTH_SHORT, Slate=Instead.LEAVE, Gorse=Instead.LEAVE)
    assert none.first == ()
    assert none.found.de_after == pytest.approx(none.found.de_before, abs=0.5)
