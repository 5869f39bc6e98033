"""Acids and acid-giving salts of the dye bath.

Molar masses are sums of the atomic weights of [ciaaw2021]_.

``corrosive_from_g_per_100ml`` is where a solution begins to burn skin:
acetic 25, formic 10, sulphuric 15 % by weight in the harmonised
classification of [clp2008]_, Annex VI (from memory); by volume the figures
differ by less than a tenth. It is here so that a caution can be shown. That a
weaker solution is harmless does not follow.

A vinegar's "5 %" is 5 g of acetic acid in 100 ml [fda525825]_.
"""

from dataclasses import dataclass
from typing import Final

from shadewright.core.tables.atoms import (
    CARBON_G_PER_MOL,
    HYDROGEN_G_PER_MOL,
    NITROGEN_G_PER_MOL,
    OXYGEN_G_PER_MOL,
    SULPHATE_G_PER_MOL,
    WATER_G_PER_MOL,
)


@dataclass(frozen=True, kw_only=True)
class Acid:
    """An acid as a studio buys it; ``key`` is how it is typed.

    ``strength_g_per_100ml`` is known where the name fixes it and None where
    the bottle's own label must say. ``is_offered`` marks what a default or a
    list may suggest: never sulphuric, glacial acetic or strong formic acid.
    """

    key: str
    name: str
    molar_mass_g_per_mol: float
    is_solid: bool = True
    strength_g_per_100ml: float | None = None
    corrosive_from_g_per_100ml: float | None = None
    is_offered: bool = True


def _molar_mass(carbon: int, hydrogen: int, oxygen: int, nitrogen: int = 0) -> float:
    """Return the molar mass of C, H, O, N in g/mol."""
    return (
        carbon * CARBON_G_PER_MOL
        + hydrogen * HYDROGEN_G_PER_MOL
        + oxygen * OXYGEN_G_PER_MOL
        + nitrogen * NITROGEN_G_PER_MOL
    )


CITRIC: Final = Acid(
    key="citric",
    name="anhydrous citric acid",
    molar_mass_g_per_mol=_molar_mass(6, 8, 7),
)
CITRIC_MONO: Final = Acid(
    key="citric-mono",
    name="citric acid monohydrate",
    molar_mass_g_per_mol=_molar_mass(6, 8, 7) + WATER_G_PER_MOL,
)
ACETIC: Final = Acid(
    key="acetic",
    name="acetic acid",
    molar_mass_g_per_mol=_molar_mass(2, 4, 2),
    is_solid=False,
    corrosive_from_g_per_100ml=25.0,
    is_offered=False,
)
VINEGAR5: Final = Acid(
    key="vinegar5",
    name="vinegar of 5 %",
    molar_mass_g_per_mol=_molar_mass(2, 4, 2),
    is_solid=False,
    strength_g_per_100ml=5.0,
    corrosive_from_g_per_100ml=25.0,
)
FORMIC: Final = Acid(
    key="formic",
    name="formic acid",
    molar_mass_g_per_mol=_molar_mass(1, 2, 2),
    is_solid=False,
    corrosive_from_g_per_100ml=10.0,
    is_offered=False,
)
SULPHURIC: Final = Acid(
    key="sulphuric",
    name="sulphuric acid",
    molar_mass_g_per_mol=2 * HYDROGEN_G_PER_MOL + SULPHATE_G_PER_MOL,
    is_solid=False,
    corrosive_from_g_per_100ml=15.0,
    is_offered=False,
)
AMMONIUM_SULPHATE: Final = Acid(
    key="ammonium-sulphate",
    name="ammonium sulphate",
    molar_mass_g_per_mol=_molar_mass(0, 8, 0, 2) + SULPHATE_G_PER_MOL,
)
AMMONIUM_ACETATE: Final = Acid(
    key="ammonium-acetate",
    name="ammonium acetate",
    molar_mass_g_per_mol=_molar_mass(2, 7, 2, 1),
)

ACIDS: Final = {
    acid.key: acid
    for acid in (
        CITRIC,
        CITRIC_MONO,
        ACETIC,
        VINEGAR5,
        FORMIC,
        SULPHURIC,
        AMMONIUM_SULPHATE,
        AMMONIUM_ACETATE,
    )
}
