"""Values to try the chapter on."""

from collections.abc import Sequence
from math import prod, sqrt
from random import Random
from statistics import fmean

from hypothesis import strategies as st

from shadewright.core.uncertainty import Shape, Term, Value
from shadewright.core.uncertainty.shapes import HALF_WIDTHS

SOURCES = ("scale", "mark", "pour", "yarn")


def value(number: float, **u_of: float) -> Value:
    """Return a value with one normal term for each name."""
    return Value(
        value=number,
        terms=tuple(Term(name=name, source=name, u=u) for name, u in u_of.items()),
    )


def shaped(*parts: tuple[float, Shape]) -> Value:
    """Return a value of 1 with terms of these half-widths; a normal one's is its u."""
    return Value(
        value=1.0,
        terms=tuple(
            Term(
                name=f"term {place}",
                source=f"term {place}",
                u=half_width / HALF_WIDTHS.get(shape, 1.0),
                shape=shape,
            )
            for place, (half_width, shape) in enumerate(parts)
        ),
    )


NUMBERS = st.floats(min_value=0.5, max_value=50.0)
ERRORS = st.floats(min_value=1e-3, max_value=0.05).flatmap(
    lambda size: st.sampled_from([size, -size])
)


@st.composite
def values(draw: st.DrawFn) -> Value:
    """Draw a value with errors of up to 5 %, some of them shared by name."""
    number = draw(NUMBERS)
    names = draw(st.lists(st.sampled_from(SOURCES), unique=True, max_size=4))
    return value(number, **{name: draw(ERRORS) * number for name in names})


def drawn_error(term: Term, lots: Random) -> float:
    """Draw an error by another way than the chapter's: by inverting nothing."""
    a = abs(term.u) * HALF_WIDTHS.get(term.shape, 1.0)
    if term.shape is Shape.NORMAL:
        return lots.normalvariate(0.0, a)
    if term.shape is Shape.RECTANGULAR:
        return lots.uniform(-a, a)
    return lots.triangular(-a, a, 0.0)


def truths(given: Value, *, draws: int, seed: int) -> list[float]:
    """Draw what the truth may be, so often."""
    lots = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    return [
        given.value + sum(drawn_error(term, lots) for term in given.terms)
        for _ in range(draws)
    ]


def reckoned(
    over: Sequence[Value], under: Sequence[Value], *, draws: int, seed: int
) -> list[float]:
    """Draw a quotient of products; an error of one source is drawn once a turn."""
    lots = Random(seed)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    found = []
    for _ in range(draws):
        of = {
            t.source: drawn_error(Term(name="", source="", u=1.0, shape=t.shape), lots)
            for each in (*over, *under)
            for t in each.terms
        }
        true = [
            [v.value + sum(t.u * of[t.source] for t in v.terms) for v in side]
            for side in (over, under)
        ]
        found.append(prod(true[0]) / prod(true[1]))
    return found


def spread(numbers: Sequence[float]) -> float:
    """Return the standard deviation."""
    middle = fmean(numbers)
    return sqrt(fmean([(number - middle) ** 2 for number in numbers]))
