"""Powder jars: received, weighed anew, drawn on."""

from datetime import timedelta
from decimal import Decimal
from math import inf, nan

import pytest

from shadewright.errors import ConflictError, NotFoundError, OutOfRangeError
from shadewright.records.models import JarLine, PowderJar, StockBottle
from shadewright.workflows.jars import count_jar, jar, jars, receive_jar
from shadewright.workflows.ledger_pages import jar_page
from shadewright.workflows.stamps import today
from shadewright.workflows.undo import undo
from tests.workflows.bench import made, new_dye, new_jar, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def dye_id() -> int:
    return new_dye()


def test_a_jar_is_received_with_what_is_known_of_it(dye_id: int) -> None:
    found = receive_jar(
        dye_id=dye_id,
        powder_g=100.0,
        stamp=now(),
        lot=" L7 ",
        opened_on=today(),
        price=Decimal("24.50"),
        strength_percent=110.0,
    )
    assert (found.code, found.lot, found.left_g) == ("J-1", "L7", 100.0)
    assert jar(found.id).price == Decimal("24.50")
    assert [one.id for one in jars(dye_id=dye_id)] == [found.id]
    assert jars(dye_id=new_dye("Gorse")) == ()


@pytest.mark.parametrize(
    ("wrong", "argument"),
    [
        ({"powder_g": 0.0}, "powder_g"),
        ({"powder_g": -1.0}, "powder_g"),
        ({"powder_g": inf}, "powder_g"),
        ({"powder_g": 2e6}, "powder_g"),
        ({"strength_percent": 0.0}, "strength_percent"),
        ({"strength_percent": 401.0}, "strength_percent"),
    ],
)
def test_a_jar_that_cannot_be_is_refused(
    dye_id: int, wrong: dict[str, float], argument: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        receive_jar(dye_id=dye_id, stamp=now(), **{"powder_g": 1.0, **wrong})  # type: ignore[arg-type]
    assert refused.value.argument == argument
    assert not PowderJar.objects.exists()


def test_a_jar_is_not_opened_tomorrow(dye_id: int) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        receive_jar(
            dye_id=dye_id,
            powder_g=1.0,
            opened_on=today() + timedelta(days=1),
            stamp=now(),
        )
    assert refused.value.argument == "opened_on"


@pytest.mark.by_hand
def test_what_is_left_follows_from_the_ledger(dye_id: int) -> None:
    jar_id = new_jar(dye_id)
    made(dye_id, jar_id, powder_g=5.0)
    count = now()
    count_jar(jar_id=jar_id, reading_g=90.0, stamp=count)  # 5 g were spilled
    made(dye_id, jar_id, powder_g=7.5)
    assert jar(jar_id).left_g == 82.5  # 90 − 7.5
    undo(deed=count.deed, stamp=now())
    assert jar(jar_id).left_g == 87.5  # 100 − 5 − 7.5
    page = jar_page(jar_id)
    assert len(page.bottle_codes) == 2
    assert [entry.words for entry in page.entries] == [
        "Undone",
        "Weighed out",
        "Weighed anew",
        "Weighed out",
        "Filled",
    ]


@pytest.mark.parametrize("reading_g", [-0.1, nan, inf, 2e6, 120.1])
def test_a_reading_that_cannot_be_is_refused(dye_id: int, reading_g: float) -> None:
    jar_id = new_jar(dye_id)
    with pytest.raises(OutOfRangeError) as refused:
        count_jar(jar_id=jar_id, reading_g=reading_g, stamp=now())
    assert refused.value.argument == "reading_g"
    assert "was its own weight taken off?" in refused.value.sentence
    assert JarLine.objects.count() == 1


def test_a_jar_may_hold_a_little_more_than_its_label_says(dye_id: int) -> None:
    jar_id = new_jar(dye_id)
    assert count_jar(jar_id=jar_id, reading_g=103.0, stamp=now()).left_g == 103.0


def test_more_than_the_jar_holds_or_another_dye_is_refused(dye_id: int) -> None:
    jar_id = new_jar(dye_id, powder_g=10.0)
    with pytest.raises(OutOfRangeError, match="jar J-1 holds"):
        made(dye_id, jar_id, powder_g=10.1)
    with pytest.raises(ConflictError, match="holds Slate, another dye"):
        made(new_dye("Gorse"), jar_id, powder_g=1.0)
    assert not StockBottle.objects.exists()
    assert jar(jar_id).left_g == 10.0
    made(dye_id, jar_id, powder_g=10.0)
    assert jar(jar_id).left_g == 0.0


def test_a_jar_that_never_was_is_not_found() -> None:
    with pytest.raises(NotFoundError):
        jar(7)
