"""What ``palette match`` and ``palette correct`` say: keys, and words for a person."""

from typing import TYPE_CHECKING

from shadewright.cli.answers import Rows
from shadewright.cli.palette_texts import doses_list, doses_text
from shadewright.core.quantities import number_text
from shadewright.core.quantities.writing import NO_BREAK

if TYPE_CHECKING:
    from collections.abc import Sequence

    from shadewright.core.colour.spectra.lights import Light
    from shadewright.core.recipes import Correction, Matches, Recipe, Target

ONE_LIGHT = "The target is known in daylight alone."
NO_PRICES = "No prices were given."


def match_answer(
    found: "Matches", target: "Target", seconds: float
) -> dict[str, object]:
    """Return every key of the recipes for a colour."""
    return {
        "recipes": [_recipe_answer(each) for each in found.recipes],
        "within_tolerance": found.is_within_tolerance,
        "nearest": {"de": found.nearest_de, "words": found.nearest_words},
        "target": {str(light): list(lab) for light, lab in target.labs},
        "searched": found.searched,
        "seconds": seconds,
    }


def _recipe_answer(recipe: "Recipe") -> dict[str, object]:
    answer: dict[str, object] = {
        "doses": doses_list(recipe.doses),
        "lab": list(recipe.lab),
        "de": recipe.de,
        "de_by_light": {str(light): de for light, de in recipe.de_by_light},
        "metamerism": recipe.metamerism,
        "unsteady_de": recipe.unsteady,
        "expected_de": recipe.expected_de,
        "chance_within_tolerance": recipe.chance,
        "total_depth_percent": recipe.total_depth_percent,
        "cost": recipe.cost_per_kg,
        "evidence": str(recipe.evidence),
    }
    if recipe.metamerism is None:
        answer["metamerism_why"] = ONE_LIGHT
    if recipe.cost_per_kg is None:
        answer["cost_why"] = NO_PRICES
    return answer


def match_rows(found: "Matches") -> Rows:
    """Return a row for each recipe."""
    return [
        (f"{place}", f"{doses_text(each.doses)}: {_sure(each)}")
        for place, each in enumerate(found.recipes, start=1)
    ]


def _sure(recipe: "Recipe") -> str:
    chance = f"{round(100 * recipe.chance)}{NO_BREAK}%"
    expected = number_text(recipe.expected_de, digits=2)
    return f"{_de(recipe.de)} on paper, about {expected} in the pot, passes in {chance}"


def _de(difference: float) -> str:
    return f"{difference:.2f}"


def match_warnings(found: "Matches", tolerance: float) -> list[str]:
    """Say that a target is out of reach, how far and which way."""
    if found.is_within_tolerance:
        return []
    passes = number_text(tolerance, digits=3)
    away = f"{_de(found.nearest_de)} away: {found.nearest_words}"
    return [f"No recipe comes within {passes} (CIEDE2000). The nearest is {away}."]


def unused_lights(lights: "Sequence[Light]", target: "Target") -> list[str]:
    """Say which lights were asked for in vain, the target being unknown there."""
    known = {light for light, _lab in target.labs}
    unused = [f"{light}" for light in dict.fromkeys(lights) if light not in known]
    if not unused:
        return []
    names = " and ".join(unused)
    return [f"{ONE_LIGHT} For {names} too, give a --target-spectrum."]


def correct_answer(found: "Correction") -> dict[str, object]:
    """Return every key of a correction."""
    return {
        "additions": doses_list(found.additions),
        "add_first": doses_list(found.first),
        "share_first": found.share,
        "de_before": found.de_before,
        "de_after": found.de_after,
        "lab_after": list(found.lab_after),
        "reachable": found.is_reachable,
        "words": found.words,
    }


def correct_rows(found: "Correction") -> Rows:
    """Return the same as rows."""
    share = f"{round(100 * found.share)}{NO_BREAK}%"
    if not found.additions:
        return [("add", "nothing: no addition brings it nearer")]
    return [
        ("add", doses_text(found.additions)),
        ("first", f"{doses_text(found.first)} ({share}), then look again"),
        ("difference", f"{_de(found.de_before)} now, {_de(found.de_after)} after all"),
    ]


def correct_warnings(found: "Correction") -> list[str]:
    """Say what no addition can reach."""
    if found.is_reachable:
        return []
    away = f"{_de(found.de_after)} (CIEDE2000) away: {found.words}"
    return [f"Dye cannot be taken out again; the nearest to be reached is {away}."]
