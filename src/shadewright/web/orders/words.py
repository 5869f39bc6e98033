"""Orders in words: what is wanted, how far it is, whether a promise can be kept."""

from datetime import date

from shadewright.core.quantities import amount_text, counted
from shadewright.web.parts import Chip
from shadewright.web.templatetags.house import day as day_words
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.order_edits import Change
from shadewright.workflows.days.order_pages import LineNow, OrderNow, ShareNow
from shadewright.workflows.days.pot_loads import PotLoad, PotLoads
from shadewright.workflows.days.promises import Promise
from shadewright.workflows.stamps import today

_STATES = {
    BathStatus.PLANNED: "planned for {day}",
    BathStatus.GOING: "in the pot",
    BathStatus.COOLING: "cooling or drying, dyed {day}",
    BathStatus.FINISHED: "finished, its lot taken back",
    BathStatus.GIVEN_UP: "given up",
}


def wanted_words(order: OrderNow) -> str:
    """Return by when an order is wanted, with the days that are left."""
    by = order.wanted_by
    if by is None:
        return "no day is set"
    return f"{day_words(by)}, {_away(by)}"


def progress_chip(order: OrderNow) -> Chip:
    """Return how far an order is."""
    if order.is_closed:
        return Chip(words=order.why_closed.lower())
    is_gone = 0 < order.skeins <= order.gone
    states = (
        (is_gone, Chip(words="all went out", kind="good")),
        (not order.wanted, Chip(words="no colourway yet", kind="caution")),
        (order.is_all_there, Chip(words="all there", kind="good")),
        (order.is_to_take, Chip(words="on the shelf", kind="good")),
        (order.is_late, Chip(words="late", kind="problem")),
        (order.to_dye > 0, Chip(words=f"{order.to_dye} to dye", kind="caution")),
    )
    return next((chip for holds, chip in states if holds), Chip(words="in baths"))


def line_words(line: LineNow) -> str:
    """Return what a line asks for: ``6 × Low Tide on Fell DK``."""
    return f"{line.skeins} × {line.recipe_name} on {line.base_name}"


def change_words(change: Change) -> str:
    """Return what an edit changed: ``Wanted by: 3 Dec instead of nothing``."""
    was, now = (_value_words(value) for value in (change.was, change.now))
    return f"{change.what}: {now} instead of {was}"


def _value_words(value: str | date | None) -> str:
    return day_words(value) if isinstance(value, date) else value or "nothing"


def skein_words(skein_g: float) -> str:
    """Return the size of its skeins."""
    return f"skeins of {amount_text(skein_g, 'g')}"


def share_words(share: ShareNow) -> str:
    """Return where the skeins of a bath or a lot are."""
    given = share.given
    if given.why_none:
        return given.why_none
    if given.is_drying:
        return "on the rack"
    if given.is_on_shelf:
        return f"on the shelf, {given.place}" if given.place else "on the shelf"
    return _STATES[given.status].format(day=day_words(given.dyed_on))


def promise_words(promise: Promise) -> str:
    """Return when an order can be ready."""
    if promise.soonest == promise.latest:
        return f"Ready {day_words(promise.latest)}."
    return (
        f"Ready between {day_words(promise.soonest)} and {day_words(promise.latest)}."
    )


def kept_chip(day: date, promise: Promise) -> Chip:
    """Return whether a day can be met."""
    if promise.is_blocked:
        return Chip(words="not to be planned yet", kind="caution")
    if promise.latest <= day:
        return Chip(words="can be kept", kind="good")
    if promise.soonest <= day:
        return Chip(words="only if all goes well", kind="caution")
    return Chip(words="cannot be met", kind="problem")


def before_sending(order: OrderNow) -> str:
    """Return what is not ready to be sent, if anything."""
    if order.untaken:
        return (
            f"{counted(order.untaken, 'skein')} on the shelf not taken for it: take "
            "them first, or they stay in the count of their lot."
        )
    lacks = order.skeins - order.gone - order.on_shelf
    verb = "is" if lacks == 1 else "are"
    return f"{lacks} of {order.skeins} {verb} not there yet." if lacks > 0 else ""


def pot_words(loads: PotLoads | None) -> str:
    """Return the fillings of pots that it makes, and what would fill them."""
    if loads is None:
        return ""
    if not loads.loads:
        return "Not one skein fits into any pot at the recipe’s liquor ratio."
    said = ", ".join(map(_load_words, loads.loads))
    if not loads.surplus:
        return f"{said}: all full."
    return f"{said}; {loads.surplus} more for the shelf would fill the last."


def _load_words(load: PotLoad) -> str:
    skeins = counted(load.pot_skeins, "skein")
    return f"{counted(load.times, 'load')} of {load.pot_name} ({skeins} each)"


def _away(by: date) -> str:
    days = (by - today()).days
    if days == 0:
        return "today"
    if days == 1:
        return "tomorrow"
    return f"in {days} days" if days > 0 else f"{counted(-days, 'day')} ago"
