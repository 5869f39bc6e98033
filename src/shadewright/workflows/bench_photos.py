"""Photos at the pot: kept with a line of the bath, and two cups read from one."""

from uuid import UUID

from django.core.files.base import ContentFile
from django.db import transaction

from shadewright.core.baths.cups import left_percent
from shadewright.errors import NotFoundError
from shadewright.exchange.cup_photo import cups_in
from shadewright.exchange.photo import kept_photo
from shadewright.records import recipe_reads
from shadewright.records.models import BathLine
from shadewright.records.models.baths import BathAct
from shadewright.records.writes import keep_line
from shadewright.workflows.kept_photos import kept_photo_bytes
from shadewright.workflows.stamps import Stamp, is_written

_BY_PHOTO = "by a photo, rough"


def keep_photo(
    *, number: str, photo: bytes, step: str, note: str, device: str, stamp: Stamp
) -> None:
    """Keep a photo of a pot, drawn anew and without what the phone wrote in it."""
    line = BathLine(act=BathAct.PHOTO, step=step[:40], note=note.strip()[:300])
    _keep(line, number=number, photo=photo, device=device, stamp=stamp)


def keep_cups(
    *, number: str, photo: bytes, step: str, device: str, stamp: Stamp
) -> None:
    """Read how much dye is left from a photo of the two cups, and keep both."""
    seen = cups_in(photo)
    left = left_percent(first=seen.first, now=seen.now, white=seen.white)
    line = BathLine(
        act=BathAct.LEFTOVER,
        step=step[:40],
        value=round(left, 1),
        unit="%",
        note=_BY_PHOTO,
    )
    _keep(line, number=number, photo=photo, device=device, stamp=stamp)


def photo_of(*, number: str, deed: UUID) -> bytes:
    """Return a photo of a bath that nobody took back, as a JPEG."""
    lines = recipe_reads.bath_lines_of(deed).filter(bath__number=number, undone_by=None)
    line = lines.exclude(photo="").first()
    if line is None:
        raise NotFoundError(kind="photo", key=number)
    return kept_photo_bytes(line.photo, key=number)


@transaction.atomic
def _keep(
    line: BathLine, *, number: str, photo: bytes, device: str, stamp: Stamp
) -> None:
    line.bath = recipe_reads.locked_bath(number)
    if is_written(stamp.deed):
        return
    line.device = device.strip()[:40]
    name = f"{number}-{stamp.deed.hex}.jpg"
    line.photo = ContentFile(kept_photo(photo), name=name)
    keep_line(line, stamp)
