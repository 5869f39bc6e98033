"""A recipe's versions as frozen values: what they say, and what they lack."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from shadewright.core.baths import Leg
from shadewright.core.solutions.keeping import Purpose
from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Recipe,
    RecipeAuxiliary,
    RecipeDose,
    RecipeVersion,
)
from shadewright.records.models.recipes import AmountUnit, When
from shadewright.workflows.recipe_curves import stops_of

__all__ = [
    "AmountUnit",
    "DoseLine",
    "HelperLine",
    "RecipePage",
    "RecipeText",
    "Try",
    "Version",
    "When",
    "missing_in",
    "shaped_recipe",
    "shaped_version",
]


@dataclass(frozen=True, kw_only=True)
class DoseLine:
    """A dye and its depth; only words where an old recipe gives no depth."""

    dye_id: int | None = None
    dye_name: str = ""
    depth_percent: float | None = None
    as_written: str = ""

    @property
    def is_known(self) -> bool:
        """Whether the dose can be reckoned with."""
        return self.dye_id is not None and self.depth_percent is not None


@dataclass(frozen=True, kw_only=True)
class HelperLine:
    """An acid or another auxiliary: how much, counted how, and when.

    ``at_c`` is said where it goes in on the way up, and nowhere else.
    """

    auxiliary_id: int
    name: str = ""
    amount: float
    unit: AmountUnit = AmountUnit.ON_FIBRE
    when: When = When.AFTER_DYE
    at_c: float | None = None


@dataclass(frozen=True, kw_only=True)
class RecipeText:
    """All that a version says; ``stops`` are the legs of the curve before the last."""

    doses: tuple[DoseLine, ...]
    helpers: tuple[HelperLine, ...] = ()
    liquor_ratio: float | None = 30.0
    start_c: float | None = None
    rise_c_per_min: float | None = None
    top_c: float | None = None
    hold_min: float | None = None
    stops: tuple[Leg, ...] = ()
    purpose: Purpose = Purpose.USUAL
    ties: str = ""
    stirring: str = ""
    look_at_15: str = ""
    notes: str = ""
    as_written: str = ""
    why_changed: str = ""


@dataclass(frozen=True, kw_only=True)
class Version:
    """A version as it stands for good."""

    id: int
    recipe_id: int
    recipe_name: str
    number: int
    parent_number: int | None
    text: RecipeText
    what_is_missing: str
    created_at: datetime
    created_by: str

    @property
    def is_complete(self) -> bool:
        """Whether a bath can be planned from it."""
        return not self.what_is_missing


@dataclass(frozen=True, kw_only=True)
class Try:
    """A base that the recipe was dyed on, and with which versions."""

    base_name: str
    versions: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class RecipePage:
    """A recipe with all its versions, newest first, and where it was tried."""

    id: int
    name: str
    was_named: str
    is_retired: bool
    versions: tuple[Version, ...]
    tries: tuple[Try, ...] = ()

    @property
    def tried_on(self) -> tuple[str, ...]:
        """The bases that it was dyed on, by name."""
        return tuple(each.base_name for each in self.tries)

    @property
    def newest(self) -> Version:
        """The version that holds now."""
        return self.versions[0]


def missing_in(text: RecipeText) -> str:
    """Return what a text lacks before a bath can be planned; empty if nothing."""
    lacks = []
    if not text.doses:
        lacks.append("no dye is named")
    unknown = [
        dose.as_written or dose.dye_name for dose in text.doses if not dose.is_known
    ]
    if unknown:
        lacks.append(
            "no dye and depth in % for " + ", ".join(f"“{u}”" for u in unknown)
        )
    if text.liquor_ratio is None:
        lacks.append("no liquor ratio")
    return "; ".join(lacks)


def shaped_recipe(row: Recipe, tried: Iterable[tuple[int, str, int]]) -> RecipePage:
    """Return a recipe with all its versions."""
    versions = tuple(shaped_version(each) for each in row.versions.all())
    if not versions:
        raise NotFoundError(kind="recipe", key=str(row.pk))
    return RecipePage(
        id=row.pk,
        name=row.name,
        was_named=row.was_named,
        is_retired=row.is_retired,
        versions=versions,
        tries=tuple(_tries(row, tried)),
    )


def _tries(row: Recipe, tried: Iterable[tuple[int, str, int]]) -> Iterable[Try]:
    by_base: dict[str, list[int]] = {}
    for recipe_id, base_name, number in tried:
        if recipe_id == row.pk:
            by_base.setdefault(base_name, []).append(number)
    for base_name, numbers in by_base.items():
        yield Try(base_name=base_name, versions=tuple(sorted(numbers)))


def shaped_version(row: RecipeVersion) -> Version:
    """Return one version with all that it says."""
    parts = row.parts.all()
    return Version(
        id=row.pk,
        recipe_id=row.recipe_id,
        recipe_name=row.recipe.name,
        number=row.number,
        parent_number=None if row.parent is None else row.parent.number,
        text=RecipeText(
            doses=tuple(_dose(dose) for part in parts for dose in part.doses.all()),
            helpers=tuple(_helper(each) for each in row.auxiliaries.all()),
            liquor_ratio=row.liquor_ratio,
            start_c=row.start_c,
            rise_c_per_min=row.rise_c_per_min,
            top_c=row.top_c,
            hold_min=row.hold_min,
            stops=stops_of(row.curve),
            purpose=Purpose(row.purpose),
            ties=row.ties,
            stirring=row.stirring,
            look_at_15=row.look_at_15,
            notes=row.notes,
            as_written=row.as_written,
            why_changed=row.why_changed,
        ),
        what_is_missing=row.what_is_missing,
        created_at=row.created_at,
        created_by="" if row.created_by is None else row.created_by.name,
    )


def _dose(row: RecipeDose) -> DoseLine:
    return DoseLine(
        dye_id=row.dye_id,
        dye_name="" if row.dye is None else row.dye.name,
        depth_percent=row.depth_percent,
        as_written=row.as_written,
    )


def _helper(row: RecipeAuxiliary) -> HelperLine:
    return HelperLine(
        auxiliary_id=row.auxiliary_id,
        name=row.auxiliary.name,
        amount=row.amount,
        unit=AmountUnit(row.unit),
        when=When(row.when),
        at_c=row.at_c,
    )
