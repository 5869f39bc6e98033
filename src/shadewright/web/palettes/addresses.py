"""Where the other rooms of Shades are."""

from django.urls import reverse

from shadewright.web.pages import Link
from shadewright.web.palettes.pages import BaseTab
from shadewright.web.ways import way_to
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


def rooms(base_id: int | None = None) -> tuple[Link, ...]:
    """Return the other rooms of Shades, of a base where they ask for one."""
    return tuple(
        Link(words=words, address=way_to(name, **_asked(name, base_id)))
        for words, name in _ROOMS
    )


def plan_address(base_id: int) -> str:
    """Return where the swatches that would help most are planned."""
    return way_to("swatch-plan-new", kind="next", base=base_id, count=ADVISED)


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
