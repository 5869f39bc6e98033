"""Photos at the pot come in, and are shown again."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect, JsonResponse
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.errors import MissingError, NotFoundError, StudioError
from shadewright.web.bench import taps
from shadewright.web.bench.views import bench_page
from shadewright.web.frame import person_id
from shadewright.web.pages import show
from shadewright.web.photos import jpeg
from shadewright.workflows.bench_photos import keep_cups, keep_photo, photo_of
from shadewright.workflows.stamps import Stamp, stamp_now


@require_POST
def add_bench_photo(request: HttpRequest, number: str) -> HttpResponse:
    """Keep a photo of a pot; one of two cups also says how much dye is left.

    A phone that asks for JSON is told why a photo was not kept, nothing if it was.
    """
    try:
        _keep(request, number)
    except StudioError as error:
        if taps.asks_for_json(request):
            return JsonResponse({"why": error.sentence}, status=422)
        if isinstance(error, NotFoundError):
            raise
        is_cups = bool(request.POST.get("cups"))
        view = "left" if is_cups else "note"
        page = bench_page(request, number, view=view, fault=error.sentence)
        return show(request, page, status=422)
    if taps.asks_for_json(request):
        return JsonResponse({"why": ""})
    return HttpResponseRedirect(f"{reverse('bench', args=[number])}?view=main")


@require_safe
def bench_photo(_request: HttpRequest, number: str, deed: UUID) -> HttpResponse:
    """Send a photo of a bath: always a JPEG that was drawn here."""
    return jpeg(photo_of(number=number, deed=deed), name=number)


def _keep(request: HttpRequest, number: str) -> None:
    stamp, photo = _stamp(request), _photo(request)
    step, device = request.POST.get("step", ""), taps.device_name(request)
    if request.POST.get("cups"):
        keep_cups(number=number, photo=photo, step=step, device=device, stamp=stamp)
        return
    note = taps.text(request.POST.get("note"))
    keep_photo(
        number=number, photo=photo, step=step, note=note, device=device, stamp=stamp
    )


def _stamp(request: HttpRequest) -> Stamp:
    at = taps.tapped_at(request.POST.get("age_ms"))
    return stamp_now(by=person_id(request), deed=_deed(request), at=at)


def _photo(request: HttpRequest) -> bytes:
    sent = request.FILES.get("photo")
    if sent is None:
        raise MissingError(
            name="The photo", advice="Take one, or choose one.", argument="photo"
        )
    content: bytes = sent.read()
    return content


def _deed(request: HttpRequest) -> UUID:
    try:
        return UUID(request.POST.get("key", ""))
    except ValueError:
        raise NotFoundError(
            kind="tap", key=request.POST.get("key", "")[:40], advice="Take it again."
        ) from None
