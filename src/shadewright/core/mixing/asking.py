"""What a palette says of mixes: their colour, and how far it may be off."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.arranging import dyed_of
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.posterior.predicting import foretold
from shadewright.core.mixing.spreads import as_lots_differ, spread_of
from shadewright.core.mixing.swatches import LIGHTS, Evidence, Mix, seen_under_lights
from shadewright.errors import NotFoundError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, eq=False)
class Told:
    """Mixes as a palette foretells them, (n, …) each.

    ``lab`` is D65/10°, with ``covariance``, of which ``lot`` differs from lot to lot
    by the day and the doses; ``expected`` and ``de_90`` are CIEDE2000: the mean error
    and the one not passed in 90 % of cases; ``evidence`` is the poorest kind behind
    each.
    """

    lab: "Floats"
    covariance: "Floats"
    lot: "Floats"
    reflectance: "Floats"
    expected: "Floats"
    de_90: "Floats"
    evidence: tuple[Evidence, ...]


def told_mixes(
    mixes: Sequence[Mix], *, palette: Palette, dose_error: float = 0.0
) -> Told:
    """Return the colour of mixes with their spread.

    Parameters
    ----------
    mixes : sequence of Mix
        Base, doses and day; a day that the palette does not know is a new one. [%]
    palette : Palette
        What was learned. [-]
    dose_error : float
        Relative standard error of doses still to be measured; 0 for exact ones. [1]

    Returns
    -------
    Told
        Colour, spectrum, errors and evidence. [1]

    Raises
    ------
    NotFoundError
        If a base or a dye is not in the palette.
    """
    require_known(mixes, palette)
    found = foretold(
        dyed_of(mixes, palette.names),
        palette.known,
        seen_under_lights(*LIGHTS[:1]),
        width=palette.width,
        dose_error=dose_error,
    )
    covariance = as_lots_differ(found.covariance, found.lot, repeats=palette.repeats)
    spread = spread_of(found.seen, covariance)
    return Told(
        lab=found.seen,
        covariance=covariance,
        lot=found.lot,
        reflectance=found.reflectance,
        expected=spread.expected,
        de_90=spread.de_90,
        evidence=tuple(poorest(each, palette) for each in mixes),
    )


def lab_under(reflectance: "Floats", *, light: Light) -> "Floats":
    """Return Lab of spectra under one light, for the 10° observer.

    Parameters
    ----------
    reflectance : ndarray, shape (n, 31)
        Reflectance from 400 to 700 nm. [1]
    light : Light
        The light. [-]

    Returns
    -------
    ndarray, shape (n, 3)
        L*, a*, b*. [1]
    """
    from shadewright.core.mixing.model.seeing import as_seen

    return as_seen(reflectance, seen_under_lights(light))


def poorest(mix: Mix, palette: Palette) -> Evidence:
    """Return the poorest kind of evidence behind a mix.

    Parameters
    ----------
    mix : Mix
        Base and doses. [%]
    palette : Palette
        What was learned. [-]

    Returns
    -------
    Evidence
        Of the dye that is known worst; of bare yarn the best of all dyes. [-]
    """
    places = {dye: place for place, dye in enumerate(palette.names.dyes)}
    kinds = [palette.evidence[places[dye]] for dye, _depth in mix.doses]
    if not kinds:
        return max(palette.evidence, key=lambda kind: kind.rank)
    return min(kinds, key=lambda kind: kind.rank)


def require_known(mixes: Sequence[Mix], palette: Palette) -> None:
    """Refuse mixes of a base or a dye that the palette does not hold.

    Parameters
    ----------
    mixes : sequence of Mix
        Base and doses. [%]
    palette : Palette
        What was learned. [-]

    Raises
    ------
    NotFoundError
        If a base or a dye is not in the palette.
    """
    for mix in mixes:
        if mix.base not in palette.names.bases:
            raise NotFoundError(
                kind="base in this palette",
                key=mix.base,
                advice=f"It holds {', '.join(palette.names.bases)}.",
                argument="base",
            )
        for dye, _depth in mix.doses:
            if dye not in palette.names.dyes:
                raise NotFoundError(
                    kind="dye in this palette",
                    key=dye,
                    advice=f"It holds {', '.join(palette.names.dyes)}.",
                    argument="doses",
                )
