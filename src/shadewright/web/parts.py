"""The small parts that pages are made of, as frozen values.

Each has a template tag of the same name in ``templatetags/house.py`` and a
template in ``templates/parts``. When to use which: docs/contributing/web.md.
"""

from dataclasses import dataclass, replace
from typing import Literal

from shadewright.core.quantities.writing import NO_BREAK, amount_text, spread_text
from shadewright.core.uncertainty import Value, half_width

ChipKind = Literal["", "good", "caution", "problem", "guess"]
StepState = Literal["done", "now", "to come"]

_TIGHT = 0.02
_FAIR = 0.05
_CHIP_ICONS: dict[ChipKind, str] = {
    "good": "tick",
    "caution": "caution",
    "problem": "problem",
}


@dataclass(frozen=True, kw_only=True)
class Measured:
    """A number with its unit and, where it is known, how sure it is.

    ``is_part`` says that the spread leaves out something that nobody knows.
    """

    number: str
    unit: str
    spread: str = ""
    relative_spread: float | None = None
    is_part: bool = False

    @property
    def how_sure(self) -> str:
        """The spread in one word; none where only a part of it is known."""
        if self.relative_spread is None or self.is_part:
            return ""
        if self.relative_spread < _TIGHT:
            return "tight"
        return "fair" if self.relative_spread <= _FAIR else "wide"


def measured(value: float, unit: str) -> Measured:
    """Return an amount in as many digits as make sense, its spread not known."""
    number, _, written = amount_text(value, unit).partition(NO_BREAK)
    return Measured(number=number, unit=written)


def measured_value(value: Value, unit: str, *, is_part: bool = False) -> Measured:
    """Return an amount and how far it may be off, 19 times in 20; if that is known."""
    bare = measured(value.value, unit)
    if not value.terms or not value.value:
        return bare
    reach = half_width(value)
    return replace(
        bare,
        spread=spread_text(reach),
        relative_spread=reach / abs(value.value),
        is_part=is_part,
    )


@dataclass(frozen=True, kw_only=True)
class Chip:
    """A state in one to three words, with a sign; never a key."""

    words: str
    kind: ChipKind = ""

    @property
    def icon(self) -> str:
        """The sign that goes with the kind."""
        return _CHIP_ICONS.get(self.kind, "")


@dataclass(frozen=True, kw_only=True)
class Caution:
    """A danger at its own step, or a refusal."""

    title: str
    text: str
    kind: Literal["caution", "problem"] = "caution"


@dataclass(frozen=True, kw_only=True)
class Refusal:
    """Why what a form asks for cannot be; it takes the focus where it is new."""

    note: Caution
    takes_focus: bool


@dataclass(frozen=True, kw_only=True)
class Key:
    """A key that leads to an act."""

    words: str
    address: str
    icon: str = ""
    css: str = ""


@dataclass(frozen=True, kw_only=True)
class TreeNode:
    """A thing in a trace and what hangs below it; a missing link is dashed."""

    kind: str
    name: str
    more: str
    address: str
    is_missing: bool
    is_here: bool
    below: tuple["TreeNode", ...]


@dataclass(frozen=True, kw_only=True)
class Step:
    """A step of guided work."""

    words: str
    state: StepState


def steps(words: tuple[str, ...], *, now: int) -> tuple[Step, ...]:
    """Return the steps of a task that stands at step ``now``, counted from one."""
    return tuple(
        Step(words=said, state=_state(place, now))
        for place, said in enumerate(words, start=1)
    )


def _state(place: int, now: int) -> StepState:
    if place < now:
        return "done"
    return "now" if place == now else "to come"
