"""Files of the colour commands: read whole, refused in one sentence."""

import csv
import io
import os
from pathlib import Path
from typing import TYPE_CHECKING

from shadewright.errors import ConflictError, NotFoundError, UnreadableError

if TYPE_CHECKING:
    from shadewright.core.mixing import Palette
    from shadewright.exchange.swatch_file import ReadSwatches

MOST_BYTES = 50_000_000


def on_one_thread() -> None:
    """Keep numpy's matrix products on one thread: the same bits, and no waiting.

    Products of this size are done before a second thread has woken up.
    """
    for library in ("OPENBLAS", "OMP", "MKL"):
        os.environ[f"{library}_NUM_THREADS"] = "1"


def text_of(path: Path, *, name: str) -> str:
    """Return the text of a file, or say in one sentence why it cannot be read."""
    try:
        if path.stat().st_size > MOST_BYTES:
            raise _unreadable(path, name=name, why="It is larger than any such file.")
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise _unreadable(path, name=name, why="It is no UTF-8 text.") from None
    except OSError as error:
        raise _unreadable(path, name=name, why=f"{error.strerror or error}.") from None


def _unreadable(path: Path, *, name: str, why: str) -> UnreadableError:
    return UnreadableError(name=f"{name} “{path.name}”", why=why, argument="")


def swatches_in(path: Path) -> "ReadSwatches":
    """Return the swatches of a file; refused where bad rows leave nothing to learn."""
    on_one_thread()
    from shadewright.exchange.swatch_file import read_swatches

    read = read_swatches(text_of(path, name="The swatch file"))
    if not read.swatches and not read.rejected:
        raise _unreadable(path, name="The swatch file", why="It has no rows.")
    if read.rejected and not any(each.doses for each in read.swatches):
        what = "dyed swatch" if read.swatches else "row"
        first = read.rejected[0]
        why = f"No {what} of it can be used. Line {first.line}: {first.why}."
        raise UnreadableError(name="The swatch file", why=why)
    return read


def palette_in(path: Path, *, session: str = "") -> "Palette":
    """Return the palette of a file; a session must be one that it knows."""
    on_one_thread()
    from shadewright.exchange.palette_file import read_palette

    found = read_palette(text_of(path, name="The palette file"))
    if session and session not in found.names.sessions:
        known = ", ".join(found.names.sessions) or "none"
        raise NotFoundError(
            kind="session in this palette",
            key=session,
            advice=f"It knows {known}.",
            argument="session",
        )
    return found


def target_spectrum_in(path: Path) -> tuple[float, ...]:
    """Return the first spectrum of a file: 31 reflectances from 400 to 700 nm."""
    on_one_thread()
    from shadewright.exchange.spectrum_file import read_spectra

    text = text_of(path, name="The spectrum file")
    return read_spectra(text).spectra[0].values


def doses_from_words(path: Path) -> list[tuple[tuple[str, float], ...]]:
    """Return the doses of a table with a column ``doses``, row by row."""
    from shadewright.exchange.swatch_file import doses_of

    text = text_of(path, name="The table of doses")
    rows = csv.DictReader(io.StringIO(text))
    try:
        if "doses" not in (rows.fieldnames or ()):
            raise _no_doses(why="It has no column “doses”.")
        found = [doses_of(row["doses"] or "", line=rows.line_num) for row in rows]
    except csv.Error as error:
        raise _no_doses(why=f"It is no table ({error}).") from None
    if not found:
        raise _no_doses(why="It has no rows.")
    return found


def _no_doses(*, why: str) -> UnreadableError:
    return UnreadableError(
        name="The table of doses",
        why=why,
        advice="Begin with a row that names the column doses.",
        argument="dose_table",
    )


def write_file(path: Path, text: str) -> None:
    """Write a file whole or not at all."""
    part = path.parent / f"{path.name}.part"
    try:
        part.write_text(text, encoding="utf-8")
        part.replace(path)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise ConflictError(
            why=f"“{path}” cannot be written: {error.strerror}.",
            advice="Name a file in a folder that is there.",
            argument="output",
        ) from None
