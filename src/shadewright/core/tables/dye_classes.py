"""The four classes of acid dye for wool, and what their baths allow.

Source: [broadbent2001]_, Table 13.1 (p. 242) and p. 246. His "fast acid"
class is what dyers call half-milling (the mapping is ours, from memory). The
pH ranges are for wool.

Glauber's salt slows levelling and half-milling dyes down and helps them lie
even. At the pH of milling and super-milling dyes it does the reverse, it
drives them on faster, and is never used with them (p. 246).
"""

from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Final


class DyeClass(StrEnum):
    """How an acid dye behaves in the bath, from the evenest to the fastest."""

    LEVELLING = "levelling"
    HALF_MILLING = "half-milling"
    MILLING = "milling"
    SUPER_MILLING = "super-milling"


@dataclass(frozen=True, kw_only=True)
class ClassFacts:
    """What Table 13.1 says of a class: its bath's pH, its migration, its salt."""

    ph_from: float
    ph_to: float
    migration: str
    takes_glauber_salt: bool


CLASS_FACTS: Final = MappingProxyType({
    DyeClass.LEVELLING: ClassFacts(
        ph_from=2, ph_to=4, migration="high", takes_glauber_salt=True
    ),
    DyeClass.HALF_MILLING: ClassFacts(
        ph_from=4, ph_to=6, migration="moderate", takes_glauber_salt=True
    ),
    DyeClass.MILLING: ClassFacts(
        ph_from=5, ph_to=7, migration="low", takes_glauber_salt=False
    ),
    DyeClass.SUPER_MILLING: ClassFacts(
        ph_from=6, ph_to=7, migration="very low", takes_glauber_salt=False
    ),
})
