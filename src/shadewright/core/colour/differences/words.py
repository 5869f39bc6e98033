"""A difference in words: lighter, redder, duller, and by how much.

The three parts of CIEDE2000 are each put into a word. Lightness and chroma are plain.
A hue that turns is named by the colour that it turns to, and that hangs on where it
starts: red turns yellower or bluer, yellow greener or redder, green bluer or yellower,
blue redder or greener. Near grey there is no hue to turn, so a and b are named.
"""

from itertools import starmap
from typing import Final

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000_terms

GREY_CHROMA: Final = 4.0
"""Below this chroma a colour counts as a grey. [1]"""

UNSEEN: Final = 0.3
"""A part of the difference below this is not named. [1]"""

AMOUNTS: Final = ((0.7, "a trace "), (1.5, "a little "), (4.0, ""), (10.0, "much "))
FARTHEST: Final = "very much "

_TURNS_ON = ("yellower", "greener", "bluer", "redder")
_TURNS_BACK = ("bluer", "redder", "yellower", "greener")


def difference_words(standard: Lab, sample: Lab) -> str:
    """Return how a sample differs from its standard, the greatest part first.

    Parameters
    ----------
    standard : Lab
        The standard. [1]
    sample : Lab
        What is held beside it: the words speak of it. [1]

    Returns
    -------
    str
        Such as "much lighter, a trace redder", or "no difference to be seen". [-]

    Notes
    -----
    The amounts are parts of CIEDE2000: a trace up to 0.7, a little up to 1.5, much
    from 4, very much from 10; what is below 0.3 is not named unless it is all there
    is. Limits and words are common practice, no standard fixes them.

    References
    ----------
    .. [sharma2005] equations 8 to 11 and 18 to 20 for the parts

    Examples
    --------
    >>> difference_words(Lab(50, 40, 20), Lab(53, 41, 12))
    'much bluer, lighter, a trace duller'
    """
    terms = ciede2000_terms(standard, sample)
    parts = [(terms.lightness, "lighter", "darker")]
    if min(terms.one.chroma, terms.two.chroma) < GREY_CHROMA:
        red, yellow = terms.two.a - terms.one.a, terms.two.b - terms.one.b
        parts += [
            (red / terms.s_c, "redder", "greener"),
            (yellow / terms.s_c, "yellower", "bluer"),
        ]
    else:
        quarter = round(standard.hue_degrees / 90.0) % 4
        parts += [
            (terms.chroma, "brighter", "duller"),
            (terms.hue, _TURNS_ON[quarter], _TURNS_BACK[quarter]),
        ]
    parts.sort(key=lambda part: -abs(part[0]))
    seen = [part for part in parts if abs(part[0]) >= UNSEEN]
    if not seen and terms.distance >= UNSEEN:
        seen = parts[:1]
    return ", ".join(starmap(_worded, seen)) or "no difference to be seen"


def _worded(amount: float, more: str, less: str) -> str:
    size = abs(amount)
    how_much = next((word for most, word in AMOUNTS if size < most), FARTHEST)
    return f"{how_much}{more if amount > 0 else less}"
