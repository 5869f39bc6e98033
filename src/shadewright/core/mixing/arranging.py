"""Swatches put in order: names to places, readings to arrays, like beside like."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.model.entries import Dyed
from shadewright.core.mixing.model.seeing import SPECTRUM, Seen, as_seen
from shadewright.core.mixing.posterior.weighing import ReadSwatches
from shadewright.core.mixing.swatches import Evidence, Mix, Swatch, seen_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True)
class Names:
    """Dyes, bases and sessions by name, in the order of the model."""

    dyes: tuple[str, ...]
    bases: tuple[str, ...]
    sessions: tuple[str, ...]


def names_of(swatches: Sequence[Swatch]) -> Names:
    """Return the names in swatches: dyes by name, bases by how often they come.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed. [%]

    Returns
    -------
    Names
        The first base is the one that the others borrow from. [-]
    """
    dyes = sorted({dye for each in swatches for dye, _depth in each.doses})
    bases = Counter(each.base for each in swatches)
    return Names(
        dyes=tuple(dyes),
        bases=tuple(sorted(bases, key=lambda base: (-bases[base], base))),
        sessions=tuple(sorted({each.session for each in swatches} - {""})),
    )


def dyed_of(swatches: Sequence[Mix | Swatch], names: Names) -> Dyed:
    """Return swatches as arrays.

    Parameters
    ----------
    swatches : sequence of Mix or Swatch
        What was or is to be dyed. [%]
    names : Names
        Dyes, bases and sessions; a session that is not there counts as new. [-]

    Returns
    -------
    Dyed
        Depths, bases and sessions. [%]
    """
    import numpy as np

    places = {dye: place for place, dye in enumerate(names.dyes)}
    days = {day: place for place, day in enumerate(names.sessions)}
    depths = np.zeros((len(swatches), len(names.dyes)))
    for row, each in enumerate(swatches):
        for dye, depth in each.doses:
            depths[row, places[dye]] += depth
    return Dyed(
        depths=depths,
        bases=np.array([names.bases.index(each.base) for each in swatches], dtype=int),
        sessions=np.array([days.get(each.session, -1) for each in swatches], dtype=int),
    )


def kinds_of(
    swatches: Sequence[Swatch], names: Names, *, daylight: Light = Light.D65
) -> tuple[tuple[ReadSwatches, tuple[Swatch, ...]], ...]:
    """Return swatches in groups that were read in the same way.

    Parameters
    ----------
    swatches : sequence of Swatch
        What was dyed and read. [%]
    names : Names
        Dyes, bases and sessions. [-]
    daylight : Light
        The light that Lab stands for where no other is named. [-]

    Returns
    -------
    tuple of (ReadSwatches, tuple of Swatch)
        Each group as the fit takes it, and the swatches in its order. [-]
    """
    groups: dict[Evidence, list[Swatch]] = {}
    for each in swatches:
        groups.setdefault(each.reading.evidence, []).append(each)
    return tuple(
        (_kind(group, names, seen_of(evidence, daylight=daylight)), tuple(group))
        for evidence, group in sorted(groups.items(), key=lambda item: item[0].rank)
    )


def _kind(group: Sequence[Swatch], names: Names, seen: Seen) -> ReadSwatches:
    import numpy as np

    values = np.array([each.reading.values for each in group], dtype=float)
    return ReadSwatches(
        dyed=dyed_of(group, names),
        seen=seen,
        read=as_seen(values, SPECTRUM) if seen.weights is None else values,
        noise=np.array([each.reading.noise for each in group]),
        dose_error=np.array([each.dose_spread for each in group]),
        trust=np.ones(len(group)),
        is_carried=np.array([each.reading.is_carried for each in group]),
    )
