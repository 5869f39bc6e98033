"""The way back from a page of a lot: to all lots, and to the lot."""

from django.urls import reverse

from shadewright.web.pages import Link


def lots_link() -> Link:
    """Return the link to all lots."""
    return Link(words="Lots", address=reverse("lots"))


def lot_crumbs(number: str) -> tuple[Link, ...]:
    """Return the links to all lots and to one."""
    return (lots_link(), Link(words=number, address=reverse("lot", args=[number])))
