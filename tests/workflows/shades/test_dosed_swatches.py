"""Swatches that were dyed as baths: their true doses count, and how sure those are."""

from uuid import uuid4

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.core.uncertainty import Term, Value, exact
from shadewright.records import recipe_reads
from shadewright.records.models import Bath, ColourReading, Swatch
from shadewright.records.models.baths import BathAct
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.depths import depths_of, values_in
from shadewright.workflows.poured import poured_bath
from shadewright.workflows.shades.evidence import dose_error_of, evidence
from shadewright.workflows.shades.swatches import swatches_now
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def pot() -> Ready:
    """Return a planned bath."""
    founded()
    return ready(bottle_ml=5000.0)


def read_bath(number: str) -> Swatch:
    """Keep a bath as a swatch whose colour a meter read."""
    bath = Bath.objects.get(number=number)
    Bath.objects.filter(pk=bath.pk).update(is_swatch=True)
    row = Swatch.objects.create(
        deed=uuid4(), label=number, base=bath.base, bath=bath, dyed_on=bath.dyed_on
    )
    ColourReading.objects.create(
        deed=uuid4(), swatch=row, read_by=ReadBy.METER, labs={"D65": (60.0, 0.0, 20.0)}
    )
    return row


def test_a_bath_teaches_by_what_went_in(pot: Ready) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66, unit="ml", bottle=pot.slate)
    tapped(pot.number, BathAct.MISSED, "dose-2")
    read_bath(pot.number)
    (taught,) = evidence()
    # 66 ml of 1 % on 100 g; the other was left out
    assert [dye for dye, _depth in taught.doses] == ["Slate"]
    assert taught.doses[0][1] == pytest.approx(0.66)
    assert swatches_now()[0].doses == taught.doses


def test_many_baths_cost_no_more_questions_than_one(pot: Ready) -> None:
    def asked() -> int:
        with CaptureQueriesContext(connection) as queries:
            evidence()
            swatches_now()
        return len(queries)

    def add(number: str) -> None:
        for step, bottle in (("dose-1", pot.slate), ("dose-2", pot.gorse)):
            tapped(number, BathAct.DOSED, step, value=30, unit="ml", bottle=bottle)
        read_bath(number)

    add(pot.number)
    one = asked()
    for _time in range(3):
        add(pot.another())
    assert asked() == one
    assert len(swatches_now()) == 4


def depth(percent: float, *, relative: float | None) -> Value:
    """Return a depth with its relative standard uncertainty."""
    if relative is None:
        return exact(percent)
    term = Term(name="syringe", source="syringe", u=percent * relative)
    return Value(value=percent, terms=(term,))


@pytest.mark.by_hand
def test_the_spread_of_a_dose_counts_by_the_square_of_its_depth() -> None:
    found = dose_error_of([depth(1.0, relative=0.06), depth(0.5, relative=0.3)])
    # √((1.00² · 0.06² + 0.50² · 0.30²) / (1.00² + 0.50²)) = √(0.0261 / 1.25)
    assert found == 0.1445


def test_no_dose_counts_as_better_than_usual_nor_one_that_nobody_knows() -> None:
    assert dose_error_of([depth(1.0, relative=0.001)]) == DOSE_ERROR
    assert dose_error_of([depth(1.0, relative=None)]) is None
    assert dose_error_of([]) is None


def test_what_is_asked_of_one_bath_is_what_is_asked_of_all(pot: Ready) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66, unit="ml", bottle=pot.slate)
    read_bath(pot.number)
    singly = [(x.dye_name, x.depth_percent) for x in depths_of(pot.number)]
    assert list(swatches_now()[0].doses) == singly


def test_the_short_way_to_a_spread_is_the_spread(pot: Ready) -> None:
    """What a page shows of a depth and what widens its swatch are the same terms."""
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66, unit="ml", bottle=pot.slate)
    bath = recipe_reads.bath_row(pot.number)
    long = depths_of(pot.number)
    short = values_in(bath, poured_bath(bath))
    assert [x.depth_percent for x in long] == pytest.approx([x.value for x in short])
    spreads = [
        0.0 if x.how_sure.sure is None else x.how_sure.sure.depth.u for x in long
    ]
    assert spreads == pytest.approx([x.u for x in short])
    assert spreads[0] > 0.0
