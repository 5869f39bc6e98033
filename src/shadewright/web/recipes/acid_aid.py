"""An acid to begin with: by the class of the dyes that are typed, and their depth."""

from collections.abc import Mapping
from typing import Any

from shadewright.core.quantities import NO_BREAK
from shadewright.errors import InputError
from shadewright.web.recipes.amounts import depth
from shadewright.workflows.recipe_shapes import AmountUnit
from shadewright.workflows.usual_acids import ToBegin, acid_to_begin


def put_acid_in(typed: dict[str, Any], *, rows: int) -> str:
    """Put the usual acid in the first row without one; say which, and its source."""
    found = acid_to_begin(_depths(typed, rows))
    if found.auxiliary_id is None:
        return found.words
    amount = f"{found.percent_owf:g}{NO_BREAK}% of {found.name}"
    place = _place(typed, found, rows)
    if place is None:
        return f"The usual is {amount}. Every row is taken: change one. {found.words}"
    typed[f"helper_{place}"] = str(found.auxiliary_id)
    typed[f"amount_{place}"] = f"{found.percent_owf:g}"
    typed[f"unit_{place}"] = AmountUnit.ON_FIBRE.value
    return f"{amount} now stands in row {place}. {found.words}"


def _depths(typed: Mapping[str, Any], rows: int) -> dict[int, float]:
    """Return the dyes that are typed with a depth that can be read."""
    found = {}
    for n in range(1, rows + 1):
        dye = str(typed.get(f"dye_{n}") or "")
        if dye.isascii() and dye.isdecimal() and len(dye) < 10:
            try:
                percent = depth(str(typed.get(f"depth_{n}") or ""), name="Depth")
            except InputError:
                continue
            found[int(dye)] = percent
    return found


def _place(typed: Mapping[str, Any], found: ToBegin, rows: int) -> int | None:
    """Return the row that has this acid already, or else the first empty one."""
    taken = {n: str(typed.get(f"helper_{n}") or "") for n in range(1, rows)}
    same = [n for n, one in taken.items() if one == str(found.auxiliary_id)]
    empty = [n for n, one in taken.items() if not one]
    return next(iter([*same, *empty]), None)
