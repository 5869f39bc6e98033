"""Which of the recipes that were found are shown, in what order, and why each is."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from operator import itemgetter

from shadewright.core.costing import Cost
from shadewright.core.recipes import Recipe

MOST_SHOWN = 6
WIDER_SPREAD = 1.1
"""From this factor on a spread counts as wider. [1]"""
_MUCH_WORSE = 3.0


@dataclass(frozen=True, kw_only=True)
class Candidate:
    """A recipe that was found, what its dye costs, and why it is shown."""

    recipe: Recipe
    cost: Cost
    why: tuple[str, ...] = ()

    @property
    def dyes(self) -> tuple[str, ...]:
        """Its dyes, the deepest first."""
        return tuple(dye for dye, _depth in self.recipe.doses)

    @property
    def price(self) -> float | None:
        """What its dye costs; None unless the price of every dye is known."""
        return None if self.cost.missing else self.cost.money


def by_chance(candidate: Candidate) -> tuple[float, ...]:
    """Return what sorts the likeliest to come out right first."""
    recipe = candidate.recipe
    return (
        -round(recipe.chance, 2),
        round(recipe.expected_de, 2),
        recipe.unsteady,
        recipe.total_depth_percent,
    )


def with_reasons(
    found: Sequence[Candidate], *, is_within: bool, tolerance: float
) -> tuple[Candidate, ...]:
    """Return the recipes worth showing, the likeliest first, each with its reasons."""
    dyed = [each for each in found if each.dyes]
    if not dyed:
        return ()
    ordered = _worth_showing(sorted(dyed, key=by_chance), tolerance=tolerance)
    first = ordered[0]
    said = _said(ordered, is_within=is_within, tolerance=tolerance)
    best = [each for each in ordered if each.dyes in said]
    others = [each for each in ordered if each.dyes not in said]
    picked = [*best, *_unlike(others, best)][:MOST_SHOWN]
    return tuple(
        replace(each, why=said.get(each.dyes) or (beside(each, first),))
        for each in sorted(picked, key=by_chance)
    )


def _worth_showing(
    ordered: Sequence[Candidate], *, tolerance: float
) -> list[Candidate]:
    """Leave out what is so much worse than the first that nobody would dye it."""
    expected = ordered[0].recipe.expected_de
    most = expected + min(expected, _MUCH_WORSE) + tolerance
    return [ordered[0], *(x for x in ordered[1:] if x.recipe.expected_de <= most)]


def beside(each: Candidate, first: Candidate) -> str:
    """Say how a recipe’s dyes differ from those of the first."""
    lacks = [dye for dye in first.dyes if dye not in each.dyes]
    more = [dye for dye in each.dyes if dye not in first.dyes]
    if lacks and more:
        return f"{_and(more)} in place of {_and(lacks)}"
    return f"Without {_and(lacks)}" if lacks else f"With {_and(more)} besides"


def _as_good(ordered: Sequence[Candidate], tolerance: float) -> list[Candidate]:
    """Leave those that come out nearly as near as the first: they may be the best."""
    most = ordered[0].recipe.expected_de + tolerance
    return [each for each in ordered if each.recipe.expected_de <= most]


def _said(
    ordered: Sequence[Candidate], *, is_within: bool, tolerance: float
) -> Mapping[tuple[str, ...], tuple[str, ...]]:
    """Return what is said of those that are best at something, by their dyes."""
    first = ordered[0]
    said: dict[tuple[str, ...], list[str]] = {}
    head = "Most likely to come out right" if is_within else "As near as it comes"
    said[first.dyes] = [head]
    for words, best in _bests(_as_good(ordered, tolerance)):
        said.setdefault(best.dyes, []).append(_less(words, best, first))
    return {dyes: tuple(words) for dyes, words in said.items()}


def _bests(ordered: Sequence[Candidate]) -> list[tuple[str, Candidate]]:
    """Return who is the best at each thing; of equals the likeliest."""
    is_priced = all(each.price is not None for each in ordered)
    cheapest = "Cheapest" if is_priced else "Cheapest whose price is known"
    rules: list[tuple[str, Callable[[Candidate], float | None]]] = [
        ("Nearest on paper", lambda each: round(each.recipe.de, 1)),
        (cheapest, lambda each: each.price),
        ("Steadiest from light to light", lambda each: round(each.recipe.unsteady, 1)),
        ("Fewest dyes", lambda each: len(each.dyes)),
    ]
    found = []
    for words, rule in rules:
        known = [(value, each) for each in ordered if (value := rule(each)) is not None]
        if len({value for value, _each in known}) > 1:
            found.append((words, min(known, key=itemgetter(0))[1]))
    return found


def _less(words: str, best: Candidate, first: Candidate) -> str:
    """Say of one that is not the first what it pays for being the best at that."""
    if best is first:
        return words
    is_wider = best.recipe.expected_de > WIDER_SPREAD * first.recipe.expected_de
    if words == "Nearest on paper" and is_wider:
        return f"{words}, but a wider spread"
    return words


def _unlike(others: Sequence[Candidate], taken: Sequence[Candidate]) -> list[Candidate]:
    """Return for each dye of the first the likeliest recipe without it."""
    found: list[Candidate] = []
    for dye in taken[0].dyes:
        if all(dye in each.dyes for each in [*taken, *found]):
            found += [each for each in others if dye not in each.dyes][:1]
    return found + [each for each in others if each not in found]


def _and(names: Sequence[str]) -> str:
    return f"{', '.join(names[:-1])} and {names[-1]}" if names[1:] else names[0]
