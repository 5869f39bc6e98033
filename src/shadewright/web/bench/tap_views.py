"""Taps come in: many at once from the script, or one from a plain form."""

from urllib.parse import urlencode
from uuid import UUID

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect, JsonResponse
from django.urls import reverse
from django.views.decorators.http import require_POST

from shadewright.errors import NotFoundError, StudioError
from shadewright.web.bench import taps as reading
from shadewright.web.bench.views import bench_page
from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.ways import way_back
from shadewright.workflows.bench import check_tap, keep_tap, take_back
from shadewright.workflows.stamps import stamp_now


@require_POST
def taps(request: HttpRequest) -> JsonResponse:
    """Keep what a phone sends, in its order; say which it need not keep any more."""
    try:
        batch = reading.read_batch(request.body)
    except StudioError as error:
        return JsonResponse({"why": error.sentence}, status=400)
    kept, refused = [], []
    for said in batch:
        trouble = reading.keep(request, said)
        if trouble is None:
            kept.append(reading.text(said.get("key")))
        else:
            refused.append({"key": trouble.key, "why": trouble.why})
    return JsonResponse({"kept": kept, "refused": refused})


@require_POST
def tap_one(request: HttpRequest, number: str) -> HttpResponse:
    """Keep one tap of a plain form; an amount that cannot be is asked for again."""
    said: dict[str, object] = {**request.POST.dict(), **_unit(request), "bath": number}
    what = reading.read_tap(said, reading.device_name(request))
    try:
        stamp = stamp_now(by=person_id(request), deed=_key(said))
        check_tap(what)
        keep_tap(what, stamp=stamp)
    except StudioError as error:
        if isinstance(error, NotFoundError):
            raise
        return _again(request, number, error)
    return HttpResponseRedirect(way_back(request, otherwise=_bench(number)))


@require_POST
def undo_one(request: HttpRequest, number: str) -> HttpResponse:
    """Take one tap back, from a plain form."""
    said = request.POST.dict()
    stamp = stamp_now(by=person_id(request), deed=_key(said))
    deed = _uuid(said.get("undoes", ""))
    take_back(deed=deed, stamp=stamp)
    return HttpResponseRedirect(_bench(number))


def _again(request: HttpRequest, number: str, error: StudioError) -> HttpResponse:
    page = bench_page(request, number, view="other", fault=error.sentence)
    return show(request, page, status=422)


def _unit(request: HttpRequest) -> dict[str, str]:
    """Return the unit of the key that was pressed, where a form has several."""
    return {"unit": request.GET["unit"]} if "unit" in request.GET else {}


def _bench(number: str) -> str:
    return f"{reverse('bench', args=[number])}?{urlencode({'view': 'main'})}"


def _key(said: dict[str, object] | dict[str, str]) -> UUID:
    return _uuid(said.get("key", ""))


def _uuid(value: object) -> UUID:
    try:
        return UUID(str(value))
    except ValueError:
        raise NotFoundError(
            kind="tap", key=str(value)[:40], advice="Go back and tap again."
        ) from None
