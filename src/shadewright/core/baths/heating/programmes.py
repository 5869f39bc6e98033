"""Programmes that a recipe may begin from, to be edited by what your yarn shows."""

from dataclasses import dataclass
from typing import Final

from shadewright.core.baths.curves import Curve, Leg
from shadewright.core.tables.programmes import PROGRAMME_ROWS, ProgrammeRow


@dataclass(frozen=True, kw_only=True)
class StartProgramme:
    """A named curve with where it comes from."""

    key: str
    name: str
    curve: Curve
    source: str


def _programme(row: ProgrammeRow) -> StartProgramme:
    legs = tuple(
        Leg(to_c=to_c, rise_c_per_min=rise, hold_min=hold)
        for to_c, rise, hold in row.legs
    )
    return StartProgramme(
        key=row.key,
        name=row.name,
        curve=Curve(start_c=row.start_c, legs=legs),
        source=row.source,
    )


PROGRAMMES: Final = {row.key: _programme(row) for row in PROGRAMME_ROWS}
