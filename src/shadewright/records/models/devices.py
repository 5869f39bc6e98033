"""Phones and other devices that were let in, and how they asked.

Neither a token nor a code is kept, only its hash: whoever reads the database
or a backup cannot come in with what stands there.
"""

from django.db import models
from django.db.models.functions import Lower
from django.utils import timezone

from shadewright.records.models.people import Person


class Device(models.Model):
    """A device that was let in; once revoked it stays, and is out for good."""

    name = models.CharField(max_length=40)
    token_hash = models.CharField(max_length=64, unique=True)
    paired_at = models.DateTimeField(default=timezone.now)
    paired_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )
    last_seen_at = models.DateTimeField(default=timezone.now)
    revoked_at = models.DateTimeField(null=True)

    class Meta:
        ordering = ["name"]
        constraints = [
            models.UniqueConstraint(
                Lower("name"),
                name="one_device_a_name",
                condition=models.Q(revoked_at=None),
            ),
        ]

    def __str__(self) -> str:
        """Return the name that its owner gave it."""
        return self.name


class PairingCode(models.Model):
    """A code shown at the desk; closed once it is used, replaced or guessed at."""

    code_hash = models.CharField(max_length=64)
    made_at = models.DateTimeField(default=timezone.now)
    made_by = models.ForeignKey(
        Person, null=True, on_delete=models.PROTECT, related_name="+"
    )
    expires_at = models.DateTimeField()
    closed_at = models.DateTimeField(null=True)
    wrong_tries = models.PositiveSmallIntegerField(default=0)

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        """Return when it was made."""
        return f"Code of {self.made_at}"


class PairingTry(models.Model):
    """A wrong code, and the address it came from."""

    address = models.CharField(max_length=45)
    at = models.DateTimeField(default=timezone.now, db_index=True)

    class Meta:
        ordering = ["-at", "-id"]

    def __str__(self) -> str:
        """Return the address and the time."""
        return f"{self.address} at {self.at}"
