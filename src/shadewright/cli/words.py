"""How amounts are typed: the core's readers as types of options.

Each reader says in one sentence what it takes; the option's name is put before
it where the sentence leaves.
"""

from typing import TYPE_CHECKING, Protocol, TypeVar

import click

from shadewright.cli.commands import option_name
from shadewright.core.quantities import (
    balance,
    mass_g,
    measuring_tool,
    percent,
    require_strength,
    require_volume,
    temperature_c,
    volume_ml,
)
from shadewright.errors import UnitError

if TYPE_CHECKING:
    from shadewright.core.solutions import Portion

T_co = TypeVar("T_co", covariant=True)


class Reader(Protocol[T_co]):
    """What takes a text and answers with an amount, or refuses it."""

    def __call__(self, text: str, *, name: str, argument: str) -> T_co:
        """Read the text."""


class Written(click.ParamType[T_co]):
    """An option whose text is read by the core; ``called`` is its name in words."""

    name = "amount"

    def __init__(self, reader: Reader[T_co], *, called: str) -> None:
        """Keep the reader, and the name for its sentences."""
        self.reader = reader
        self.called = called

    def convert(
        self, value: str, param: click.Parameter | None, ctx: click.Context | None
    ) -> T_co:
        """Return what was written, or let its sentence go."""
        del ctx
        return self.reader(value, name=self.called, argument=option_name(param))


def strength(text: str, *, name: str, argument: str) -> float:
    """Return a strength in %; a relative spread behind it (``1%+-2%``) is checked.

    The spread itself is used once spreads are reckoned.
    """
    value, sign, spread = text.replace("±", "+-").partition("+-")
    if sign:
        percent(spread, name="Spread", argument=argument)
    found = percent(value, name=name, argument=argument)
    return require_strength(found, name=name, argument=argument)


def portion(text: str, *, name: str, argument: str) -> "Portion":
    """Return a part bottle from ``180ml@1%``."""
    from shadewright.core.solutions import Portion  # a bath needs no bottle

    volume, sign, strong = text.partition("@")
    if not sign:
        raise UnitError(
            name=name,
            given=text[:40],
            allowed="VOLUME@STRENGTH, such as 180ml@1%",
            argument=argument,
        )
    amount = volume_ml(volume, name="Volume", argument=argument)
    return Portion(
        volume_ml=require_volume(amount, name="Volume", argument=argument),
        strength_percent=strength(strong, name="Strength", argument=argument),
    )


VOLUME = Written(volume_ml, called="Volume")
IN_VESSEL = Written(volume_ml, called="Liquid in the vessel")
POWDER = Written(mass_g, called="Powder")
STRENGTH = Written(strength, called="Strength")
POWDER_STRENGTH = Written(percent, called="Powder strength")
TEMPERATURE = Written(temperature_c, called="Temperature")
BALANCE = Written(balance, called="Balance")
TOOL = Written(measuring_tool, called="Measuring tool")
PORTION = Written(portion, called="A part bottle")
