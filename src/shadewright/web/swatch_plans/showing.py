"""A set of swatches made into what its pages show."""

from collections.abc import Iterator, Sequence
from urllib.parse import urlencode

from django.urls import reverse

from shadewright.core.quantities import amount_text, counted, number_text
from shadewright.core.quantities.writing import NO_BREAK, beside_text
from shadewright.web.baths.words import status_chip
from shadewright.web.colours import ColourShown, foretold_colour
from shadewright.web.parts import Caution, Chip
from shadewright.web.swatch_plans.pages import (
    DrawShown,
    FirstShown,
    PlanShown,
    Said,
    SwatchShown,
)
from shadewright.workflows.recipe_shapes import RecipeText
from shadewright.workflows.recipe_words import heat_words, helper_words, mix_words
from shadewright.workflows.shades.plan_cautions import SetCaution
from shadewright.workflows.shades.plan_colours import ToldSwatch
from shadewright.workflows.shades.plan_pages import SetSwatch
from shadewright.workflows.shades.plan_sheets import jar_words
from shadewright.workflows.shades.plan_stocks import PlannedDraw, StockFirst
from shadewright.workflows.shades.planning import PlannedSwatch, SwatchSetPlan


def shown_plan(plan: SwatchSetPlan) -> PlanShown:
    """Return a plan as its page shows it."""
    is_by_weight = plan.is_by_weight
    return PlanShown(
        head=_head(plan),
        facts=tuple(_facts(plan)),
        first=shown_first(plan.first),
        swatches=tuple(_swatch(x, is_by_weight=is_by_weight) for x in plan.swatches),
        troubles=plan.troubles,
        advice=plan.advice,
        has_colours=any(each.told is not None for each in plan.swatches),
        cautions=shown_cautions(plan.cautions),
    )


def shown_cautions(cautions: Sequence[SetCaution]) -> tuple[Caution, ...]:
    """Return what to mind as a page shows it."""
    return tuple(Caution(title=each.title, text=each.text) for each in cautions)


def shown_first(
    first: Sequence[StockFirst], *, back: str = ""
) -> tuple[FirstShown, ...]:
    """Return the stocks to be had first, each with the page where it is done."""
    return tuple(_first(each, back) for each in first)


def shown_draw(draw: PlannedDraw, *, is_by_weight: bool) -> DrawShown:
    """Return a dose in ml with its g beside it, or the other way round."""
    said = [amount_text(draw.volume_ml, "ml"), beside_text(draw.mass_g)]
    amount, beside = reversed(said) if is_by_weight else said
    return DrawShown(
        dye=draw.dye_name,
        depth=amount_text(draw.depth_percent, "%"),
        amount=amount,
        beside=beside,
        stock=draw.stock,
    )


def told_colour(told: ToldSwatch | None, *, name: str) -> ColourShown | None:
    """Return a colour that is foretold as a page shows it."""
    if told is None:
        return None
    return foretold_colour(
        told.lab,
        expected=told.expected,
        within_90=told.within_90,
        evidence=told.evidence,
        name=name,
    )


def said_of_practice(text: RecipeText) -> tuple[Said, Said]:
    """Say which acid goes in, and how a set is heated."""
    acid = "; ".join(f"{each.name} {helper_words(each)}" for each in text.helpers)
    return (
        Said(term="Acid", words=acid or "none"),
        Said(term="Heat", words=heat_words(text) or "not said"),
    )


def swatches_counted(count: int) -> str:
    """Return how many swatches, in words."""
    return counted(count, "swatch", "swatches")


def state_chip(each: SetSwatch) -> Chip:
    """Return how far a swatch of a set is."""
    if each.reading is not None:
        return Chip(words="colour read", kind="good")
    if each.is_dyed:
        return Chip(words="colour not read yet", kind="caution")
    return status_chip(each.status)


def _head(plan: SwatchSetPlan) -> str:
    count = swatches_counted(len(plan.swatches))
    each = amount_text(plan.wish.yarn_g, "g")
    return f"{count} of {each}: {amount_text(plan.yarn_g, 'g')} of {plan.base_name}"


def _facts(plan: SwatchSetPlan) -> Iterator[Said]:
    bath = amount_text(plan.liquor_ml, "ml")
    ratio = number_text(plan.wish.liquor_ratio, digits=3)
    yield Said(term="Jars", words=jar_words(plan.jars))
    yield Said(term="Bath", words=f"{bath} in each, 1:{ratio}")
    for each in plan.taken:
        doses = "1 dose" if each.doses == 1 else f"{each.doses} doses"
        volume = amount_text(each.volume_ml, "ml")
        yield Said(term=each.dye_name, words=f"{volume} of {each.stock} in {doses}")
    powder = ", ".join(f"{dye} {amount_text(g, 'g')}" for dye, g in plan.dye_g)
    yield Said(term="Dye in all", words=powder)
    yield from said_of_practice(plan.practice.text)
    yield Said(term="From", words=plan.practice.words)


def _swatch(each: PlannedSwatch, *, is_by_weight: bool) -> SwatchShown:
    draws = tuple(shown_draw(x, is_by_weight=is_by_weight) for x in each.draws)
    name = mix_words((draw.dye_name, draw.depth_percent) for draw in each.draws)
    return SwatchShown(
        place=each.place,
        draws=draws,
        colour=told_colour(each.told, name=name),
        sure=f"±{NO_BREAK}{each.told.within_90:.1f}" if each.told else "",
    )


def _first(each: StockFirst, back: str) -> FirstShown:
    new = each.new
    strength = number_text(new.strength_percent, digits=4)
    volume = number_text(new.volume_ml, digits=4)
    if new.from_code:
        asked = {"want_percent": strength, "volume_ml": volume}
        asked |= {"next": back} if back else {}
        address = reverse("bottle-act", args=[new.from_code, "dilute"])
        return FirstShown(
            dye=each.dye_name,
            words=each.words,
            key=f"Thin {new.from_code}",
            address=f"{address}?{urlencode(asked)}",
        )
    if new.from_percent is not None:
        return FirstShown(dye=each.dye_name, words=each.words, key="", address="")
    asked = {
        "dye": str(each.dye_id),
        "strength_percent": strength,
        "volume_ml": volume,
    }
    return FirstShown(
        dye=each.dye_name,
        words=each.words,
        key=f"Make {amount_text(new.strength_percent, '%')}",
        address=f"{reverse('plan-stock')}?{urlencode(asked)}",
    )
