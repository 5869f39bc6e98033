"""Student's t for 95 %, two-sided, by degrees of freedom [jcgm100]_, table G.2.

From memory. The last row is that of the normal distribution.
"""

from math import inf
from typing import Final

T_95: Final = (
    (1.0, 12.71),
    (2.0, 4.30),
    (3.0, 3.18),
    (4.0, 2.78),
    (5.0, 2.57),
    (6.0, 2.45),
    (7.0, 2.36),
    (8.0, 2.31),
    (9.0, 2.26),
    (10.0, 2.23),
    (15.0, 2.13),
    (20.0, 2.09),
    (30.0, 2.04),
    (50.0, 2.01),
    (100.0, 1.984),
    (inf, 1.960),
)
