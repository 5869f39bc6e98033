"""What an act would come to, said before it is done."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from shadewright.core.quantities import (
    NO_BREAK,
    amount_text,
    number_text,
    rounded_to_step,
)
from shadewright.core.quantities.writing import spread_text
from shadewright.core.solutions import (
    Portion,
    dilution,
    filled_mass_g,
    merged,
    powder_to_strengthen_g,
    stock_to_strengthen_ml,
)
from shadewright.core.uncertainty import half_width
from shadewright.errors import MissingError
from shadewright.workflows.jars import jar
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.tools import tool_now
from shadewright.workflows.weighing_bottles import loss_since

Sent = Mapping[str, Any]


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What a form would come to: in words, and the number that it was asked for."""

    words: str
    number: float = 0.0


def _wanted(sent: Sent) -> float:
    want: float | None = sent.get("want_percent")
    if want is None:
        raise MissingError(
            name="The strength wanted", advice="Write it.", argument="want_percent"
        )
    return want


def water_wanted(bottle: ShelfBottle, sent: Sent) -> Outcome:
    """Say how much water makes a stock as weak as is wanted."""
    want = _wanted(sent)
    thin = dilution(
        have_percent=bottle.strength_percent,
        want_percent=want,
        volume_ml=bottle.volume_ml * bottle.strength_percent / want,
    )
    water = amount_text(thin.water_ml, "ml")
    said = f"{water} of water bring it to {amount_text(want, '%')}."
    return Outcome(words=said, number=thin.water_ml)


def powder_wanted(bottle: ShelfBottle, sent: Sent) -> Outcome:
    """Say how much powder makes a stock as strong as is wanted."""
    want = _wanted(sent)
    chosen = sent.get("jar")
    powder_g = powder_to_strengthen_g(
        volume_ml=bottle.volume_ml,
        have_percent=bottle.strength_percent,
        want_percent=want,
        powder_strength_percent=100.0
        if chosen is None
        else jar(chosen).strength_percent,
    )
    powder = f"{number_text(powder_g, digits=3)}\u00a0g"
    said = f"About {powder} of powder bring it to {amount_text(want, '%')}."
    return Outcome(words=said, number=powder_g)


def stock_wanted(bottle: ShelfBottle, sent: Sent) -> Outcome:
    """Say how much of a stronger bottle makes a stock as strong as is wanted."""
    want = _wanted(sent)
    source = shelf_bottle(sent["from_code"])
    stock_ml = stock_to_strengthen_ml(
        volume_ml=bottle.volume_ml,
        have_percent=bottle.strength_percent,
        want_percent=want,
        stronger_percent=source.strength_percent,
    )
    stock = amount_text(stock_ml, "ml")
    said = f"{stock} of {source.code} bring it to {amount_text(want, '%')}."
    if stock_ml > source.volume_ml:
        said += f" {source.code} holds {amount_text(source.volume_ml, 'ml')} only."
    return Outcome(words=said, number=stock_ml)


def weighing(bottle: ShelfBottle, sent: Sent) -> Outcome:
    """Say what has gone since the bottle was last weighed."""
    loss = loss_since(code=bottle.code, gross_g=sent["gross_g"], scale_id=sent["scale"])
    if loss is None:
        return Outcome(
            words="This is the first weight since stock was last moved: the next one "
            "shows what has gone."
        )
    if not loss.is_seen:
        return Outcome(words="No loss that this scale can show.")
    lost, left = (amount_text(x.value, "ml") for x in (loss.lost_ml, loss.volume_ml))
    slack = spread_text(half_width(loss.lost_ml))
    strength = amount_text(loss.strength_percent.value, "%")
    return Outcome(
        words=f"{lost} of water (±{NO_BREAK}{slack}{NO_BREAK}ml) have gone: {left} are "
        f"left, at {strength}. As much water puts it back."
    )


def thinning(bottle: ShelfBottle, sent: Sent) -> Outcome:
    """Say what to draw and to add for a weaker bottle."""
    thin = dilution(
        have_percent=bottle.strength_percent,
        want_percent=_wanted(sent),
        volume_ml=sent["volume_ml"],
    )
    stock = _measured(thin.stock_ml, bottle.strength_percent, sent.get("tool_id"))
    volume = _measured(sent["volume_ml"], _wanted(sent), sent.get("ware_id"))
    water = amount_text(thin.water_ml, "ml")
    said = (
        f"Draw {stock} of {bottle.code}; make up to {volume}, about {water} of water."
    )
    if thin.stock_ml > bottle.volume_ml:
        said += f" {bottle.code} holds {amount_text(bottle.volume_ml, 'ml')} only."
    return Outcome(words=said)


def _measured(volume_ml: float, strength_percent: float, tool_id: int | None) -> str:
    """Return stock in ml; first in g, as the scale shows them, where it is weighed."""
    volume = amount_text(volume_ml, "ml")
    step_g = 0.0 if tool_id is None else tool_now(tool_id).step_g
    if not step_g:
        return volume
    dye_g = volume_ml * strength_percent / 100
    mass_g = filled_mass_g(volume_ml=volume_ml, powder_g=dye_g)
    return f"{amount_text(rounded_to_step(mass_g, step=step_g), 'g')} ({volume})"


def merging(bottle: ShelfBottle, sent: Sent) -> Outcome:
    """Say how strong bottles are once they are poured together."""
    poured = [bottle, *(shelf_bottle(code) for code in sent["from_codes"])]
    together = merged([
        Portion(volume_ml=one.volume_ml, strength_percent=one.strength_percent)
        for one in poured
        if one.volume_ml > 0
    ])
    volume = amount_text(together.volume_ml, "ml")
    strength = amount_text(together.strength_percent, "%")
    emptied = " and ".join(one.code for one in poured[1:])
    said = f"{bottle.code} would hold {volume} at {strength}; {emptied} would be empty."
    if any(one.is_strength_guess for one in poured):
        said += " A guess, since one of them is."
    return Outcome(words=said)
