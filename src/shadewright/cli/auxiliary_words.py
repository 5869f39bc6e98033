"""How acid and salt are written: ``citric:2%``, ``vinegar5:30ml``, ``acetic@56%:2%``.

A kind, for a liquid perhaps its strength in g per 100 ml, and an amount: in %
on weight of fibre, in g/l of liquor, or in g or ml as it is.
"""

from typing import Final

from shadewright.cli.words import one_of
from shadewright.core.baths import AcidWanted, Amount, AmountUnit, SaltWanted
from shadewright.core.baths.auxiliaries import MOST_LIQUID_G_PER_100ML
from shadewright.core.quantities.ranges import require_above_zero
from shadewright.core.quantities.reading import Asked, written
from shadewright.core.quantities.units import MASS_G, PERCENT, VOLUME_ML
from shadewright.core.tables.acids import ACIDS
from shadewright.core.tables.dye_classes import DyeClass
from shadewright.core.tables.salts import SALTS

_OFFERED: Final = ", ".join(acid.key for acid in ACIDS.values() if acid.is_offered)
_WORTH: Final = {
    AmountUnit.PERCENT_OWF: PERCENT,
    AmountUnit.G_PER_L: dict.fromkeys(
        ("g/l", "g / l", "g/litre", "g per l", "g per litre"), 1.0
    ),
    AmountUnit.G: MASS_G,
    AmountUnit.ML: VOLUME_ML,
}
_AMOUNT: Final = "an amount such as 2 % (on weight of fibre), 1.5 g/l, 3 g or 30 ml"
_ACID: Final = f"KIND:AMOUNT, such as citric:2% or vinegar5:30ml; kinds: {_OFFERED}"
_BY_NAME: Final = (
    "vinegar5:30ml alone, since its name says 5 %; any other as acetic@6%:30ml"
)
_SALT: Final = f"KIND:AMOUNT, such as glauber-anhydrous:5%; kinds: {', '.join(SALTS)}"


def acid_from_words(text: str, *, name: str, argument: str) -> AcidWanted:
    """Return the acid and amount that were written."""
    asked = Asked(name=name, example=_ACID, argument=argument)
    kind, amount = _halves(text, asked)
    key, sign, strength = kind.partition("@")
    if key.strip() not in ACIDS:
        raise asked.refusal(text)
    if sign and ACIDS[key.strip()].strength_g_per_100ml:
        raise asked.refusal(text, allowed=_BY_NAME)
    return AcidWanted(
        acid=ACIDS[key.strip()],
        amount=_amount(amount, name="Amount of acid", argument=argument),
        strength_g_per_100ml=_strength(strength, argument) if sign else None,
    )


def salt_from_words(text: str, *, name: str, argument: str) -> SaltWanted:
    """Return the form of Glauber's salt and the amount that were written."""
    asked = Asked(name=name, example=_SALT, argument=argument)
    key, amount = _halves(text, asked)
    if key not in SALTS:
        raise asked.refusal(text)
    return SaltWanted(
        salt=SALTS[key],
        amount=_amount(amount, name="Amount of salt", argument=argument),
    )


def class_from_words(text: str, *, name: str, argument: str) -> DyeClass:
    """Return the class of dye that was written."""
    return one_of(DyeClass, text, name=name, argument=argument)


def _halves(text: str, asked: Asked) -> tuple[str, str]:
    """Return what stands on either side of the colon."""
    kind, sign, amount = text.partition(":")
    if not sign:
        raise asked.refusal(text)
    return kind.strip().casefold(), amount


def _amount(text: str, *, name: str, argument: str) -> Amount:
    asked = Asked(name=name, example=_AMOUNT, argument=argument)
    found = written(text, asked=asked)
    unit = found.unit.removesuffix(" owf").removesuffix("owf").strip()
    for counted_in, words in _WORTH.items():
        if unit in words:
            return Amount(value=found.number * words[unit], unit=counted_in)
    raise asked.refusal(text)


def _strength(text: str, argument: str) -> float:
    asked = Asked(
        name="Strength of the acid",
        example="grams in 100 ml, such as acetic@56%:2%",
        argument=argument,
    )
    found = written(text, asked=asked)
    if found.unit not in PERCENT:
        raise asked.refusal(text)
    return require_above_zero(
        found.number,
        most=MOST_LIQUID_G_PER_100ML,
        unit="%",
        name=asked.name,
        argument=argument,
    )
