"""From a swatch to a large bath: step by step, with what the swatch was off by.

Dye on weight of fibre scales straight: ten times the yarn takes ten times the dye. The
bath around it does not. A jar has 50 to 100 ml to the gram and a pot 15 to 30; a large
pot rises more slowly, is stirred less, and skeins lie closer in it. And what a small
swatch was off by, a syringe's tenth of a millilitre, is dyed into everything that is
scaled up from it. So a colour goes up by steps, and is judged at each (20, 100, 500 g
before 2 kg: common practice).
"""

from math import floor, log10

from shadewright.core.quantities import is_more, require_mass
from shadewright.core.uncertainty import Value, half_width, quotient

MOST_STEP = 5.0
"""No step is more than so many times the one before (common practice). [1]"""
FIRST_STEP_G = 20.0
"""What is dyed first of a colour that was never dyed (common practice). [g]"""
TOO_UNSURE = 0.05
"""Beyond this a difference of depth is seen in most colours (our choice). [1]"""


def steps_up_g(*, tried_g: float | None, wanted_g: float) -> tuple[float, ...]:
    """Return the sizes to dye, and to judge, before a bath is dyed.

    Parameters
    ----------
    tried_g : float or None
        The largest bath of this recipe on this base so far; None if there was none. [g]
    wanted_g : float
        The bath that is wanted. [g]

    Returns
    -------
    tuple of float
        Sizes from small to large, none where the bath is within one step. [g]

    Raises
    ------
    OutOfRangeError
        If a weight is out of range.

    Notes
    -----
    Each size is cut to two digits. Source: common practice; no published rule.

    Examples
    --------
    >>> steps_up_g(tried_g=None, wanted_g=2000.0)
    (20.0, 100.0, 500.0)
    >>> steps_up_g(tried_g=97.0, wanted_g=400.0)
    ()
    """
    require_mass(wanted_g, name="The bath", argument="wanted_g")
    if tried_g is None:
        if wanted_g <= FIRST_STEP_G:
            return ()
        return (FIRST_STEP_G, *steps_up_g(tried_g=FIRST_STEP_G, wanted_g=wanted_g))
    last_g = require_mass(tried_g, name="The trial", argument="tried_g")
    steps = []
    while is_more(wanted_g, than=MOST_STEP * last_g):
        last_g = _cut(MOST_STEP * last_g)
        steps.append(last_g)
    return tuple(steps)


def reach_against(*, bath: Value, trial: Value) -> float:
    """Return how far a bath's depth may be from a trial's that it repeats.

    Parameters
    ----------
    bath : Value
        The depth of one dye in the bath, with its terms. [%]
    trial : Value
        The depth of the same dye in the trial. [%]

    Returns
    -------
    float
        Half of the 95 % interval, as a share of the depth. [1]

    Notes
    -----
    What both share, such as the strength of one bottle, drops out: a bottle that is too
    weak is so in both. Source: JCGM 100 [jcgm100]_, 5.2.2.

    Examples
    --------
    >>> from shadewright.core.uncertainty import Term, Value
    >>> bottle = Term(name="strength", source="K9WQ", u=0.02)
    >>> one = Value(value=1.0, terms=(bottle,))
    >>> reach_against(bath=one, trial=one)
    0.0
    """
    ratio = quotient(bath, trial)
    return half_width(ratio) / abs(ratio.value)


def _cut(size_g: float) -> float:
    """Return a size in two digits, never more than it was."""
    step = 10.0 ** (floor(log10(size_g)) - 1)
    return floor(size_g / step * (1.0 + 1e-9)) * step
