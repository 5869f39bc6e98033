"""Search a list by the address: ``?q=gorse`` keeps the rows that say so."""

from django.http import HttpRequest

_MOST_CHARACTERS = 60


def asked(request: HttpRequest) -> str:
    """Return what is looked for, tidied; empty when nothing is."""
    return " ".join(request.GET.get("q", "").split())[:_MOST_CHARACTERS]


def says(query: str, *texts: str) -> bool:
    """Whether every word that is looked for stands somewhere in the texts."""
    whole = " ".join(texts).casefold()
    return all(word in whole for word in query.casefold().split())
