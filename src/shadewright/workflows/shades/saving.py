"""Save what was found: a recipe for a colour, and how near it should come."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import count

from django.db import transaction
from django.db.models import QuerySet

from shadewright.core.colour import Lab, Light
from shadewright.core.recipes import Recipe
from shadewright.core.recipes.matching import USUAL_TOLERANCE
from shadewright.errors import MissingError
from shadewright.exchange.colour_text import on_screen
from shadewright.records import recipe_reads
from shadewright.records.models import Base, Bath, FoundFor, RecipeVersion
from shadewright.records.models import Recipe as RecipeRow
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.recipe_shapes import (
    DoseLine,
    RecipeText,
    Version,
    shaped_version,
)
from shadewright.workflows.recipes import version, write_recipe, write_version
from shadewright.workflows.shades.find_wishes import (
    USUAL_BATCH_G,
    USUAL_RATIO,
    AtShelf,
    at_shelf,
    palette_base,
)
from shadewright.workflows.shades.in_the_pot import in_the_pot
from shadewright.workflows.shades.palettes import PaletteNow, palette_or_refuse
from shadewright.workflows.shades.plan_practice import set_practice
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.shades.wanted import (
    MOST_NAME,
    CameFrom,
    Wanted,
    target_of,
)
from shadewright.workflows.stamps import Stamp


@dataclass(frozen=True, kw_only=True)
class FoundNow:
    """For which colour a version was found, and how near it should come on a base."""

    wanted: Wanted
    base_name: str
    lab: Lab
    difference: float
    expected: float
    within_90: float
    tolerance: float
    chance: float


@dataclass(frozen=True, kw_only=True)
class FoundRecipe:
    """A recipe, and the name and the colour that it was found for."""

    recipe_id: int
    number: int
    name: str
    wanted: str
    lab: Lab

    def is_for(self, wanted: Wanted) -> bool:
        """Tell whether it was found for a wanted colour, by its name or its Lab."""
        return self.wanted == wanted.name or self.lab == wanted.lab


@dataclass(frozen=True, kw_only=True)
class ToSave:
    """Doses on a base that are to become a recipe, and for which colour.

    ``parent_id`` is the version that they come from, ``like_id`` one whose acid,
    helpers and heat are taken; ``batch_g`` says how well the doses are measured.
    """

    doses: DyeDoses
    base_id: int
    wanted: Wanted | None = None
    name: str = ""
    tolerance: float = USUAL_TOLERANCE
    batch_g: float = USUAL_BATCH_G
    parent_id: int | None = None
    like_id: int | None = None

    @property
    def title(self) -> str:
        """The name that a new recipe gets."""
        named = self.name or ("" if self.wanted is None else self.wanted.name)
        return " ".join(named.split())


@transaction.atomic
def save_found(found: ToSave, *, stamp: Stamp) -> Version:
    """Save doses as a recipe: the next version of its parent, or a new one.

    Acid, helpers and heat are those of ``like_id``, else of the parent, else of what
    was dyed last on that base. With a wanted colour it is kept what the recipe was
    found for. A name that a found recipe bears gets a next version where it differs.
    """
    now = palette_or_refuse()
    base_name = palette_base(now.palette, found.base_id)
    at = at_shelf(now.palette, base_id=found.base_id, batch_g=found.batch_g)
    named = _named(found.doses, at)
    like = _like(found.like_id or found.parent_id, found.base_id)
    text = _text(named, at, like, _why(found.wanted, base_name))
    parent = found.parent_id or _found_before(found.title)
    if parent is None:
        made = write_recipe(name=_free(found.title), text=text, stamp=stamp)
    elif (before := version(parent)).text == text:
        made = before
    else:
        made = write_version(parent_id=parent, text=text, stamp=stamp)
    if found.wanted and not FoundFor.objects.filter(version_id=made.id).exists():
        target = target_of(found.wanted)
        told = in_the_pot(
            named,
            palette=now.palette,
            base=base_name,
            target=target,
            at=at,
            tolerance=found.tolerance,
        )
        _keep(made, now, base_name, found.wanted, told, found.tolerance)
    return made


def likes() -> list[tuple[str, str]]:
    """Return the newest complete version of each recipe, to take acid and heat from."""
    rows = _colourways().filter(recipe__is_retired=False).select_related("recipe")
    newest = {row.recipe_id: row for row in rows.order_by("number")}
    found = sorted(newest.values(), key=lambda row: row.recipe.name.casefold())
    return [(str(row.pk), f"{row.recipe.name}, version {row.number}") for row in found]


def recipes_found() -> tuple[FoundRecipe, ...]:
    """Return the newest version that was found of each recipe in use."""
    rows = FoundFor.objects.filter(version__recipe__is_retired=False)
    newest = {
        row.version.recipe_id: row
        for row in rows.select_related("version__recipe").order_by("version__number")
    }
    return tuple(
        FoundRecipe(
            recipe_id=recipe_id,
            number=row.version.number,
            name=row.version.recipe.name,
            wanted=row.name,
            lab=Lab(*row.labs["D65"]),
        )
        for recipe_id, row in newest.items()
    )


def found_for(version_id: int) -> FoundNow | None:
    """Return for which colour a version was found, or None."""
    row = FoundFor.objects.filter(version_id=version_id).first()
    if row is None:
        return None
    wanted = Wanted(
        name=row.name,
        read_by=ReadBy(row.read_by),
        labs={key: tuple(lab) for key, lab in row.labs.items()},
        spectrum=tuple(row.spectrum),
        came_from=CameFrom.SPECTRUM if row.spectrum else CameFrom.COLOUR,
        key=_key(row),
        base_id=Base.objects
        .filter(name=row.base_name)
        .values_list("pk", flat=True)
        .first(),
    )
    return FoundNow(
        wanted=wanted,
        base_name=row.base_name,
        lab=Lab(*row.foretold),
        difference=row.difference,
        expected=row.expected,
        within_90=row.within_90,
        tolerance=row.tolerance,
        chance=row.chance,
    )


def _key(row: FoundFor) -> str:
    """Return a colour as an address asks for it: spectrum, screen’s code or Lab."""
    if row.spectrum:
        return ",".join(f"{part:.4g}" for part in row.spectrum)
    light, a, b = row.labs[Light.D65]
    shown = on_screen((light, a, b))
    if row.read_by == ReadBy.EYE and shown.is_true:
        return shown.hex_code
    return f"{light:.2f}, {a:.2f}, {b:.2f}"


def _named(doses: DyeDoses, at: AtShelf) -> tuple[tuple[str, float], ...]:
    """Return doses by name; a dye that the palette does not know is refused."""
    names = {row.pk: name for name, row in at.dyes.items()}
    if not doses or any(dye_id not in names for dye_id, _depth in doses):
        raise MissingError(
            name="A dye of the palette",
            advice="Look for the recipe again.",
            argument="mix",
        )
    return tuple((names[dye_id], depth) for dye_id, depth in doses)


def _text(
    named: Sequence[tuple[str, float]], at: AtShelf, like: Version | None, why: str
) -> RecipeText:
    doses = tuple(
        DoseLine(dye_id=at.dyes[name].pk, dye_name=name, depth_percent=depth)
        for name, depth in named
    )
    return replace(
        _begun(doses) if like is None else like.text,
        doses=doses,
        notes="",
        as_written="",
        look_at_15="",
        why_changed=why,
    )


def _begun(doses: Sequence[DoseLine]) -> RecipeText:
    """Return the acid and heat that a studio without a recipe begins with."""
    depths = {dose.dye_id or 0: dose.depth_percent or 0.0 for dose in doses}
    return set_practice(None, liquor_ratio=USUAL_RATIO, depths=depths).text


def _why(wanted: Wanted | None, base_name: str) -> str:
    if wanted is None:
        return f"Mixed by eye on {base_name}"
    return f"Found for {wanted.name} on {base_name}"[:300]


def _like(version_id: int | None, base_id: int) -> Version | None:
    """Return the version whose acid, helpers and heat are taken."""
    if version_id is not None:
        return version(version_id)
    baths = Bath.objects.filter(
        base_id=base_id, is_swatch=False, version__in=_colourways()
    ).order_by("-dyed_on", "-id")
    dyed = baths.values_list("version_id", flat=True).first()
    newest = _colourways().order_by("-id").values_list("pk", flat=True).first()
    found = dyed or newest
    return None if found is None else shaped_version(recipe_reads.version_row(found))


def _colourways() -> QuerySet[RecipeVersion]:
    """Return every version that a bath can be planned from, but no set of swatches."""
    return RecipeVersion.objects.filter(recipe__swatch_plan=None, what_is_missing="")


def _found_before(title: str) -> int | None:
    """Return the newest version of a recipe of that name that was found, if any."""
    rows = RecipeVersion.objects.filter(
        recipe__name__iexact=title, recipe__is_retired=False, found_for__isnull=False
    )
    return rows.order_by("-number").values_list("pk", flat=True).first()


def _free(title: str) -> str:
    """Return a name that no recipe has: as it is, or with a number."""
    for number in count(1):
        tail = "" if number == 1 else f" {number}"
        name = f"{title[: MOST_NAME - len(tail)]}{tail}"
        if not RecipeRow.objects.filter(name__iexact=name).exists():
            return name
    raise AssertionError  # pragma: no cover - numbers do not end


def _keep(
    made: Version,
    now: PaletteNow,
    base_name: str,
    wanted: Wanted,
    told: Recipe,
    tolerance: float,
) -> None:
    FoundFor.objects.create(
        version_id=made.id,
        fit_id=now.fit_id,
        name=wanted.name[:MOST_NAME],
        base_name=base_name,
        read_by=wanted.read_by,
        labs=wanted.labs,
        spectrum=list(wanted.spectrum),
        foretold=list(told.lab),
        difference=told.de,
        expected=told.expected_de,
        within_90=told.within_90,
        tolerance=tolerance,
        chance=told.chance,
    )
