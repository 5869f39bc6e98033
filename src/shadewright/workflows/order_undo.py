"""An edit of an order taken back: it says and holds again what it did before."""

from collections.abc import Mapping
from typing import Any

from shadewright.errors import ConflictError
from shadewright.records.models import BathFor, Order, OrderEdit, OrderLine

HELD = "held"
"""Where an edit changed it: line, lot and skeins that the line holds of it."""
_TERMS = ("for_whom", "due_on", "promised_on", "notes")


def say_again(edit: OrderEdit) -> None:
    """Let an order say what it said before an edit; refused if it changed since.

    A line that came with the edit is dropped. How an order ended is not taken back
    like that.
    """
    if edit.is_closing:
        raise ConflictError(why="How an order ended is changed on its own page.")
    if HELD in edit.after:
        _hold_again(edit)
        return
    if _wanted(edit.order.said()) != _wanted(edit.after):
        raise ConflictError(why="The order was changed since.")
    _say(edit.order, edit.before)


def _hold_again(edit: OrderEdit) -> None:
    """Let a line hold of some lots what it held; refused if that changed since."""
    if edit.order.is_closed:
        raise ConflictError(why=f"Order {edit.order.number} is closed.")
    for was, now in zip(edit.before[HELD], edit.after[HELD], strict=True):
        place, lot, skeins = now
        held = BathFor.objects.filter(
            line__order=edit.order, line__position=place, bath__number=lot
        )
        if list(held.values_list("skeins", flat=True)) != [skeins]:
            raise ConflictError(why="What is set aside was changed since.")
        if was[-1]:
            held.update(skeins=was[-1])
        else:
            held.delete()


def _say(order: Order, said: Mapping[str, Any]) -> None:
    for name in _TERMS:
        setattr(order, name, said[name])
    order.save(update_fields=_TERMS)
    for position, line in enumerate(said["lines"], start=1):
        OrderLine.objects.filter(order=order, position=position).update(**line)
    later = OrderLine.objects.filter(order=order, position__gt=len(said["lines"]))
    later.update(is_dropped=True)


def _wanted(said: Mapping[str, Any]) -> dict[str, Any]:
    """Return what an order says, without the lines that were dropped."""
    lines = [line for line in said["lines"] if not line["is_dropped"]]
    return {**said, "lines": lines}
