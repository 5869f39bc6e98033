"""Where a bath is, and what happened at its pot, in words."""

from shadewright.web.parts import Chip, ChipKind
from shadewright.workflows.bath_pages import BathAct, BathStatus

_KINDS: dict[BathStatus, ChipKind] = {
    BathStatus.GOING: "caution",
    BathStatus.COOLING: "caution",
    BathStatus.FINISHED: "good",
}
_MOMENTS = {
    "start": "at the start",
    "after dye": "after the dye",
    "on the way": "on the way up",
    "at top": "at the top",
    "two halves": "in two halves",
}


def status_chip(status: BathStatus) -> Chip:
    """Return a bath's state with its sign."""
    return Chip(words=status.value, kind=_KINDS.get(status, ""))


def act_words(act: BathAct) -> str:
    """Return what happened, as the ledger names it."""
    return str(act.label)


def moment_words(moment: str) -> str:
    """Return when an auxiliary goes in, in two or three words."""
    return _MOMENTS[moment]
