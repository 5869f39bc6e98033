"""Glauber's salt: sodium sulphate, sold dry or as crystals.

The dry powder is anhydrous, Na2SO4. The crystals are the decahydrate,
Na2SO4·10H2O, and more than half of their weight is water: a recipe must say
which of the two it means. Molar masses are sums of the atomic weights of
[ciaaw2021]_.
"""

from dataclasses import dataclass
from typing import Final

from shadewright.core.tables.atoms import (
    SODIUM_G_PER_MOL,
    SULPHATE_G_PER_MOL,
    WATER_G_PER_MOL,
)


@dataclass(frozen=True, kw_only=True)
class Salt:
    """A form of Glauber's salt; ``key`` is how it is typed."""

    key: str
    name: str
    molar_mass_g_per_mol: float


GLAUBER_ANHYDROUS: Final = Salt(
    key="glauber-anhydrous",
    name="anhydrous Glauber’s salt",
    molar_mass_g_per_mol=2 * SODIUM_G_PER_MOL + SULPHATE_G_PER_MOL,
)
GLAUBER_DECAHYDRATE: Final = Salt(
    key="glauber-decahydrate",
    name="Glauber’s salt crystals",
    molar_mass_g_per_mol=(
        2 * SODIUM_G_PER_MOL + SULPHATE_G_PER_MOL + 10 * WATER_G_PER_MOL
    ),
)

SALTS: Final = {salt.key: salt for salt in (GLAUBER_ANHYDROUS, GLAUBER_DECAHYDRATE)}
