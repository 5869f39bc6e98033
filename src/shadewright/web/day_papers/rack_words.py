"""What hangs on the rack, as a page shows it."""

from collections.abc import Sequence
from datetime import datetime
from uuid import uuid4

from django.urls import reverse

from shadewright.web.day_papers.pages import DryingRow, HungRow
from shadewright.web.parts import Chip
from shadewright.web.templatetags.house import moment
from shadewright.workflows.days.rack import Hung, rack_words

_DUE = Chip(words="should be dry", kind="good")
_DRYING = Chip(words="drying")


def hung_rows(hung: Sequence[Hung], *, now: datetime) -> tuple[HungRow, ...]:
    """Return the rows of the rack, each with a key of its own."""
    return tuple(
        HungRow(
            number=each.number,
            called=each.called,
            address=reverse("bath", args=[each.number]),
            base=each.base_name,
            skeins=rack_words([each]),
            hung=moment(each.hung_at),
            dry=moment(each.dry_at),
            state=_DUE if each.is_due(now) else _DRYING,
            key=uuid4(),
        )
        for each in hung
    )


def drying_rows(hung: Sequence[Hung]) -> tuple[DryingRow, ...]:
    """Return what still hangs, and when it should be dry."""
    return tuple(
        DryingRow(
            called=each.called,
            address=reverse("bath", args=[each.number]),
            skeins=rack_words([each]),
            dry=moment(each.dry_at),
        )
        for each in hung
    )
