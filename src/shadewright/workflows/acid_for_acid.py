"""One acid for another: what to take, on each basis, and what is commonly said."""

from dataclasses import dataclass

from shadewright.core.baths import acid_cautions, liquid_volume_ml
from shadewright.core.baths.acidity import Said, commonly_said, equivalent_g
from shadewright.core.tables.acids import ACETIC, CITRIC, CITRIC_MONO, VINEGAR5, Acid

BASES_PH = (4.0, 4.5, 5.0, 5.5, None)
HANDY_PH = 4.5
_VINEGAR_PERCENT = 5.0


@dataclass(frozen=True, kw_only=True)
class InStead:
    """What stands for an acid on one basis; ``by_ph`` is None for all its acid."""

    by_ph: float | None
    vinegar_ml: float
    citric_g: float
    citric_mono_g: float


@dataclass(frozen=True, kw_only=True)
class AcidForAcid:
    """The answer on every basis, what is commonly said, and what to mind."""

    rows: tuple[InStead, ...]
    said: Said | None
    cautions: tuple[str, ...]


def vinegar_for(*, volume_ml: float, strength_g_per_100ml: float) -> AcidForAcid:
    """Return what stands for a vinegar."""
    pure_g = volume_ml * strength_g_per_100ml / 100
    return _answer(VINEGAR5, pure_g, strength_g_per_100ml)


def citric_for(*, mass_g: float, is_monohydrate: bool = False) -> AcidForAcid:
    """Return what stands for citric acid, dry or as crystals with water."""
    return _answer(CITRIC_MONO if is_monohydrate else CITRIC, mass_g, None)


def _answer(have: Acid, pure_g: float, strength: float | None) -> AcidForAcid:
    want = CITRIC if have is VINEGAR5 else VINEGAR5
    acid = ACETIC if have is VINEGAR5 else have
    return AcidForAcid(
        rows=tuple(_on(have, pure_g, by_ph) for by_ph in BASES_PH),
        said=commonly_said(pure_g=pure_g, have=have, want=want),
        cautions=acid_cautions(acid=acid, strength_g_per_100ml=strength),
    )


def _on(have: Acid, pure_g: float, by_ph: float | None) -> InStead:
    acetic, citric, mono = (
        equivalent_g(pure_g=pure_g, have=have, want=want, by_ph=by_ph)
        for want in (VINEGAR5, CITRIC, CITRIC_MONO)
    )
    return InStead(
        by_ph=by_ph,
        vinegar_ml=liquid_volume_ml(
            pure_mass_g=acetic, strength_g_per_100ml=_VINEGAR_PERCENT
        ),
        citric_g=citric,
        citric_mono_g=mono,
    )
