"""Stocks strengthened, weakened, diluted and merged."""

from collections.abc import Callable

import pytest

from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.records.models import BottleLine, StockBottle
from shadewright.workflows.bottles import draw, pour_away, read_level, record_strength
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import jar
from shadewright.workflows.ledger_pages import bottle_page
from shadewright.workflows.mending import (
    add_powder,
    add_stock,
    add_water,
    dilute,
    merge,
)
from shadewright.workflows.shelf import ShelfBottle, shelf, shelf_bottle
from tests.workflows.bench import dye_g, entered, made, new_dye, new_jar, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def dye_id() -> int:
    return new_dye()


@pytest.fixture
def bottle(dye_id: int) -> ShelfBottle:
    return entered(dye_id)


@pytest.mark.by_hand
def test_water_makes_it_weaker(bottle: ShelfBottle) -> None:
    weaker = add_water(code=bottle.code, volume_ml=125.0, stamp=now())
    assert weaker.volume_ml == 625.0
    assert weaker.strength_percent == pytest.approx(0.8)  # 5 g in 625 ml


@pytest.mark.by_hand
def test_powder_from_a_strong_jar_counts_for_more(
    dye_id: int, bottle: ShelfBottle
) -> None:
    jar_id = new_jar(dye_id, powder_g=20.0, strength_percent=125.0)
    found = add_powder(code=bottle.code, powder_g=2.0, jar_id=jar_id, stamp=now())
    assert found.strength_percent == pytest.approx(1.5)  # 5 + 2 × 1.25 = 7.5 g
    assert jar(jar_id).left_g == 18.0
    words = bottle_page(bottle.code).entries[0].words
    assert words.replace("\u00a0", " ") == "Powder added: 2 g from jar J-1"


@pytest.mark.parametrize("powder_g", [0.0, -1.0, float("nan"), 246.0, 21.0])
def test_powder_that_cannot_be_is_refused_and_stays_in_the_jar(
    dye_id: int, bottle: ShelfBottle, powder_g: float
) -> None:
    jar_id = new_jar(dye_id, powder_g=300.0 if powder_g > 100 else 20.0)
    left_g = jar(jar_id).left_g
    with pytest.raises(OutOfRangeError) as refused:
        add_powder(code=bottle.code, powder_g=powder_g, jar_id=jar_id, stamp=now())
    assert refused.value.argument == "powder_g"
    assert jar(jar_id).left_g == left_g
    assert shelf_bottle(bottle.code).strength_percent == 1.0


def test_powder_of_another_dye_is_refused(bottle: ShelfBottle) -> None:
    other = new_jar(new_dye("Gorse"))
    with pytest.raises(ConflictError, match="holds Gorse") as refused:
        add_powder(code=bottle.code, powder_g=1.0, jar_id=other, stamp=now())
    assert refused.value.argument == "jar"


@pytest.mark.by_hand
def test_a_stronger_stock_makes_it_stronger(dye_id: int, bottle: ShelfBottle) -> None:
    strong = entered(dye_id, volume_ml=300.0, strength_percent=4.0)
    found = add_stock(
        code=bottle.code, from_code=strong.code, volume_ml=250.0, stamp=now()
    )
    assert found.volume_ml == 750.0
    assert found.strength_percent == pytest.approx(2.0)  # 5 + 10 g in 750 ml
    assert found.evidence == "mixed from other bottles"
    assert shelf_bottle(strong.code).volume_ml == 50.0


@pytest.mark.by_hand
def test_merging_empties_the_others_for_good(dye_id: int, bottle: ShelfBottle) -> None:
    others = [
        entered(dye_id, volume_ml=180.0, strength_percent=1.0),
        entered(dye_id, volume_ml=320.0, strength_percent=0.5),
    ]
    stamp = now()
    for _ in range(2):  # the second tap of a wet glove
        merge(code=bottle.code, from_codes=[one.code for one in others], stamp=stamp)
    found = shelf_bottle(bottle.code)
    assert found.volume_ml == 1000.0
    assert dye_g(found) == pytest.approx(8.4)  # 5 + 1.8 + 1.6 g
    assert [one.code for one in shelf()] == [bottle.code]
    assert shelf_bottle(others[0].code).trouble == "poured away"


