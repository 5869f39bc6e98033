"""What the charge balance of an acid bath rests on: constants as published.

Dissociation constants at 25 °C and no salt, with the enthalpies that carry
them to other temperatures, are those of [goldberg2002]_ (from memory). Formic
acid is not in that paper: its constant is of [crc2016]_, its enthalpy the
difference of two values of [wagman1982]_ (both from memory).

Water's own constant is the formula of [marshall1981]_ (eq. 4), its dielectric
constant that of [malmberg1956]_, the factor of the Debye-Hückel limiting law
that of [robinson1959]_ (all from memory, and all checked against printed
tables in the tests). Davies' own term 0.3 I is from [davies1962]_ (from memory).
"""

from dataclasses import dataclass
from typing import Final

from shadewright.core.tables.atoms import (
    CALCIUM_G_PER_MOL,
    CARBON_G_PER_MOL,
    HYDROGEN_G_PER_MOL,
    OXYGEN_G_PER_MOL,
    SODIUM_G_PER_MOL,
)


@dataclass(frozen=True, kw_only=True)
class AcidFamily:
    """An acid with all that it turns into as its protons leave, one by one.

    ``charge`` is that of the form which holds them all; each step has its pKa
    at 25 °C and the enthalpy that it takes.
    """

    name: str
    charge: int
    pka: tuple[float, ...]
    enthalpy_kj_per_mol: tuple[float, ...]


ACETATE: Final = AcidFamily(
    name="acetate", charge=0, pka=(4.756,), enthalpy_kj_per_mol=(-0.41,)
)
CITRATE: Final = AcidFamily(
    name="citrate",
    charge=0,
    pka=(3.128, 4.761, 6.396),
    enthalpy_kj_per_mol=(4.07, 2.23, -3.38),
)
FORMATE: Final = AcidFamily(
    name="formate", charge=0, pka=(3.751,), enthalpy_kj_per_mol=(-0.12,)
)
SULPHATE: Final = AcidFamily(
    name="sulphate", charge=-1, pka=(1.987,), enthalpy_kj_per_mol=(-22.4,)
)
AMMONIA: Final = AcidFamily(
    name="ammonia", charge=1, pka=(9.245,), enthalpy_kj_per_mol=(51.95,)
)
CARBONATE: Final = AcidFamily(
    name="carbonate", charge=0, pka=(6.351, 10.329), enthalpy_kj_per_mol=(9.15, 14.70)
)

AT_C: Final = 25.0
GAS_CONSTANT_KJ_PER_MOL_K: Final = 8.314463e-3
ZERO_C_IN_K: Final = 273.15

MARSHALL_A_TO_G: Final = (
    -4.098,
    -3245.2,
    2.2362e5,
    -3.984e7,
    13.957,
    -1262.3,
    8.5641e5,
)
MALMBERG: Final = (87.740, -0.40008, 9.398e-4, -1.410e-6)
DEBYE_HUCKEL: Final = 1.8246e6
DAVIES: Final = 0.3

MG_CACO3_PER_MEQ: Final = (
    CALCIUM_G_PER_MOL + CARBON_G_PER_MOL + 3 * OXYGEN_G_PER_MOL
) / 2
BICARBONATE_G_PER_MOL: Final = (
    SODIUM_G_PER_MOL + HYDROGEN_G_PER_MOL + CARBON_G_PER_MOL + 3 * OXYGEN_G_PER_MOL
)
