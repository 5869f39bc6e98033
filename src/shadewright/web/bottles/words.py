"""What is said of a bottle, and the cautions where stock leaves it."""

from shadewright.web.parts import Caution, ChipKind

KINDS: dict[str, ChipKind] = {
    "settled": "problem",
    "test or pour": "problem",
    "empty": "problem",
    "poured away": "problem",
    "taken back": "problem",
    "low": "caution",
    "look first": "caution",
}
LOOK_WORDS = {
    "clear": "clear",
    "settled": "marked settled",
    "stirred": "stirred",
    "rewarmed": "re-warmed: look again once it is cool",
}
SETTLED = Caution(
    title="Settled: do not draw from it yet",
    text="Re-warm it to 60–80 °C in a water bath with the cap loose, stir till it is "
    "clear, let it cool, then check the level. Never dose from a stock that is not "
    "dissolved. Hot stock scalds: gloves and goggles on. Follow the dye’s safety data "
    "sheet and your local rules.",
    kind="problem",
)
REWARMED = Caution(
    title="Re-warmed: look before you draw from it",
    text="Let it cool, hold it against the light, then press Check: Clear makes it "
    "good to draw from again, Settled keeps it back. Never dose from a stock that is "
    "not dissolved.",
)
MOULD = (
    "Mould: pour it away for work that must repeat. Curds or grains that stay after "
    "re-warming: the same."
)
DRYING = (
    "Evaporation makes a stock stronger, settling makes its top weaker: read the "
    "level, and stir before every draw."
)
KEEPING = "Keep it dark, cool and closed, and never where food is kept."
SPOILS = (MOULD, DRYING, KEEPING)
POUR = Caution(
    title="Where it may go",
    text="Never to a storm drain or a septic tank, and no bleach on residues. Unused "
    "stock is best collected and handed in. Follow the dye’s safety data sheet and "
    "your local rules.",
)
POUR_METAL = Caution(
    title="This dye holds a metal: collect it and hand it in",
    text="Not down the sink, never to a storm drain or a septic tank, and no bleach "
    "on residues. Follow the dye’s safety data sheet and your local rules.",
)
