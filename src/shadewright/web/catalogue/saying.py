"""A value of the catalogue in words, for facts and for what changed.

Reads a live value and its plain copy in an earlier version alike.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from django import forms
from django.db import models

from shadewright.core.quantities import amount_text
from shadewright.web.templatetags.house import day
from shadewright.workflows.catalogue import earlier_versions, plain_values

UNSAID = "not written down"


@dataclass(frozen=True, kw_only=True)
class ChangeLine:
    """One field that an edit changed."""

    label: str
    before: str
    after: str


@dataclass(frozen=True, kw_only=True)
class Change:
    """An edit: when, by whom, and what it changed."""

    at: datetime
    by: str
    lines: tuple[ChangeLine, ...]


def said(field: forms.Field, value: object, unit: str = "") -> str:
    """Write the value of a form's field in words."""
    if isinstance(field, forms.BooleanField):
        return "yes" if value else "no"
    if value in {None, ""}:
        return UNSAID
    if isinstance(field, forms.FileField):
        return "a file"
    return _written(field, value, unit or getattr(field, "unit", ""))


def _written(field: forms.Field, value: object, unit: str) -> str:
    if isinstance(field, forms.ModelChoiceField):
        return _named(field, value)
    if isinstance(field, forms.ChoiceField):
        return str(dict(field.choices).get(str(value), value))  # type: ignore[arg-type]
    if isinstance(field, forms.DateField):
        return day(date.fromisoformat(str(value)))
    if isinstance(value, int | float):
        return amount_text(value, unit)
    return str(value)


def _named(field: "forms.ModelChoiceField[models.Model]", value: object) -> str:
    """Return what a row is called that stands here by its number."""
    rows = field.queryset
    known = None if rows is None else rows.model._default_manager  # ruff: ignore[private-member-access]
    row = None if known is None else known.filter(pk=value).first()
    return str(value if row is None else row)


def changes(
    item: models.Model, labelled: dict[str, forms.Field], unit: str = ""
) -> tuple[Change, ...]:
    """Return the edits of an item, the newest first, with what each one changed."""
    after = plain_values(item)
    found = []
    for version in earlier_versions(item):
        before = dict(version.values)
        lines = tuple(_lines(before, after, labelled, unit))
        found.append(
            Change(at=version.replaced_at, by=version.replaced_by, lines=lines)
        )
        after = before
    return tuple(found)


def _lines(
    before: dict[str, object],
    after: dict[str, object],
    labelled: dict[str, forms.Field],
    unit: str,
) -> Iterator[ChangeLine]:
    for label, field in labelled.items():
        name = f"{label}_id" if isinstance(field, forms.ModelChoiceField) else label
        was, now = before.get(name), after.get(name)
        if was != now:
            yield ChangeLine(
                label=str(field.label),
                before=said(field, was, unit),
                after=_now(field, now, unit, said(field, was, unit)),
            )


def _now(field: forms.Field, value: object, unit: str, before: str) -> str:
    words = said(field, value, unit)
    return f"another: {words}" if words == before else words
