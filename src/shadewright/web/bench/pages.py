"""What the pages of the bench hold."""

from dataclasses import dataclass
from typing import ClassVar
from uuid import UUID

from shadewright.web.pages import Page
from shadewright.web.parts import Caution, Chip


@dataclass(frozen=True, kw_only=True)
class TapKey:
    """A key that writes one line; the script and a plain form send the same."""

    words: str
    icon: str
    act: str
    step: str
    key: UUID
    value: str = ""
    unit: str = ""
    bottle: str = ""
    note: str = ""
    said: str = ""
    is_emptied: bool = False
    is_first: bool = False


@dataclass(frozen=True, kw_only=True)
class Written:
    """A line that stands, with the key that takes it back."""

    deed: UUID
    undo_key: UUID
    step: str
    words: str
    who: str
    may_undo: bool
    photo: str


@dataclass(frozen=True, kw_only=True)
class Panel:
    """A step as it fills the screen; every way from it is in it."""

    key: str
    place: str
    name: str
    code: str
    number: str
    unit: str
    css: str
    clock: str
    scale: str
    volume: str
    sure: str
    fine: str
    text: str
    caution: Caution | None
    trouble: Caution | None
    last: str
    done: TapKey | None
    finish: str
    question: str
    yes: TapKey | None
    presets: tuple[TapKey, ...]
    pad: TapKey | None
    other_pad: TapKey | None
    readings: tuple[TapKey, ...]
    problems: tuple[TapKey, ...]
    shares: tuple[TapKey, ...]
    wrong: TapKey | None
    left: tuple[TapKey, ...]
    after: tuple[TapKey, ...]
    note_key: UUID
    photo_key: UUID
    data: str
    is_now: bool
    is_seen: bool
    view: str


@dataclass(frozen=True, kw_only=True)
class RoundRow:
    """A step in the list of the round."""

    key: str
    number: int
    words: str
    state: str


@dataclass(frozen=True, kw_only=True)
class DoubleTick:
    """A step that was ticked more than once."""

    words: str
    ticks: tuple[Written, ...]


@dataclass(frozen=True, kw_only=True)
class DeviationNote:
    """A dose that went differently, the way to mend it, and what may be decided."""

    note: Caution
    top_up: TapKey | None
    decide: tuple[TapKey, ...] = ()
    advice: str = ""


@dataclass(frozen=True, kw_only=True)
class NextBar:
    """The way to what is next at any other pot: when, what, and the time left."""

    number: str
    lead: str
    words: str
    clock: str
    is_now: bool


@dataclass(frozen=True, kw_only=True)
class CupNote:
    """What a look in the cup asks for: a sentence, the way, a longer hold.

    ``asks`` says that a temperature or a pH is wanted first.
    """

    words: str
    steps: tuple[str, ...]
    asks: bool
    longer: TapKey | None


@dataclass(frozen=True, kw_only=True)
class BenchPage(Page):
    """One bath at the pot."""

    template: ClassVar[str] = "bench/bench.html"
    place: ClassVar[str] = "Today"

    number: str
    kind: str
    now_ms: int
    mark: str
    clocks: str
    bottles: str
    elsewhere_ms: int
    things: str
    bar: NextBar | None
    undo_key: UUID
    undo_first: str
    standing: str
    is_new: bool
    is_over: bool
    panels: tuple[Panel, ...]
    round: tuple[RoundRow, ...]
    written: tuple[Written, ...]
    doubles: tuple[DoubleTick, ...]
    deviation: DeviationNote | None
    cup: CupNote | None
    late_acid: tuple[str, ...]
    over: str
    under: str
    shows_round: bool
    fault: str


@dataclass(frozen=True, kw_only=True)
class Ringing:
    """An alarm that nobody has heard yet."""

    words: str
    heard: TapKey
    number: str


@dataclass(frozen=True, kw_only=True)
class Alarms:
    """What rings on every page that keeps the clocks."""

    kind: str
    now_ms: int
    clocks: str
    ringing: tuple[Ringing, ...]


@dataclass(frozen=True, kw_only=True)
class PotCard:
    """A pot in the list: what it asks for, and when."""

    number: str
    title: str
    fact: str
    state: Chip
    asks: str
    when: str
    clock_ms: int | None
    clock: str
    key: str
    is_first: bool


@dataclass(frozen=True, kw_only=True)
class AllOff:
    """The question at the end of a day, and what is still hot by the records."""

    words: str
    is_hot: bool
    address: str


@dataclass(frozen=True, kw_only=True)
class Pots:
    """The pots that are not finished, what asks first at the top, and the alarms.

    ``mark`` changes whenever the list would be another.
    """

    cards: tuple[PotCard, ...]
    alarms: Alarms
    all_off: AllOff | None
    mark: str


@dataclass(frozen=True, kw_only=True)
class BenchListPage(Page):
    """Every pot that is open today."""

    template: ClassVar[str] = "bench/list.html"
    place: ClassVar[str] = "Today"

    pots: Pots
