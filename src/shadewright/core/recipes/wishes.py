"""What a recipe may hold: how many dyes, which ones, how much of each."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from shadewright.core.mixing.palette import Palette
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.core.quantities import require_above_zero, require_between
from shadewright.core.recipes.search.sets import MOST_DYES
from shadewright.errors import MissingError, NotFoundError, OutOfRangeError

MOST_DEPTH_PERCENT = 6.0
"""Usual most of all dyes together (common practice for wool). [%]"""
HIGHEST_DEPTH_PERCENT = 20.0
BEYOND_DYED = 2.5
"""How far past the deepest swatch of a dye a recipe may go, as a factor. [1]"""
LEAST_DEPTH_PERCENT = 0.0005
"""Below this nobody measures: a drop (0.05 ml) of a 1 % stock for 100 g. [%]"""


@dataclass(frozen=True, kw_only=True)
class Wishes:
    """What the recipes may be.

    ``wanted`` dyes are in every recipe, ``unwanted`` in none. ``most_by_dye`` is what
    the shelf has of each, in % on weight of fibre; ``dose_error`` the relative
    standard error of a dose, and ``dose_errors`` that of a dye that is measured better
    or worse; ``prices`` the price of a gram of each dye.
    """

    most_dyes: int = MOST_DYES
    most_depth_percent: float = MOST_DEPTH_PERCENT
    least_depth_percent: float = LEAST_DEPTH_PERCENT
    wanted: tuple[str, ...] = ()
    unwanted: tuple[str, ...] = ()
    most_by_dye: Mapping[str, float] = field(default_factory=dict)
    dose_error: float = DOSE_ERROR
    dose_errors: Mapping[str, float] = field(default_factory=dict)
    prices: Mapping[str, float] = field(default_factory=dict)
    session: str = ""


def require_wishes(wishes: Wishes, palette: Palette) -> None:
    """Refuse wishes that cannot be.

    Parameters
    ----------
    wishes : Wishes
        What the recipes may be. [%]
    palette : Palette
        The dyes that there are. [-]

    Raises
    ------
    OutOfRangeError
        If a number is out of range, or a dye is both wanted and unwanted.
    NotFoundError
        If a dye is not in the palette.
    MissingError
        If no dye is left.
    """
    require_between(
        wishes.most_dyes,
        least=1,
        most=MOST_DYES,
        unit="",
        name="Most dyes in a recipe",
        argument="most_dyes",
    )
    require_above_zero(
        wishes.most_depth_percent,
        most=HIGHEST_DEPTH_PERCENT,
        unit="%",
        name="Most depth of all dyes",
        argument="most_depth_percent",
    )
    for argument, dyes in (("wanted", wishes.wanted), ("unwanted", wishes.unwanted)):
        _require_dyes(dyes, palette, argument)
    both = sorted({*wishes.wanted} & {*wishes.unwanted})
    if both or len(set(wishes.wanted)) > wishes.most_dyes:
        raise OutOfRangeError(
            name="Dyes wanted",
            given=", ".join(both or wishes.wanted),
            allowed=f"at most {wishes.most_dyes}, and none that is left out",
            argument="wanted",
        )
    if not set(palette.names.dyes) - set(wishes.unwanted):
        raise MissingError(
            name="A dye to search with",
            advice="Leave out fewer.",
            argument="unwanted",
        )


def _require_dyes(dyes: tuple[str, ...], palette: Palette, argument: str) -> None:
    for dye in dyes:
        if dye not in palette.names.dyes:
            raise NotFoundError(
                kind="dye in this palette",
                key=dye,
                advice=f"It holds {', '.join(palette.names.dyes)}.",
                argument=argument,
            )


def most_of_each(
    wishes: Wishes, palette: Palette, dyes: tuple[str, ...]
) -> tuple[float, ...]:
    """Return the most of each dye that a recipe may hold.

    Parameters
    ----------
    wishes : Wishes
        Most of all together, and what the shelf has. [%]
    palette : Palette
        How deep each was dyed. [%]
    dyes : tuple of str
        The dyes. [-]

    Returns
    -------
    tuple of float
        At most 2.5 times its deepest swatch: beyond that the palette guesses. [%]
    """
    found = []
    for dye in dyes:
        deepest = palette.depths[palette.names.dyes.index(dye)][1]
        most = min(BEYOND_DYED * deepest, wishes.most_depth_percent)
        found.append(max(0.0, min(most, wishes.most_by_dye.get(dye, most))))
    return tuple(found)
