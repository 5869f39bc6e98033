"""A stock in words: what it is called, what its label will say, what mends it."""

from django.urls import reverse

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.amounts import some_mass, some_volume
from shadewright.web.parts import Caution
from shadewright.web.stocks.pages import Outcome
from shadewright.web.sureness import SureStrength, sure_strength
from shadewright.workflows.makings import Making
from shadewright.workflows.outcomes import (
    IfFilled,
    IfWeighed,
    if_filled,
    if_filled_by_weight,
    if_weighed,
)
from shadewright.workflows.stock_spreads import MadeWith, StockSpread
from shadewright.workflows.stocks import PlannedStock

DEFER = "Follow the dye’s safety data sheet and your local rules."
CAUTION_TITLES = {
    "lay_out": "Before the jar is opened",
    "weigh": "Dry dye powder is open",
    "paste": "Powder flies until all of it is wet",
    "dissolve": "Hot water scalds",
    "look": "It splashes and stains",
    "cool": "Not to the mark while it is hot",
    "make_up": "Stop at the mark",
    "label": "Never without a label",
}
BY_WEIGHT_TITLES = {"cool": "Cover it while it is hot", "make_up": "Stop at the weight"}
DONE_WORDS = {
    "lay_out": "All is laid out",
    "weigh": "Weighed",
    "paste": "It is a smooth paste",
    "dissolve": "It is dissolved",
    "look": "No grains left",
    "cool": "It is cold",
    "make_up": "Made up",
    "label": "Put it on the shelf",
}
_AS_PLANNED = 0.002  # relative: nothing that a kitchen scale or a cylinder shows
_FAR_OFF = 0.2  # relative: more likely a slip than a heavy hand


def stock_name(stock: PlannedStock) -> str:
    """Return what a stock is called: ``Slate stock, 500 ml at 1 %``."""
    volume = amount_text(stock.plan.final_volume_ml, "ml")
    strength = amount_text(stock.plan.strength_percent, "%")
    return f"{stock.dye_name} stock, {volume} at {strength}"


def caution_title(making: Making, key: str) -> str:
    """Return the title of a step’s caution."""
    titles = BY_WEIGHT_TITLES if making.is_by_weight else {}
    return titles.get(key, CAUTION_TITLES[key])


def data_sheet(stock: PlannedStock) -> str:
    """Return where the dye's safety data sheet is; nothing if none is kept."""
    if not stock.data_sheet or stock.data_sheet.startswith(("http://", "https://")):
        return stock.data_sheet
    return reverse("data-sheet", args=[stock.dye_id])


def shown_spread(spread: StockSpread) -> SureStrength:
    """Return a strength as a label says it, and how sure it is."""
    return sure_strength(spread.strength, spread.lacks)


def cautions(warnings: tuple[str, ...]) -> tuple[Caution, ...]:
    """Return the plan's warnings, each under a short title."""
    return tuple(Caution(title=_title(words), text=words) for words in warnings)


def weighed_outcome(making: Making, typed: str, tools: MadeWith) -> Outcome:
    """Say what the label will say for a weight; what to do while there is none."""
    lead = f"Made up to {_ml(making.stock.plan.final_volume_ml)}, the label will say"
    if not typed.strip():
        return _waiting("Type what the scale shows; what the label will say follows.")
    try:
        powder_g = some_mass(typed, name="Powder")
        found = if_weighed(making, powder_g=powder_g, made_with=tools)
    except StudioError as error:
        return _waiting(error.sentence)
    return Outcome(
        lead=lead,
        strength=shown_spread(found.spread),
        sentence=_weighed_sentence(making, found),
    )


def filled_outcome(making: Making, typed: str, tools: MadeWith) -> Outcome:
    """Say what the label will say for a level; what to do while there is none."""
    if not typed.strip():
        return _waiting("Type the mark that it reached; what the label says follows.")
    try:
        final_ml = some_volume(typed, name="Final volume")
        found = if_filled(making, final_ml=final_ml, made_with=tools)
    except StudioError as error:
        return _waiting(error.sentence)
    return _filled_outcome(making, found, "The label will say")


