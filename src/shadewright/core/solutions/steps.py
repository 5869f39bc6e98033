"""The steps of making a stock, each with its caution, as a dyer reads them.

The order is common practice: paste, then heat, then look, then cool, and only
then the mark. The cautions are the usual ones; the dye's own safety data sheet
and the local rules come first.
"""

from dataclasses import dataclass

from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import about_text
from shadewright.core.solutions.making import HOT_SHARE, StockPlan

DEFER = "Follow the dye's safety data sheet and your local rules."

_HOT = amount_text(80.0, "°C")


@dataclass(frozen=True, kw_only=True)
class MakingStep:
    """One step: a key for the program, a title, what to do, and what to mind."""

    key: str
    title: str
    text: str
    caution: str


def making_steps(
    plan: StockPlan, *, filled_g: float | None = None
) -> tuple[MakingStep, ...]:
    """Return the steps of a stock in their order, from laying out to the label.

    Parameters
    ----------
    plan : StockPlan
        The stock to be made. [g, mL, %]
    filled_g : float or None
        What the finished stock weighs, where it is made up on a scale. [g]

    Returns
    -------
    tuple of MakingStep
        lay_out, weigh, paste, dissolve, look, cool, make_up, label. [-]

    Notes
    -----
    Common practice. The cautions defer to the safety data sheet.

    Examples
    --------
    >>> from shadewright.core.solutions import stock_plan
    >>> steps = making_steps(stock_plan(volume_ml=500.0, strength_percent=1.0))
    >>> [step.key for step in steps][:3]
    ['lay_out', 'weigh', 'paste']
    """
    return (
        _lay_out(),
        _weigh(plan),
        _paste(plan),
        _dissolve(plan),
        _look(),
        _cool() if filled_g is None else _cool_for_the_scale(),
        _make_up(plan) if filled_g is None else _make_up_by_weight(filled_g),
        _label(plan),
    )


def _lay_out() -> MakingStep:
    return MakingStep(
        key="lay_out",
        title="Lay out",
        text=(
            "Lay damp paper under the scale. Set out a weighing cup, a heat-proof "
            "beaker, a stirrer, the storage bottle and its label. Close windows and "
            "doors that make a draught."
        ),
        caution=(
            "Put on a fitted respirator (N95/FFP2 or better; a dust mask is not "
            "enough), goggles and gloves before the jar is opened. Use no tool that "
            f"is used for food. {DEFER}"
        ),
    )


def _weigh(plan: StockPlan) -> MakingStep:
    return MakingStep(
        key="weigh",
        title="Weigh the powder",
        text=(
            f"Tare the cup and weigh {amount_text(plan.powder_g, 'g')} of powder. "
            "Too much? Leave it in, note what the scale shows, and fit the water to "
            "it. Close the jar."
        ),
        caution=(
            "Dry powder flies: a fitted respirator (N95/FFP2 or better), goggles and "
            "gloves stay on until all of it is wet. Wipe up with the damp paper, never "
            "with a dry brush."
        ),
    )


def _paste(plan: StockPlan) -> MakingStep:
    return MakingStep(
        key="paste",
        title="Wet it to a paste",
        text=(
            f"Add {about_text(plan.paste_water_ml, 'ml')} of lukewarm water, a "
            "little at a time, and stir to a smooth paste until no dry powder is "
            "left. Move it to the beaker and rinse the weighing cup over."
        ),
        caution=(
            "Look at the rim and the stirrer too: powder that dries there flies again."
        ),
    )


def _dissolve(plan: StockPlan) -> MakingStep:
    two_thirds = about_text(HOT_SHARE * plan.final_volume_ml, "ml")
    return MakingStep(
        key="dissolve",
        title="Dissolve it hot",
        text=(
            f"Add {about_text(plan.hot_water_ml, 'ml')} of hot water ({_HOT} and "
            f"more), up to two thirds: {two_thirds}. Stir until it is clear."
            if plan.hot_water_ml
            else f"The paste is two thirds already: stand it in hot water ({_HOT} and "
            "more), and stir until it is clear."
        ),
        caution=(
            "Hot water scalds: heat-proof beaker, heat gloves, and pour slowly. "
            "Closed bottles with hot stock burst or spit."
        ),
    )


def _look() -> MakingStep:
    return MakingStep(
        key="look",
        title="Look for grains",
        text=(
            "Pour it back and forth between two vessels and look against the light "
            "for grains on the wall and the bottom. Grains left? Warm it again and "
            "stir on."
        ),
        caution="Pour over the sink or a tray, gloves and goggles on: it stains.",
    )


def _cool() -> MakingStep:
    return MakingStep(
        key="cool",
        title="Let it cool",
        text=(
            "Cover it and let it cool to room temperature, then look again: some "
            "dyes settle out in the cold."
        ),
        caution=(
            f"Made up while hot, the stock comes out too strong: at {_HOT} by "
            f"{amount_text(2.7, '%')}."
        ),
    )


def _cool_for_the_scale() -> MakingStep:
    return MakingStep(
        key="cool",
        title="Let it cool",
        text=_cool().text,
        caution=(
            "On the scale heat does not matter, but steam that is lost after the "
            "weighing does: keep it covered."
        ),
    )


def _make_up(plan: StockPlan) -> MakingStep:
    return MakingStep(
        key="make_up",
        title="Make up to the mark",
        text=(
            "Pour it into the bottle, rinse the beaker over, and make up with cold "
            f"water to {amount_text(plan.final_volume_ml, 'ml')} in all. Has the "
            "bottle no marks? Make up in the measuring vessel and pour over by "
            "funnel. Look for grains left behind, and shake."
        ),
        caution=(
            "Past the mark? Stop and note the volume: the stock is weaker, not "
            "spoilt, and its true strength goes on the label."
        ),
    )


def _make_up_by_weight(filled_g: float) -> MakingStep:
    return MakingStep(
        key="make_up",
        title="Make up on the scale",
        text=(
            "Set the empty bottle on the scale and tare it. Pour the stock in, rinse "
            "the beaker over, and add cold water until the scale shows "
            f"{amount_text(filled_g, 'g')}. Look for grains left behind, and shake."
        ),
        caution=(
            "Past the weight? Stop and note what the scale shows: the stock is "
            "weaker, not spoilt, and its true strength goes on the label."
        ),
    )


def _label(plan: StockPlan) -> MakingStep:
    return MakingStep(
        key="label",
        title="Label it",
        text=(
            "On the label stand dye, true strength, date, jar, who made it, hazard "
            "words and “not for food”. The strength is "
            f"{amount_text(plan.strength_percent, '%')} if all went as planned, else "
            "what was really weighed and filled makes it."
        ),
        caution=f"No bottle leaves the bench without its label. {DEFER}",
    )
