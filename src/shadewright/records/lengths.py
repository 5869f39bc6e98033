"""No text is longer than its column, and none holds what cannot be kept.

PostgreSQL refuses such a text with an error of its own and SQLite takes it;
here both say the same sentence, whichever verb brought it.
"""

from typing import Any

from django.db.models import CharField, Field, Model, TextField
from django.utils.text import capfirst

from shadewright.errors import OutOfRangeError


def refuse_text_that_does_not_fit(
    *, instance: Model, raw: bool = False, **_signal: object
) -> None:
    """Look at every text of a row before it is kept; a receiver of ``pre_save``."""
    if raw:
        return
    for field in instance._meta.concrete_fields:  # ruff: ignore[private-member-access]
        if isinstance(field, CharField | TextField):
            text = str(field.value_from_object(instance) or "")
            _require_fit(text, most=field.max_length, field=field)


def _require_fit(text: str, *, most: int | None, field: "Field[Any, Any]") -> None:
    name = capfirst(str(field.verbose_name))
    if most is not None and len(text) > most:
        raise OutOfRangeError(
            name=name,
            given=f"{len(text)}",
            allowed=f"at most {most} characters long",
            argument=field.name,
        )
    if "\0" in text:
        raise OutOfRangeError(
            name=name,
            given="a sign without a picture",
            allowed="letters, figures and signs",
            argument=field.name,
        )
