"""Baths on paper: the cards for the pots, and the tags of the swatches."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from django.utils import timezone

from shadewright.core.baths.acidity import ph_text
from shadewright.core.quantities import amount_text
from shadewright.exchange import bath_text
from shadewright.paper import BathCard, SwatchTag, bath_cards_pdf, swatch_tags_pdf
from shadewright.paper.bath_card import MOST_CARDS
from shadewright.paper.swatch_tags import MOST_TAGS
from shadewright.workflows.bath_pages import BathNow, bath_now
from shadewright.workflows.bath_ph import ph_of_bath
from shadewright.workflows.bath_shapes import DoneLine, StepNow
from shadewright.workflows.card_advice import card_advice
from shadewright.workflows.recipe_curves import programme_of
from shadewright.workflows.recipes import version
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio
from shadewright.workflows.sure_words import share_words

_WATER_ONLY = "water only, no fibre: the bath reads higher."


@dataclass(frozen=True, kw_only=True)
class Planned:
    """A bath's place among those of its day, and the clock of each step by its key."""

    place: int
    of: int
    times: Mapping[str, str]


def bath_cards(
    numbers: Sequence[str],
    *,
    paper: str = "a4",
    planned: Mapping[str, Planned] = MappingProxyType({}),
) -> bytes:
    """Return the cards of these baths as a PDF, in the order they are named."""
    is_demo = _is_demo()
    baths = _baths(numbers, most=MOST_CARDS)
    cards = [_card(x, planned=planned.get(x.number), is_demo=is_demo) for x in baths]
    return bath_cards_pdf(cards, paper=paper, printed_on=today())


def swatch_tags(numbers: Sequence[str], *, paper: str = "a4") -> bytes:
    """Return the tags of these baths as a PDF, in the order they are named."""
    is_demo = _is_demo()
    baths = _baths(numbers, most=MOST_TAGS)
    tags = [_tag(bath, is_demo=is_demo) for bath in baths]
    return swatch_tags_pdf(tags, paper=paper, printed_on=today())


def _baths(numbers: Sequence[str], *, most: int) -> list[BathNow]:
    """Return each bath once; no more are fetched than show that they are too many."""
    return [bath_now(number) for number in [*dict.fromkeys(numbers)][: most + 1]]


def _is_demo() -> bool:
    here = studio()
    return here is not None and here.is_demo


def _card(bath: BathNow, *, planned: Planned | None, is_demo: bool) -> BathCard:
    doses = {each.step.key: each.dose for each in bath.steps if each.dose is not None}
    text = version(bath.version_id).text
    return BathCard(
        number=bath.number,
        qr_text=bath_text(bath.number),
        recipe_name=bath.recipe_name,
        version_number=bath.version_number,
        base_name=bath.base_name,
        fibre_g=bath.fibre_g,
        liquor_ratio=bath.liquor_ratio,
        dyed_on=bath.dyed_on,
        steps=tuple(each.step for each in bath.steps),
        strengths_percent={
            key: dose.strength_percent
            for key, dose in doses.items()
            if dose.strength_percent is not None
        },
        sure={key: share_words(dose.how_sure) for key, dose in doses.items()},
        advice=card_advice(bath),
        mill_lot=bath.mill_lot,
        skeins=bath.skeins,
        pot_name=bath.pot_name,
        source_name=bath.source_name,
        order="" if planned is None else f"{planned.place} of {planned.of}",
        times={} if planned is None else planned.times,
        done={x.step.key: _stood(x) for x in bath.steps if x.is_done},
        begun={x.step.key: _stood(x) for x in bath.steps if x.parts and not x.is_done},
        acidity=_acidity(bath),
        notes=(bath.top_caution, text.notes, bath.notes),
        curve=programme_of(text, text.stops).curve,
        is_swatch=bath.is_swatch,
        is_demo=is_demo,
    )


def _stood(each: StepNow) -> str:
    """Return what was done at a step, in a line."""
    said = ", ".join(map(_line, (*each.parts, *each.ticks)))
    if each.is_missed:
        return f"Left out {said}"
    return (
        f"Done: {said}" if each.is_done else f"In so far: {said}. Give only the rest."
    )


def _line(line: DoneLine) -> str:
    # Degrees are where the heat was to go, not what was reached by then.
    is_said = line.value is not None and line.unit != "°C"
    amount = f"{amount_text(line.value or 0.0, line.unit)} " if is_said else ""
    at = timezone.localtime(line.at)
    return f"{amount}at {at:%H:%M} on {at.day} {at:%b}"


def _acidity(bath: BathNow) -> str:
    """Return how sour the bath should be, in a line."""
    found = ph_of_bath(bath)
    if found.acidity is None:
        return ""
    said = f"pH {ph_text(acidity=found.acidity)}, {_WATER_ONLY}"
    return " ".join((said, *found.wants))


def _tag(bath: BathNow, *, is_demo: bool) -> SwatchTag:
    depths = {
        each.dose.dye_name: each.dose.depth_percent
        for each in bath.steps
        if each.dose is not None
    }
    return SwatchTag(
        number=bath.number,
        qr_text=bath_text(bath.number),
        recipe=f"{bath.recipe_name}, version {bath.version_number}",
        base_name=bath.base_name,
        depths_percent=depths,
        dyed_on=bath.dyed_on,
        is_demo=is_demo,
    )
