"""The catalogue: every edit keeps the version before it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from django.db import models, transaction

from shadewright.records import reads
from shadewright.records.writes import Stamp, keep_version


@dataclass(frozen=True, kw_only=True)
class EarlierVersion:
    """An item as it stood before an edit."""

    number: int
    values: Mapping[str, object]
    replaced_at: datetime
    replaced_by: str


@transaction.atomic
def keep_item(item: models.Model, stamp: Stamp) -> None:
    """Save a new or an edited item; of an edited one, keep the version before."""
    kind = item._meta.model_name or ""  # ruff: ignore[private-member-access]
    rows = type(item)._default_manager.select_for_update()  # ruff: ignore[private-member-access]
    before = rows.filter(pk=item.pk).first()
    if before is None:
        item.created_by_id = stamp.by  # type: ignore[attr-defined]
        item.created_at = stamp.at  # type: ignore[attr-defined]
    elif plain_values(before) != plain_values(item):
        keep_version(
            kind=kind,
            item_id=before.pk,
            values=plain_values(before),
            by=stamp.by,
            at=stamp.at,
        )
    item.save()


def earlier_versions(item: models.Model) -> tuple[EarlierVersion, ...]:
    """Return an item's earlier versions, newest first."""
    kind = item._meta.model_name or ""  # ruff: ignore[private-member-access]
    return tuple(
        EarlierVersion(
            number=row.number,
            values=row.values,
            replaced_at=row.replaced_at,
            replaced_by="" if row.replaced_by is None else row.replaced_by.name,
        )
        for row in reads.version_rows(kind, item.pk)
    )


def plain_values(item: models.Model) -> dict[str, object]:
    """Return a row's columns as plain values that JSON can hold."""
    fields = item._meta.concrete_fields  # ruff: ignore[private-member-access]
    return {field.attname: _plain(field.value_from_object(item)) for field in fields}


def _plain(value: object) -> object:
    match value:
        case date() | datetime():
            return value.isoformat()
        case Decimal():
            return f"{value.normalize():f}"
        case models.fields.files.FieldFile():
            return str(value)
        case _:
            return value
