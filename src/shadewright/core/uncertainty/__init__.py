"""Uncertainty: a value and its spread, and what the spread is made of.

Every number of a dyer was read from something: a scale, a cylinder, a syringe.
What is read is off by a little, each time by something else, and the little adds
up along the way from powder to yarn. This chapter says by how much, and which
reading spoils the whole. It knows nothing of dye.

======  ==============================================  ==========
symbol  meaning                                         unit
======  ==============================================  ==========
x, y    values                                          any
u       standard uncertainty of a value                 as value
u_i     what one error puts into it, with its sign      as value
a       half-width of an error that has bounds          as value
k       how many u an interval reaches either way       -
d       step that a scale shows                         g
V       volume, or nominal size of a vessel             mL
======  ==============================================  ==========

1. ``shapes``      rectangle, triangle and bell
2. ``values``      a value with its terms, each under its source
3. ``combining``   sums, products and quotients
4. ``budget``      which term weighs most
5. ``coverage``    the interval that holds the truth
6. ``sampling``    the same by drawing lots, for small doses
7. ``counting``    how many promises hold by chance
8. ``tools``       scales, cylinders, syringes: what a reading is worth

Sources: [jcgm100]_ (the GUM) for the rules, [jcgm101]_ for drawing lots; the
standards of measuring ware are named where their tolerances stand.
"""

from shadewright.core.uncertainty.budget import BudgetLine, budget
from shadewright.core.uncertainty.combining import (
    product,
    quotient,
    scaled,
    total,
    without_dust,
)
from shadewright.core.uncertainty.counting import usual_counts
from shadewright.core.uncertainty.coverage import coverage_factor, half_width
from shadewright.core.uncertainty.sampling import (
    Interval,
    is_wide,
    sampled_interval,
)
from shadewright.core.uncertainty.shapes import Shape, standard_uncertainty
from shadewright.core.uncertainty.values import Term, Value, bounded, exact, merged

__all__ = [
    "BudgetLine",
    "Interval",
    "Shape",
    "Term",
    "Value",
    "bounded",
    "budget",
    "coverage_factor",
    "exact",
    "half_width",
    "is_wide",
    "merged",
    "product",
    "quotient",
    "sampled_interval",
    "scaled",
    "standard_uncertainty",
    "total",
    "usual_counts",
    "without_dust",
]
