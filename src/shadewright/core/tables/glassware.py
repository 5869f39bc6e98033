"""How far measuring ware may be off: tolerances as their standards print them.

A tolerance is a half-width, in ml, at 20 °C, for ware that is new. ISO and ASTM
disagree up to twofold, so each row keeps the name of its standard. The ISO tables
stand from memory; of ASTM E1272 all but the row of 1000 ml was read.

Of a cylinder and a graduated pipette the tolerance is the largest error at any
point of the scale [iso4788]_: 10 ml poured from a cylinder of 100 ml are off by as
much as 100 ml would be.

A syringe's tolerance is a share of what is pressed out, and below half of its size
a share of its size besides [iso7886]_.

The marks of a beaker are a guide and no measure: ±10 % by [iso3819]_, ±5 % by
[astme960]_, both from memory. Jugs and marks on a bottle have no standard; their
shares are common practice, and so is the lowest mark of all these: a fifth of the
size.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, kw_only=True)
class Row:
    """One size of ware: how far class A and class B may be off."""

    size_ml: float
    a_ml: float
    b_ml: float
    source: str
    is_from_memory: bool = True


@dataclass(frozen=True, kw_only=True)
class Share:
    """How far a vessel's marks may be off, as a share of what is read."""

    share: float
    source: str
    is_from_memory: bool = True


def _rows(
    source: str, *rows: tuple[float, float, float], read_up_to_ml: float = 0.0
) -> tuple[Row, ...]:
    """Return rows of size, class A, class B; those up to a size were read."""
    return tuple(
        Row(
            size_ml=size,
            a_ml=a,
            b_ml=b,
            source=source,
            is_from_memory=size > read_up_to_ml,
        )
        for size, a, b in rows
    )


TABLES: Final = {
    ("cylinder", "ISO"): _rows(
        "iso4788",
        (5.0, 0.05, 0.10),
        (10.0, 0.10, 0.20),
        (25.0, 0.25, 0.50),
        (50.0, 0.50, 1.0),
        (100.0, 0.50, 1.0),
        (250.0, 1.0, 2.0),
        (500.0, 2.5, 5.0),
        (1000.0, 5.0, 10.0),
    ),
    ("cylinder", "ASTM"): _rows(
        "astme1272",
        (5.0, 0.05, 0.10),
        (10.0, 0.10, 0.20),
        (25.0, 0.17, 0.34),
        (50.0, 0.25, 0.50),
        (100.0, 0.50, 1.00),
        (250.0, 1.00, 2.00),
        (500.0, 2.00, 4.00),
        (1000.0, 3.00, 6.00),
        read_up_to_ml=500.0,
    ),
    ("flask", "ISO"): _rows(
        "iso1042",
        (5.0, 0.025, 0.05),
        (10.0, 0.025, 0.05),
        (25.0, 0.04, 0.08),
        (50.0, 0.06, 0.12),
        (100.0, 0.10, 0.20),
        (250.0, 0.15, 0.30),
        (500.0, 0.25, 0.50),
        (1000.0, 0.40, 0.80),
    ),
    ("pipette", "ISO"): _rows(
        "iso835",
        (1.0, 0.007, 0.01),
        (5.0, 0.03, 0.05),
        (10.0, 0.05, 0.10),
        (25.0, 0.10, 0.20),
    ),
}
"""Rows by kind and standard, the smallest first. [mL]"""

SHARES: Final = {
    ("beaker", "ISO"): Share(share=0.10, source="iso3819"),
    ("beaker", "ASTM"): Share(share=0.05, source="astme960"),
    ("jug", "ISO"): Share(share=0.10, source="common practice", is_from_memory=False),
    ("bottle-mark", "ISO"): Share(
        share=0.05, source="common practice", is_from_memory=False
    ),
}
"""Shares of the volume read, by kind and standard. [-]"""

LOWEST_MARK_SHARE: Final = 0.2
"""Lowest mark of a beaker or jug, as a share of its size: common practice. [-]"""


@dataclass(frozen=True, kw_only=True)
class SyringeRow:
    """Syringes below a size: shares of the size and of what is pressed out."""

    below_ml: float
    of_size_low: float
    of_expelled_low: float
    of_expelled_high: float
    source: str = "iso7886"


SYRINGES: Final = (
    SyringeRow(
        below_ml=5.0, of_size_low=0.015, of_expelled_low=0.02, of_expelled_high=0.05
    ),
    SyringeRow(
        below_ml=float("inf"),
        of_size_low=0.015,
        of_expelled_low=0.01,
        of_expelled_high=0.04,
    ),
)
"""ISO 7886-1, table 1: rows of 1 and 10 ml read in a reprint, the rest from memory."""

SYRINGES_READ_ML: Final = frozenset({1.0, 10.0})

STANDARD_NAMES: Final = {
    "iso4788": "ISO 4788",
    "astme1272": "ASTM E1272",
    "iso1042": "ISO 1042",
    "iso835": "ISO 835",
    "iso7886": "ISO 7886-1",
    "iso3819": "ISO 3819",
    "astme960": "ASTM E960",
    "common practice": "common practice",
}
"""How a source is called on a page."""
