"""The charge balance: the one pH at which a solution carries no charge.

Every acid family, water and the ions that take no part carry charge; how much
depends on the pH. Charge falls as pH rises, so there is one pH at which all of
it together is nothing, and halving a range finds it. How active the ions are
hangs on the ionic strength, which hangs on the pH: the two are settled in turn.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from shadewright.core.baths.acidity.ions import log_activity, shares
from shadewright.core.baths.acidity.warmth import debye_huckel_factor, pka_at, pkw_at
from shadewright.core.tables.acidity import AcidFamily
from shadewright.errors import NotConvergedError

_LEAST_PH, _MOST_PH = -2.0, 16.0
_HALVINGS = 50
_MOST_ROUNDS = 200
_SETTLED = 1e-12


@dataclass(frozen=True, kw_only=True)
class Solution:
    """What is in a litre: acid families, and the charge of all other ions."""

    mol_per_l: Mapping[AcidFamily, float]
    other_charge_mol_per_l: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Constants:
    """What holds at one temperature: pKa of each family, pKw, Debye and Hückel's A."""

    pka: Mapping[AcidFamily, tuple[float, ...]]
    pkw: float
    factor: float


@dataclass(frozen=True, kw_only=True)
class Settled:
    """A solution at rest: −log10 of the activity of H+, and its ionic strength."""

    ph: float
    ionic_strength: float


def constants_at(*, solution: Solution, temperature_c: float) -> Constants:
    """Return the constants of a solution at a temperature.

    Parameters
    ----------
    solution : Solution
        What is in it. [-]
    temperature_c : float
        Temperature; from 0 to 100. [°C]

    Returns
    -------
    Constants
        pKa of each family, pKw and the factor of the activities. [-]

    Raises
    ------
    OutOfRangeError
        If water is not liquid at that temperature.

    Notes
    -----
    See ``pka_at``, ``pkw_at`` and ``debye_huckel_factor``.

    Examples
    --------
    >>> round(constants_at(solution=Solution(mol_per_l={}), temperature_c=60.0).pkw, 2)
    13.03
    """
    return Constants(
        pka={
            family: pka_at(family=family, temperature_c=temperature_c)
            for family in solution.mol_per_l
        },
        pkw=pkw_at(temperature_c=temperature_c),
        factor=debye_huckel_factor(temperature_c=temperature_c),
    )


def settled(*, solution: Solution, constants: Constants) -> Settled:
    """Return the pH at which a solution carries no charge.

    0 = [H+] − [OH−] + other + Σ z_j c_j                        (6)

    I = ½ ( [H+] + [OH−] + |other| + Σ z_j² c_j )               (7)

    Parameters
    ----------
    solution : Solution
        What is in it. [-]
    constants : Constants
        What holds at its temperature. [-]

    Returns
    -------
    Settled
        pH and ionic strength. [-]

    Raises
    ------
    NotConvergedError
        If the ionic strength does not settle.

    Notes
    -----
    All other ions are counted with a charge of 1, also calcium. Source: the
    conservation of charge.

    Examples
    --------
    >>> from shadewright.core.tables.acidity import ACETATE
    >>> weak = Solution(mol_per_l={ACETATE: 0.1})
    >>> at_25 = constants_at(solution=weak, temperature_c=25.0)
    >>> round(settled(solution=weak, constants=at_25).ph, 2)
    2.88
    """
    strength = 0.0
    for _round in range(_MOST_ROUNDS):
        gammas = _log_gammas(strength, constants.factor)
        ph = _balanced_ph(solution, constants, gammas)
        ions = _ions(solution, constants, gammas, ph)
        found = sum(z * z * c for z, c in ions) / 2
        if abs(found - strength) <= _SETTLED * max(found, 1.0):
            return Settled(ph=ph, ionic_strength=found)
        strength = found
    raise NotConvergedError(name="The bath’s pH", steps=_MOST_ROUNDS)


def _log_gammas(strength: float, factor: float) -> dict[int, float]:
    """Return log10 γ of each charge that an ion here can have."""
    return {
        z: log_activity(charge=z, ionic_strength=strength, factor=factor)
        for z in (1, 0, -1, -2, -3)
    }


def _balanced_ph(
    solution: Solution, constants: Constants, gammas: Mapping[int, float]
) -> float:
    low, high = _LEAST_PH, _MOST_PH
    for _halving in range(_HALVINGS):
        middle = (low + high) / 2
        if sum(z * c for z, c in _ions(solution, constants, gammas, middle)) > 0:
            low = middle
        else:
            high = middle
    return low


def _ions(
    solution: Solution, constants: Constants, gammas: Mapping[int, float], ph: float
) -> list[tuple[int, float]]:
    """Return the charge of each kind of ion, and how much of it there is."""
    other = solution.other_charge_mol_per_l
    found = [
        (1, 10.0 ** (-ph - gammas[1])),
        (-1, 10.0 ** (ph - constants.pkw - gammas[-1])),
        (1 if other > 0 else -1, abs(other)),
    ]
    for family, whole in solution.mol_per_l.items():
        pka = constants.pka[family]
        charges = range(family.charge, family.charge - len(pka) - 1, -1)
        parts = shares(ph=ph, pka=pka, log_gamma=tuple(gammas[z] for z in charges))
        found += [(z, whole * part) for z, part in zip(charges, parts, strict=True)]
    return found
