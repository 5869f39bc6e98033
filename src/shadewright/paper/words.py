"""Dates and doses in the words that paper shows."""

import datetime as dt

_MONTHS = "JanFebMarAprMayJunJulAugSepOctNovDec"


def day_words(day: dt.date) -> str:
    r"""Return a date that nobody can misread: the month as a word.

    >>> day_words(dt.date(2026, 11, 5))
    '5\xa0Nov 2026'
    """
    month = _MONTHS[3 * day.month - 3 : 3 * day.month]
    return f"{day.day}\N{NO-BREAK SPACE}{month} {day.year}"


def grams_per_litre_words(*, strength_percent: float) -> str:
    r"""Return a strength in g/l with three figures; 1 % is 10 g/l.

    >>> grams_per_litre_words(strength_percent=1.04)
    '10.4\xa0g/l'
    """
    return f"{10 * strength_percent:.3g}\N{NO-BREAK SPACE}g/l"
