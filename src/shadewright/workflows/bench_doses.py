"""Which bottle a dose is measured from now, how much, and what is the matter with it.

That is the bottle on the card, until it runs out: then what is left of the dose
comes from the next good bottle of the dye, reckoned with that bottle's strength.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shadewright.core.baths.choosing import chosen_bottles
from shadewright.core.quantities import amount_text
from shadewright.core.solutions import filled_mass_g
from shadewright.errors import NotFoundError, OutOfRangeError
from shadewright.workflows.bath_pages import BathNow, StepNow, bath_now
from shadewright.workflows.bottle_choice import Offer, first_to_expire, refused_for
from shadewright.workflows.rounds import shown_g
from shadewright.workflows.shelf import ShelfBottle, shelf, shelf_bottle


@dataclass(frozen=True, kw_only=True)
class DoseAsked:
    """What the hands are asked for: a bottle, an amount, and what to mind.

    ``amount`` and what the bottle ``holds`` are in ``unit``: ml, or g where stock goes
    on the scale. Beside ml stands ``scale_g``, beside g ``volume_ml``.
    """

    code: str
    strength_percent: float | None
    amount: float | None
    unit: str
    scale_g: float | None
    volume_ml: float | None
    holds: float | None
    trouble: str
    others: tuple[ShelfBottle, ...]


def dose_asked(
    bath: BathNow, each: StepNow, bottles: Sequence[ShelfBottle]
) -> DoseAsked:
    """Return what a dose asks for now."""
    step, dose = each.step, each.dose
    is_weighed = bool(step.code) and step.unit == "g"
    code, strength = step.code, None
    amount = step.volume_ml if is_weighed else step.amount
    if dose is not None:
        strength = dose.strength_percent
        if each.parts and dose.rest_g:
            code, strength, amount = _rest(bath, each, bottles)
    bottle = next((x for x in bottles if x.code == code), None)
    step_g = None if dose is None else dose.step_g
    on_scale_g = _scale_g(amount, strength) if code else None
    return DoseAsked(
        code=code,
        strength_percent=strength,
        amount=_shown(on_scale_g, step_g) if is_weighed else amount,
        unit=step.unit,
        scale_g=None if is_weighed else on_scale_g,
        volume_ml=amount if is_weighed else None,
        holds=_holds(bottle, is_weighed=is_weighed),
        trouble=_trouble(each, code, bottle, amount),
        others=_others(bath, each, code, bottles),
    )


def confirm_bottle(*, bath: str, step: str, code: str) -> None:
    """Say no to a bottle that is not on the card, empty, or marked settled."""
    now = bath_now(bath)
    each = next((x for x in now.steps if x.step.key == step and x.step.code), None)
    if each is None:
        raise NotFoundError(kind="dose from a bottle", key=step, argument="step")
    wanted = dose_asked(now, each, shelf()).code
    bottle = shelf_bottle(code)
    if bottle.code != wanted:
        raise OutOfRangeError(
            name="The bottle for this dose",
            given=f"{bottle.code} ({bottle.dye_name})",
            allowed=f"{wanted}, as on the card",
            argument="code",
        )
    _refuse_bad(bottle)


def bottle_trouble(bottle: ShelfBottle) -> str:
    """Say in one sentence why nothing is drawn from a bottle now, if so."""
    try:
        _refuse_bad(bottle)
    except OutOfRangeError as error:
        return error.sentence
    return ""


def _refuse_bad(bottle: ShelfBottle) -> None:
    name = f"Bottle {bottle.code}"
    if not bottle.is_on_shelf or bottle.is_void or bottle.is_empty:
        raise OutOfRangeError(
            name=name,
            given="an empty one by its ledger",
            allowed="one with stock in it",
            advice="Take another bottle, or read its level first.",
            argument="code",
        )
    if bottle.is_settled:
        raise OutOfRangeError(
            name=name,
            given="one that has settled",
            allowed="clear",
            advice="Re-warm, stir, cool and check it, or take another bottle.",
            argument="code",
        )


def _rest(
    bath: BathNow, each: StepNow, bottles: Sequence[ShelfBottle]
) -> tuple[str, float | None, float | None]:
    dose = each.dose
    if dose is None or dose.strength_percent is None:
        return "", None, None if dose is None else dose.rest_g
    planned = next((x for x in bottles if x.code == each.step.code), None)
    rest_ml = 100 * dose.rest_g / dose.strength_percent
    if planned is not None and planned.usable_ml >= rest_ml:
        return planned.code, dose.strength_percent, rest_ml
    chosen = chosen_bottles(
        dye_g=dose.rest_g,
        liquor_ml=bath.fibre_g * bath.liquor_ratio,
        bottles=Offer(bottles=bottles, purpose=bath.purpose).candidates(dose.dye_id),
    )
    if not chosen.shares:
        return "", None, None
    share = chosen.shares[0]
    return share.code, share.strength_percent, share.volume_ml


def _scale_g(amount: float | None, strength_percent: float | None) -> float | None:
    if amount is None or strength_percent is None:
        return None
    return filled_mass_g(volume_ml=amount, powder_g=amount * strength_percent / 100)


def _shown(mass_g: float | None, step_g: float | None) -> float | None:
    return None if mass_g is None else shown_g(mass_g, step_g=step_g)


def _holds(bottle: ShelfBottle | None, *, is_weighed: bool) -> float | None:
    """Return what can be drawn from a bottle, in g where stock is weighed."""
    if bottle is None:
        return None
    usable_ml = bottle.usable_ml
    return _scale_g(usable_ml, bottle.strength_percent) if is_weighed else usable_ml


def _trouble(
    each: StepNow, code: str, bottle: ShelfBottle | None, amount: float | None
) -> str:
    if not each.step.code:
        return ""
    name = each.step.title
    if not code:
        return (
            f"No good bottle of {name} is left for the rest. "
            "Make a stock, or leave the rest out."
        )
    if bottle is None:
        return f"Bottle {code} was poured away. Take another bottle of {name}."
    bad = bottle_trouble(bottle)
    if bad or amount is None or bottle.usable_ml >= amount:
        return bad
    holds = amount_text(bottle.usable_ml, "ml")
    return f"By its ledger {code} holds {holds}: the rest comes from the next bottle."


def _others(
    bath: BathNow, each: StepNow, code: str, bottles: Sequence[ShelfBottle]
) -> tuple[ShelfBottle, ...]:
    """Return the other bottles that the bath may take, the first to expire first."""
    if each.dose is None:
        return ()
    dye_id = each.dose.dye_id
    good = [
        x
        for x in bottles
        if x.dye_id == dye_id
        and x.code != code
        and not (bottle_trouble(x) or refused_for(x, bath.purpose))
    ]
    return tuple(sorted(good, key=first_to_expire))
