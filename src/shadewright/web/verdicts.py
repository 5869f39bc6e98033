"""A dry check in a line: its verdict, and the number with its formula."""

from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.parts import Chip, ChipKind
from shadewright.workflows.judging.dry_checks import CheckNow, Decision

_KINDS: dict[Decision, ChipKind] = {
    Decision.MATCH: "good",
    Decision.ALTERNATE: "caution",
    Decision.NEW_LOT: "caution",
    Decision.CORRECT: "problem",
    Decision.ONE_OFF: "problem",
    Decision.CANNOT_TELL: "guess",
}


def verdict_chip(verdict: Decision) -> Chip:
    """Return a verdict in a word or two."""
    return Chip(words=verdict.capitalize(), kind=_KINDS[verdict])


def difference_words(check: CheckNow) -> str:
    """Return the number with its formula and its spread, or nothing."""
    if check.difference is None:
        return ""
    spread = "" if check.u is None else f"{NO_BREAK}±{NO_BREAK}{check.u:.1f}"
    return f"{check.formula}{NO_BREAK}{check.difference:.1f}{spread}"
