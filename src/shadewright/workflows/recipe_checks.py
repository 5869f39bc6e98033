"""What a recipe may not say: one sentence, with the name of what is at fault."""

from shadewright.core.baths.depth import MOST_DEPTH_PERCENT
from shadewright.core.baths.liquor import MOST_RATIO
from shadewright.core.quantities import (
    amount_text,
    require_above_zero,
    require_between,
)
from shadewright.errors import ConflictError, MissingError, OutOfRangeError
from shadewright.workflows.recipe_curves import check_curve
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText, When

_MOST_HELPER = 500.0
_LEAST_C, _MOST_C = 0.0, 105.0


def check_recipe(text: RecipeText) -> None:
    """Refuse what no recipe can say; what is only missing is let through."""
    if not text.doses and not text.as_written.strip():
        raise MissingError(
            name="The dye",
            advice="Name at least one dye, or paste the old recipe as it is written.",
            argument="doses",
        )
    _check_doses(text.doses)
    for helper in text.helpers:
        _check_helper(helper)
        _check_on_the_way(helper, text)
    _check_numbers(text)
    _check_heat(text)
    check_curve(text, text.stops)


def _check_doses(doses: tuple[DoseLine, ...]) -> None:
    named: set[int] = set()
    for dose in doses:
        if dose.dye_id in named:
            raise ConflictError(
                why=f"{dose.dye_name or 'A dye'} stands there twice.",
                advice="Add the two depths and leave one out.",
                argument="doses",
            )
        if dose.dye_id is not None:
            named.add(dose.dye_id)
        if dose.depth_percent is not None:
            require_above_zero(
                dose.depth_percent,
                most=MOST_DEPTH_PERCENT,
                unit="%",
                name=f"The depth of {dose.dye_name or 'the dye'}",
                argument="doses",
            )


def _check_helper(helper: HelperLine) -> None:
    require_above_zero(
        helper.amount,
        most=_MOST_HELPER,
        unit=helper.unit,
        name="The amount",
        argument="helpers",
    )


def _check_on_the_way(helper: HelperLine, text: RecipeText) -> None:
    """Refuse a helper on the way up without its temperature, or off the way."""
    if helper.when is not When.ON_THE_WAY:
        return
    if helper.at_c is None:
        raise MissingError(
            name="The temperature on the way up",
            advice="Type at what temperature it goes in, such as 60 °C.",
            argument="helpers",
        )
    start_c = _LEAST_C if text.start_c is None else text.start_c
    require_between(
        helper.at_c,
        least=start_c,
        most=max(start_c, _MOST_C if text.top_c is None else text.top_c),
        unit="°C",
        name="The temperature on the way up",
        argument="helpers",
    )


def _check_numbers(text: RecipeText) -> None:
    if text.liquor_ratio is not None:
        require_above_zero(
            text.liquor_ratio,
            most=MOST_RATIO,
            unit="l/kg",
            name="The liquor ratio",
            argument="liquor_ratio",
        )
    bounded = (
        ("start_c", text.start_c, 0.0, 100.0, "°C", "The starting temperature"),
        ("top_c", text.top_c, 20.0, 105.0, "°C", "The top temperature"),
        ("rise_c_per_min", text.rise_c_per_min, 0.05, 20.0, "°C/min", "The rise"),
        ("hold_min", text.hold_min, 0.0, 600.0, "min", "The hold"),
    )
    for argument, value, least, most, unit, name in bounded:
        if value is not None:
            require_between(
                value, least=least, most=most, unit=unit, name=name, argument=argument
            )


def _check_heat(text: RecipeText) -> None:
    start, top = text.start_c, text.top_c
    if start is not None and top is not None and top < start:
        raise OutOfRangeError(
            name="The top temperature",
            given=amount_text(top, "°C"),
            allowed=f"at least the start, {amount_text(start, '°C')}",
            argument="top_c",
        )
