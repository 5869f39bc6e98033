"""Which recipes are shown, in what order, and what is said of each."""

from dataclasses import replace

import pytest

from shadewright.core.colour import Lab, Light
from shadewright.core.costing import Cost, CostPart, total_cost
from shadewright.core.mixing import Evidence
from shadewright.core.recipes import Recipe
from shadewright.workflows.shades.find_reasons import (
    MOST_SHOWN,
    Candidate,
    beside,
    with_reasons,
)

PRICED = total_cost([CostPart(name="dye", money=1.0)])
OPEN = total_cost([CostPart(name="dye", money=None, why="no price for it")])


def candidate(
    *dyes: str,
    chance: float = 0.5,
    de: float = 0.0,
    expected: float = 1.0,
    unsteady: float = 1.0,
    cost: Cost = PRICED,
) -> Candidate:
    """A recipe of some dyes, each at 0.3 %."""
    recipe = Recipe(
        doses=tuple((dye, 0.3) for dye in dyes),
        lab=Lab(50.0, 0.0, 0.0),
        de=de,
        de_by_light=((Light.D65, de),),
        metamerism=None,
        unsteady=unsteady,
        expected_de=expected,
        within_10=0.5 * expected,
        within_90=2.0 * expected,
        chance=chance,
        cost_per_kg=None,
        evidence=Evidence.LAB,
    )
    return Candidate(recipe=recipe, cost=cost)


def why(*found: Candidate, is_within: bool = True) -> dict[tuple[str, ...], str]:
    """Return the heading of each that is shown, in order."""
    shown = with_reasons(found, is_within=is_within, tolerance=1.0)
    return {each.dyes: each.why[0] for each in shown}


def test_likeliest_stands_first_though_another_is_nearer_on_paper() -> None:
    """What comes out right counts; the nearest on paper says what it pays."""
    said = why(
        candidate("Kelp", "Gorse", chance=0.4, de=0.0, expected=1.5),
        candidate("Peat", "Gorse", chance=0.6, de=0.3, expected=1.1),
    )
    assert list(said.items()) == [
        (("Peat", "Gorse"), "Most likely to come out right"),
        (("Kelp", "Gorse"), "Nearest on paper, but a wider spread"),
    ]


def test_cheapest_is_only_called_so_where_every_price_is_known() -> None:
    """A price that nobody wrote down could be less."""
    cheap = replace(PRICED, money=0.5)
    first = candidate("Kelp", "Gorse", chance=0.6)
    other = candidate("Peat", "Gorse", chance=0.5, cost=cheap)
    assert why(first, other)["Peat", "Gorse"] == "Cheapest"
    unknown = candidate("Sloe", "Gorse", chance=0.4, cost=OPEN)
    said = why(first, other, unknown)
    assert said["Peat", "Gorse"] == "Cheapest whose price is known"


def test_steadiest_and_fewest_are_said() -> None:
    """Each is the best at something."""
    said = why(
        candidate("Kelp", "Gorse", "Peat", chance=0.6),
        candidate("Kelp", "Gorse", "Sloe", chance=0.5, unsteady=0.2),
        candidate("Kelp", "Gorse", chance=0.4),
    )
    assert said["Kelp", "Gorse", "Sloe"] == "Steadiest from light to light"
    assert said["Kelp", "Gorse"] == "Fewest dyes"


def test_others_are_named_by_their_dyes() -> None:
    """Without one, with another in its place, with one more."""
    first = candidate("Kelp", "Gorse")
    assert beside(candidate("Gorse"), first) == "Without Kelp"
    assert beside(candidate("Peat", "Gorse"), first) == "Peat in place of Kelp"
    three = candidate("Kelp", "Gorse", "Peat")
    assert beside(three, first) == "With Peat besides"
    assert beside(candidate("Peat", "Sloe"), first) == (
        "Peat and Sloe in place of Kelp and Gorse"
    )


def test_for_each_dye_of_the_first_one_does_without_it() -> None:
    """A bottle may be empty: however likely the others are, it has its place."""
    many = [candidate("Kelp", f"d{n}", chance=0.6) for n in range(MOST_SHOWN + 2)]
    without = candidate("Peat", "Gorse", chance=0.1)
    assert ("Peat", "Gorse") in why(*many, without)


def test_what_is_much_worse_is_not_shown() -> None:
    """Nor is bare yarn, which is no recipe."""
    said = why(
        candidate("Kelp", "Gorse", expected=1.0),
        candidate("Peat", chance=0.0, de=9.0, expected=9.0),
        candidate(expected=1.0),
    )
    assert list(said) == [("Kelp", "Gorse")]
    assert why(candidate()) == {}


def test_nothing_is_called_likely_out_of_reach() -> None:
    """The first is as near as it comes, no more."""
    said = why(candidate("Kelp", chance=0.0, de=8.0, expected=8.1), is_within=False)
    assert said == {("Kelp",): "As near as it comes"}


@pytest.mark.parametrize("count", [1, MOST_SHOWN, 40])
def test_few_are_shown(count: int) -> None:
    """A page of them, the first among them."""
    found = [candidate("Kelp", f"d{n}", chance=0.9 - n / 100) for n in range(count)]
    said = why(*found)
    assert len(said) == min(count, MOST_SHOWN)
    assert next(iter(said)) == ("Kelp", "d0")
