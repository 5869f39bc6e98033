"""One recipe on every base: what it gave or should give, and carried to another."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from shadewright.core.colour import ciede2000
from shadewright.core.mixing import Palette
from shadewright.core.recipes import Recipe, carried
from shadewright.core.recipes.rounding import as_written
from shadewright.core.recipes.wishes import Wishes
from shadewright.errors import ConflictError, MissingError, NotFoundError
from shadewright.records import shade_reads
from shadewright.records.models import Base
from shadewright.workflows.choices import Choice, bases_in_use
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.recipes import version
from shadewright.workflows.shades.mixing_page import (
    DyeInMix,
    ToldMix,
    named_dyes,
    palette_bases,
    told_mix,
)
from shadewright.workflows.shades.palettes import PaletteNow
from shadewright.workflows.shades.swatches import Doses
from shadewright.workflows.shades.wanted import Wanted, wanted_of_lot

_MOST_DEPTH_PERCENT = 20.0
_LOTS_LOOKED_AT = 3


@dataclass(frozen=True, kw_only=True)
class OnBase:
    """A recipe on one base.

    ``told`` is None where the palette does not hold the base; ``read`` is the colour
    of the newest lot that was read, ``lots`` how many were dyed. ``guessed`` names the
    dyes of which no swatch was dyed on it: they are guessed from the other bases.
    """

    base: Choice
    told: ToldMix | None
    read: Wanted | None
    lots: int
    guessed: tuple[str, ...]
    is_made_for: bool

    @property
    def is_tested(self) -> bool:
        """Whether a lot of this version came out on it."""
        return self.lots > 0


@dataclass(frozen=True, kw_only=True)
class CarriedNow:
    """A recipe corrected for another base, beside what it is without that.

    ``before`` and ``after`` are CIEDE2000 to the colour on the base that it was made
    for; ``expected`` is what to look for in the pot, ``chance`` that it passes there.
    """

    to: OnBase
    doses: tuple[DyeInMix, ...]
    told: ToldMix
    before: float
    after: float
    expected: float
    within_90: float
    chance: float


@dataclass(frozen=True, kw_only=True)
class CarryNow:
    """A version on every base; ``why_not`` says why nothing is foretold of it."""

    version: Version
    dyes: tuple[DyeInMix, ...]
    rows: tuple[OnBase, ...]
    why_not: str

    @property
    def made_for(self) -> OnBase:
        """The base that it was made for."""
        return next(row for row in self.rows if row.is_made_for)

    @property
    def open_to(self) -> tuple[Choice, ...]:
        """The bases that it could be carried to."""
        rows = (row for row in self.rows if row.told and not row.is_made_for)
        return () if self.why_not else tuple(row.base for row in rows)


def carry_now(
    now: PaletteNow, *, version_id: int, made_for_id: int | None = None
) -> CarryNow:
    """Return a version on every base in use, the one it was made for first."""
    shown = version(version_id)
    dyes = _dyes(now.palette, shown)
    why_not = _why_not(shown, dyes)
    lots = shade_reads.lots_of_version(version_id)
    known = palette_bases(now.palette)
    made_for = _made_for(made_for_id, version_id, lots, known)
    swatches = _dyed_on(now)
    rows = []
    for base in _every_base(made_for, known):
        told = None
        if base in known and not why_not:
            told = told_mix(now.palette, base=base.words, doses=_named(dyes))
        numbers = lots.get(base.words, ())
        rows.append(
            OnBase(
                base=base,
                told=told,
                read=_read(numbers),
                lots=len(numbers),
                guessed=_guessed(dyes, swatches.get(base.words, ())) if told else (),
                is_made_for=base == made_for,
            )
        )
    return CarryNow(version=shown, dyes=dyes, rows=tuple(rows), why_not=why_not)


def carried_now(now: PaletteNow, shown: CarryNow, *, to_id: int) -> CarriedNow:
    """Return a recipe corrected for a base, so that its colour stays as it was."""
    row = next((each for each in shown.rows if each.base.id == to_id), None)
    if row is None:
        raise NotFoundError(kind="base", key=str(to_id), argument="to")
    origin = shown.made_for.told
    if row.told is None or origin is None:
        raise MissingError(
            name=f"A swatch on {row.base.words}",
            advice="Dye and read one there first; until then nothing is foretold.",
            argument="to",
        )
    found = _carried(now.palette, shown, to=row.base.words)
    doses = _rounded(found.doses, shown.dyes)
    told = told_mix(now.palette, base=row.base.words, doses=_named(doses))
    return CarriedNow(
        to=row,
        doses=doses,
        told=told,
        before=ciede2000(origin.lab, row.told.lab),
        after=ciede2000(origin.lab, told.lab),
        expected=found.expected_de,
        within_90=found.within_90,
        chance=found.chance,
    )


def _carried(palette: Palette, shown: CarryNow, *, to: str) -> Recipe:
    return carried(
        palette,
        doses=_named(shown.dyes),
        from_base=shown.made_for.base.words,
        to_base=to,
        wishes=Wishes(most_depth_percent=_MOST_DEPTH_PERCENT),
    )


def _dyes(palette: Palette, shown: Version) -> tuple[DyeInMix, ...]:
    known = tuple(
        (dose.dye_id, dose.depth_percent)
        for dose in shown.text.doses
        if dose.dye_id is not None and dose.depth_percent
    )
    return named_dyes(palette, known)


def _why_not(shown: Version, dyes: tuple[DyeInMix, ...]) -> str:
    if not shown.is_complete:
        return f"This version is incomplete: {shown.what_is_missing}."
    unknown = [dye.name for dye in dyes if not dye.is_known]
    if unknown:
        return (
            f"No swatch of {' and '.join(unknown)} was read yet, so no colour of this "
            "recipe can be foretold."
        )
    return ""


def _made_for(
    asked: int | None,
    version_id: int,
    lots: Mapping[str, tuple[str, ...]],
    known: tuple[Choice, ...],
) -> Choice:
    """Return the base that a version was made for.

    The one that is asked for, or that it was found for, or of most lots, those that the
    palette holds first, or of most swatches.
    """
    if asked is not None:
        row = Base.objects.filter(pk=asked).first()
        if row is None:
            raise NotFoundError(kind="base", key=str(asked), argument="from")
        return Choice(id=row.pk, words=row.name)
    told = {each.words for each in known}
    names = [
        shade_reads.base_found_for(version_id),
        *sorted(lots, key=lambda name: (name not in told, -len(lots[name]))),
    ]
    rows = {each.words: each for each in (*known, *bases_in_use())}
    found = next((rows[name] for name in names if name in rows), None)
    if found is not None:
        return found
    if not known:
        raise ConflictError(why="No base of the palette stands in the catalogue.")
    return known[0]


def _every_base(made_for: Choice, known: tuple[Choice, ...]) -> tuple[Choice, ...]:
    return tuple(dict.fromkeys((made_for, *known, *bases_in_use())))


def _read(numbers: tuple[str, ...]) -> Wanted | None:
    """Return the colour of the newest lot that has one."""
    for number in numbers[:_LOTS_LOOKED_AT]:
        try:
            return wanted_of_lot(number)
        except MissingError:
            continue
    return None


def _dyed_on(now: PaletteNow) -> dict[str, set[str]]:
    """Return the dyes that were dyed on each base, by the palette’s evidence."""
    found: dict[str, set[str]] = {}
    for each in now.given:
        base, doses = str(each["base"]), each["doses"]
        if isinstance(doses, list):
            found.setdefault(base, set()).update(str(dye) for dye, _depth in doses)
    return found


def _guessed(dyes: tuple[DyeInMix, ...], dyed: Collection[str]) -> tuple[str, ...]:
    return tuple(dye.name for dye in dyes if dye.name not in dyed)


def _named(dyes: tuple[DyeInMix, ...]) -> Doses:
    return tuple((dye.name, dye.depth_percent) for dye in dyes)


def _rounded(doses: Doses, dyes: tuple[DyeInMix, ...]) -> tuple[DyeInMix, ...]:
    """Return doses as they are written, dyes at nothing left out."""
    depths = dict(doses)
    return tuple(
        replace(dye, depth_percent=as_written(depths[dye.name]))
        for dye in dyes
        if depths.get(dye.name)
    )
