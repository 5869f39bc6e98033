"""Recipes: which dyes, and how much of each, give a colour.

A palette foretells the colour of any mix. This chapter asks it backwards: of all sets
of up to four dyes, which come nearest to a colour, and of those, which will really come
out nearest once doses are off by a little and the palette by a little more. It corrects
a bath that missed, lays depths in steps that look equal, rounds doses to what can be
measured, and carries a recipe to another yarn.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
c       depth of a dye, on weight of fibre              %
x       amount of a dye: its depth, were K/S straight   %
K       K/S that 1 % of a dye adds                      1
q       K/S of dyed yarn                                1
f       what is made least: Σ (w ΔE)² over lights       1
w       how much a light counts; 1 for daylight         1
g       how a colour follows the logarithm of a dose    1
e       by what factor a dye in a bath is off           1
======  ==============================================  ====

1. ``curves``     each dye's K/S at any depth
2. ``amounts``    depths counted so that K/S adds up in proportion
3. ``targets``    a spectrum, Lab under several lights, or under one
4. ``search``     every set of dyes, side by side
5. ``wishes``     how many dyes, which, how much of each
6. ``polishing``  from amounts to the palette's own curves
7. ``colouring``  the colour of mixes, and how it follows each dose
8. ``ranking``    which of many near recipes is the best
9. ``sifting``    none twice, none with a mere speck
10. ``matching``   all of it: the recipes for a colour
11. ``correcting`` what to add to a bath that missed
12. ``gradients`` depths, or mixes, in steps that look equal
13. ``rounding``  doses that can be measured
14. ``carrying``  the same colour on another yarn
15. ``bracketing`` three trials around a recipe
16. ``reaching``  all colours that a palette can give
17. ``outlines``  the line around them
18. ``proportions`` of a few dyes, coarse and fine
19. ``lightness`` mixes that are all as light

Sources: [allen1966]_ for three dyes at once; [marquardt1963]_ for the way downhill;
[sharma2005]_ for the difference. How sets are pruned is our own, and measured.
"""

from shadewright.core.recipes.carrying import carried
from shadewright.core.recipes.correcting import Correction, correction
from shadewright.core.recipes.gradients import Shade, gradient, gradient_between
from shadewright.core.recipes.matching import Matches, Step, matches, matching
from shadewright.core.recipes.ranking import Recipe
from shadewright.core.recipes.rounding import rounded, step_percent
from shadewright.core.recipes.targets import (
    Target,
    target_of_labs,
    target_of_spectrum,
)
from shadewright.core.recipes.wishes import Wishes

__all__ = [
    "Correction",
    "Matches",
    "Recipe",
    "Shade",
    "Step",
    "Target",
    "Wishes",
    "carried",
    "correction",
    "gradient",
    "gradient_between",
    "matches",
    "matching",
    "rounded",
    "step_percent",
    "target_of_labs",
    "target_of_spectrum",
]
