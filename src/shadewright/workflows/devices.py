"""Phones: a code at the desk lets one in, a token keeps it in, the desk puts it out."""

import hashlib
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import transaction
from django.db.models import QuerySet
from django.utils import timezone
from django.utils.crypto import constant_time_compare, salted_hmac

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
    TooManyTriesError,
)
from shadewright.records.models import Device as DeviceRow
from shadewright.records.models import PairingCode
from shadewright.workflows import wrong_codes

CODE_DIGITS = 6
MOST_SIGNS = 40
CODE_MINUTES = 5
MOST_WRONG_TRIES = 5
_TOKEN_BYTES = 32
_SEEN_EVERY = timedelta(minutes=1)


@dataclass(frozen=True, kw_only=True)
class Device:
    """A device that is let in."""

    id: int
    name: str
    paired_at: datetime
    paired_by: str
    last_seen_at: datetime


@dataclass(frozen=True, kw_only=True)
class FreshCode:
    """A code to be shown at the desk, once: only its hash is kept."""

    digits: str
    expires_at: datetime


@transaction.atomic
def make_code(*, by: int | None) -> FreshCode:
    """Make a code that lets one device in; the one before it is good no more."""
    if wrong_codes.is_locked():
        raise TooManyTriesError(wait_s=None)
    wrong_codes.forget_old_wrong_codes()
    digits = f"{secrets.randbelow(10**CODE_DIGITS):0{CODE_DIGITS}d}"
    now = timezone.now()
    _open_codes().update(closed_at=now)
    row = PairingCode.objects.create(
        code_hash=_code_hash(digits),
        made_at=now,
        made_by_id=by,
        expires_at=now + timedelta(minutes=CODE_MINUTES),
    )
    return FreshCode(digits=digits, expires_at=row.expires_at)


def pair(*, code: str, name: str, address: str) -> str:
    """Let a device in for a code; return the token that it must keep.

    A wrong code is written down even though it is refused. The first look at
    what is too soon takes no lock, so that a flood of tries stops no one's work.
    """
    wanted = " ".join(name.split())
    if not wanted:
        raise MissingError(
            name="The phone’s name", advice="Any name will do.", argument="name"
        )
    if len(wanted) > MOST_SIGNS:
        raise OutOfRangeError(
            name="The phone’s name",
            given=f"{len(wanted)} signs",
            allowed=f"at most {MOST_SIGNS} signs long",
            argument="name",
        )
    wrong_codes.refuse_if_too_many(address)
    with transaction.atomic():
        token = _tried(code=code, name=wanted, address=address)
    if not token:
        raise ConflictError(
            why="That is not the code at the desk, or it is no longer good.",
            advice=f"A code lasts {CODE_MINUTES} minutes and lets one phone in; "
            "make a new one if need be.",
            argument="code",
        )
    return token


def device_of(token: str) -> Device | None:
    """Return the device that holds a token, unless it was removed; note it as seen."""
    row = _rows().filter(token_hash=_token_hash(token)).first()
    if row is None:
        return None
    now = timezone.now()
    if now - row.last_seen_at > _SEEN_EVERY:
        DeviceRow.objects.filter(pk=row.pk).update(last_seen_at=now)
    return _shape(row)


def devices() -> tuple[Device, ...]:
    """Return the devices that are let in, by name."""
    return tuple(_shape(row) for row in _rows())


def revoke(device_id: int) -> Device:
    """Put a device out, at once and for good."""
    row = _rows().filter(pk=device_id).first()
    if row is None:
        raise NotFoundError(
            kind="phone", key=str(device_id), advice="It was removed already."
        )
    DeviceRow.objects.filter(pk=device_id).update(revoked_at=timezone.now())
    return _shape(row)


def _tried(*, code: str, name: str, address: str) -> str:
    """Return a token if the code is right; else write the try down."""
    newest = PairingCode.objects.select_for_update().first()
    wrong_codes.refuse_if_too_many(address)
    if newest is None or not _is_right(newest, code):
        wrong_codes.note_wrong_code(address)
        _note_wrong_try(newest)
        return ""
    _refuse_name_in_use(name)
    newest.closed_at = timezone.now()
    newest.save()
    return _let_in(name=name, by=newest.made_by_id)


def _is_right(row: PairingCode, typed: str) -> bool:
    plain = typed.replace(" ", "").replace("-", "")
    is_equal = constant_time_compare(_code_hash(plain), row.code_hash)
    return is_equal and row.closed_at is None and timezone.now() < row.expires_at


def _note_wrong_try(row: PairingCode | None) -> None:
    """Close a code that was guessed at too often."""
    if row is None or row.closed_at is not None:
        return
    row.wrong_tries += 1
    if row.wrong_tries >= MOST_WRONG_TRIES:
        row.closed_at = timezone.now()
    row.save()


def _refuse_name_in_use(name: str) -> None:
    if _rows().filter(name__iexact=name).exists():
        raise ConflictError(
            why=f"There is a phone called {name} already.",
            advice="Give this one another name, or remove that one at the desk.",
            argument="name",
        )


def _let_in(*, name: str, by: int | None) -> str:
    token = secrets.token_urlsafe(_TOKEN_BYTES)
    now = timezone.now()
    DeviceRow.objects.create(
        name=name,
        token_hash=_token_hash(token),
        paired_at=now,
        paired_by_id=by,
        last_seen_at=now,
    )
    return token


def _rows() -> QuerySet[DeviceRow]:
    return DeviceRow.objects.filter(revoked_at=None).select_related("paired_by")


def _open_codes() -> QuerySet[PairingCode]:
    return PairingCode.objects.filter(closed_at=None)


def _code_hash(digits: str) -> str:
    """Hash with this studio's own secret: six digits alone are soon guessed."""
    return salted_hmac("shadewright.pairing", digits, algorithm="sha256").hexdigest()


def _token_hash(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()


def _shape(row: DeviceRow) -> Device:
    return Device(
        id=row.pk,
        name=row.name,
        paired_at=row.paired_at,
        paired_by="" if row.paired_by is None else row.paired_by.name,
        last_seen_at=row.last_seen_at,
    )
