"""The rows of what would help most."""

from collections.abc import Mapping
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.baths.levers.habits import Effect
from shadewright.core.baths.levers.makeable import USUAL_STOCK_ML
from shadewright.core.baths.levers.strengths import KeptStrengths
from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.levers.addresses import making_address, thinning_address
from shadewright.web.levers.pages import HelpRow, KeepRow
from shadewright.web.pages import Link
from shadewright.workflows.studio_practice import StudioNow, stock_to_make
from shadewright.workflows.whole_shelf import Advised, Habit

_KEYS = {
    "weigh": "Use it for doses",
    "yarn": "See this scale",
    "check": "Check it",
    "more": "Make a stock",
    "choose": "See your tools",
}


def help_row(advised: Advised, typed: Mapping[str, str], *, is_wrong: bool) -> HelpRow:
    """Return one habit or tool as a row."""
    effect, idea = advised.effect, advised.idea
    return HelpRow(
        name=effect.change.name,
        after=mean_words(effect.after),
        narrows=_narrows(effect),
        worth=_worth(effect),
        key=None if advised.habit is None else _key(advised.habit),
        field="" if idea is None else idea.slug,
        price="" if idea is None else typed.get(idea.slug, ""),
        fault="A price is a number above 0." if is_wrong else "",
    )


def keep_row(kept: KeptStrengths, studio: StudioNow) -> KeepRow:
    """Return the strengths of one dye as a row."""
    return KeepRow(
        dye=kept.dye,
        kept=_strengths(kept.kept_percent) or "none",
        keep=_strengths(kept.keep_percent),
        now="not at all" if kept.now is None else mean_words(kept.now),
        then=mean_words(kept.then),
        keys=tuple(
            Link(
                words=f"Make {amount_text(strength, '%')}",
                address=_stock_address(kept.dye, strength, studio),
            )
            for strength in kept.to_make_percent
        ),
    )


def _stock_address(dye: str, strength_percent: float, studio: StudioNow) -> str:
    """Return where a stock is made the surest way: thinned, or weighed out."""
    surest = stock_to_make(studio, dye=dye, strength_percent=strength_percent)
    if surest is not None and surest.code:
        return thinning_address(surest)
    return making_address(
        studio.dye_ids[dye],
        strength_percent=strength_percent,
        volume_ml=USUAL_STOCK_ML,
    )


def mean_words(share: float) -> str:
    """Return a mean spread in two digits: differences between means are small."""
    return f"±{NO_BREAK}{number_text(100 * share, digits=2)}{NO_BREAK}%"


def _narrows(effect: Effect) -> str:
    if not effect.narrowed:
        return "narrows no dose by a tenth"
    return f"narrows {effect.narrowed} of {effect.of} doses"


def _worth(effect: Effect) -> str:
    """Return what a tool narrows for ten units of money, or what is missing."""
    if effect.change.price is None:
        return "Type its price."
    if effect.for_one is None:
        return ""
    points = number_text(1000 * effect.for_one, digits=2)
    return f"Each 10 of its price narrows the average by {points}{NO_BREAK}%."


def _key(habit: Habit) -> Link | None:
    if habit.key == "strengths":
        return Link(words="See below", address="#h-keep")
    if habit.key == "choose":
        return Link(words=_KEYS[habit.key], address=reverse("tools"))
    if habit.key == "more":
        asked = {"volume_ml": number_text(2 * USUAL_STOCK_ML, digits=4)}
        address = f"{reverse('plan-stock')}?{urlencode(asked)}"
        return Link(words=_KEYS[habit.key], address=address)
    if habit.tool_id is None:
        return None
    return Link(words=_KEYS[habit.key], address=reverse("tool", args=[habit.tool_id]))


def _strengths(percents: tuple[float, ...]) -> str:
    return ", ".join(amount_text(each, "%") for each in sorted(percents, reverse=True))
