"""What to mix, what to pour away, and the money that goes with it."""

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.costing import Cost
from shadewright.core.quantities import amount_text
from shadewright.web.baths.planning import stock_address
from shadewright.web.bottles.words import POUR, POUR_METAL
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution
from shadewright.web.shelf.tasks import bottle_address
from shadewright.web.sureness import bottle_strength
from shadewright.web.turnover.pages import GoingRow, MixRow, TurnoverPage
from shadewright.workflows.turnover import ToLetGo, ToMix, Turnover
from shadewright.workflows.turnover import turnover as turnover_now


@require_safe
def turnover(request: HttpRequest) -> HttpResponse:
    """Show what comes and what goes."""
    found = turnover_now()
    page = TurnoverPage(
        title="What to mix, what to pour away",
        fact=_fact(found),
        crumbs=(Link(words="Shelf", address=reverse("shelf")),),
        to_mix=tuple(_mix(each) for each in found.to_mix),
        going=tuple(_going(each) for each in found.to_let_go),
        lost=_lost(found.lost) if found.to_let_go else "",
        cautions=_cautions(found.to_let_go),
    )
    return show(request, page)


def _fact(found: Turnover) -> str:
    mix, going = len(found.to_mix), len(found.to_let_go)
    if not mix + going:
        return "Nothing to mix and nothing to pour away."
    bottles = "1 bottle" if going == 1 else f"{going or 'no'} bottles"
    dyes = "1 dye" if mix == 1 else f"{mix or 'No'} dyes"
    return f"{dyes} to mix, {bottles} to test or let go."


def _lost(lost: Cost) -> str:
    """Return the money in one line, with the bottles of which it is not known."""
    unknown = ", ".join(part.name for part in lost.missing)
    if lost.money is None:
        return "not known"
    return f"{lost.money:.2f}" + (f", not counting {unknown}" if unknown else "")


def _mix(each: ToMix) -> MixRow:
    return MixRow(
        dye=each.dye_name,
        wanted=amount_text(each.wanted_g, "g") if each.wanted_g else "",
        why=each.why,
        address=stock_address(each.dye_id, each.wanted_g)
        if each.wanted_g
        else f"{reverse('plan-stock')}?dye={each.dye_id}",
    )


def _going(each: ToLetGo) -> GoingRow:
    code = each.bottle.code
    return GoingRow(
        bottle=each.bottle,
        address=bottle_address(code),
        strength=bottle_strength(each.bottle).value,
        why=each.why,
        cost=f"{each.cost.money:.2f}" if each.cost.money is not None else "",
        cost_why=each.cost.why,
        test=reverse("strength-test", args=[code]) if each.is_test_worth else "",
        pour=reverse("bottle-act", args=[code, "pour"]),
    )


def _cautions(going: tuple[ToLetGo, ...]) -> tuple[Caution, ...]:
    metals = [each.bottle.code for each in going if each.bottle.is_metal_complex]
    named = Caution(
        title=f"{POUR_METAL.title}: {', '.join(metals)}", text=POUR_METAL.text
    )
    return (
        *((POUR,) if len(going) > len(metals) else ()),
        *((named,) if metals else ()),
    )
