"""A whole studio as one file: a zip of plain text that outlives the program.

::

    about.json        format, version, schema, program, when
    tables/dye.jsonl  one line a row, columns by name
    files/...         data sheets, photos

Numbers keep all their digits (JSON as Python writes it), so that a studio
comes back equal in every record.
"""

import io
import json
import struct
import zipfile
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import PurePosixPath

from shadewright.errors import UnreadableError

FORMAT = "shadewright-studio"
VERSION = 1
MOST_BYTES = 2_000_000_000

_BROKEN = (zipfile.BadZipFile, zlib.error, struct.error, EOFError, OSError)
# RuntimeError: a password, an unknown way of packing, brackets without end.
_STRANGE = (
    ArithmeticError,
    AttributeError,
    LookupError,
    RuntimeError,
    TypeError,
    ValueError,
)

Row = Mapping[str, object]


@dataclass(frozen=True, kw_only=True)
class StudioCopy:
    """Every record and every file of a studio."""

    schema: str
    program: str
    made_at: str
    tables: Mapping[str, Sequence[Row]]
    files: Mapping[str, bytes] = field(default_factory=dict)


def studio_file(copy: StudioCopy) -> bytes:
    """Return a studio's copy as the bytes of one file."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as box:
        about = {
            "format": FORMAT,
            "version": VERSION,
            "schema": copy.schema,
            "program": copy.program,
            "made_at": copy.made_at,
            "rows": {name: len(rows) for name, rows in copy.tables.items()},
            "files": list(copy.files),
        }
        box.writestr("about.json", json.dumps(about, indent=1))
        for name, rows in copy.tables.items():
            lines = (json.dumps(row, ensure_ascii=False) + "\n" for row in rows)
            box.writestr(f"tables/{name}.jsonl", "".join(lines))
        for name, content in copy.files.items():
            box.writestr(f"files/{name}", content)
    return target.getvalue()


def studio_copy(content: bytes) -> StudioCopy:
    """Return the copy that a file holds, or say why it cannot be read."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as box:
            return _read(box)
    except _BROKEN as error:
        raise _unreadable(why="It is no backup file, or only a part of one.") from error
    except _STRANGE as error:
        raise _unreadable(why="It is damaged, or another program wrote it.") from error


def _read(box: zipfile.ZipFile) -> StudioCopy:
    if sum(part.file_size for part in box.infolist()) > MOST_BYTES:
        raise _unreadable(why="It would unpack to more than 2 GB.")
    about = json.loads(box.read("about.json"))
    if about["format"] != FORMAT:
        raise _unreadable(why="It is a zip file, but no studio.")
    if int(about["version"]) > VERSION:
        raise _unreadable(why="A newer version wrote it: update the program first.")
    names = [name for name in box.namelist() if not name.endswith("/")]
    tables = {
        PurePosixPath(name).stem: _rows(box.read(name))
        for name in names
        if name.startswith("tables/")
    }
    if any(len(tables.get(name, ())) != n for name, n in about["rows"].items()):
        raise _unreadable(why="Some of its rows are missing.")
    files = {_inside(name): box.read(name) for name in names if _is_file(name)}
    if files.keys() != set(about.get("files", files)):
        raise _unreadable(why="Some of its files are missing.")
    return StudioCopy(
        schema=str(about["schema"]),
        program=str(about["program"]),
        made_at=str(about["made_at"]),
        tables=tables,
        files=files,
    )


def _rows(content: bytes) -> list[Row]:
    rows = [json.loads(line) for line in content.decode().split("\n") if line]
    if not all(isinstance(row, dict) for row in rows):
        raise TypeError
    return rows


def _is_file(name: str) -> bool:
    return name.startswith("files/")


def _inside(name: str) -> str:
    path = PurePosixPath(name.removeprefix("files/"))
    if path.is_absolute() or ".." in path.parts or "\\" in name or ":" in name:
        raise _unreadable(why="It names a file outside the studio’s folder.")
    return str(path)


def _unreadable(*, why: str) -> UnreadableError:
    return UnreadableError(
        name="The backup file",
        why=why,
        advice="Nothing was changed.",
        argument="file",
    )