def test_merging_says_what_it_needs(bottle: ShelfBottle) -> None:
    with pytest.raises(MissingError) as refused:
        merge(code=bottle.code, from_codes=[], stamp=now())
    assert refused.value.argument == "from_codes"


def _into_itself(bottle: ShelfBottle) -> str:
    return bottle.code


def _of_another_dye(_bottle: ShelfBottle) -> str:
    return entered(new_dye("Gorse")).code


def _empty(bottle: ShelfBottle) -> str:
    other = entered(bottle.dye_id)
    return draw(code=other.code, volume_ml=500.0, stamp=now()).code


def _poured(bottle: ShelfBottle) -> str:
    return pour_away(code=entered(bottle.dye_id).code, stamp=now()).code


@pytest.mark.parametrize("source", [_into_itself, _of_another_dye, _empty, _poured])
def test_what_cannot_be_poured_together_is_refused_and_nothing_moves(
    bottle: ShelfBottle, source: Callable[[ShelfBottle], str]
) -> None:
    good = entered(bottle.dye_id).code
    bad = source(bottle)
    before = BottleLine.objects.count()
    with pytest.raises(ConflictError):
        merge(code=bottle.code, from_codes=[good, bad], stamp=now())
    with pytest.raises((ConflictError, OutOfRangeError)):
        add_stock(code=bottle.code, from_code=bad, volume_ml=1.0, stamp=now())
    assert BottleLine.objects.count() == before


@pytest.mark.by_hand
def test_a_dilution_is_a_bottle_of_its_own(bottle: ShelfBottle) -> None:
    stamp = now()
    thin, again = (
        dilute(
            code=bottle.code,
            want_percent=0.25,
            volume_ml=200.0,
            stamp=stamp,
            about=Particulars(place="Fridge"),
        )
        for _ in range(2)
    )
    assert thin == again
    assert (thin.volume_ml, thin.strength_percent) == (200.0, 0.25)
    assert shelf_bottle(bottle.code).volume_ml == pytest.approx(450.0)  # 50 ml at 1 %
    assert StockBottle.objects.count() == 2
    assert thin.is_strength_guess  # of a guess
    assert thin.evidence == "mixed from other bottles"
    assert bottle.code in bottle_page(thin.code).entries[0].words


@pytest.mark.parametrize(
    ("want_percent", "volume_ml", "argument"),
    [
        (1.1, 100.0, "want_percent"),
        (0.0, 100.0, "want_percent"),
        (-1.0, 100.0, "want_percent"),
        (60.0, 100.0, "want_percent"),
        (0.5, 0.0, "volume_ml"),
        (0.5, 1001.0, "volume_ml"),
    ],
)
def test_a_dilution_that_cannot_be_is_refused_and_leaves_no_bottle(
    bottle: ShelfBottle, want_percent: float, volume_ml: float, argument: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        dilute(
            code=bottle.code,
            want_percent=want_percent,
            volume_ml=volume_ml,
            stamp=now(),
            about=Particulars(),
        )
    assert refused.value.argument == argument
    assert StockBottle.objects.count() == 1


def test_a_stock_made_from_powder_can_be_mended_step_by_step(dye_id: int) -> None:
    """5 g to 500 ml; 100 ml dry out; water back; half drawn; tested."""
    code = made(dye_id, new_jar(dye_id)).code
    read_level(code=code, volume_ml=400.0, is_evaporated=True, stamp=now())
    back = add_water(code=code, volume_ml=100.0, stamp=now())
    assert back.strength_percent == pytest.approx(1.0)
    draw(code=code, volume_ml=250.0, stamp=now())
    tested = record_strength(code=code, strength_percent=1.02, stamp=now())
    assert dye_g(tested) == pytest.approx(2.55)
