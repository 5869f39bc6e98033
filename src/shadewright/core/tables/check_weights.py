"""Check weights: how far the three plainer classes of OIML R 111 may be off.

Maximum errors in mg of weights as they are bought, class M1 the best of the three
[oimlr111]_, table 1 (from memory).
"""

from typing import Final

CHECK_WEIGHTS: Final = {
    1.0: (1.0, 3.0, 10.0),
    2.0: (1.2, 4.0, 12.0),
    5.0: (1.6, 5.0, 16.0),
    10.0: (2.0, 6.0, 20.0),
    20.0: (2.5, 8.0, 25.0),
    50.0: (3.0, 10.0, 30.0),
    100.0: (5.0, 16.0, 50.0),
    200.0: (10.0, 30.0, 100.0),
    500.0: (25.0, 80.0, 250.0),
    1000.0: (50.0, 160.0, 500.0),
    2000.0: (100.0, 300.0, 1000.0),
}
"""Errors of M1, M2 and M3 by nominal mass in g. [mg]"""
