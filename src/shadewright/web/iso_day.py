"""A date in an address: import this module where ``<day:…>`` is used."""

from datetime import date

from django.urls import register_converter


class IsoDay:
    """A day that there is, written as ISO 8601 does."""

    regex = r"\d{4}-\d{2}-\d{2}"

    def to_python(self, value: str) -> date:
        """Return the day; what is none names no page."""
        return date.fromisoformat(value)

    def to_url(self, value: date) -> str:
        """Return the day as it stands in an address."""
        return value.isoformat()


register_converter(IsoDay, "day")
