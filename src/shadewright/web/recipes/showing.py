"""A version of a recipe made into a page."""

from collections.abc import Iterator
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.baths import Curve
from shadewright.core.quantities import amount_text
from shadewright.web.acidity.sour import sour_recipe
from shadewright.web.baths.words import status_chip
from shadewright.web.levers.known import recipe_known
from shadewright.web.mix_text import mix_text
from shadewright.web.pages import Link
from shadewright.web.parts import Caution, Chip
from shadewright.web.purposes import PURPOSE_WORDS
from shadewright.web.recipes.found import found_shown
from shadewright.web.recipes.pages import (
    BathRow,
    DoseShown,
    RecipePage,
    Said,
    VersionShown,
)
from shadewright.web.templatetags.house import day, moment
from shadewright.web.ways import way_to
from shadewright.workflows import recipe_shapes
from shadewright.workflows.bath_cautions import recipe_cautions
from shadewright.workflows.bath_lists import BathEntry, baths_of_recipe
from shadewright.workflows.heating import top_caution
from shadewright.workflows.recipe_curves import programme_of
from shadewright.workflows.recipe_shapes import RecipeText, Version
from shadewright.workflows.recipe_words import (
    changes,
    heat_words,
    helper_words,
    ratio_words,
)
from shadewright.workflows.shades.dye_chips import DyeChip, dye_chips

_MOST_BATHS = 6
_COMPLETE = Chip(words="complete", kind="good")
_INCOMPLETE = Chip(words="incomplete", kind="caution")


def recipe_page(recipe: recipe_shapes.RecipePage, shown: Version) -> RecipePage:
    """Return the page of one version."""
    is_newest = shown == recipe.newest
    newest = Link(
        words=f"the newest is version {recipe.newest.number}",
        address=reverse("recipe", args=[recipe.id]),
    )
    said = tuple(_said(shown.text))
    curve = programme_of(shown.text, shown.text.stops).curve
    baths = baths_of_recipe(recipe.id, most=_MOST_BATHS)
    found = found_shown(shown.id, mix=_mix(shown))
    return RecipePage(
        title=recipe.name,
        fact=_fact(recipe, shown),
        crumbs=(Link(words="Recipes", address="/recipes/"),),
        recipe_id=recipe.id,
        number=shown.number,
        plan_address=f"{reverse('plan-bath')}?{urlencode({'version': shown.id})}",
        write_address=_write_address(shown),
        newest=None if is_newest else newest,
        missing=shown.what_is_missing,
        doses=_doses(shown.text),
        total=_total(shown.text),
        sour=sour_recipe(shown.id),
        known=recipe_known(shown),
        found=found,
        said=tuple(each for each in said if each.words),
        curve=curve,
        curve_words="" if curve is None else _curve_words(curve),
        unsaid=", ".join(each.term for each in said if not each.words),
        as_written=shown.text.as_written,
        cautions=tuple(_cautions(shown)),
        tries=tuple(_tries(recipe, shown)),
        versions=tuple(_version(recipe, each, shown) for each in recipe.versions),
        baths=tuple(_bath(each) for each in baths),
        all_baths=f"{reverse('baths')}?{urlencode({'q': recipe.name})}",
        colour_ways=tuple(_colour_ways(shown, is_found=found is not None)),
        is_retired=recipe.is_retired,
    )


def state_of_version(version: Version) -> Chip:
    """Say whether a bath can be planned from it."""
    return _COMPLETE if version.is_complete else _INCOMPLETE


def _colour_ways(shown: Version, *, is_found: bool) -> Iterator[Link]:
    """Yield where its colour is tried: as swatches, on every base, by slider.

    One that was found for a colour has its trials beside that colour.

    Yields
    ------
    Link
        The ways; none from an incomplete version.
    """
    if not shown.is_complete:
        return
    mix = _mix(shown)
    if not is_found:
        trials = way_to("swatch-plan-new", kind="bracket", mix=mix)
        yield Link(words="Three trials", address=trials)
    yield Link(words="On other bases", address=reverse("carry", args=[shown.id]))
    yield Link(words="Mix it by hand", address=way_to("mix", mix=mix))


