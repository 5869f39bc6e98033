"""Snips that dry, or are dry and wait to be read."""

from django.urls import reverse
from django.utils import timezone

from shadewright.web.templatetags.house import moment
from shadewright.web.today.pages import Waiting
from shadewright.workflows.judging.snips import Snip, snips_waiting
from shadewright.workflows.stamps import today


def snips_drying() -> tuple[Waiting, ...]:
    """Return what hangs to dry for a dry check, the first to be dry first."""
    return tuple(map(_waiting, snips_waiting()))


def _waiting(snip: Snip) -> Waiting:
    left = snip.minutes_left
    dry_at = timezone.localtime(snip.dry_at)
    is_today = dry_at.date() == today()
    when = f"{dry_at:%H:%M}" if is_today else moment(snip.dry_at)
    return Waiting(
        icon="today",
        what=f"The snip of {snip.lot} is dry {'at' if left else 'since'} {when}",
        why=f"In {left} min, by its clock. Nothing is judged wet."
        if left
        else "Feel it first, then lay it beside its standard.",
        key="See its clock" if left else "Check it dry",
        address=reverse("snip-lot" if left else "check-lot", args=[snip.lot]),
    )
