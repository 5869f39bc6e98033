"""How amounts are typed: the core's readers as types of options.

Each reader says in one sentence what it takes; the option's name is put before
it where the sentence leaves.
"""

from dataclasses import dataclass
from enum import StrEnum
from functools import partial
from typing import Protocol, TypeVar

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

Kind = TypeVar("Kind", bound=StrEnum)
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


@dataclass(frozen=True, kw_only=True)
class SureStrength:
    """A strength at hand, and its relative standard spread."""

    percent: float
    u_rel: float


@dataclass(frozen=True, kw_only=True)
class Poured:
    """A part bottle as it was typed: how much, and how strong."""

    volume_ml: float
    strength: SureStrength


def strength(text: str, *, name: str, argument: str) -> float:
    """Return a strength in % that is wanted; a spread behind it is only checked."""
    return sure_strength(text, name=name, argument=argument).percent


def sure_strength(text: str, *, name: str, argument: str) -> SureStrength:
    """Return a strength at hand, with the relative spread behind it (``1%+-2%``)."""
    value, sign, spread = text.replace("±", "+-").partition("+-")
    share = (
        percent(spread, name="Spread", argument=argument, guard=_share) if sign else 0.0
    )
    return SureStrength(
        percent=percent(value, name=name, argument=argument, guard=require_strength),
        u_rel=share / 100.0,
    )


def portion(text: str, *, name: str, argument: str) -> Poured:
    """Return a part bottle from ``180ml@1%``, or ``180ml@1%+-2%``."""
    volume, sign, strong = text.partition("@")
    if not sign:
        raise UnitError(
            name=name,
            given=as_given(text),
            allowed="VOLUME@STRENGTH, such as 180ml@1%",
            argument=argument,
        )
    return Poured(
        volume_ml=volume_ml(
            volume, name="Volume", argument=argument, guard=require_volume
        ),
        strength=sure_strength(strong, name="Strength", argument=argument),
    )


def one_of(kinds: type[Kind], text: str, *, name: str, argument: str) -> Kind:
    """Return the kind that was written: one word of a few."""
    word = text.strip().casefold()
    if word in set(kinds):
        return kinds(word)
    *most, last = kinds
    raise UnitError(
        name=name,
        given=as_given(text),
        allowed=f"{', '.join(most)} or {last}",
        argument=argument,
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
SURE_STRENGTH = Written(sure_strength, called="Strength")
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
