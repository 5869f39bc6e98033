"""The way up from a page of a day."""

from datetime import date

from django.urls import reverse

from shadewright.web.named_days import named_day
from shadewright.web.pages import Link


def crumbs_of(day: date) -> tuple[Link, ...]:
    """Return the days, and the day itself."""
    named = Link(words=named_day(day), address=reverse("day", args=[day]))
    return (*days_crumb(), named)


def days_crumb() -> tuple[Link, ...]:
    """Return the days."""
    return (Link(words="Dye days", address=reverse("days")),)
