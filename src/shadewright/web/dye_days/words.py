"""A day, a time, a count, in the words of the pages."""

from datetime import datetime, time

from django.utils import timezone

from shadewright.core.quantities import amount_text, counted


def clock(value: time | datetime) -> str:
    """Return a time of the day on the studio's clock: ``09:41``."""
    local = timezone.localtime(value) if isinstance(value, datetime) else value
    return f"{local:%H:%M}"


def load(fibre_g: float, skeins: int) -> str:
    """Return how much yarn that is: ``3.2 kg, 32 skeins``."""
    weight = amount_text(fibre_g / 1000, "kg") if fibre_g >= 1000 else ""
    words = [weight or amount_text(fibre_g, "g")]
    return ", ".join([*words, *([counted(skeins, "skein")] if skeins else [])])


def span(minutes: float) -> str:
    """Return a length of time: ``45 min``, ``2 h 56 min``."""
    hours, rest = divmod(round(minutes), 60)
    words = [f"{hours}\u00a0h"] if hours else []
    words += [f"{rest}\u00a0min"] if rest or not hours else []
    return " ".join(words)
