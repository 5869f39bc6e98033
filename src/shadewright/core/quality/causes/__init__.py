"""What changed: why a lot is not like the lots before it.

A lot is off when its colour lies where noise alone would hardly throw it. Then
something was different: a jar, a bottle, the yarn, the water, the pot, the load, the
heating, a hand. Most of what differs did nothing. Which of it did is told by what each
did before, by how far outside its range a number lies, and by the way in which the
colour moved: old stock, much yarn, a short hold and late acid dye paler.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
d       step or shift of a colour in L, a, b            1
S       covariance of a lot's colour by noise           1
λ       how far S is drawn to the same in all ways      -
T²      how far a lot lies out, counted in S            1
p       how often noise alone gives so great a T²       -
w       what counts: a lot in a mean, a hypothesis      -
x, s    a name or a number of a lot; width of what      1
        is not known of its effect
e, u    an effect that was learned, its spread          1
======  ==============================================  ====

1. ``history``    a lot and what it was dyed with
2. ``matrices``   three numbers by three
3. ``noise``      what lots differ by when nothing is wrong
4. ``hotelling``  how surely a lot lies outside of that
5. ``runs``       what a row of lots says
6. ``usual``      the mean of the lots in control
7. ``features``   names and numbers, ready to be learned from
8. ``learning``   what each of them did before
9. ``case``       the last lot, and how probable its shift is by each cause
10. ``hypotheses`` what may have moved the colour, and how suspect it was before
11. ``answer``    verdict and causes
12. ``telling``   the small test that would tell

Sources: [hotelling1931]_, [holmes1993]_ and [ledoit2004]_ for the distance,
[nelson1984]_ and [westernelectric1956]_ for the run rules, [rasmussen2006]_ for the
learning. The hypotheses and their figures are our own.
"""

from shadewright.core.quality.causes.answer import (
    Cause,
    Drift,
    LotCauses,
    lot_causes,
)
from shadewright.core.quality.causes.history import NUMBERS, Factor, PastLot
from shadewright.core.quality.causes.telling import repeat_test

__all__ = [
    "NUMBERS",
    "Cause",
    "Drift",
    "Factor",
    "LotCauses",
    "PastLot",
    "lot_causes",
    "repeat_test",
]
