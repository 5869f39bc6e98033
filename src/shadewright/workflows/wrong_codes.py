"""Wrong pairing codes: each makes the next one wait, and too many lock pairing.

Nobody is made to wait inside a request, since that would tie up the server:
a try that comes too soon is refused unheard, with the time left. It counts
for nothing, so that asking again and again makes the wait no longer.
"""

from datetime import datetime, timedelta
from math import ceil

from django.utils import timezone

from shadewright.errors import TooManyTriesError
from shadewright.records.models import PairingTry

MOST_AN_HOUR = 20
_HOUR = timedelta(hours=1)
_KEPT = timedelta(days=1)
_LONGEST_WAIT = timedelta(minutes=5)


def refuse_if_too_many(address: str) -> None:
    """Refuse a try that comes too soon after wrong ones, or while pairing is locked."""
    if is_locked():
        raise TooManyTriesError(wait_s=None, argument="code")
    left = _next_try_at(address) - timezone.now()
    if left > timedelta():
        raise TooManyTriesError(wait_s=ceil(left.total_seconds()), argument="code")


def is_locked() -> bool:
    """Whether so many wrong codes came within an hour that nobody is let in.

    No try is heard after that, so it stays so until the desk forgets them.
    """
    times = list(PairingTry.objects.values_list("at", flat=True)[:MOST_AN_HOUR])
    return len(times) == MOST_AN_HOUR and times[0] - times[-1] <= _HOUR


def note_wrong_code(address: str) -> None:
    """Remember that a wrong code came from an address."""
    PairingTry.objects.create(address=address, at=timezone.now())


def forget_wrong_codes() -> None:
    """Begin anew, as the desk wants it."""
    PairingTry.objects.all().delete()


def forget_old_wrong_codes() -> None:
    """Drop what no longer counts."""
    PairingTry.objects.filter(at__lt=timezone.now() - _KEPT).delete()


def _next_try_at(address: str) -> datetime:
    """Return when this address is heard again.

    After n wrong codes within the hour an address waits 2^n s, at most five
    minutes; and n s after the n-th from anywhere, so that many addresses
    together are slowed too.
    """
    since = timezone.now() - _HOUR
    tries = list(PairingTry.objects.filter(at__gt=since).values_list("address", "at"))
    own = [at for one, at in tries if one == address]
    waits = [since]
    if tries:
        waits.append(tries[0][1] + timedelta(seconds=len(tries)))
    if own:
        waits.append(own[0] + min(timedelta(seconds=2 ** len(own)), _LONGEST_WAIT))
    return max(waits)
