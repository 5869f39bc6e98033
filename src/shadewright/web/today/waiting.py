"""What waits today, each with its reason and one key."""

from collections.abc import Iterable, Iterator
from itertools import groupby

from django.urls import reverse

from shadewright.core.quantities import amount_text, counted
from shadewright.web.shelf.pages import ShelfTask
from shadewright.web.shelf.tasks import shelf_tasks
from shadewright.web.stocks.words import stock_name
from shadewright.web.templatetags.house import moment
from shadewright.web.today.orders_due import orders_due
from shadewright.web.today.pages import Waiting
from shadewright.web.today.snips_drying import snips_drying
from shadewright.workflows.dyes import ShelfDye, dyes
from shadewright.workflows.jars import ShelfJar, jars
from shadewright.workflows.makings import Making, makings
from shadewright.workflows.shelf import ShelfBottle

MOST_OF_A_KIND = 3
"""More bottles than this with the same trouble stand in one line."""


def what_waits(bottles: tuple[ShelfBottle, ...]) -> tuple[Waiting, ...]:
    """Return what asks for a hand; what is under way comes first."""
    begun = (_in_the_making(one, place) for place, one in enumerate(makings()))
    return (
        *begun,
        *snips_drying(),
        *orders_due(),
        *_troubles(bottles),
        *_labels(bottles),
        *_jars(jars()),
        *_data_sheets(dyes()),
    )


def _in_the_making(stock: Making, place: int) -> Waiting:
    by = f" by {stock.started_by}" if stock.started_by else ""
    return Waiting(
        icon="drop",
        what=stock_name(stock.stock),
        why=f"Begun {moment(stock.started_at)}{by}. "
        f"Next, step {stock.step_number} of {len(stock.steps)}: {stock.step.title}.",
        key="Go on",
        address=reverse("making", args=[stock.id]),
        is_first=place == 0,
    )


def _troubles(bottles: tuple[ShelfBottle, ...]) -> Iterator[Waiting]:
    for trouble, tasks in groupby(shelf_tasks(bottles), lambda task: task.trouble):
        yield from _of_a_kind(trouble, list(tasks))


def _of_a_kind(trouble: str, tasks: list[ShelfTask]) -> Iterator[Waiting]:
    if len(tasks) > MOST_OF_A_KIND:
        yield Waiting(
            icon=tasks[0].icon,
            what=f"{len(tasks)} bottles: each {trouble}",
            why=_listed(f"{task.code} {task.dye_name}" for task in tasks),
            key="See the shelf",
            address=reverse("shelf"),
        )
        return
    for task in tasks:
        yield Waiting(
            icon=task.icon,
            what=f"Bottle {task.code} {task.dye_name} {trouble}",
            why=task.why,
            key=task.key,
            address=task.address,
        )


def _labels(bottles: tuple[ShelfBottle, ...]) -> Iterator[Waiting]:
    wanting = [bottle for bottle in bottles if bottle.wants_label]
    if wanting:
        yield Waiting(
            icon="print",
            what=counted(len(wanting), "bottle wants", "bottles want") + " a label",
            why=_listed(f"{bottle.code} {bottle.dye_name}" for bottle in wanting),
            key="Print labels",
            address=reverse("labels"),
        )


def _jars(standing: tuple[ShelfJar, ...]) -> Iterator[Waiting]:
    low = [jar for jar in standing if jar.is_low]
    if len(low) > MOST_OF_A_KIND:
        yield Waiting(
            icon="jar",
            what=f"{len(low)} jars are nearly empty",
            why=_listed(f"{jar.dye_name} {_left(jar)}" for jar in low),
            key="See the jars",
            address=reverse("jars"),
        )
        return
    for jar in low:
        yield Waiting(
            icon="jar",
            what=f"Jar {jar.code} {jar.dye_name} is nearly empty",
            why=f"{_left(jar)} left. Order the next one before it is gone.",
            key="See the jar",
            address=reverse("jar", args=[jar.id]),
        )


def _data_sheets(known: tuple[ShelfDye, ...]) -> Iterator[Waiting]:
    without = [dye for dye in known if not dye.has_data_sheet]
    if without:
        yield Waiting(
            icon="note",
            what=counted(len(without), "dye has", "dyes have")
            + " no safety data sheet",
            why=_listed(dye.name for dye in without)
            + ". Ask the supplier for it; its cautions come before ours.",
            key="See the dyes",
            address=reverse("dyes"),
        )


def _left(jar: ShelfJar) -> str:
    return amount_text(jar.left_g, "g")


def _listed(names: Iterable[str], *, most: int = 6) -> str:
    every = list(names)
    rest = len(every) - most
    return ", ".join(every[:most]) + (f" and {rest} more" if rest > 0 else "")
