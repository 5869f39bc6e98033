"""A day as the dyer calls it, where pages go by the day."""

from datetime import date

from shadewright.web.templatetags.house import day as day_words
from shadewright.workflows.stamps import today


def named_day(day: date) -> str:
    """Return a day as the dyer calls it: ``Tomorrow, 26 November``."""
    near = {0: "Today", 1: "Tomorrow", -1: "Yesterday"}
    name = near.get((day - today()).days, f"{day:%A}")
    return f"{name}, {day_words(day)}"
