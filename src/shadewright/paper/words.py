"""Dates in the words that paper shows."""

import datetime as dt

_MONTHS = "JanFebMarAprMayJunJulAugSepOctNovDec"


def day_words(day: dt.date) -> str:
    r"""Return a date that nobody can misread: the month as a word.

    >>> day_words(dt.date(2026, 11, 5))
    '5\xa0Nov 2026'
    """
    month = _MONTHS[3 * day.month - 3 : 3 * day.month]
    return f"{day.day}\N{NO-BREAK SPACE}{month} {day.year}"
