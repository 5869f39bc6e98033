"""How sure a depth is, in words: for the screen, the pot and the card alike."""

from collections.abc import Sequence

from shadewright.core.baths import SureDepth
from shadewright.core.baths.levers import saying
from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import NO_BREAK, spread_text
from shadewright.core.uncertainty import budget
from shadewright.workflows.dosing import HowSure


def reach_rel(sure: SureDepth) -> float:
    """Return half of the interval as a share of the depth."""
    low, high = sure.interval.low, sure.interval.high
    return (high - low) / 2.0 / sure.depth.value if sure.depth.value else 0.0


def depth_words(how: HowSure) -> str:
    """Return a depth with its ±, or both ends where they are not even.

    Empty where nothing is known of its spread.
    """
    if how.sure is None:
        return ""
    depth = amount_text(how.sure.depth.value, "%")
    low, high = how.sure.interval.low, how.sure.interval.high
    if how.sure.is_drawn:
        return f"{depth}, from {_digits(low)} to {_digits(high)}{NO_BREAK}%"
    return f"{depth} ±{NO_BREAK}{spread_words(how.sure)}{NO_BREAK}%"


def spread_words(sure: SureDepth) -> str:
    """Return half of the interval, in % on weight of fibre, without its unit."""
    return spread_text((sure.interval.high - sure.interval.low) / 2.0)


def share_words(how: HowSure) -> str:
    """Return half of the interval in per cent of the depth: ``± 4 %``."""
    return "" if how.sure is None else saying.share_words(reach_rel(how.sure))


def most_words(how: HowSure) -> str:
    """Return what weighs most in a spread."""
    lines = () if how.sure is None else budget(how.sure.depth)
    return lines[0].name if lines else ""


def lacking_words(how: HowSure) -> str:
    """Return what is left out because nobody knows it, in one sentence."""
    if not how.lacks:
        return ""
    said = "; ".join(_grouped(how.lacks))
    return (
        f"How sure is not known: {said}." if how.sure is None else f"Left out: {said}."
    )


def _grouped(lacks: Sequence[str]) -> list[str]:
    """Return what is lacking, a bottle’s code said once: ``L9Q: this, that``."""
    groups: dict[str, list[str]] = {}
    for words in lacks:
        code, _, rest = words.rpartition(": ")
        groups.setdefault(code, []).append(rest)
    return [
        f"{code}: {', '.join(said)}" if code else "; ".join(said)
        for code, said in groups.items()
    ]


def _digits(percent: float) -> str:
    return number_text(percent, digits=2)
