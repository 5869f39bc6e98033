"""Opening a studio, and its backups: no step here can lose a record."""

from collections.abc import Generator, Mapping
from contextlib import contextmanager
from itertools import chain, count
from pathlib import Path
from tempfile import TemporaryDirectory

from django.conf import settings
from django.db import DatabaseError
from django.utils import timezone

from shadewright import __version__
from shadewright.errors import ConflictError, NewerStudioError, UnreadableError
from shadewright.exchange.studio_file import StudioCopy, studio_copy, studio_file
from shadewright.records import copying
from shadewright.records.writes import check_every_bottle
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
    if not stands.applied:
        copying.migrate()
        return (f"A new studio; its files are in {settings.DATA_FOLDER}.",)
    path = write_backup(_safety_path(f"before-{stands.waiting[0]}"))
    copying.migrate()
    return (f"Backup written to {path}.", "The studio is up to date.")


def is_open() -> bool:
    """Whether the database answers and is up to date."""
    try:
        stands = copying.schema()
    except DatabaseError:
        return False
    return not stands.waiting and not stands.unknown


def backup() -> bytes:
    """Return the whole studio as the bytes of one file."""
    return studio_file(_copy())


def write_backup(path: Path) -> Path:
    """Write the whole studio to a file, whole or not at all."""
    return _write_whole(path, backup())


def _write_whole(path: Path, content: bytes) -> Path:
    part = path.with_name(path.name + ".part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part.write_bytes(content)
        part.replace(path)
    except OSError as fault:
        raise ConflictError(
            why=f"{path} cannot be written: {fault.strerror}.",
            advice="Choose another place for it.",
            argument="file",
        ) from fault
    return path


def restore(content: bytes) -> Path | None:
    """Replace the whole studio by a backup; return where the one before is kept.

    All or nothing: a backup that turns out not to fit leaves the studio as it was.
    """
    copy = studio_copy(content)
    stands = copying.schema()
    _refuse_newer(stands.unknown)
    if copy.schema not in stands.known:
        raise NewerStudioError(where="that backup", unknown=(copy.schema,))
    _refuse_copy_of_other_kind(copy)
    before = _copy() if stands.applied else None
    kept = None if before is None else _keep(before)
    with _staged(copy.files) as staged:
        try:
            _replace_records(copy)
        except Exception as error:
            if before is not None:
                _replace_records(before)
            raise _misfit() from error
        _change_places(staged)
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


def _copy() -> StudioCopy:
    return StudioCopy(
        schema=copying.schema().applied[-1],
        program=__version__,
        made_at=timezone.now().isoformat(),
        tables=copying.all_rows(),
        files=_files(),
    )


def _keep(copy: StudioCopy) -> Path:
    return _write_whole(_safety_path("before-restore"), studio_file(copy))


def _replace_records(copy: StudioCopy) -> None:
    stands = copying.schema()
    if stands.applied and stands.applied[-1] != copy.schema:
        copying.put_back({}, at=stands.applied[-1])
    if not stands.applied or stands.applied[-1] != copy.schema:
        copying.migrate(copy.schema)
    copying.put_back(copy.tables, at=copy.schema)
    copying.migrate()
    check_every_bottle()


def _misfit() -> UnreadableError:
    return UnreadableError(
        name="The backup file",
        why="Its rows do not fit together.",
        advice="Nothing was changed.",
        argument="file",
    )


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
    """Return where a backup goes; it overwrites none of the same second."""
    stem = f"{name}-{timezone.localtime():%Y%m%d-%H%M%S}"
    names = chain([stem], (f"{stem}-{number}" for number in count(2)))
    paths = (Path(settings.BACKUP_FOLDER) / f"{one}.zip" for one in names)
    return next(path for path in paths if not path.exists())


def _files() -> dict[str, bytes]:
    root = Path(settings.MEDIA_ROOT)
    if not root.is_dir():
        return {}
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file()
    }


@contextmanager
def _staged(files: Mapping[str, bytes]) -> Generator[Path]:
    """Write a backup's files beside the studio's own, before anything changes.

    Yields
    ------
    Path
        The folder that can take the place of the studio's own.
    """
    root = Path(settings.MEDIA_ROOT)
    root.parent.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory(dir=root.parent, prefix="restoring-") as name:
        staged = Path(name) / "new"
        try:
            staged.mkdir()
            for inside, content in files.items():
                path = staged / inside
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(content)
        except (OSError, ValueError) as error:
            raise _misfit() from error
        yield staged


def _change_places(staged: Path) -> None:
    root = Path(settings.MEDIA_ROOT)
    if root.exists():
        root.rename(staged.with_name("old"))
    staged.rename(root)
