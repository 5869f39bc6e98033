"""The text of a file as people save them: UTF-8, or what a spreadsheet writes."""

import codecs

from shadewright.errors import OutOfRangeError, UnreadableError
from shadewright.workflows.shades.swatch_files import MOST_BYTES


def text_of(content: bytes, *, argument: str) -> str:
    """Return the text of a file, or refuse it in one sentence."""
    if len(content) > MOST_BYTES:
        raise OutOfRangeError(
            name="The file",
            given=f"{len(content) / 1e6:.1f} MB",
            allowed=f"at most {MOST_BYTES / 1e6:g} MB",
            advice="Cut it in two.",
            argument=argument,
        )
    wide = content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
    try:
        text = content.decode("utf-16" if wide else "utf-8-sig")
    except UnicodeDecodeError:
        text = "\0"
    if "\0" in text:
        raise UnreadableError(
            name="The file",
            why="It is no plain text.",
            advice="Save it as CSV (UTF-8) and choose it again.",
            argument=argument,
        )
    return text
