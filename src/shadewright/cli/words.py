"""How amounts are typed: the core's readers as types of options.

Each reader says in one sentence what it takes; the option's name is put before
it where the sentence leaves.
"""

from functools import partial
from typing import TYPE_CHECKING, Protocol, TypeVar

import click

from shadewright.cli.commands import option_name
from shadewright.core.quantities import (
    balance,
    mass_g,
    measuring_tool,
    percent,
    require_between,
    require_mass,
    require_powder_strength,
    require_strength,
    require_volume,
    temperature_c,
    volume_ml,
)
from shadewright.core.quantities.reading import Asked, as_given, written
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
        percent(spread, name="Spread", argument=argument, guard=_share)
    return percent(value, name=name, argument=argument, guard=require_strength)


def portion(text: str, *, name: str, argument: str) -> "Portion":
    """Return a part bottle from ``180ml@1%``."""
    from shadewright.core.solutions import Portion  # a bath needs no bottle

    volume, sign, strong = text.partition("@")
    if not sign:
        raise UnitError(
            name=name,
            given=as_given(text),
            allowed="VOLUME@STRENGTH, such as 180ml@1%",
            argument=argument,
        )
    return Portion(
        volume_ml=volume_ml(
            volume, name="Volume", argument=argument, guard=require_volume
        ),
        strength_percent=strength(strong, name="Strength", argument=argument),
    )


def count(text: str, *, name: str, argument: str) -> int:
    """Return a whole number; how large it may be is told where it is used."""
    asked = Asked(name=name, example="a whole number such as 6", argument=argument)
    found = written(text, asked=asked)
    if found.unit or not found.number.is_integer():
        raise asked.refusal(text)
    return int(found.number)


def _share(value: float, *, name: str, argument: str) -> float:
    return require_between(
        value, least=0.0, most=100.0, unit="%", name=name, argument=argument
    )


def _liquid(value: float, *, name: str, argument: str) -> float:
    return require_between(
        value, least=0.0, most=100.0, unit="°C", name=name, argument=argument
    )


VOLUME = Written(partial(volume_ml, guard=require_volume), called="Volume")
IN_VESSEL = Written(volume_ml, called="Liquid in the vessel")
POWDER = Written(partial(mass_g, guard=require_mass), called="Powder")
STRENGTH = Written(strength, called="Strength")
POWDER_STRENGTH = Written(
    partial(percent, guard=require_powder_strength), called="Powder strength"
)
TEMPERATURE = Written(partial(temperature_c, guard=_liquid), called="Temperature")
BALANCE = Written(balance, called="Balance")
TOOL = Written(measuring_tool, called="Measuring tool")
FIBRE = Written(partial(mass_g, guard=require_mass), called="Weight of fibre")
WET_YARN = Written(partial(mass_g, guard=require_mass), called="Wet yarn")
COUNT = Written(count, called="Number of steps")
PORTION = Written(portion, called="A part bottle")
