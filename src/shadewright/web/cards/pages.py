"""The page of a card that is typed back."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.cards.forms import CardForm
from shadewright.web.pages import Page


@dataclass(frozen=True, kw_only=True)
class CardBlank:
    """A blank of the card, to type in: its words, and the form's field for it."""

    words: str
    field: object
    unit: str
    is_wide: bool


@dataclass(frozen=True, kw_only=True)
class CardTicks:
    """The ticks of a line that is still open, as fields of the form."""

    planned: object
    missed: object


@dataclass(frozen=True, kw_only=True)
class CardLine:
    """A line of the card; one that is done, or not typed here, says why instead."""

    place: int
    title: str
    amount: str
    code: str
    ticks: CardTicks | None
    blanks: tuple[CardBlank, ...]
    said: str


@dataclass(frozen=True, kw_only=True)
class CardPage(Page):
    """A card, line for line as it was printed."""

    template: ClassVar[str] = "cards/type.html"
    place: ClassVar[str] = "Dye days"

    form: CardForm
    lines: tuple[CardLine, ...]
    bench: str
    printed: str
    is_open: bool
    is_given_up: bool
    is_first_shown: bool
