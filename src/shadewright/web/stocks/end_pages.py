"""The pages at the end of a making: the bottle stands there, or it is given up."""

from collections.abc import Iterator

from django.urls import reverse

from shadewright.core.quantities import amount_text
from shadewright.web.pages import Link
from shadewright.web.parts import Caution
from shadewright.web.shelf.tasks import bottle_address
from shadewright.web.stocks.pages import FinishedPage, GivenUpPage, GiveUpPage
from shadewright.web.stocks.step_pages import SHELF
from shadewright.web.stocks.words import DEFER, stock_name
from shadewright.web.sureness import bottle_strength
from shadewright.web.templatetags.house import day as day_words
from shadewright.workflows.makings import Making
from shadewright.workflows.promised import days_without_bottle
from shadewright.workflows.shades.plan_bottles import sets_that_wait
from shadewright.workflows.shelf import shelf_bottle


def finished_page(stock: Making) -> FinishedPage:
    """Return the page of a stock that stands on the shelf."""
    code = stock.bottle_code
    bottle = shelf_bottle(code)
    return FinishedPage(
        title=f"{stock.stock.dye_name} stock is made",
        crumbs=(SHELF,),
        waiting=tuple(_that_wait(stock.stock.dye_id)),
        code=code,
        strength=bottle_strength(bottle),
        volume=amount_text(bottle.volume_ml, "ml"),
        label=reverse("bottle-label", args=[code]),
        bottle=bottle_address(code),
    )


def _that_wait(dye_id: int) -> Iterator[Link]:
    """Yield the ways back to what waits for a stock of a dye.

    Yields
    ------
    Link
        To a set of swatches, or to the stocks of a day.
    """
    for each in sets_that_wait(dye_id):
        address = reverse("swatch-plan", args=[each.id])
        yield Link(words=f"To {each.name}: {_wait(each.doses)}", address=address)
    for day, count in days_without_bottle(dye_id).items():
        address = reverse("day-stock", args=[day])
        yield Link(words=f"To {day_words(day)}: {_wait(count)}", address=address)


def _wait(doses: int) -> str:
    return "1 dose waits for it" if doses == 1 else f"{doses} doses wait for it"


def given_up_page(stock: Making) -> GivenUpPage:
    """Return the page of a stock that was given up."""
    return GivenUpPage(title=f"{stock_name(stock.stock)}: given up", crumbs=(SHELF,))


def give_up_page(stock: Making) -> GiveUpPage:
    """Return the page that asks once."""
    weighed = stock.powder_g
    text = (
        "Only dry, clean powder goes back into its jar. Powder that was wetted, and "
        f"stock that was begun, are collected or poured away by the rules. {DEFER}"
    )
    return GiveUpPage(
        title=f"Give up {stock_name(stock.stock)}?",
        crumbs=(SHELF,),
        powder="" if weighed is None else amount_text(weighed, "g"),
        jar=stock.stock.jar_code,
        note=Caution(title="Where does it go?", text=text),
        back=reverse("making", args=[stock.id]),
    )
