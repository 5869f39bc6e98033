"""How sure a depth is: from what was read at scale and syringe to the yarn.

A depth is dye over yarn, and the dye of a dose is strength times volume. Each of
them was read from something, so each brings its own errors along, under the name
of where they come from. A bottle that is too strong is so in every dose that it
gives: where two doses come from it, its error is one, and adds up.

For all but the smallest doses the errors add in squares (first order). Where a
factor is unsure by more than a tenth, as 0.3 ml from a syringe is, lots are drawn.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isclose

from shadewright.core.quantities import require_strength, water_density_g_per_ml
from shadewright.core.solutions.sureness import ROOM
from shadewright.core.uncertainty import (
    Interval,
    Shape,
    Term,
    Value,
    bounded,
    half_width,
    is_wide,
    product,
    quotient,
    sampled_interval,
    scaled,
    total,
    without_dust,
)
from shadewright.core.uncertainty.coverage import USUAL
from shadewright.core.uncertainty.sampling import RandomSource
from shadewright.core.uncertainty.shapes import HALF_WIDTHS

_ALIKE = 1e-3


@dataclass(frozen=True, kw_only=True)
class Drawn:
    """Stock as it was measured out: its strength, how much, and its density.

    ``amount`` is in ml, or in g where ``density`` (g per ml) turns it into ml.
    """

    strength: Value
    amount: Value
    density: Value | None = None


@dataclass(frozen=True, kw_only=True)
class SureDepth:
    """A depth with its terms, and from where to where it lies 19 times in 20."""

    depth: Value
    interval: Interval
    is_drawn: bool


def stock_density(*, strength: Value, key: str, temperature_c: float = 20.0) -> Value:
    """Return what a millilitre of stock weighs.

    rho_s = rho + c / 100                                         (21)

    Parameters
    ----------
    strength : Value
        Strength of the stock, c, in g per 100 ml. [%]
    key : str
        Which stock it is, as part of its source. [-]
    temperature_c : float
        Temperature at which it was made up. [°C]

    Returns
    -------
    Value
        Density; the dye takes up between no room and that of its own weight in
        water. [g/mL]

    Raises
    ------
    OutOfRangeError
        If strength or temperature is out of range.

    Notes
    -----
    A stock that was itself filled by weight has the same error in its strength: the
    more room, the fewer grams in a millilitre, and the lighter the millilitre. A
    gram of it holds the same dye whatever the room, so the term is kept under that
    source, and falls out of a dose that is weighed. Not so where powder and dye in
    it differ, in a stock of another powder strength or thinned from a stronger one.
    A gram of any stock holds the same dye at any temperature, so that of the room
    does not matter. Source: definitions; the bounds are common practice.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> round(stock_density(strength=exact(1), key="T7KK").value, 4)
    1.0082
    """
    dye_g_per_ml = require_strength(strength.value) / 100
    density = water_density_g_per_ml(temperature_c=temperature_c) + dye_g_per_ml
    known = next((term for term in strength.terms if term.name == ROOM), None)
    if known is not None and _is_all_dye(known, strength.value):
        same = replace(known, u=known.u / strength.value * density)
        return Value(value=density, terms=(same,))
    return bounded(
        density,
        half_width=dye_g_per_ml,
        shape=Shape.RECTANGULAR,
        name=ROOM,
        source=f"room {key}",
    )


def _is_all_dye(room: Term, percent: float) -> bool:
    """Return whether a stock holds just as much powder as dye, by its room."""
    powder_percent = 100 * abs(room.u) * HALF_WIDTHS[room.shape] / percent
    return isclose(powder_percent, percent, rel_tol=_ALIKE)


def drawn_dye(*, drawn: Drawn) -> Value:
    """Return the dye in stock that was measured out.

    m = c V / 100,  V = M / rho_s                                 (22)

    Parameters
    ----------
    drawn : Drawn
        Strength [%], amount [mL, or g with its density g/mL]. [-]

    Returns
    -------
    Value
        Dye of standard strength, m. [g]

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> drawn_dye(drawn=Drawn(strength=exact(1), amount=exact(60))).value
    0.6
    """
    dye = scaled(product(drawn.strength, drawn.amount), by=0.01)
    return dye if drawn.density is None else quotient(dye, drawn.density)


def depth_value(
    *, yarn: Value, stock: Sequence[Drawn] = (), dry: Sequence[Value] = ()
) -> Value:
    """Return the depth that doses of one dye give, to first order.

    d = 100 Σ m / W                                               (23)

    Parameters
    ----------
    yarn : Value
        Weight of the fibre, W. [g]
    stock : sequence of Drawn
        Doses out of bottles. [-]
    dry : sequence of Value
        Doses weighed as powder, as dye of standard strength. [g]

    Returns
    -------
    Value
        Depth of shade, d; what two doses share is added up first. [%]

    Raises
    ------
    OutOfRangeError
        If the yarn weighs nothing.

    References
    ----------
    .. [jcgm100] 5.1.2 and 5.2.2

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> depth_value(
    ...     yarn=exact(100), stock=[Drawn(strength=exact(1), amount=exact(50))]
    ... ).value
    0.5
    """
    dye = total(*(drawn_dye(drawn=each) for each in stock), *dry)
    return without_dust(scaled(quotient(dye, yarn), by=100.0))


def sure_depth(
    *,
    yarn: Value,
    stock: Sequence[Drawn] = (),
    dry: Sequence[Value] = (),
    generator: RandomSource | None = None,
) -> SureDepth:
    """Return a depth with the interval that holds it 19 times in 20.

    Parameters
    ----------
    yarn : Value
        Weight of the fibre. [g]
    stock : sequence of Drawn
        Doses out of bottles. [-]
    dry : sequence of Value
        Doses weighed as powder, as dye of standard strength. [g]
    generator : RandomSource or None
        What draws lots where a factor is wide, seeded by the caller; without it
        the interval is always that of first order. [-]

    Returns
    -------
    SureDepth
        The depth, its interval, and whether lots were drawn for it. [%]

    Raises
    ------
    OutOfRangeError
        If the yarn weighs nothing.

    Notes
    -----
    Lots are drawn of strength, amount and yarn where the dose is a single one,
    else of the dye in all doses together.

    References
    ----------
    .. [jcgm101] 5.3.1 and 7

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> pour = bounded(
    ...     50.0, half_width=1.0, shape=Shape.RECTANGULAR, name="pour", source="pour"
    ... )
    >>> found = sure_depth(
    ...     yarn=exact(100), stock=[Drawn(strength=exact(1), amount=pour)]
    ... )
    >>> round(found.interval.low, 4), round(found.interval.high, 4)
    (0.4905, 0.5095)
    """
    depth = depth_value(yarn=yarn, stock=stock, dry=dry)
    over, under = _factors(yarn, stock, dry)
    if generator is None or not is_wide(*over, *under):
        return SureDepth(depth=depth, interval=either_side(depth=depth), is_drawn=False)
    share = sampled_interval(over=over, under=under, generator=generator)
    return SureDepth(depth=depth, interval=_percent(share), is_drawn=True)


def either_side(*, depth: Value) -> Interval:
    """Return the interval of a depth whose terms alone are known.

    Parameters
    ----------
    depth : Value
        Depth with its terms, as it was kept. [%]

    Returns
    -------
    Interval
        As far down as up, 19 times in 20, and never below nought. [%]

    Notes
    -----
    The distribution of all terms together [jcgm101]_, 5.3.1.

    Examples
    --------
    >>> from shadewright.core.uncertainty import exact
    >>> either_side(depth=exact(0.6)).low
    0.6
    """
    reach = half_width(depth)
    return Interval(
        low=max(depth.value - reach, 0.0),
        high=depth.value + reach,
        coverage=USUAL,
    )


def _factors(
    yarn: Value, stock: Sequence[Drawn], dry: Sequence[Value]
) -> tuple[list[Value], list[Value]]:
    """Return what is multiplied, and what it is divided by, for lots to be drawn."""
    if len(stock) == 1 and not dry:
        (only,) = stock
        density = [] if only.density is None else [only.density]
        return [only.strength, scaled(only.amount, by=0.01)], [*density, yarn]
    return [total(*(drawn_dye(drawn=each) for each in stock), *dry)], [yarn]


def _percent(share: Interval) -> Interval:
    return Interval(low=100 * share.low, high=100 * share.high, coverage=share.coverage)