def _mix(shown: Version) -> str:
    """Return its dyes and depths as an address carries them."""
    return mix_text(
        tuple(
            (dose.dye_id, dose.depth_percent)
            for dose in shown.text.doses
            if dose.dye_id and dose.depth_percent
        )
    )


def _fact(recipe: recipe_shapes.RecipePage, shown: Version) -> str:
    by = f" by {shown.created_by}" if shown.created_by else ""
    parent = f", from version {shown.parent_number}" if shown.parent_number else ""
    was = f" Named {recipe.was_named} before." if recipe.was_named else ""
    retired = " Retired." if recipe.is_retired else ""
    at = moment(shown.created_at)
    return f"Version {shown.number}{parent}, written {at}{by}.{was}{retired}"


def _write_address(shown: Version) -> str:
    address = reverse("new-version", args=[shown.recipe_id])
    return f"{address}?{urlencode({'from': shown.number})}"


def _doses(text: RecipeText) -> tuple[DoseShown, ...]:
    chips = dye_chips([dose.dye_id for dose in text.doses if dose.dye_id])
    return tuple(
        DoseShown(
            name=dose.dye_name,
            address=reverse("dye", args=[dose.dye_id]) if dose.dye_id else "",
            chip=chips.get(dose.dye_id or 0, DyeChip()),
            depth=""
            if dose.depth_percent is None
            else amount_text(dose.depth_percent, "%"),
            words=dose.as_written,
        )
        for dose in text.doses
    )


def _total(text: RecipeText) -> str:
    depths = [dose.depth_percent for dose in text.doses if dose.depth_percent]
    return amount_text(sum(depths), "%") if len(depths) > 1 else ""


def _said(text: RecipeText) -> Iterator[Said]:
    yield Said(term="Liquor ratio", words=ratio_words(text.liquor_ratio))
    for helper in text.helpers:
        yield Said(term=helper.name, words=helper_words(helper))
    yield Said(term="Heat", words=heat_words(text))
    yield Said(term="The colour", words=PURPOSE_WORDS[text.purpose])
    yield Said(term="Ties", words=text.ties)
    yield Said(term="Stirring", words=text.stirring)
    yield Said(term="Look at 15 minutes", words=text.look_at_15)
    yield Said(term="Notes", words=text.notes)


def _curve_words(curve: Curve) -> str:
    """Return the minutes of a curve, to the top and in all."""
    way, whole = (
        amount_text(each, "min") for each in (curve.rise_min, curve.total_min)
    )
    return f"{way} to the top, {whole} from heat on to heat off."


def _cautions(shown: Version) -> Iterator[Caution]:
    if said := top_caution(shown.text.top_c):
        yield Caution(title="The boil comes first", text=said)
    for sentence in recipe_cautions(shown.id):
        yield Caution(title="Before it is dyed", text=sentence)


def _tries(recipe: recipe_shapes.RecipePage, shown: Version) -> Iterator[Said]:
    for each in recipe.tries:
        known = ", ".join(str(number) for number in each.versions)
        noun = "version" if len(each.versions) == 1 else "versions"
        is_this = shown.number in each.versions
        tail = "" if is_this else f"; version {shown.number} not yet"
        yield Said(term=each.base_name, words=f"{noun} {known}{tail}")


def _version(
    recipe: recipe_shapes.RecipePage, each: Version, shown: Version
) -> VersionShown:
    parents = {version.number: version for version in recipe.versions}
    parent = parents.get(each.parent_number or 0)
    changed = () if parent is None else changes(parent.text, each.text)
    return VersionShown(
        number=each.number,
        address=reverse("recipe-version", args=[recipe.id, each.number]),
        is_shown=each == shown,
        at=each.created_at,
        by=each.created_by,
        parent=each.parent_number,
        why=each.text.why_changed,
        changed=tuple(one.words for one in changed),
        state=state_of_version(each),
    )


def _bath(entry: BathEntry) -> BathRow:
    return BathRow(
        number=entry.number,
        address=reverse("bath", args=[entry.number]),
        day=day(entry.dyed_on),
        version=entry.version_number,
        base=entry.base_name,
        yarn=amount_text(entry.fibre_g, "g"),
        state=status_chip(entry.status),
    )
