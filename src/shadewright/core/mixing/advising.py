"""Which swatches to dye next: what could be dyed, and what it should help.

Candidates are every dye at eight depths and two hundred mixes of two and three; the
colours to be helped are mixes from all over the palette's reach or, towards a named
colour, those that come nearest to it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import sqrt
from typing import TYPE_CHECKING

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing.arranging import dyed_of
from shadewright.core.mixing.asking import require_known, told_mixes
from shadewright.core.mixing.designing import Pick, next_swatches
from shadewright.core.mixing.designing import Reading as HowRead
from shadewright.core.mixing.model.entries import Dyed
from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.spreads import local_metric, spread_of
from shadewright.core.mixing.swatches import (
    DOSE_ERROR,
    LEAST_LAB_SD,
    SCREEN_SD,
    SPECTRUM_SD,
    Doses,
    Evidence,
    Mix,
    seen_of,
)
from shadewright.core.quantities import require_between

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

DEPTHS_PERCENT = (0.05, 0.1, 0.2, 0.4, 0.8, 1.2, 2.0, 3.0)
MOST_SWATCHES = 60
_MIXES, _TARGETS, _TRIED, _SEED = 200, 120, 1500, 9


@dataclass(frozen=True, kw_only=True)
class Advised:
    """A swatch to dye, and by how much the expected difference falls with it.

    ``now_90`` and ``then_90`` are CIEDE2000 that nine in ten swatches of the same doses
    stay under on another day: before this one was dyed and read, and after.
    """

    doses: Doses
    gain: float
    now_90: float
    then_90: float


def advised_swatches(
    palette: Palette,
    *,
    base: str,
    count: int,
    towards: tuple[float, float, float] | None = None,
    without: Sequence[str] = (),
    reading_sd: float | None = None,
) -> tuple[Advised, ...]:
    """Return the swatches to dye next, the most telling first.

    Parameters
    ----------
    palette : Palette
        What is known. [-]
    base : str
        The yarn. [-]
    count : int
        How many; 1 to 60. [-]
    towards : tuple of float or None
        A colour that matters most: L*, a*, b* (D65/10°). [1]
    without : sequence of str
        Dyes that are not dyed with any more. [-]
    reading_sd : float or None
        How far the reading of a new swatch will be off, as a CIELAB distance; None for
        what is usual of the best kind of reading so far. [1]

    Returns
    -------
    tuple of Advised
        Doses in % on weight of fibre, none where no dye is left; the gain is the fall
        of the root mean square difference over the colours to be helped. [1]

    Raises
    ------
    NotFoundError
        If the base is not in the palette.
    OutOfRangeError
        If the count is out of range.
    """
    import numpy as np

    require_between(
        count,
        least=1,
        most=MOST_SWATCHES,
        unit="",
        name="Count",
        argument="count",
    )
    require_known([Mix(base=base, doses=())], palette)
    draws = np.random.default_rng(_SEED)
    among = _among(palette, without)
    if not len(among):
        return ()
    candidates = _candidates(draws, len(among)) @ among
    targets = _targets(draws, palette, base, towards, among)
    told = _told(targets, palette, base)
    how_read = _how_read(palette, reading_sd)
    picks = next_swatches(
        _dyed(candidates, palette, base),
        _dyed(targets, palette, base),
        local_metric(told),
        palette.known,
        how_read,
        count=count,
    )
    doses = [_named(candidates[pick.candidate], palette) for pick in picks]
    return tuple(
        Advised(
            doses=each,
            gain=_fall(pick, len(targets)),
            now_90=now_90,
            then_90=then_90,
        )
        for each, pick, (now_90, then_90) in zip(
            doses, picks, _spreads(doses, palette, base, how_read), strict=True
        )
    )


def _spreads(
    doses: Sequence[Doses], palette: Palette, base: str, how_read: HowRead
) -> "list[tuple[float, float]]":
    """Return how far each mix may be off another day, now and once it was dyed.

    What is not known of its colour is C of the dyes and S of the day. A swatch of it
    shows both and the error N of doses and reading: C becomes C − C (C + S + N)⁻¹ C.
    """
    import numpy as np

    mixes = [Mix(base=base, doses=each) for each in doses]
    palette = replace(palette, repeats=0.0)  # No swatch makes lots repeat better.
    exact = told_mixes(mixes, palette=palette)
    dosed = told_mixes(mixes, palette=palette, dose_error=DOSE_ERROR).covariance
    by_dose = (dosed - exact.covariance) / DOSE_ERROR**2
    day = palette.known.sizes.session**2 * by_dose
    dyes = exact.covariance - day
    noise = max(how_read.noise, LEAST_LAB_SD / sqrt(3.0))  # a spectrum's is a band's
    read = dosed + palette.width**2 * noise**2 * np.eye(3)
    left = dyes - dyes @ np.linalg.solve(read, dyes) + day
    then = spread_of(exact.lab, left)
    return list(zip(exact.de_90.tolist(), then.de_90.tolist(), strict=True))


def _fall(pick: Pick, targets: int) -> float:
    """Return by how much the root mean square difference falls."""
    before, after = (max(each, 0.0) / targets for each in (pick.before, pick.after))
    return sqrt(before) - sqrt(after)


def _among(palette: Palette, without: Sequence[str]) -> "Floats":
    """Return a row for each dye that may be taken, 1 at its place in the palette."""
    import numpy as np

    found: Floats = np.eye(len(palette.names.dyes))[
        [dye not in without for dye in palette.names.dyes]
    ]
    return found


def _candidates(draws: "np.random.Generator", dyes: int) -> "Floats":
    """Return every dye at eight depths, then mixes of two and three."""
    import numpy as np

    singles = [
        np.eye(dyes)[dye] * depth for dye in range(dyes) for depth in DEPTHS_PERCENT
    ]
    return np.array([*singles, *(_mix(draws, dyes) for _ in range(_MIXES))])


def _mix(draws: "np.random.Generator", dyes: int) -> "Floats":
    import numpy as np

    row = np.zeros(dyes)
    most = min(3, dyes)
    chosen = draws.choice(
        dyes, int(draws.integers(min(2, most), most + 1)), replace=False
    )
    depths = np.exp(draws.uniform(np.log(0.08), np.log(1.2), len(chosen)))
    row[chosen] = [float(f"{depth:.1g}") for depth in depths]
    return row


def _targets(
    draws: "np.random.Generator",
    palette: Palette,
    base: str,
    towards: tuple[float, float, float] | None,
    among: "Floats",
) -> "Floats":
    import numpy as np

    count = _TARGETS if towards is None else _TRIED
    tried: Floats = np.array([_mix(draws, len(among)) for _ in range(count)]) @ among
    if towards is None:
        return tried
    away = ciede2000_arrays(np.array(towards), _told(tried, palette, base))
    return tried[np.argsort(away, kind="stable")[: _TARGETS // 3]]


def _mixes(rows: "Floats", palette: Palette, base: str) -> list[Mix]:
    day = palette.names.sessions[-1] if palette.names.sessions else ""
    return [Mix(base=base, doses=_named(row, palette), session=day) for row in rows]


def _told(rows: "Floats", palette: Palette, base: str) -> "Floats":
    return told_mixes(_mixes(rows, palette, base), palette=palette).lab


def _named(row: "Floats", palette: Palette) -> Doses:
    return tuple(
        (dye, float(depth))
        for dye, depth in zip(palette.names.dyes, row, strict=True)
        if depth
    )


def _dyed(rows: "Floats", palette: Palette, base: str) -> Dyed:
    """Return rows as arrays, dyed on the last day that the palette knows."""
    return dyed_of(_mixes(rows, palette, base), palette.names)


def _how_read(palette: Palette, sd: float | None) -> HowRead:
    """Return how the next swatches will be read: as the best were so far.

    What a spectrum tells is taken as Lab under three lights, read as closely: a third
    of the numbers, and nearly all that they teach of colour.
    """
    best = max(palette.evidence, key=lambda kind: kind.rank)
    kind = (
        Evidence.THREE_LIGHTS
        if best.rank >= Evidence.THREE_LIGHTS.rank
        else Evidence.LAB
    )
    usual = SCREEN_SD if best is Evidence.SCREEN else LEAST_LAB_SD
    noise = max(sd or usual, LEAST_LAB_SD) / sqrt(3.0)
    if best is Evidence.SPECTRUM:
        noise = SPECTRUM_SD
    return HowRead(seen=seen_of(kind), noise=noise, dose_error=DOSE_ERROR)
