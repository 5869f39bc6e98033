"""Doses as somebody types them or names a sample: Gorse 0.6 % + Slate 0.2 %."""

import re

from shadewright.core.mixing.swatches import Doses, checked_doses
from shadewright.errors import InputError, UnreadableError

_DOSE = re.compile(r"(?P<dye>.*?\S)\s*(?:=\s*|\s)(?P<depth>\d+(?:[.,]\d+)?)\s*%?")
_BARE = {"bare", "bare yarn", "undyed", "0"}


def doses_of_words(text: str, *, argument: str = "doses") -> Doses:
    """Return dyes with their depths in %; none for bare yarn."""
    plain = " ".join(text.split())
    if plain.casefold() in _BARE:
        return ()
    found: dict[str, float] = {}
    for part in filter(str.strip, re.split(r"[;+]", plain)):
        match = _DOSE.fullmatch(part.strip())
        if match is None:
            raise _unreadable(part.strip(), "It is no dye with its depth.", argument)
        dye = match["dye"].strip(" \"'")
        if dye.casefold() in {each.casefold() for each in found}:
            raise _unreadable(plain, f"{dye} stands in it twice.", argument)
        found[dye] = float(match["depth"].replace(",", "."))
    try:
        return checked_doses(tuple(found.items()))
    except InputError as error:
        error.argument = argument
        raise


def doses_in_name(name: str) -> str:
    """Return the doses that a sample’s name tells, as one types them, or nothing."""
    try:
        doses_of_words(name)
    except InputError:
        return ""
    return " ".join(name.split())


def _unreadable(text: str, why: str, argument: str) -> UnreadableError:
    return UnreadableError(
        name=f"“{text[:40]}”",
        why=why,
        advice="Write it like Gorse 0.6 % + Slate 0.2 %, or “bare”.",
        argument=argument,
    )
