"""What would help most: one tool or habit, and the strengths to keep."""

from collections.abc import Mapping
from decimal import Decimal, InvalidOperation

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.baths.levers.saying import share_words
from shadewright.core.quantities import amount_text
from shadewright.web.levers.pages import NothingKnownPage, WholeShelfPage
from shadewright.web.levers.rows import help_row, keep_row, mean_words
from shadewright.web.pages import Link, show
from shadewright.workflows import whole_shelf as workflow
from shadewright.workflows.tool_ideas import IDEAS, written_prices
from shadewright.workflows.whole_shelf import Advised, WholeShelf

_MOST_PRICE = Decimal(1_000_000)
_MOST_SIGNS = 12


@require_safe
def whole_shelf(request: HttpRequest) -> HttpResponse:
    """Show what would narrow the recipes most; prices come with the address."""
    written = {slug: f"{price:f}" for slug, price in written_prices().items()}
    typed = written | {
        idea.slug: text
        for idea in IDEAS
        if (text := request.GET.get(idea.slug, "").strip())
    }
    prices = {slug: price for slug, text in typed.items() if (price := _price(text))}
    found = workflow.whole_shelf(prices)
    if found is None:
        return show(request, _nothing())
    wrong = {slug for slug in typed if slug not in prices}
    return show(request, _page(found, typed, wrong), status=422 if wrong else 200)


def _price(text: str) -> Decimal | None:
    """Return a price as it was typed; None where it is none."""
    try:
        price = Decimal(text.replace(",", ".")) if len(text) <= _MOST_SIGNS else None
    except InvalidOperation:
        return None
    is_price = price is not None and price.is_finite() and 0 < price <= _MOST_PRICE
    return price if is_price else None


def _page(
    found: WholeShelf, typed: Mapping[str, str], wrong: set[str]
) -> WholeShelfPage:
    telling = [each for each in found.advised if each.effect.narrowed]
    rows = [help_row(x, typed, is_wrong=_slug(x) in wrong) for x in telling]
    silent = [x.idea.name for x in found.advised if x.idea and x not in telling]
    keep = [each for each in found.strengths if each.is_change]
    well = [each.dye for each in found.strengths if not each.is_change]
    return WholeShelfPage(
        title="What would help most",
        fact=_fact(found),
        first=_first(found.advised),
        habits=tuple(row for row in rows if not row.field),
        tools=tuple(row for row in rows if row.field),
        silent=", ".join(silent),
        keep=tuple(keep_row(each, found.studio) for each in keep),
        kept_well=", ".join(well),
        unserved=", ".join(found.studio.unserved),
        worst=_worst(found),
    )


def _slug(each: Advised) -> str:
    return "" if each.idea is None else each.idea.slug


def _fact(found: WholeShelf) -> str:
    doses, recipes = len(found.studio.jobs), found.studio.recipes
    mean = mean_words(found.mean)
    of = "1 recipe" if recipes == 1 else f"{recipes} recipes"
    return (
        f"{doses} doses of {of} at the batches you dye: {mean} of the depth on average."
    )


def _first(advised: tuple[Advised, ...]) -> str:
    """Return the one thing to begin with, in a sentence."""
    worth = [each for each in advised if each.effect.is_worth_it]
    if not worth:
        return (
            "Nothing to gain: no habit and no tool of the list narrows your doses by "
            "a tenth on average."
        )
    effect = worth[0].effect
    spread = f"{mean_words(effect.before)} becomes {mean_words(effect.after)}"
    cost = "It costs nothing" if worth[0].habit else "It is the best for its price"
    if worth[0].idea and effect.change.price is None:
        cost = "Type prices below to compare tools by them"
    return f"{effect.change.name}: {spread} on average. {cost}."


def _worst(found: WholeShelf) -> str:
    if found.worst is None:
        return ""
    job, reach = found.worst
    yarn = amount_text(job.wanted.yarn_g, "g")
    return f"{job.wanted.dye} in {job.recipe} on {yarn}: {share_words(reach)}"


def _nothing() -> NothingKnownPage:
    return NothingKnownPage(
        title="What would help most",
        fact="Nothing can be compared yet.",
        missing=(
            Link(words="A recipe with depths", address=reverse("recipes")),
            Link(words="A bottle of its dye", address=reverse("shelf")),
            Link(words="A scale and a vessel with marks", address=reverse("tools")),
        ),
    )
