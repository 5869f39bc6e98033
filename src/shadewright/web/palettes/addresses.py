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
    """Return the bases that the palette knows as a row, and this one."""
    return tuple(
        BaseTab(
            name=each.name,
            address=reverse("palette", args=[each.id]),
            is_here=each.id == here,
        )
        for each in bases
        if each.is_known or each.id == here
    )


def untried(bases: tuple[BaseNow, ...], *, here: int) -> tuple[Link, ...]:
    """Return the other bases, which have no swatch that teaches."""
    return tuple(
        Link(words=each.name, address=reverse("palette", args=[each.id]))
        for each in bases
        if not each.is_known and each.id != here
    )


def _asked(name: str, base_id: int | None) -> dict[str, object]:
    return {"base": base_id} if base_id is not None and name in _BY_BASE else {}
