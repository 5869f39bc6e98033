"""Opening a studio, and its backups: no step here can lose a record."""

from datetime import datetime
from pathlib import Path

from django.conf import settings
from django.utils import timezone

from shadewright import __version__
from shadewright.errors import (
    ConflictError,
    NewerStudioError,
    StudioError,
    UnreadableError,
)
from shadewright.exchange.studio_file import StudioCopy, studio_copy, studio_file
from shadewright.records import copying
from shadewright.workflows.studio import studio


def open_studio() -> tuple[str, ...]:
    """Bring the database up to date; return what was done, a line each.

    A studio kept by a newer program is refused. Before a change of the tables
    a backup is written beside the studio.
    """
    stands = copying.schema()
    _refuse_newer(stands.unknown)
    done = _brought_up_to_date(stands)
    _refuse_other_kind()
    return done


def _brought_up_to_date(stands: copying.Schema) -> tuple[str, ...]:
    if not stands.waiting:
        return ()
    done = []
    if stands.applied:
        path = write_backup(_safety_path(f"before-{stands.waiting[0]}"))
        done.append(f"Backup written to {path}.")
    copying.migrate()
    return (*done, "The studio is up to date.")


def is_open() -> bool:
    """Whether the database answers and is up to date."""
    stands = copying.schema()
    return not stands.waiting and not stands.unknown


def backup() -> bytes:
    """Return the whole studio as the bytes of one file."""
    copy = StudioCopy(
        schema=copying.schema().applied[-1],
        program=__version__,
        made_at=timezone.now().isoformat(),
        tables=copying.all_rows(),
        files=_files(),
    )
    return studio_file(copy)


def write_backup(path: Path) -> Path:
    """Write the whole studio to a file, whole or not at all."""
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(path.name + ".part")
    part.write_bytes(backup())
    part.replace(path)
    return path


def restore(content: bytes) -> Path | None:
    """Replace the whole studio by a backup; return where the one before is kept."""
    copy = studio_copy(content)
    stands = copying.schema()
    if copy.schema not in stands.known:
        raise NewerStudioError(where="that backup", unknown=(copy.schema,))
    _refuse_copy_of_other_kind(copy)
    kept = write_backup(_safety_path("before-restore")) if stands.applied else None
    if copy.schema != (stands.applied or ("",))[-1]:
        _clear_tables(stands)
        copying.migrate(copy.schema)
    _put_back(copy)
    copying.migrate()
    _replace_files(copy)
    return kept


def _refuse_copy_of_other_kind(copy: StudioCopy) -> None:
    if any(
        row.get("is_demo") != settings.IS_DEMO for row in copy.tables.get("studio", ())
    ):
        raise ConflictError(
            why="The demo studio and your own are never mixed.",
            advice="That backup is of the other kind. Nothing was changed.",
            argument="file",
        )


def _put_back(copy: StudioCopy) -> None:
    try:
        copying.put_back(copy.tables, at=copy.schema)
    except StudioError:
        raise
    except Exception as error:
        raise UnreadableError(
            name="The backup file",
            why="Its rows do not fit together.",
            advice="The studio is as it was.",
            argument="file",
        ) from error


def _clear_tables(stands: copying.Schema) -> None:
    if stands.applied:
        copying.put_back({}, at=stands.applied[-1])


def _refuse_other_kind() -> None:
    facts = studio()
    if facts is not None and facts.is_demo != settings.IS_DEMO:
        held, word = ("the demo", "demo") if facts.is_demo else ("your own", "serve")
        raise ConflictError(
            why=f"The folder {settings.DATA_FOLDER} holds {held} studio.",
            advice=f"Open it with “shadewright {word}”; the two are never mixed.",
            argument="data",
        )


def _refuse_newer(unknown: tuple[str, ...]) -> None:
    if unknown:
        raise NewerStudioError(where=str(settings.DATA_FOLDER), unknown=unknown)


def _safety_path(name: str) -> Path:
    stamp = f"{datetime.now(tz=timezone.get_current_timezone()):%Y%m%d-%H%M%S}"
    return Path(settings.BACKUP_FOLDER) / f"{name}-{stamp}.zip"


def _files() -> dict[str, bytes]:
    root = Path(settings.MEDIA_ROOT)
    if not root.is_dir():
        return {}
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file()
    }


def _replace_files(copy: StudioCopy) -> None:
    root = Path(settings.MEDIA_ROOT)
    for name in _files().keys() - copy.files.keys():
        (root / name).unlink()
    for name, content in copy.files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
