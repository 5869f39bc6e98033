"""For which colour a version was found: the panel on its page."""

from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.colour import difference_words
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.exchange.colour_text import on_screen
from shadewright.web.colours import read_colour
from shadewright.web.recipes.pages import FoundShown
from shadewright.web.targets import target_query
from shadewright.workflows.shades.saving import FoundNow, found_for


def found_shown(version_id: int, *, mix: str) -> FoundShown | None:
    """Return what is said of a version that was found for a colour, or None.

    ``mix`` holds its doses, for trials around it.
    """
    found = found_for(version_id)
    if found is None:
        return None
    wanted = found.wanted
    query = target_query(wanted)
    if wanted.base_id is not None:
        query["base"] = str(wanted.base_id)
    again = {**query, "version": str(version_id)}
    trials = {"kind": "bracket", "mix": mix, **query}
    return FoundShown(
        name=wanted.name,
        base=found.base_name,
        hexes=tuple(on_screen(lab).hex_code for lab in (wanted.lab, found.lab)),
        said=f"{wanted.name} left, foretold right",
        target=read_colour(wanted.lab, wanted.read_by, name=wanted.name),
        words=_words(found),
        find_address=f"{reverse('find')}?{urlencode(again, safe=':,')}",
        trials_address=f"{reverse('swatch-plan-new')}?{urlencode(trials, safe=':,')}",
    )


def _words(found: FoundNow) -> str:
    differs = difference_words(found.wanted.lab, found.lab)
    chance = round(100 * found.chance)
    return (
        f"{differs[:1].upper()}{differs[1:]}: ΔE{NO_BREAK}{found.difference:.1f} on "
        f"paper, in the pot usually {found.expected:.1f}, 9 in 10 stay under "
        f"{found.within_90:.1f}; {chance}{NO_BREAK}% come within {found.tolerance:g}."
    )