def filled_by_weight_outcome(making: Making, typed: str) -> Outcome:
    """Say how many millilitres a weight is, and what the label will say."""
    if not typed.strip():
        return _waiting("Type what the scale shows; the millilitres follow.")
    try:
        filled_g = some_mass(typed, name="Finished stock")
        found = if_filled_by_weight(making, filled_g=filled_g)
    except StudioError as error:
        return _waiting(error.sentence)
    lead = "" if found is None else f"That is {_ml(found.final_ml)}: the label will say"
    return _filled_outcome(making, found, lead)


def _filled_outcome(making: Making, found: IfFilled | None, lead: str) -> Outcome:
    if found is None:
        return _waiting("The powder is not weighed yet.")
    return Outcome(
        lead=lead,
        strength=shown_spread(found.spread),
        sentence=_filled_sentence(making, found),
    )


def so_far(making: Making) -> tuple[str, ...]:
    """Return what was read so far, one line each."""
    weighed = making.powder_g
    if weighed is None:
        return ()
    outcome = if_weighed(making, powder_g=weighed)
    lines = [f"Weighed {amount_text(weighed, 'g')}."]
    if making.final_ml is not None:
        lines.append(f"Made up to {_ml(making.final_ml)}.")
    elif not making.is_by_weight and not _is_as_planned(outcome, making):
        lines.append(
            f"For {_percent(making)} exactly, make up to {_ml(outcome.exact_ml)}."
        )
    return tuple(lines)


def _waiting(sentence: str) -> Outcome:
    return Outcome(lead="", strength=None, sentence=sentence)


def _weighed_sentence(making: Making, found: IfWeighed) -> str:
    if _is_as_planned(found, making):
        return "That is as planned."
    way = "over" if found.over_g > 0 else "short"
    far = "That is far from the plan: look at the scale and its tare again. "
    return (
        f"It is {amount_text(abs(found.over_g), 'g')} {way}. "
        f"{far if _is_far(found, making) else ''}"
        "Nothing needs mending: recipes use the true strength. "
        f"For {_percent(making)} exactly, make up to {_ml(found.exact_ml)}."
    )


def _filled_sentence(making: Making, found: IfFilled) -> str:
    relative = found.label_percent / making.stock.plan.strength_percent - 1
    if abs(relative) <= _AS_PLANNED:
        return "That is as planned."
    far = "That is far from the plan: read the mark again. "
    keep = (
        f"{far if abs(relative) > _FAR_OFF else ''}"
        "Nothing needs mending: recipes use the true strength. "
    )
    if found.add_water_ml is not None:
        water = _ml(found.add_water_ml)
        return f"{keep}For {_percent(making)} exactly, add {water} of water."
    powder = amount_text(found.add_powder_g or 0.0, "g")
    return (
        f"{keep}For {_percent(making)} exactly it would take {powder} of powder more, "
        "pasted and dissolved as before."
    )


def _is_as_planned(found: IfWeighed, making: Making) -> bool:
    return abs(found.over_g) <= _AS_PLANNED * making.stock.plan.powder_g


def _is_far(found: IfWeighed, making: Making) -> bool:
    return abs(found.over_g) > _FAR_OFF * making.stock.plan.powder_g


def _percent(making: Making) -> str:
    return amount_text(making.stock.plan.strength_percent, "%")


def _ml(volume: float) -> str:
    return amount_text(volume, "ml")


def _title(warning: str) -> str:
    titles = {
        "metal-complex": "A metal-complex dye",
        "mixed fresh": "Mix fresh",
        "dissolve": "Near what dissolves",
        "paste water": "Little room for the paste",
    }
    return next((said for word, said in titles.items() if word in warning), "Mind this")
