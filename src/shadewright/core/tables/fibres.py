"""How much water a fibre holds when it only looks dry: its regain.

Regain is water in per cent of the bone-dry fibre. The commercial figures are
agreements for buying and selling, not measurements: they say what weight a
skein is sold and recipes are reckoned at.

============  ==================  ==========================================
fibre         [astmd1909]_        [eu1007]_, Annex IX
============  ==================  ==========================================
wool          13.6                18.25 combed (worsted), 17.00 carded
silk          11.0                11.00
nylon         4.5                 6.25 staple, 5.75 filament
============  ==================  ==========================================

17.00 (carded wool) and 6.25 (nylon) were read in a quotation of the annex; the
other figures are from memory. Wool-testing houses trade at 16 % [awta]_.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, kw_only=True)
class Fibre:
    """A fibre that takes acid dye, with its commercial regains."""

    key: str
    name: str
    regain_astm_percent: float
    regain_eu_percent: float


WOOL: Final = Fibre(
    key="wool", name="wool", regain_astm_percent=13.6, regain_eu_percent=18.25
)
SILK: Final = Fibre(
    key="silk", name="silk", regain_astm_percent=11.0, regain_eu_percent=11.0
)
NYLON: Final = Fibre(
    key="nylon", name="nylon", regain_astm_percent=4.5, regain_eu_percent=6.25
)

FIBRES: Final = {fibre.key: fibre for fibre in (WOOL, SILK, NYLON)}
