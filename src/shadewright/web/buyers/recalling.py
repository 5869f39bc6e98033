"""Who has yarn of a lot, and of all lots that share its dye; the list as a table."""

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.utils.http import urlencode
from django.views.decorators.http import require_safe

from shadewright.core.quantities import counted
from shadewright.errors import NotFoundError
from shadewright.web.buyers.pages import ReachRow, RecallPage
from shadewright.web.lot_crumbs import lot_crumbs
from shadewright.web.pages import show
from shadewright.workflows.buyers.kin import Circle, kin_of
from shadewright.workflows.buyers.recall import Reach, reaches_of, recall_csv
from shadewright.workflows.trace_nodes import joined

_CODES_NAMED = _BUYERS_NAMED = 3


@require_safe
def recall(request: HttpRequest, number: str) -> HttpResponse:
    """Show how far a lot's bath, bottles and jars reached."""
    kin = kin_of(number)
    page = RecallPage(
        title=f"Who has yarn of {number}",
        fact="The bath itself first, then all that shares a bottle or a jar with it.",
        crumbs=lot_crumbs(number),
        rows=reach_rows(number, reaches_of(kin)),
        untold=kin.untold,
    )
    return show(request, page)


@require_safe
def recall_list(request: HttpRequest, number: str) -> HttpResponse:
    """Answer with who has yarn of one circle of lots, as a table."""
    circle = _circle(number, request.GET.get("of", "bath"), request.GET.get("key", ""))
    answer = HttpResponse(recall_csv(circle), content_type="text/csv; charset=utf-8")
    name = f"recall {circle.shares} {circle.key}"
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}.csv"'
    return answer


def reach_rows(number: str, reaches: tuple[Reach, ...]) -> tuple[ReachRow, ...]:
    """Return the circles around a lot with their words and lists."""
    start = reverse("recall-list", args=[number])
    return tuple(
        ReachRow(
            reach=each,
            words=_words(each),
            address=f"{start}?{_asked(each.circle)}",
        )
        for each in reaches
    )


def _asked(circle: Circle) -> str:
    return urlencode({"of": circle.shares.value, "key": circle.key})


def _circle(number: str, shares: str, key: str) -> Circle:
    circles = kin_of(number).circles
    for each in circles:
        if each.shares == shares and (key in {"", each.key}):
            return each
    raise NotFoundError(kind=f"{shares[:10]} of this lot", key=key[:16])


def _words(reach: Reach) -> str:
    out = counted(reach.out, "skein")
    return joined(
        f"{out} with {_buyers(reach.buyers)}" if reach.out else "none went out",
        f"{counted(reach.here, 'skein')} still here" if reach.here else "",
        _uncounted(reach.uncounted),
        _perhaps(len(reach.circle.perhaps)),
    )


def _buyers(names: tuple[str, ...]) -> str:
    """Return the buyers by name while they are few; the list names them all."""
    if len(names) > _BUYERS_NAMED:
        return f"{len(names)} buyers"
    return " and ".join(names)


def _perhaps(lots: int) -> str:
    more = f"{counted(lots, 'more lot')} perhaps: no dose written down"
    return more if lots else ""


def _uncounted(numbers: tuple[str, ...]) -> str:
    if not numbers:
        return ""
    if len(numbers) > _CODES_NAMED:
        return f"{len(numbers)} lots not counted"
    return f"not counted: {' '.join(numbers)}"
