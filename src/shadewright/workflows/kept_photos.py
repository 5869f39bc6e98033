"""A photo that was kept, read back; a file that is gone is said, never a crash."""

from django.db.models.fields.files import FieldFile

from shadewright.errors import NotFoundError


def kept_photo_bytes(photo: FieldFile, *, key: str) -> bytes:
    """Return a kept photo as the JPEG that was drawn of it."""
    if not photo:
        raise NotFoundError(kind="photo", key=key)
    try:
        with photo.open("rb") as file:
            content: bytes = file.read()
    except FileNotFoundError as gone:
        raise NotFoundError(kind="photo", key=key, advice="Its file is gone.") from gone
    return content
