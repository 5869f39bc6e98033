"""What a region asks of a tag: a list of the studio's own."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.errors import StudioError
from shadewright.web.lot_crumbs import lots_link
from shadewright.web.pages import Link, show
from shadewright.web.tags.forms import RegionForm
from shadewright.web.tags.pages import RegionPage
from shadewright.web.toasts import say
from shadewright.workflows.tags.texts import (
    CHECK_LOCALLY,
    STARTERS,
    Region,
    keep_region,
    region,
)


@require_http_methods(["GET", "POST"])
def new_region(request: HttpRequest) -> HttpResponse:
    """Begin a list, from one to begin with if an address names it."""
    wanted = request.GET.get("like", "")
    like = next((each for each in STARTERS if each.name == wanted), Region(name=""))
    return _edited(request, like, own=request.get_full_path())


@require_http_methods(["GET", "POST"])
def edit_region(request: HttpRequest, region_id: int) -> HttpResponse:
    """Show and change a list."""
    return _edited(request, region(region_id), own=request.path)


def _edited(request: HttpRequest, known: Region, *, own: str) -> HttpResponse:
    form = RegionForm(request.POST) if request.method == "POST" else _form(known)
    if form.is_bound and form.is_valid():
        try:
            keep_region(form.region(known.id))
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"The list for {form.cleaned_data['name']} is kept")
            return HttpResponseRedirect(reverse("tag-words"))
    page = RegionPage(
        title=known.name or "A region",
        fact="What it asks of a tag, as you wrote it down.",
        crumbs=(
            lots_link(),
            Link(words="What tags say", address=reverse("tag-words")),
        ),
        form=form,
        own=own,
        check_locally=CHECK_LOCALLY,
    )
    return show(request, page, status=422 if form.errors else 200)


def _form(known: Region) -> RegionForm:
    return RegionForm(
        initial={
            "name": known.name,
            "asks": "\n".join(known.asks),
            "source": known.source,
            "checked_on": known.checked_on,
            "is_used": known.is_used,
        }
    )
