"""Heat: what water, yarn and pots take up, and how much of it a source gives.

Specific heat of water at one atmosphere: the table of the handbook [crc2016]_
(section 6, older editions; read in a reprint), in kJ/(kg K). A later fit
[iapws1997]_ lies 0.02 to 0.09 % higher.

Specific heat of the solids, in kJ/(kg K), all from memory of engineering
tables: wool 1.36, stainless steel 0.50, enamelled steel 0.46, aluminium 0.90,
glass 0.84. At a liquor ratio of 1:30 the yarn takes one part in a hundred of
the heat, so that wool's figure serves silk and nylon too.

Boiling away at 100 °C takes 2256.5 kJ/kg (between the 2256 and 2257 printed in
different tables, from memory).

What reaches the pot: gas about 32 %, a coil or a ceramic plate 75 to 80 %,
induction about 85 % [energystar2021]_. Older figures of the US Department of
Energy, met only in quotations, are 40, 74 and 84 %: the spans below hold both.
They are guesses for a pot that fits its plate, no measurement of yours.
"""

from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Final

WATER_CP: Final = (
    (0.0, 4.2176),
    (10.0, 4.1921),
    (20.0, 4.1818),
    (30.0, 4.1784),
    (40.0, 4.1785),
    (50.0, 4.1806),
    (60.0, 4.1843),
    (70.0, 4.1895),
    (80.0, 4.1963),
    (90.0, 4.2050),
    (100.0, 4.2159),
)
WOOL_CP: Final = 1.36
BOILING_AWAY_KJ_PER_KG: Final = 2256.5
KJ_PER_KWH: Final = 3600.0


class Material(StrEnum):
    """What a pot is made of."""

    STAINLESS = "stainless"
    ENAMEL = "enamel"
    ALUMINIUM = "aluminium"
    GLASS = "glass"


VESSEL_CP: Final = MappingProxyType({
    Material.STAINLESS: 0.50,
    Material.ENAMEL: 0.46,
    Material.ALUMINIUM: 0.90,
    Material.GLASS: 0.84,
})


class Source(StrEnum):
    """What a pot stands on; or a steamer, which holds trays and no pot."""

    GAS = "gas"
    COIL = "coil"
    INDUCTION = "induction"
    STEAMER = "steamer"


@dataclass(frozen=True, kw_only=True)
class Share:
    """The part of a source's power that reaches the pot: usual, least and most."""

    usual: float
    least: float
    most: float


SOURCE_SHARES: Final = MappingProxyType({
    Source.GAS: Share(usual=0.32, least=0.28, most=0.44),
    Source.COIL: Share(usual=0.75, least=0.65, most=0.80),
    Source.INDUCTION: Share(usual=0.85, least=0.75, most=0.90),
})
