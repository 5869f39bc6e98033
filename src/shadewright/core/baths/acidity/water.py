"""A bath of water and acid: its pH, how well that is known, and what it leaves out."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import fsum
from types import MappingProxyType
from typing import Final

from shadewright.core.baths.acidity.balance import Solution, constants_at, settled
from shadewright.core.baths.acidity.ions import MOST_IONIC_STRENGTH
from shadewright.core.quantities import (
    NO_BREAK,
    number_text,
    require_above_zero,
    require_between,
    require_mass,
    require_volume,
)
from shadewright.core.tables.acidity import (
    ACETATE,
    AMMONIA,
    AT_C,
    CARBONATE,
    CITRATE,
    FORMATE,
    MG_CACO3_PER_MEQ,
    SULPHATE,
    AcidFamily,
)
from shadewright.core.tables.acids import Acid

U_PH: Final = 0.2
MOST_ALKALINITY_MG_PER_L: Final = 2000.0
MOST_ACID_G_PER_L: Final = 200.0

WATER_ONLY: Final = "Water only, no fibre: the bath reads higher."
AMMONIA_LEAVES: Final = (
    "An ammonium salt turns more sour as it is heated in an open pot, since ammonia "
    "leaves it."
)
CARBONATE_STAYS: Final = (
    "The acid does not use up the water’s alkalinity, and the carbonate that stays is "
    "not in this sum: the number is too high."
)
TOO_STRONG: Final = (
    "So much acid is outside what the sum is made for: take the number as a guess."
)

_BRINGS: Final = MappingProxyType({
    "citric": {CITRATE: 1},
    "citric-mono": {CITRATE: 1},
    "acetic": {ACETATE: 1},
    "vinegar5": {ACETATE: 1},
    "formic": {FORMATE: 1},
    "sulphuric": {SULPHATE: 1},
    "ammonium-sulphate": {AMMONIA: 2, SULPHATE: 1},
    "ammonium-acetate": {AMMONIA: 1, ACETATE: 1},
})


@dataclass(frozen=True, kw_only=True)
class AcidInBath:
    """An acid that is in the bath, in grams of the pure acid."""

    acid: Acid
    pure_g: float


@dataclass(frozen=True, kw_only=True)
class Acidity:
    """The pH of water and acid; ``u_ph`` is None where ``why`` says it is a guess."""

    ph: float
    u_ph: float | None
    why: str
    note: str


def water_ph(
    *,
    acids: Sequence[AcidInBath],
    liquor_ml: float,
    alkalinity_mg_per_l: float = 0.0,
    temperature_c: float = AT_C,
) -> Acidity:
    """Return −log10 of the activity of H+ in water with acid, without any fibre.

    Parameters
    ----------
    acids : sequence of AcidInBath
        All acids of the bath, and what turns into acid; none is plain water. [-]
    liquor_ml : float
        All the liquid in the bath; above zero. [mL]
    alkalinity_mg_per_l : float
        Alkalinity of that water as calcium carbonate; 0 to 2000. [mg/L]
    temperature_c : float
        Temperature; from 0 to 100. [°C]

    Returns
    -------
    Acidity
        pH with its standard uncertainty and what it leaves out. [-]

    Raises
    ------
    OutOfRangeError
        If an amount or the temperature is out of range, or the acids together
        are above 200 g/L.
    NotConvergedError
        If the sum does not settle.

    Notes
    -----
    Alkalinity is counted as the charge of its calcium and sodium; its carbonate
    is taken to be driven off as gas, which holds while the pH is below the pKa
    of carbonic acid. The 0.2 are a judgement: measured acetate buffers lie within
    0.06, citrate buffers within 0.3, and no bath is as clean as these. Wool can
    bind 0.8 mmol of acid to the gram [steinhardt1940]_, so a real bath is higher.

    Examples
    --------
    >>> from shadewright.core.tables.acids import CITRIC
    >>> two = AcidInBath(acid=CITRIC, pure_g=2.0)
    >>> round(water_ph(acids=[two], liquor_ml=3000.0).ph, 2)
    2.89
    """
    require_volume(liquor_ml, name="Water", argument="water")
    require_alkalinity(alkalinity_mg_per_l)
    _require_dilute(acids, liquor_ml)
    solution = Solution(
        mol_per_l=_mol_per_l(acids, liquor_ml),
        other_charge_mol_per_l=alkalinity_mg_per_l / MG_CACO3_PER_MEQ / 1000,
    )
    constants = constants_at(solution=solution, temperature_c=temperature_c)
    found = settled(solution=solution, constants=constants)
    why = _why_a_guess(found.ph, found.ionic_strength, alkalinity_mg_per_l)
    has_ammonia = AMMONIA in solution.mol_per_l
    said = (WATER_ONLY, why, AMMONIA_LEAVES if has_ammonia else "")
    return Acidity(
        ph=found.ph,
        u_ph=None if why else U_PH,
        why=why,
        note=" ".join(each for each in said if each),
    )


def ph_text(*, acidity: Acidity) -> str:
    """Return a pH for people: one decimal and its spread, or that it is a guess.

    Parameters
    ----------
    acidity : Acidity
        What was reckoned. [-]

    Returns
    -------
    str
        As "2.9 ± 0.2"; as "above 6" where carbonate stays, and as "about 0" where
        it is only a guess. [-]

    Notes
    -----
    Half a tenth more would promise what the sum cannot keep. Where carbonate stays,
    the sum without it may be several pH too high; that the bath is above the pKa of
    carbonic acid is all that it says.

    Examples
    --------
    >>> found = Acidity(ph=2.891, u_ph=0.2, why="", note="")
    >>> ph_text(acidity=found).replace(NO_BREAK, " ")
    '2.9 ± 0.2'
    """
    if acidity.why == CARBONATE_STAYS:
        return f"above {number_text(CARBONATE.pka[0], digits=1)}"
    if acidity.u_ph is None:
        return f"about {number_text(round(acidity.ph), digits=2)}"
    return f"{acidity.ph:.1f}{NO_BREAK}±{NO_BREAK}{acidity.u_ph:.1f}"


def require_alkalinity(
    value_mg_per_l: float,
    *,
    name: str = "Alkalinity",
    argument: str = "alkalinity_mg_per_l",
) -> float:
    """Return an alkalinity from 0 to 2000 mg/L as calcium carbonate.

    Parameters
    ----------
    value_mg_per_l : float
        The alkalinity. [mg/L]
    name : str
        The quantity in the dyer's words, capitalised. [-]
    argument : str
        Name of the parameter at fault. [-]

    Returns
    -------
    float
        The alkalinity, unchanged. [mg/L]

    Raises
    ------
    OutOfRangeError
        If it lies outside.

    Notes
    -----
    Waters above 500 are rare; 2000 is a guard.

    Examples
    --------
    >>> require_alkalinity(150.0)
    150.0
    """
    return require_between(
        value_mg_per_l,
        least=0.0,
        most=MOST_ALKALINITY_MG_PER_L,
        unit="mg/l",
        name=name,
        argument=argument,
    )


def families_of(acid: Acid) -> Mapping[AcidFamily, int]:
    """Return what one molecule of an acid, or of a salt that gives acid, brings.

    Parameters
    ----------
    acid : Acid
        The acid as it is bought. [-]

    Returns
    -------
    mapping of AcidFamily to int
        How many of each family. [-]

    Notes
    -----
    By their formulas.

    Examples
    --------
    >>> from shadewright.core.tables.acids import AMMONIUM_SULPHATE
    >>> {f.name: count for f, count in families_of(AMMONIUM_SULPHATE).items()}
    {'ammonia': 2, 'sulphate': 1}
    """
    return _BRINGS[acid.key]


def _mol_per_l(
    acids: Sequence[AcidInBath], liquor_ml: float
) -> dict[AcidFamily, float]:
    moles: defaultdict[AcidFamily, float] = defaultdict(float)
    for each in acids:
        for family, count in families_of(each.acid).items():
            moles[family] += count * each.pure_g / each.acid.molar_mass_g_per_mol
    return {family: 1000 * amount / liquor_ml for family, amount in moles.items()}


def _require_dilute(acids: Sequence[AcidInBath], liquor_ml: float) -> None:
    for each in acids:
        require_mass(each.pure_g, name=f"Amount of {each.acid.name}", argument="acid")
    if not acids:
        return
    require_above_zero(
        1000 * fsum(each.pure_g for each in acids) / liquor_ml,
        most=MOST_ACID_G_PER_L,
        unit="g/l",
        name="All acid together",
        argument="acid",
        advice="A bath holds a few grams to the litre.",
    )


def _why_a_guess(ph: float, strength: float, alkalinity_mg_per_l: float) -> str:
    """Say why the number is only a guess, or nothing where the sum holds."""
    if alkalinity_mg_per_l and ph > CARBONATE.pka[0]:
        return CARBONATE_STAYS
    return TOO_STRONG if strength > MOST_IONIC_STRENGTH else ""
