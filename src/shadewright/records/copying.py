"""Every row as plain values, and back: what backup, restore and migration need.

A copy is taken with the models *as the database knows them*, not as the
program does, so that a studio can be copied before it is migrated, and an
older copy can be put back and then brought up to date.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time
from decimal import Decimal
from uuid import UUID

from django.apps.registry import Apps
from django.core.management import call_command
from django.core.management.color import no_style
from django.db import connection, models, transaction
from django.db.migrations.loader import MigrationLoader
from django.db.models.fields.files import FieldFile

APP = "records"

Row = Mapping[str, object]
Tables = Mapping[str, Sequence[Row]]


@dataclass(frozen=True, kw_only=True)
class Schema:
    """Which migrations stand in the database, and which the program knows."""

    applied: tuple[str, ...]
    known: tuple[str, ...]

    @property
    def unknown(self) -> tuple[str, ...]:
        """Migrations from a newer program."""
        return tuple(name for name in self.applied if name not in self.known)

    @property
    def waiting(self) -> tuple[str, ...]:
        """Migrations that the database still lacks."""
        return tuple(name for name in self.known if name not in self.applied)


def schema() -> Schema:
    """Return where the database and the program stand."""
    loader = MigrationLoader(connection)
    applied = sorted(name for app, name in loader.applied_migrations if app == APP)
    known = sorted(name for app, name in loader.disk_migrations if app == APP)
    return Schema(applied=tuple(applied), known=tuple(known))


def migrate(to: str | None = None) -> None:
    """Bring the database to a migration of the records, or to the newest."""
    target = [APP, to] if to else []
    call_command("migrate", *target, verbosity=0, interactive=False)


@transaction.atomic
def all_rows() -> Tables:
    """Return every table's rows at one moment, as the database knows them."""
    _see_one_moment()
    found = _models(schema().applied[-1])
    return {
        model.__name__.lower(): [_plain(row) for row in _manager(model).order_by("pk")]
        for model in found
    }


@transaction.atomic
def put_back(tables: Tables, *, at: str) -> None:
    """Replace every row of a database that stands at a migration by a copy's."""
    found = {model.__name__.lower(): model for model in _models(at)}
    if strange := tables.keys() - found.keys():
        raise LookupError(*strange)
    for model in found.values():
        _delete_all(model)
    for name, model in found.items():
        made = [model(**_stored(model, row)) for row in tables.get(name, ())]
        _manager(model).bulk_create(made, batch_size=500)
    connection.check_constraints()
    _reset_counters(list(found.values()))


def _see_one_moment() -> None:
    """Let no other writer come between; SQLite does so in any transaction."""
    if connection.vendor == "postgresql" and len(connection.atomic_blocks) == 1:
        with connection.cursor() as cursor:
            cursor.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ")


def _models(at: str) -> list[type[models.Model]]:
    apps = MigrationLoader(connection).project_state((APP, at)).apps
    assert isinstance(apps, Apps)  # ruff: ignore[assert] - a typed lazy property
    return sorted(apps.get_app_config(APP).get_models(), key=lambda m: m.__name__)


def _manager(model: type[models.Model]) -> models.Manager[models.Model]:
    return model._default_manager  # ruff: ignore[private-member-access]


def _fields(model: type[models.Model]) -> "Sequence[models.Field[object, object]]":
    return model._meta.concrete_fields  # ruff: ignore[private-member-access]


def _plain(row: models.Model) -> Row:
    return {
        field.attname: _plain_value(field.value_from_object(row))
        for field in _fields(type(row))
    }


def _plain_value(value: object) -> object:
    match value:
        case date() | datetime() | time():
            return value.isoformat()
        case Decimal() | UUID() | FieldFile():
            return str(value)
        case _:
            return value


def _stored(model: type[models.Model], row: Row) -> dict[str, object]:
    known = {field.attname: field for field in _fields(model)}
    if strange := row.keys() ^ known.keys():
        raise LookupError(*strange)
    return {name: known[name].to_python(value) for name, value in row.items()}


def _delete_all(model: type[models.Model]) -> None:
    table = connection.ops.quote_name(model._meta.db_table)  # ruff: ignore[private-member-access]
    with connection.cursor() as cursor:
        cursor.execute(f"DELETE FROM {table}")  # ruff: ignore[hardcoded-sql-expression]


def _reset_counters(found: Sequence[type[models.Model]]) -> None:
    with connection.cursor() as cursor:
        for line in connection.ops.sequence_reset_sql(no_style(), list(found)):
            cursor.execute(line)
