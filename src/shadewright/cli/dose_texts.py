"""What ``shadewright bath`` says of one dose: its keys, its rows, how sure it is."""

from shadewright.core.baths import MeasuredDose, MeasuredWith, SureDepth
from shadewright.core.quantities import (
    Balance,
    amount_text,
    number_text,
    rounded_to_step,
)
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.core.uncertainty import budget

NO_STOCK = "No strength was given: the dye is weighed out dry."
NO_SPREAD = (
    "Nothing that it is measured with was named, nor a spread of the strength: name "
    "--measure or --balance."
)


def dose_answer(dose: MeasuredDose, told: MeasuredWith) -> dict[str, object]:
    """Return every key of a dose."""
    answer: dict[str, object] = {
        "dye": dose.dye,
        "depth_percent": dose.depth_percent,
        "dye_g": dose.dye_g,
        "strength_percent": dose.strength_percent,
        "stock_ml": dose.stock_ml,
        "stock_g": dose.stock_g,
        **_spread_answer(dose.sure),
        "advice": dose.advice,
    }
    if dose.stock_g is None:
        answer["stock_why"] = NO_STOCK
    if told.balance is not None:
        answer |= _on_scale(dose, told.balance)
    return answer


def dose_rows(dose: MeasuredDose, told: MeasuredWith) -> list[tuple[str, str]]:
    """Return a dose as it is measured out, its depth and what mostly spoils it."""
    rows = [(dose.dye, f"{_amount(dose, told)} ({_depth(dose)})")]
    if dose.sure is not None:
        rows.append(("", f"mostly: {budget(dose.sure.depth)[0].name}"))
    return rows


def _spread_answer(sure: SureDepth | None) -> dict[str, object]:
    if sure is None:
        return {
            "u_depth_rel": None,
            "u_why": NO_SPREAD,
            "depth_from_percent": None,
            "depth_to_percent": None,
            "terms": [],
        }
    lines = budget(sure.depth)
    return {
        "u_depth_rel": sure.depth.u_rel,
        "depth_from_percent": sure.interval.low,
        "depth_to_percent": sure.interval.high,
        "terms": [{"name": line.name, "u_rel": line.u_rel} for line in lines],
    }


def _on_scale(dose: MeasuredDose, balance: Balance) -> dict[str, object]:
    """Return what a scale shows for a dose."""
    if dose.stock_g is None:
        return {"dye_g_scale": rounded_to_step(dose.dye_g, step=balance.step_g)}
    return {"stock_g_scale": rounded_to_step(dose.stock_g, step=balance.step_g)}


def _amount(dose: MeasuredDose, told: MeasuredWith) -> str:
    if dose.stock_ml is None or dose.stock_g is None or dose.strength_percent is None:
        return f"{amount_text(dose.dye_g, 'g')} of dry dye"
    volume, weight = amount_text(dose.stock_ml, "ml"), amount_text(dose.stock_g, "g")
    strength = amount_text(dose.strength_percent, "%")
    first, second = (weight, volume) if told.is_by_weight else (volume, weight)
    return f"{first} of the {strength} stock, or {second}"


def _depth(dose: MeasuredDose) -> str:
    depth = amount_text(dose.depth_percent, "%")
    if dose.sure is None:
        return depth
    low, high = dose.sure.interval.low, dose.sure.interval.high
    if dose.sure.is_drawn:
        return f"{depth}, from {_digits(low)} to {_digits(high)}{NO_BREAK}%"
    return f"{depth} ±{NO_BREAK}{_digits((high - low) / 2)}{NO_BREAK}%"


def _digits(percent: float) -> str:
    return number_text(percent, digits=2)
