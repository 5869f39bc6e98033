"""Mixing: from dyed swatches to the colour of any mix, and how sure that is.

A dye is not a colour but a curve: how much it absorbs at each wavelength, and how that
grows with depth on this yarn. Swatches show the curve through a keyhole, one colour
at a time. This chapter puts all keyholes together, whatever each of them shows, and
says of every mix what colour it will be and how far it may be off.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
R       share of the light that comes back              1
K/S     light absorbed for light scattered              1
q       K/S of dyed yarn                                1
c       depth of shade, on weight of fibre              %
u       natural logarithm of K/S that 1 % of dye adds   1
θ       parameters, each N(0, 1) before anything is dyed  1
H       what is known: its inverse is θ's covariance    1
κ       how much wider the spread really is             1
y       what was read, on a scale like Lab's            1
======  ==============================================  ====

1. ``model``             one dye on one yarn: K/S, its shape, its growth, its colour
2. ``posterior``         every swatch at once: Gauss and Newton, and who is wrong
3. ``swatches``          what was dyed and read, and how well
4. ``bands``             a spectrum as a meter gives it, in the model's bands
5. ``arranging``         names to places, readings to arrays
6. ``first_guess``       a dye of which one swatch is all that there is
7. ``fitting_swatches``  the prior that the swatches allow
8. ``palette``           what is known at the end
9. ``suspects``          the swatch that does not belong
10. ``other_light``      whether all were read under another light
11. ``learning``         fit, set aside, fit again
12. ``asking``           the colour of a mix with its spread
13. ``spreads``          from a covariance to a difference that is not passed
14. ``designing``        which swatch teaches most
15. ``advising``         which to choose from, and what for
16. ``laying_out``       ladders, and mixes in parts
17. ``strips``           one dye from pale to deep, and how sure it is

Sources: [kubelkamunk1931]_ for K/S; [rasmussen2006]_ for priors on curves and for
leaving one out; the rest is linear algebra by the book ([golub2013]_, [bjorck1996]_).
The sizes of things are our choice, from invented dyes, and are learned again from
each studio's own.
"""

from shadewright.core.mixing.advising import Advised, advised_swatches
from shadewright.core.mixing.asking import Told, told_mixes
from shadewright.core.mixing.learning import Part, Stage, learn, learning
from shadewright.core.mixing.palette import Learned, Palette, Suspect
from shadewright.core.mixing.swatches import (
    Evidence,
    Mix,
    Reading,
    Swatch,
    checked_swatch,
)

__all__ = [
    "Advised",
    "Evidence",
    "Learned",
    "Mix",
    "Palette",
    "Part",
    "Reading",
    "Stage",
    "Suspect",
    "Swatch",
    "Told",
    "advised_swatches",
    "checked_swatch",
    "learn",
    "learning",
    "told_mixes",
]
