"""Orders and lots as the tests of demand want them."""

from datetime import date
from uuid import uuid4

from shadewright.records.models import (
    Bath,
    BathFor,
    Order,
    OrderLine,
    ParLevel,
    Recipe,
)
from shadewright.records.models.lots import Grade
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready


def ordered(
    pot: Ready,
    skeins: int,
    *,
    due_on: date | None = None,
    skein_g: float = 100.0,
    for_whom: str = "The yarn club",
) -> OrderLine:
    """Order skeins of the pot's recipe on its base."""
    number = Order.objects.count() + 1
    order = Order.objects.create(
        number=number, deed=uuid4(), for_whom=for_whom, due_on=due_on
    )
    return OrderLine.objects.create(
        order=order,
        position=1,
        recipe=recipe_of(pot),
        base_id=pot.base,
        skeins=skeins,
        skein_g=skein_g,
    )


def recipe_of(pot: Ready) -> Recipe:
    """Return the recipe that a pot's bath is of."""
    return Recipe.objects.get(versions=pot.version)


def par_of(pot: Ready, skeins: int) -> ParLevel:
    """Want skeins of the pot's recipe on the shelf."""
    return ParLevel.objects.create(
        recipe=recipe_of(pot), base_id=pot.base, skeins=skeins, skein_g=100.0
    )


def planned(pot: Ready, skeins: int, *, line: OrderLine | None = None) -> str:
    """Plan a bath of 100 g skeins, all of it for a line if one is named."""
    number = pot.another(fibre_g=100.0 * skeins)
    Bath.objects.filter(number=number).update(skeins=skeins)
    if line is not None:
        share(number, line, skeins)
    return number


def share(number: str, line: OrderLine, skeins: int) -> None:
    """Promise skeins of a bath to a line."""
    bath = Bath.objects.get(number=number)
    BathFor.objects.create(bath=bath, line=line, skeins=skeins)


def on_shelf(
    pot: Ready,
    skeins: int,
    *,
    grade: Grade = Grade.FIRST,
    counted: int | None = None,
    line: OrderLine | None = None,
) -> str:
    """Plan a bath and write its lot."""
    number = planned(pot, skeins, line=line)
    count_of = skeins if counted is None else counted
    return finished(number, grade=grade, skeins=count_of, is_sure=True)
