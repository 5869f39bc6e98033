"""The shelf, and the bottles that are gone."""

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright import drawing
from shadewright.core.quantities import number_text
from shadewright.core.solutions.age import AgeClass
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip, ChipKind
from shadewright.web.shelf.keeping_words import time_left
from shadewright.web.shelf.pages import GonePage, GoneRow, ShelfPage, ShelfRow
from shadewright.web.shelf.tasks import bottle_address, shelf_tasks
from shadewright.web.sorting import Keys, arrange, read_order
from shadewright.web.sureness import bottle_strength
from shadewright.workflows.shelf import ShelfBottle, bottles_gone
from shadewright.workflows.shelf import shelf as bottles_standing

_KINDS: dict[str, ChipKind] = {
    "settled": "problem",
    "test or pour": "problem",
    "empty": "problem",
    "low": "caution",
    "look first": "caution",
}
_CLARITY = {True: "settled", False: "clear", None: "not looked at"}
_KEYS: Keys[ShelfRow] = {
    "code": lambda row: row.bottle.code,
    "dye": lambda row: row.bottle.dye_name.casefold(),
    "strength": lambda row: row.bottle.strength_percent,
    "left": lambda row: row.bottle.volume_ml,
    "age": lambda row: row.bottle.age.days,
    "time": lambda row: row.bottle.keeping.days_left,
}
_GONE_KEYS: Keys[GoneRow] = {
    "code": lambda row: row.bottle.code,
    "dye": lambda row: row.bottle.dye_name.casefold(),
    "age": lambda row: row.bottle.age.days,
}


@require_safe
def shelf(request: HttpRequest) -> HttpResponse:
    """Show the bottles that stand there."""
    standing = bottles_standing()
    board = tuple(_row(bottle) for bottle in standing)
    order = read_order(request, _KEYS, default="dye")
    tasks = shelf_tasks(standing)
    page = ShelfPage(
        title="Shelf",
        fact=_fact(standing, len(tasks)),
        board=board,
        rows=arrange(board, order, _KEYS),
        order=order,
        ages=tuple(AgeClass),
        tasks=tasks,
        has_gone=bool(bottles_gone()),
    )
    return show(request, page)


@require_safe
def gone(request: HttpRequest) -> HttpResponse:
    """Show the bottles that stand there no more."""
    order = read_order(request, _GONE_KEYS, default="dye")
    rows = tuple(
        GoneRow(
            bottle=bottle,
            address=bottle_address(bottle.code),
            strength=bottle_strength(bottle).value,
        )
        for bottle in bottles_gone()
    )
    page = GonePage(
        title="Bottles that are gone",
        fact="Their codes are never used again, and their ledgers are kept.",
        crumbs=(Link(words="Shelf", address=reverse("shelf")),),
        rows=arrange(rows, order, _GONE_KEYS),
        order=order,
    )
    return show(request, page)


def _row(bottle: ShelfBottle) -> ShelfRow:
    trouble = bottle.trouble
    return ShelfRow(
        bottle=bottle,
        address=bottle_address(bottle.code),
        drawn=drawing.Bottle(
            code=bottle.code,
            full=bottle.volume_ml / bottle.final_ml if bottle.final_ml else 0.0,
            age=bottle.age.age_class,
            is_settled=bottle.is_settled is True,
            life=bottle.keeping.life_left,
        ),
        strength=bottle_strength(bottle).value,
        state=Chip(words=trouble, kind=_KINDS.get(trouble, "")) if trouble else None,
        clarity=_CLARITY[bottle.is_settled],
        time_left=time_left(bottle),
    )


def _fact(bottles: tuple[ShelfBottle, ...], asking: int) -> str:
    if not bottles:
        return "No bottle stands here yet."
    count = "1 bottle" if len(bottles) == 1 else f"{len(bottles)} bottles"
    litres = number_text(sum(one.volume_ml for one in bottles) / 1000, digits=3)
    verb = "asks" if asking == 1 else "ask"
    tail = f"{asking} {verb} for a hand." if asking else _calm(bottles)
    return f"{count}, {litres} litres of stock. {tail}"


def _calm(bottles: tuple[ShelfBottle, ...]) -> str:
    if any(one.trouble == "look first" for one in bottles):
        return "Look at the old ones before you draw."
    return "None asks for a hand."
