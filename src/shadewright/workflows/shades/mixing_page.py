"""A mix on a base as the palette foretells it, its dyes by their number."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from operator import attrgetter

from shadewright.core.colour import Lab, Light
from shadewright.core.mixing import Evidence, Mix, Palette, told_mixes
from shadewright.core.mixing.asking import lab_under
from shadewright.core.mixing.spreads import expected_to
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.errors import NotFoundError
from shadewright.records.models import Base, Dye
from shadewright.workflows.choices import Choice
from shadewright.workflows.shades.swatches import Doses, DyeDoses

SHOWN_UNDER = (Light.D65, Light.A, Light.LED_B3)
"""Lights under which a colour foretold is shown: window, lamp and shop. [-]"""


@dataclass(frozen=True, kw_only=True)
class DyeInMix:
    """A dye of a mix; ``deepest_percent`` is its deepest swatch, 0 where none is."""

    id: int
    name: str
    depth_percent: float
    deepest_percent: float = 0.0

    @property
    def is_known(self) -> bool:
        """Whether the palette holds it."""
        return self.deepest_percent > 0.0


@dataclass(frozen=True, kw_only=True)
class ToldMix:
    """A mix as it is foretold: Lab by light, what it is usually off, nine in ten.

    ``expected_to_target`` is the difference to a target to be looked for in the pot,
    None without one.
    """

    labs: Mapping[Light, Lab]
    expected: float
    within_90: float
    evidence: Evidence
    reflectance: tuple[float, ...]
    expected_to_target: float | None = None

    @property
    def lab(self) -> Lab:
        """The colour in daylight (D65/10°)."""
        return self.labs[Light.D65]


@dataclass(frozen=True, kw_only=True)
class MixNow:
    """A mix on a base, what is foretold of it, and what else could be chosen.

    ``why_not`` says why nothing is foretold, ``own_lots`` how the studio's own lots
    widen what is.
    """

    base: Choice
    dyes: tuple[DyeInMix, ...]
    bases: tuple[Choice, ...]
    addable: tuple[Choice, ...]
    told: ToldMix | None
    why_not: str = ""
    own_lots: str = ""

    @property
    def doses(self) -> Doses:
        """Its dyes by name. [%]."""
        return tuple((dye.name, dye.depth_percent) for dye in self.dyes)


def mix_now(
    palette: Palette,
    *,
    base_id: int | None,
    doses: DyeDoses,
    target: Lab | None = None,
) -> MixNow:
    """Return a mix on a base; the base of most swatches where none is named."""
    bases = palette_bases(palette)
    dyes = named_dyes(palette, doses)
    base = _chosen(bases, base_id, palette)
    why_not = _why_not(base, bases, dyes)
    named = tuple((dye.name, dye.depth_percent) for dye in dyes)
    told = None
    if not why_not:
        told = told_mix(palette, base=base.words, doses=named, target=target)
    return MixNow(
        base=base,
        dyes=dyes,
        bases=bases if base in bases else (*bases, base),
        addable=_addable(palette, dyes),
        told=told,
        why_not=why_not,
    )


def told_mix(
    palette: Palette, *, base: str, doses: Doses, target: Lab | None = None
) -> ToldMix:
    """Return what is foretold of doses by name, their own errors included."""
    return told_row(palette, base=base, rows=(doses,), target=target)[0]


def told_row(
    palette: Palette,
    *,
    base: str,
    rows: Sequence[Doses],
    target: Lab | None = None,
) -> tuple[ToldMix, ...]:
    """Return what is foretold of several mixes on a base."""
    import numpy as np

    mixes = [
        Mix(base=base, doses=tuple(dose for dose in doses if dose[1])) for doses in rows
    ]
    found = told_mixes(mixes, palette=palette, dose_error=DOSE_ERROR)
    under = {light: lab_under(found.reflectance, light=light) for light in SHOWN_UNDER}
    away = [None] * len(mixes)
    if target is not None:
        aim = np.array(target)
        away = expected_to(found.lab, found.covariance, aim).tolist()
    return tuple(
        ToldMix(
            labs={light: Lab(*labs[place].tolist()) for light, labs in under.items()},
            expected=float(found.expected[place]),
            within_90=float(found.de_90[place]),
            evidence=found.evidence[place],
            reflectance=tuple(found.reflectance[place].tolist()),
            expected_to_target=away[place],
        )
        for place in range(len(mixes))
    )


def palette_bases(palette: Palette) -> tuple[Choice, ...]:
    """Return the bases that the palette holds, the one of most swatches first.

    Those that are retired stand last.
    """
    rows = {row.name: row for row in Base.objects.filter(name__in=palette.names.bases)}
    found = [rows[name] for name in palette.names.bases if name in rows]
    found.sort(key=attrgetter("is_retired"))
    return tuple(Choice(id=row.pk, words=row.name) for row in found)


def palette_dyes(palette: Palette) -> tuple[Choice, ...]:
    """Return the dyes in use that the palette holds, by name."""
    rows = Dye.objects.filter(name__in=palette.names.dyes, is_retired=False)
    return tuple(Choice(id=row.pk, words=row.name) for row in rows.order_by("name"))


def named_dyes(palette: Palette, doses: DyeDoses) -> tuple[DyeInMix, ...]:
    """Return the dyes of a mix with their names and their deepest swatches."""
    rows = Dye.objects.in_bulk([dye_id for dye_id, _depth in doses])
    deepest = {
        name: most
        for name, (_least, most) in zip(palette.names.dyes, palette.depths, strict=True)
    }
    found = []
    for dye_id, depth in doses:
        if dye_id not in rows:
            raise NotFoundError(kind="dye", key=str(dye_id), argument="mix")
        name = rows[dye_id].name
        found.append(
            DyeInMix(
                id=dye_id,
                name=name,
                depth_percent=depth,
                deepest_percent=deepest.get(name, 0.0),
            )
        )
    return tuple(found)


def _chosen(bases: tuple[Choice, ...], base_id: int | None, palette: Palette) -> Choice:
    if base_id is None:
        if bases:
            return bases[0]
        raise NotFoundError(kind="base", key=palette.names.bases[0], argument="base")
    row = Base.objects.filter(pk=base_id).first()
    if row is None:
        raise NotFoundError(kind="base", key=str(base_id), argument="base")
    return Choice(id=row.pk, words=row.name)


def _why_not(
    base: Choice, bases: tuple[Choice, ...], dyes: tuple[DyeInMix, ...]
) -> str:
    if base not in bases:
        return (
            f"No swatch on {base.words} was read yet, so nothing can be foretold on it."
        )
    unknown = [dye.name for dye in dyes if not dye.is_known]
    if unknown:
        return (
            f"No swatch of {' and '.join(unknown)} was read yet, so the colour of this "
            "mix cannot be foretold."
        )
    return ""


def _addable(palette: Palette, dyes: tuple[DyeInMix, ...]) -> tuple[Choice, ...]:
    taken = {dye.id for dye in dyes}
    return tuple(each for each in palette_dyes(palette) if each.id not in taken)
