"""Is this the bottle? By the code on it or a photo of its label."""

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.views.decorators.http import require_POST

from shadewright.errors import MissingError, StudioError
from shadewright.web.bench.taps import asks_for_json
from shadewright.web.bench.views import bench_page
from shadewright.web.pages import show
from shadewright.workflows.bench_doses import confirm_bottle
from shadewright.workflows.finding import bottle_by_code, bottle_by_photo


@require_POST
def check_bottle(request: HttpRequest, number: str) -> HttpResponse:
    """Say yes to the bottle on the card, and no in one sentence to any other."""
    code, fault = "", ""
    try:
        code = _code(request)
        confirm_bottle(bath=number, step=request.POST.get("step", ""), code=code)
    except StudioError as error:
        fault = error.sentence
    if asks_for_json(request):
        return JsonResponse({"code": code, "why": fault})
    view, seen = ("bottle", "") if fault else ("main", code)
    page = bench_page(request, number, view=view, fault=fault, seen=seen)
    return show(request, page, status=422 if fault else 200)


def _code(request: HttpRequest) -> str:
    photo = request.FILES.get("photo")
    if photo is not None:
        return bottle_by_photo(photo.read()).code
    typed = request.POST.get("code", "")
    if not typed.strip():
        raise MissingError(
            name="The bottle’s code",
            advice="Type the three signs on its label, or take a photo of it.",
            argument="code",
        )
    return bottle_by_code(typed).code
