"""What on the shelf asks for a hand: look, test, make more, pour away."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from django.urls import reverse

from shadewright.core.quantities import amount_text
from shadewright.web.shelf.pages import ShelfTask
from shadewright.web.templatetags.house import age, day
from shadewright.workflows.shelf import ShelfBottle

_HAND_IN = (
    " It holds a metal: unused stock is collected and handed in, never poured. "
    "Follow the dye’s safety data sheet and your local rules."
)


@dataclass(frozen=True, kw_only=True)
class _Trouble:
    icon: str
    words: str
    why: Callable[[ShelfBottle], str]
    key: str
    is_making: bool = False


def _past_why(bottle: ShelfBottle) -> str:
    if bottle.discard_by is not None:
        said = f"Its discard-by day is {day(bottle.discard_by)}."
    elif bottle.is_mix_fresh:
        said = f"This dye is mixed fresh for the day; made {_ago(bottle)}."
    else:
        said = f"Made {_ago(bottle)}: old stock can dye paler."
    return f"{said} Dye a strength test beside fresh stock, or let it go."


def _ago(bottle: ShelfBottle) -> str:
    return f"{'about ' if bottle.is_date_about else ''}{age(bottle.age.days)} ago"


def _low_why(bottle: ShelfBottle) -> str:
    left, whole = (amount_text(ml, "ml") for ml in (bottle.volume_ml, bottle.final_ml))
    return f"{left} left of {whole}."


_TROUBLES = {
    "settled": _Trouble(
        icon="problem",
        words="has settled",
        why=lambda _: "Warm it, stir it, and look again against the light.",
        key="Look at it",
    ),
    "test or pour": _Trouble(
        icon="problem", words="is past its time", why=_past_why, key="Test or pour"
    ),
    "low": _Trouble(
        icon="drop",
        words="is nearly empty",
        why=_low_why,
        key="Make more",
        is_making=True,
    ),
    "empty": _Trouble(
        icon="drop",
        words="is empty",
        why=lambda _: "Nothing more can be drawn; its code is never used again.",
        key="Pour away",
    ),
}
_FATE = {"test or pour", "empty"}


def shelf_tasks(bottles: Iterable[ShelfBottle]) -> tuple[ShelfTask, ...]:
    """Return what asks for a hand, the settled ones first."""
    order = tuple(_TROUBLES)
    asking = [bottle for bottle in bottles if bottle.trouble in _TROUBLES]
    asking.sort(key=lambda bottle: order.index(bottle.trouble))
    return tuple(_task(bottle) for bottle in asking)


def _task(bottle: ShelfBottle) -> ShelfTask:
    found = _TROUBLES[bottle.trouble]
    is_handed_in = bottle.is_metal_complex and bottle.trouble in _FATE
    return ShelfTask(
        icon=found.icon,
        code=bottle.code,
        dye_name=bottle.dye_name,
        trouble=found.words,
        why=found.why(bottle) + (_HAND_IN if is_handed_in else ""),
        key=found.key,
        address=_making(bottle) if found.is_making else bottle_address(bottle.code),
    )


def bottle_address(code: str) -> str:
    """Return the address of a bottle's own page."""
    return reverse("bottle", args=[code])


def _making(bottle: ShelfBottle) -> str:
    return f"{reverse('plan-stock')}?dye={bottle.dye_id}"
