"""Temperature programmes to start a recipe from, each with its source.

They are places to begin, to be edited by what your own yarn shows. The axes of
figure 13.2 in [broadbent2001]_ (40 to 100 °C, about 150 minutes in all) were
read for levelling dyes; the paces and the stop on the way for the faster
classes are from memory of the mill literature on wool. Silk at 85 °C and nylon
below the boil are common practice.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, kw_only=True)
class ProgrammeRow:
    """A start, and legs of (to °C, rise in °C a minute, minutes held)."""

    key: str
    name: str
    start_c: float
    legs: tuple[tuple[float, float, float], ...]
    source: str


_FROM_MEMORY: Final = "from memory of the mill literature on wool"

PROGRAMME_ROWS: Final = (
    ProgrammeRow(
        key="levelling",
        name="Levelling dyes on wool",
        start_c=40.0,
        legs=((98.0, 1.0, 45.0),),
        source="Broadbent 2001, figure 13.2 (the axes); the pace from memory",
    ),
    ProgrammeRow(
        key="milling",
        name="Milling dyes on wool",
        start_c=40.0,
        legs=((40.0, 1.0, 10.0), (70.0, 1.0, 15.0), (98.0, 1.0, 45.0)),
        source=_FROM_MEMORY,
    ),
    ProgrammeRow(
        key="super-milling",
        name="Super-milling dyes on wool",
        start_c=40.0,
        legs=((40.0, 1.0, 15.0), (70.0, 0.8, 20.0), (98.0, 0.8, 60.0)),
        source=_FROM_MEMORY,
    ),
    ProgrammeRow(
        key="metal-complex",
        name="1:2 metal-complex dyes on wool",
        start_c=40.0,
        legs=((40.0, 1.0, 15.0), (70.0, 0.8, 15.0), (98.0, 0.8, 45.0)),
        source=_FROM_MEMORY,
    ),
    ProgrammeRow(
        key="silk",
        name="Silk, any acid dye",
        start_c=40.0,
        legs=((85.0, 1.0, 45.0),),
        source="common practice",
    ),
    ProgrammeRow(
        key="nylon",
        name="Nylon, any acid dye",
        start_c=40.0,
        legs=((70.0, 1.0, 10.0), (95.0, 1.0, 45.0)),
        source="common practice",
    ),
)
