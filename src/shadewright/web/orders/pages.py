"""The pages of orders: the list, one of them, its form, par levels, what to dye."""

from dataclasses import dataclass
from datetime import date
from typing import ClassVar
from uuid import UUID

from shadewright.web.orders.forms import OrderForm, ParForm, PromiseForm
from shadewright.web.pages import Page
from shadewright.web.parts import Caution, Chip
from shadewright.workflows.days.pars import ParNow


@dataclass(frozen=True, kw_only=True)
class OrderRow:
    """An order in a list."""

    number: int
    for_whom: str
    wanted: str
    lines: tuple[str, ...]
    state: Chip


@dataclass(frozen=True, kw_only=True)
class OrdersPage(Page):
    """The open orders by the day they are wanted, or the closed ones."""

    template: ClassVar[str] = "orders/orders.html"
    place: ClassVar[str] = "Dye days"

    rows: tuple[OrderRow, ...]
    query: str
    is_closed: bool


@dataclass(frozen=True, kw_only=True)
class WriteOrderPage(Page):
    """A new order, or one that is changed."""

    template: ClassVar[str] = "orders/write.html"
    place: ClassVar[str] = "Dye days"

    form: OrderForm
    customers: tuple[str, ...]
    has_choices: bool
    back: str


@dataclass(frozen=True, kw_only=True)
class Trouble:
    """What stands in the way of planning something, and where to mend it."""

    note: Caution
    key: str
    address: str


@dataclass(frozen=True, kw_only=True)
class ShareRow:
    """A bath or a lot for a line: which, how many, where it is."""

    number: str
    address: str
    skeins: str
    words: str
    take: int


@dataclass(frozen=True, kw_only=True)
class LineShown:
    """A line of an order with the baths and lots that are for it."""

    position: int
    words: str
    size: str
    as_said: str
    is_dropped: bool
    shares: tuple[ShareRow, ...]
    offers: tuple[ShareRow, ...]
    to_dye: int
    trouble: Trouble | None
    put_on: str
    share_address: str


@dataclass(frozen=True, kw_only=True)
class PromiseShown:
    """When an order can be ready, why, and how that fits what was said."""

    words: str
    reasons: tuple[str, ...]
    is_guess: bool
    latest: date
    wanted: Chip | None
    said: str
    has_promise: bool
    is_new: bool


@dataclass(frozen=True, kw_only=True)
class EditRow:
    """An edit of an order: when and by whom, what from and what to."""

    deed: UUID
    when: str
    changes: tuple[str, ...]
    is_undone: bool
    may_undo: bool


@dataclass(frozen=True, kw_only=True)
class OrderPage(Page):
    """One order: its promise, its lines, how it ends."""

    template: ClassVar[str] = "orders/order.html"
    place: ClassVar[str] = "Dye days"

    number: int
    state: Chip
    promise: PromiseShown | None
    promise_form: PromiseForm
    refusal: Caution | None
    lines: tuple[LineShown, ...]
    facts: tuple[tuple[str, str], ...]
    is_closed: bool
    is_all_there: bool
    before_sending: str
    deed: UUID
    edits: tuple[EditRow, ...]


@dataclass(frozen=True, kw_only=True)
class ParsPage(Page):
    """What the shelf should hold, beside what it holds."""

    template: ClassVar[str] = "orders/pars.html"
    place: ClassVar[str] = "Dye days"

    rows: tuple[ParNow, ...]
    form: ParForm


@dataclass(frozen=True, kw_only=True)
class ToDyeRow:
    """A colourway on a base that is to be dyed."""

    what: str
    size: str
    due: str
    why: str
    pots: str
    trouble: Trouble | None
    put_on: str
    orders: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class ToDyePage(Page):
    """What is to be dyed, and on which day it would be put."""

    template: ClassVar[str] = "orders/to_dye.html"
    place: ClassVar[str] = "Dye days"

    rows: tuple[ToDyeRow, ...]
    day: str
    day_words: str
