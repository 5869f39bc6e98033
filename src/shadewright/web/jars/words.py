"""What is said where powder is open, and where it leaves the studio."""

from shadewright.web.parts import Caution

POWDER = Caution(
    title="Dry powder when the jar is open",
    text="Respirator (a fitted N95/FFP2 or better), goggles and gloves on; damp paper "
    "under the scale; no draught. A dust mask is not enough. Follow the dye’s safety "
    "data sheet and your local rules.",
)
FATE = (
    "Take powder that is left to a collection point. Follow the dye’s safety data "
    "sheet and your local rules."
)
FATE_OF_METAL = (
    "This dye holds a metal: powder that is left is collected and handed in, never "
    "rinsed away. Follow the dye’s safety data sheet and your local rules."
)
