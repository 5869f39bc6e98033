"""Backups to compare, and backups with something wrong in them."""

from dataclasses import replace
from pkgutil import iter_modules

from shadewright.exchange.studio_file import StudioCopy, studio_copy, studio_file
from shadewright.records import migrations
from shadewright.workflows.bottles import draw
from shadewright.workflows.opening import backup
from tests.workflows.bench import entered, new_dye, now

NEWEST = max(found.name for found in iter_modules(migrations.__path__))
"""The newest migration of the program."""


def contents(file: bytes) -> tuple[object, ...]:
    """Return every record and file of a backup, but not when it was made."""
    copy = studio_copy(file)
    return (copy.schema, copy.tables, copy.files)


def altered(**parts: object) -> bytes:
    """Return a backup of the studio as it is, but for these parts."""
    copy: StudioCopy = replace(studio_copy(backup()), **parts)  # type: ignore[arg-type]
    return studio_file(copy)


def with_rows(name: str, **columns: object) -> bytes:
    """Return a backup with these columns in every row of a table."""
    tables = dict(studio_copy(backup()).tables)
    tables[name] = [{**row, **columns} for row in tables[name]]
    return altered(tables=tables)


def that_does_not_add_up() -> bytes:
    """Return a backup in which a bottle gave more than it held."""
    draw(
        code=entered(new_dye("Gorse"), volume_ml=100.0).code,
        volume_ml=60.0,
        stamp=now(),
    )
    return with_rows("bottleline", volume_ml=60.0, act="drawn")
