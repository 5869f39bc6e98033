"""What the label of a stock in the making will say, and what would mend it."""

from uuid import uuid4

import pytest

from shadewright.errors import OutOfRangeError
from shadewright.records.models import Dye
from shadewright.workflows.jars import receive_jar
from shadewright.workflows.making import keep_particulars, start_making, weigh_powder
from shadewright.workflows.makings import Making, making
from shadewright.workflows.outcomes import if_filled, if_weighed, refuse_hot
from shadewright.workflows.possible import PossibleStock, possible_stock
from shadewright.workflows.stamps import stamp_now

pytestmark = pytest.mark.django_db


@pytest.fixture
def dye() -> Dye:
    return Dye.objects.create(name="Slate", solubility_g_per_l=40.0)


def jar_id(
    dye: Dye, *, powder_g: float = 100.0, strength_percent: float = 100.0
) -> int:
    return receive_jar(
        dye_id=dye.pk,
        powder_g=powder_g,
        strength_percent=strength_percent,
        stamp=stamp_now(by=None),
    ).id


def begun(dye: Dye, jar: int | None = None) -> Making:
    return start_making(
        dye_id=dye.pk,
        jar_id=jar,
        volume_ml=500.0,
        strength_percent=1.0,
        stamp=stamp_now(by=None, deed=uuid4()),
    )


@pytest.mark.by_hand
def test_a_little_over_is_a_little_stronger(dye: Dye) -> None:
    found = if_weighed(begun(dye), powder_g=5.2)
    assert found.over_g == pytest.approx(0.2)  # 5.2 − 5.0
    assert found.label_percent == pytest.approx(1.04)  # 100 × 5.2 / 500
    assert found.exact_ml == pytest.approx(520.0)  # 100 × 5.2 / 1


@pytest.mark.by_hand
def test_a_strong_powder_counts_for_more(dye: Dye) -> None:
    found = if_weighed(begun(dye, jar_id(dye, strength_percent=125.0)), powder_g=4.0)
    assert found.over_g == pytest.approx(0.0)  # 500 × 1 / 125 = 4
    assert found.label_percent == pytest.approx(1.0)


@pytest.mark.by_hand
def test_past_the_mark_and_short_of_it(dye: Dye) -> None:
    stock = begun(dye)
    assert if_filled(stock, final_ml=500.0) is None
    stock = weigh_powder(making_id=stock.id, powder_g=5.0, stamp=stamp_now(by=None))
    weak = if_filled(stock, final_ml=520.0)
    strong = if_filled(stock, final_ml=480.0)
    assert weak is not None
    assert strong is not None
    assert weak.label_percent == pytest.approx(100 * 5.0 / 520)
    assert weak.add_powder_g == pytest.approx(0.2)  # 520 × 1 % = 5.2
    assert weak.add_water_ml is None
    assert strong.add_water_ml == pytest.approx(20.0)  # 500 − 480
    assert strong.add_powder_g is None


def test_what_no_bottle_can_be_is_refused(dye: Dye) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        if_weighed(begun(dye), powder_g=0.0)
    assert refused.value.argument == "powder_g"


def test_a_hot_stock_is_refused_with_the_error_that_it_makes() -> None:
    refusal = refuse_hot()
    assert refusal.argument == "is_cold"
    assert "2.7 % too strong" in refusal.sentence.replace("\u00a0", " ")


def test_what_is_typed_for_the_label_is_kept(dye: Dye) -> None:
    stock = begun(dye)
    keep_particulars(
        making_id=stock.id, place=" top shelf ", discard_by=None, notes="cloudy"
    )
    kept = making(stock.id)
    assert (kept.place, kept.notes) == ("top shelf", "cloudy")


@pytest.mark.by_hand
def test_above_what_dissolves_a_weaker_one_is_possible(dye: Dye) -> None:
    found = possible_stock(
        dye_id=dye.pk, jar_id=None, volume_ml=500.0, strength_percent=5.0
    )
    # 40 g/l is 4 g in 100 ml.
    assert found == PossibleStock(volume_ml=500.0, strength_percent=4.0)


@pytest.mark.by_hand
def test_a_jar_that_holds_less_is_good_for_a_smaller_one(dye: Dye) -> None:
    jar = jar_id(dye, powder_g=3.217)
    found = possible_stock(
        dye_id=dye.pk, jar_id=jar, volume_ml=500.0, strength_percent=1.0
    )
    # 3.217 g at 1 % is 321.7 ml, rounded down.
    assert found == PossibleStock(volume_ml=320.0, strength_percent=1.0)


def test_nothing_is_offered_where_nothing_is_wrong_or_possible(dye: Dye) -> None:
    jar = jar_id(dye, powder_g=3.0)
    wanted = {"dye_id": dye.pk, "jar_id": jar}
    assert possible_stock(**wanted, volume_ml=100.0, strength_percent=1.0) is None
    assert possible_stock(**wanted, volume_ml=-1.0, strength_percent=1.0) is None
    assert possible_stock(**wanted, volume_ml=100.0, strength_percent=0.0) is None
