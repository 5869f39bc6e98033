"""A draft of the answer to a buyer: what is known, what happens next, nothing promised.

The text is a beginning for the person who answers. It says what the records say, and
where they say nothing it says that too.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from shadewright.paper.words import day_words
from shadewright.records.models.selling import ComplaintAbout


@dataclass(frozen=True, kw_only=True)
class ReplyFacts:
    """What a reply can rest on; empty or None where it is not known."""

    to_whom: str
    studio: str
    number: str
    colourway: str
    base: str
    dyed_on: date | None
    tests: tuple[str, ...]
    others: int
    sister_lots: tuple[str, ...] = ()


_FIRST = {
    ComplaintAbout.BLEEDS: "Thank you for telling us that it gives off colour.",
    ComplaintAbout.RUBS: "Thank you for telling us that it rubs off.",
    ComplaintAbout.NO_MATCH: "Thank you for telling us that it does not match.",
    ComplaintAbout.UNEVEN: "Thank you for telling us that it is uneven.",
    ComplaintAbout.SHORT: "Thank you for telling us that it is short.",
    ComplaintAbout.OTHER: "Thank you for writing to us.",
}

_ASK = {
    ComplaintAbout.BLEEDS: (
        "Please do not wash it with anything pale. Could you lay a damp white cloth "
        "on it for a minute and send us a photo of the cloth in daylight, and tell us "
        "which soap and how warm the water was?"
    ),
    ComplaintAbout.RUBS: (
        "Could you rub a dry white cloth and a damp one ten times on it and send us a "
        "photo of both in daylight?"
    ),
    ComplaintAbout.NO_MATCH: (
        "Could you send us a photo in daylight of both skeins beside each other, with "
        "the lot numbers of their tags?"
    ),
    ComplaintAbout.UNEVEN: "Could you send us a photo in daylight of the open skein?",
    ComplaintAbout.SHORT: (
        "Could you weigh it on a kitchen scale, with its ties and without its tag?"
    ),
    ComplaintAbout.OTHER: "Could you tell us a little more, with a photo if it helps?",
}


def draft_reply(about: ComplaintAbout, facts: ReplyFacts) -> str:
    """Return the draft of an answer, paragraphs parted by empty lines."""
    return "\n\n".join(_paragraphs(about, facts))


def _paragraphs(about: ComplaintAbout, facts: ReplyFacts) -> Iterator[str]:
    yield f"Dear {facts.to_whom},"
    yield _FIRST[about]
    yield _known(facts)
    if facts.number and about in {ComplaintAbout.BLEEDS, ComplaintAbout.RUBS}:
        yield _tests(facts)
    if about is ComplaintAbout.NO_MATCH and facts.sister_lots:
        lots = ", ".join(facts.sister_lots)
        yield (
            f"Other lots of the same colourway and yarn: {lots}. "
            "Yarn from two lots may differ; skeins knitted in turn hide it best."
        )
    yield _ASK[about]
    yield "What we offer: (new skeins, your money back, a credit; write it here)."
    yield f"Kind regards,\n{facts.studio}"


def _known(facts: ReplyFacts) -> str:
    if not facts.number:
        return (
            "To find the bath that it came from we need the lot number on its tag: "
            "six digits, a letter and a number, such as 261125-B2."
        )
    on = "" if facts.dyed_on is None else f", dyed on {day_words(facts.dyed_on)}"
    yarn = f"lot {facts.number}, {facts.colourway} on {facts.base}{on}"
    return f"Your yarn is {yarn}. {_others(facts.others)}"


def _others(count: int) -> str:
    if not count:
        return "Nobody else is written down as having yarn of this bath."
    if count == 1:
        return "One other buyer has yarn of this bath."
    return f"{count} other buyers have yarn of this bath."


def _tests(facts: ReplyFacts) -> str:
    if not facts.tests:
        return "No bleed or rub test of this lot is written down."
    return f"Our own tests of this lot: {'; '.join(facts.tests)}."
