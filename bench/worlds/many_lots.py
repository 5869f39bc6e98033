"""A studio of very many lots, written straight into the tables in bulk."""

import uuid
from collections.abc import Iterable, Iterator
from datetime import UTC, date, datetime, timedelta
from itertools import islice
from typing import Any

from django.db.models import Model

DYES = 3
HEAVY_SHARE = 5
BATHS_A_BOTTLE = 40
BOTTLES_A_JAR = 20
FIRST_DAY = date(2000, 1, 1)
MOMENT = datetime(2026, 1, 1, tzinfo=UTC)


def number_of(place: int) -> str:
    """Return the number of a bath: ten a day."""
    day = FIRST_DAY + timedelta(days=place // 10)
    return f"{day:%y%m%d}-B{place % 10 + 1}"


def build(count: int) -> None:
    """Write dyes, jars, bottles, baths, doses and lots in bulk."""
    from django.db import transaction

    from shadewright.records import models

    per_dye = -(-count // BATHS_A_BOTTLE)
    with transaction.atomic():
        write_shelf(per_dye)
        write_recipe_and_base()
        insert(models.Bath, (bath(place) for place in range(count)))
        for dye in range(DYES):
            first = dye * count
            places = range(count)
            insert(models.BathDose, (dose(dye, x, per_dye) for x in places))
            start = DYES * per_dye + first
            insert(models.BottleLine, (drawn(start, dye, x, per_dye) for x in places))
            insert(models.BathLine, (tick(start, dye, x, per_dye) for x in places))
        insert(models.BathLine, (line for x in range(count) for line in _heated(x)))
        insert(models.Lot, (lot(place) for place in range(count)))
        insert(models.LotLine, (line for x in range(count) for line in _said(x)))


def insert(model: type[Model], rows: Iterable[Model]) -> None:
    """Write rows as they are, past the ledgers' guards."""
    left = iter(rows)
    while some := list(islice(left, 5000)):
        model._base_manager.bulk_create(some)  # ruff: ignore[private-member-access]


def write_shelf(per_dye: int) -> None:
    """Put every bottle on the shelf, each of a jar; jar 1 fills a fifth of dye 0."""
    from shadewright.records import models

    insert(models.Dye, (models.Dye(pk=d + 1, name=f"Dye {d}") for d in range(DYES)))
    bottles = range(DYES * per_dye)
    jars = max(jar_of(place, per_dye) for place in bottles)
    rows = (models.PowderJar(pk=j, code=f"J-{j}", dye_id=1) for j in range(1, jars + 1))
    insert(models.PowderJar, rows)
    insert(models.StockBottle, (bottle(place, per_dye) for place in bottles))
    insert(models.BottleLine, (filled(place, per_dye) for place in bottles))


def write_recipe_and_base() -> None:
    """Write the one recipe and the one yarn of this world."""
    from shadewright.records import models

    recipe = models.Recipe.objects.create(pk=1, name="Bench")
    models.RecipeVersion.objects.create(
        pk=1, recipe=recipe, number=1, deed=uuid.uuid4()
    )
    models.Base.objects.create(pk=1, name="Bench DK", fibres="wool")


def jar_of(place: int, per_dye: int) -> int:
    """Return the jar of a bottle."""
    is_heavy = place < per_dye and place % HEAVY_SHARE == 0
    return 1 if is_heavy else 2 + place // BOTTLES_A_JAR


def bottle_of(dye: int, place: int, per_dye: int) -> int:
    """Return the number of the bottle that a bath's dose of a dye comes from."""
    return dye * per_dye + place // BATHS_A_BOTTLE + 1


def bottle(place: int, per_dye: int) -> Model:
    """Return a bottle of two litres at 1 %."""
    from shadewright.records.models import StockBottle

    return StockBottle(
        pk=place + 1,
        code=f"{place:04X}",
        dye_id=place // per_dye + 1,
        jar_id=jar_of(place, per_dye),
        final_ml=2000.0,
        strength_percent=1.0,
        evidence="weighed",
        made_on=FIRST_DAY,
        method="bench",
    )


def filled(place: int, per_dye: int) -> Model:
    """Return the line by which a bottle was filled."""
    from shadewright.records.models import BottleLine

    return BottleLine(
        pk=place + 1,
        bottle_id=place + 1,
        act="filled",
        volume_ml=2000.0,
        strength_percent=1.0,
        powder_g=20.0,
        jar_id=jar_of(place, per_dye),
        **signed(),
    )


def bath(place: int) -> Model:
    """Return a bath of 100 g."""
    from shadewright.records.models import Bath

    return Bath(
        pk=place + 1,
        number=number_of(place),
        deed=uuid.uuid4(),
        version_id=1,
        base_id=1,
        dyed_on=FIRST_DAY + timedelta(days=place // 10),
        fibre_g=100.0,
        liquor_ratio=30.0,
        method="bench",
    )


def dose(dye: int, place: int, per_dye: int) -> Model:
    """Return a dose as planned."""
    from shadewright.records.models import BathDose

    return BathDose(
        bath_id=place + 1,
        position=dye + 1,
        dye_id=dye + 1,
        depth_percent=0.3,
        dye_g=0.3,
        bottle_id=bottle_of(dye, place, per_dye),
        volume_ml=30.0,
        strength_percent=1.0,
    )


def drawn(start: int, dye: int, place: int, per_dye: int) -> Model:
    """Return the line by which a dose left its bottle."""
    from shadewright.records.models import BottleLine

    return BottleLine(
        pk=start + place + 1,
        bottle_id=bottle_of(dye, place, per_dye),
        act="drawn",
        volume_ml=30.0,
        **signed(),
    )


def tick(start: int, dye: int, place: int, per_dye: int) -> Model:
    """Return the line by which a dose went into its bath."""
    from shadewright.records.models import BathLine

    return BathLine(
        bath_id=place + 1,
        act="dosed",
        step=f"dose-{dye + 1}",
        value=30.0,
        unit="ml",
        bottle_id=bottle_of(dye, place, per_dye),
        drawn_id=start + place + 1,
        **signed(),
    )


def _heated(place: int) -> Iterator[Model]:
    # A bath's heating and end.
    from shadewright.records.models import BathLine

    steps = {
        "heat on": "heat",
        "at top": "top",
        "heat off": "off",
        "finished": "finish",
    }
    for act, step in steps.items():
        yield BathLine(bath_id=place + 1, act=act, step=step, **signed())


def lot(place: int) -> Model:
    """Return the lot of a bath."""
    from shadewright.records.models import Lot

    return Lot(pk=place + 1, bath_id=place + 1, number=number_of(place))


def _said(place: int) -> Iterator[Model]:
    # What is said of a lot.
    from shadewright.records.models import LotLine

    yield LotLine(lot_id=place + 1, act="graded", words="first", **signed())
    yield LotLine(lot_id=place + 1, act="placed", words="Rack", **signed())


def signed() -> dict[str, Any]:
    """Return what every line of a ledger carries."""
    return {"deed": uuid.uuid4(), "at": MOMENT, "written_at": MOMENT}
