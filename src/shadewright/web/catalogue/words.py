"""What the classes of dye mean, and the cautions of the catalogue.

The pH and the salt of the four acid classes come from ``core.tables``; the
other sentences are common practice.
"""

from shadewright.core.tables.dye_classes import CLASS_FACTS
from shadewright.core.tables.dye_classes import DyeClass as TableClass
from shadewright.records.models.catalogue import DyeClass
from shadewright.web.parts import Caution

_MEANINGS = {
    TableClass.LEVELLING: "evens out by itself as the bath simmers, and washes out "
    "soonest",
    TableClass.HALF_MILLING: "evens out fairly well, and holds better than a levelling "
    "dye",
    TableClass.MILLING: "holds well in the wash, but strikes where it lands: heat it "
    "slowly",
    TableClass.SUPER_MILLING: "holds best in the wash and hardly evens out: heat it "
    "slowest of all",
}


def _meaning(key: TableClass) -> str:
    facts = CLASS_FACTS[key]
    salt = "" if facts.takes_glauber_salt else "; no Glauber’s salt"
    said = _MEANINGS[key]
    return f"It {said}. On wool at pH {facts.ph_from:g} to {facts.ph_to:g}{salt}."


CLASS_MEANINGS: dict[str, str] = {
    DyeClass.LEVELLING: _meaning(TableClass.LEVELLING),
    DyeClass.HALF_MILLING: _meaning(TableClass.HALF_MILLING),
    DyeClass.MILLING: _meaning(TableClass.MILLING),
    DyeClass.SUPER_MILLING: _meaning(TableClass.SUPER_MILLING),
    DyeClass.METAL_COMPLEX_1_2: "One atom of metal holds two dye molecules: very fast, "
    "rather dull, and its leavings are handed in.",
    DyeClass.METAL_COMPLEX_1_1: "One atom of metal to each dye molecule: dyed strongly "
    "acid, and its leavings are handed in.",
    DyeClass.REACTIVE: "It binds to the fibre for good and cannot be moved after.",
    DyeClass.UNKNOWN: "Treat it as a milling dye: heat it slowly, use no salt.",
}

METAL = Caution(
    title="This dye holds a metal",
    text="Powder and unused stock are collected and handed in. A spent bath goes only "
    "where the sewer authority allows, never to a storm drain or a septic tank. No "
    "bleach on residues. Follow the dye’s safety data sheet and your local rules.",
)
ACID = Caution(
    title="Acid into water, never water into acid",
    text="Goggles and gloves on, and fresh air. Follow its safety data sheet and your "
    "local rules.",
)
