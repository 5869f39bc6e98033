"""The budget of a spread: which error weighs most.

Spreads add in squares, so the largest term nearly decides alone: of 0.04 %, 0.58 %
and 1.15 % the last makes four fifths of the whole, and a better scale would change
nothing. The share of the variance says so.
"""

from dataclasses import dataclass

from shadewright.core.uncertainty.values import Value


@dataclass(frozen=True, kw_only=True)
class BudgetLine:
    """One term: ``u_rel`` against the value, ``share`` of the whole variance."""

    name: str
    source: str
    u_rel: float
    share: float


def budget(value: Value) -> tuple[BudgetLine, ...]:
    """Return the terms of a spread, the one that weighs most first.

    s_i = u_i² / Σ u_j²                                           (5)

    Parameters
    ----------
    value : Value
        A value that is not nought, with its terms. [any]

    Returns
    -------
    tuple of BudgetLine
        One line a term; their shares add up to 1. Empty where there is no term.

    Notes
    -----
    The contributions u_i are those of equation 10 of [jcgm100]_ (5.1.3).

    Examples
    --------
    >>> from shadewright.core.uncertainty.values import Term
    >>> pour = Term(name="pour", source="pour", u=0.4)
    >>> scale = Term(name="scale", source="scale", u=0.3)
    >>> [round(line.share, 2) for line in budget(Value(value=10, terms=(scale, pour)))]
    [0.64, 0.36]
    """
    whole = value.u**2
    if not whole or not value.value:
        return ()
    lines = [
        BudgetLine(
            name=term.name,
            source=term.source,
            u_rel=abs(term.u / value.value),
            share=term.u**2 / whole,
        )
        for term in value.terms
    ]
    return tuple(sorted(lines, key=lambda line: line.share, reverse=True))
