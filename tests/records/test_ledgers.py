"""Ledgers: lines are added, never changed or deleted."""

import pytest
from django.db import IntegrityError, transaction
from django.db.models import ProtectedError

from shadewright.errors import ConflictError
from shadewright.records.models import BottleLine, JarLine, PowderJar, StockBottle
from shadewright.workflows.bottles import draw
from tests.workflows.bench import entered, new_dye, new_jar, now

pytestmark = pytest.mark.django_db


@pytest.fixture(params=[BottleLine, JarLine], ids=["bottle", "jar"])
def line(request: pytest.FixtureRequest) -> BottleLine | JarLine:
    dye_id = new_dye()
    new_jar(dye_id)
    entered(dye_id)
    found: BottleLine | JarLine = request.param.objects.get()
    return found


def test_a_line_cannot_be_changed(line: BottleLine | JarLine) -> None:
    line.note = "rubbed out"
    with pytest.raises(ConflictError, match="only undone"):
        line.save()
    with pytest.raises(ConflictError, match="only undone"):
        line.save(force_update=True)
    with pytest.raises(ConflictError, match="only undone"):
        type(line).objects.update(note="rubbed out")
    with pytest.raises(ConflictError, match="only undone"):
        type(line).objects.bulk_update([line], ["note"])
    line.refresh_from_db()
    assert line.note != "rubbed out"


def test_a_line_cannot_be_put_in_the_place_of_another(
    line: BottleLine | JarLine,
) -> None:
    line.note = "rubbed out"
    with pytest.raises((ConflictError, IntegrityError)), transaction.atomic():
        line.save(force_insert=True)


def test_a_line_cannot_be_deleted(line: BottleLine | JarLine) -> None:
    with pytest.raises(ConflictError, match="only undone"):
        line.delete()
    with pytest.raises(ConflictError, match="only undone"):
        type(line).objects.all().delete()
    assert type(line).objects.count() == 1


def test_nothing_that_a_ledger_speaks_of_can_be_deleted(
    line: BottleLine | JarLine,
) -> None:
    owner: type[StockBottle | PowderJar] = (
        StockBottle if isinstance(line, BottleLine) else PowderJar
    )
    with pytest.raises(ProtectedError):
        owner.objects.all().delete()


def test_a_line_is_undone_once_only() -> None:
    bottle = entered(new_dye())
    draw(code=bottle.code, volume_ml=10, stamp=now())
    row = StockBottle.objects.get()
    line = BottleLine.objects.get(act="drawn")
    stamp = now()
    for number in (1, 2):
        undo = BottleLine(bottle=row, act="undone", undoes=line, deed=stamp.deed)
        if number == 1:
            undo.save()
        else:
            with pytest.raises(IntegrityError), transaction.atomic():
                undo.save()
