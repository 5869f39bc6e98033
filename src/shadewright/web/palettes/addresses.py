"""Where the other rooms of Shades are; those that are not there yet are left out."""

from urllib.parse import urlencode

from django.urls import NoReverseMatch, reverse

from shadewright.web.pages import Link
from shadewright.web.palettes.pages import BaseTab
from shadewright.workflows.shades.palette_pages import ADVISED, BaseNow

_ROOMS = (
    ("Swatches", "swatches"),
    ("Sets of swatches", "swatch-plans"),
    ("Wanted colours", "wanted"),
    ("Mix by hand", "mix"),
    ("Gradient", "gradient"),
    ("What was foretold", "predictions"),
    ("All fits", "fits"),
)
_BY_BASE = {"mix", "gradient"}


def address(name: str, *args: object, **asked: object) -> str:
    """Return the address of a room, or nothing where it is not there."""
    try:
        found = reverse(name, args=args)
    except NoReverseMatch:
        return ""
    return f"{found}?{urlencode(asked)}" if asked else found


def rooms(base_id: int | None = None) -> tuple[Link, ...]:
    """Return the other rooms of Shades, of a base where they ask for one."""
    found = [
        Link(words=words, address=address(name, **_asked(name, base_id)))
        for words, name in _ROOMS
    ]
    return tuple(each for each in found if each.address)


def plan_address(base_id: int) -> str:
    """Return where the swatches that would help most are planned."""
    return address("swatch-plan-new", kind="next", base=base_id, count=ADVISED)


def tabs(bases: tuple[BaseNow, ...], *, here: int) -> tuple[BaseTab, ...]:
    """Return the bases as a row; those without a swatch come last."""
    return tuple(
        BaseTab(
            name=each.name if each.is_known else f"{each.name} (no swatch yet)",
            address=reverse("palette", args=[each.id]),
            is_here=each.id == here,
        )
        for each in bases
    )


def _asked(name: str, base_id: int | None) -> dict[str, object]:
    return {"base": base_id} if base_id is not None and name in _BY_BASE else {}
