"""The note after each act: what was written down, and the way to undo it."""

from django.contrib import messages
from django.http import HttpRequest


def say(request: HttpRequest, sentence: str, *, undo: str = "") -> None:
    """Show a sentence on the next page; ``undo`` is the address that takes it back."""
    messages.success(request, sentence, extra_tags=undo)
