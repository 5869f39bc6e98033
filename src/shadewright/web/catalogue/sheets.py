"""Safety data sheets sent in as files: a PDF or a picture, and nothing else.

What a file is called and what it says it is count for nothing: its first bytes
decide. It is stored under a name of ours, and handed out as a download with
the type that we found, so that nothing in it can act on our pages.
"""

from typing import TYPE_CHECKING
from uuid import uuid4

from django.core.exceptions import ValidationError
from django.http import FileResponse
from django.utils.text import slugify

from shadewright.errors import NotFoundError
from shadewright.records.models import Dye

if TYPE_CHECKING:
    from django.core.files.uploadedfile import UploadedFile

MOST_BYTES = 10_000_000
ACCEPTED = ".pdf,.png,.jpg,.jpeg"

_SIGNS = {
    b"%PDF-": "pdf",
    b"\x89PNG\r\n\x1a\n": "png",
    b"\xff\xd8\xff": "jpg",
}
_TYPES = {"pdf": "application/pdf", "png": "image/png", "jpg": "image/jpeg"}


def safe_sheet(upload: "UploadedFile[bytes]") -> "UploadedFile[bytes]":
    """Return an upload under a name of ours, or refuse it in one sentence."""
    if (upload.size or 0) > MOST_BYTES:
        message = "The data sheet may have up to 10 MB; send a smaller copy."
        raise ValidationError(message)
    start = upload.read(16)
    upload.seek(0)
    ending = next((e for sign, e in _SIGNS.items() if start.startswith(sign)), None)
    if ending is None:
        message = "The data sheet must be a PDF, a PNG or a JPEG; this is none of them."
        raise ValidationError(message)
    upload.name = f"{uuid4().hex}.{ending}"
    return upload


def sheet_answer(dye: Dye) -> FileResponse:
    """Hand a data sheet out as a download."""
    ending = str(dye.data_sheet_file.name).rpartition(".")[2]
    try:
        content = dye.data_sheet_file.open("rb")
    except (ValueError, OSError) as error:
        raise NotFoundError(kind="data sheet of", key=dye.name) from error
    return FileResponse(
        content,
        as_attachment=True,
        filename=f"{slugify(dye.name) or 'dye'}-data-sheet.{ending}",
        content_type=_TYPES.get(ending, "application/octet-stream"),
    )
