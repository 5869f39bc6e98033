"""What every tag says, the tags of a lot, and their sheet."""

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from shadewright.errors import StudioError
from shadewright.web.lot_crumbs import lot_crumbs, lots_link
from shadewright.web.pages import show
from shadewright.web.parts import Caution
from shadewright.web.pdfs import pdf
from shadewright.web.tags.forms import MakerForm, PrintForm, YarnForm
from shadewright.web.tags.pages import LotTagsPage, TagWordsPage
from shadewright.web.toasts import say
from shadewright.workflows.tags.making import LotTags, lot_tags_pdf, tags_of
from shadewright.workflows.tags.texts import (
    CHECK_LOCALLY,
    STARTERS,
    keep_maker,
    keep_yarn_words,
    maker_words,
    regions,
    yarn_words,
)


@require_http_methods(["GET", "POST"])
def tag_words(request: HttpRequest) -> HttpResponse:
    """Show and change what every tag says."""
    if request.method == "POST":
        form = MakerForm(request.POST)
        if form.is_valid():
            keep_maker(form.said)
            say(request, "Every tag says so from now on")
            return HttpResponseRedirect(reverse("tag-words"))
    else:
        form = MakerForm(initial=vars(maker_words()))
    known = regions()
    names = {each.name for each in known}
    page = TagWordsPage(
        title="What tags say",
        fact="On every tag, beside what each lot adds.",
        crumbs=(lots_link(),),
        form=form,
        regions=known,
        starters=tuple(each for each in STARTERS if each.name not in names),
        check_locally=CHECK_LOCALLY,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_http_methods(["GET", "POST"])
def lot_tags(request: HttpRequest, number: str) -> HttpResponse:
    """Show what a lot's tags say, and change what its yarn's tags say."""
    try:
        found, trouble = tags_of(number), ""
    except StudioError as error:
        if error.argument == "number":
            raise
        found, trouble = None, error.sentence
    form = None
    if found is not None:
        form = YarnForm(initial=vars(yarn_words(found.base_id)))
        if request.method == "POST":
            form = YarnForm(request.POST)
            if form.is_valid():
                keep_yarn_words(found.base_id, form.said)
                say(request, f"Tags of {found.tag.base} say so from now on")
                return HttpResponseRedirect(reverse("lot-tags", args=[number]))
    page = _page(number, found, trouble, form)
    return show(request, page, status=422 if form is not None and form.errors else 200)


@require_safe
def print_tags(request: HttpRequest, number: str) -> HttpResponse:
    """Answer with a lot's tags on paper; the usual ones where nothing is asked."""
    found = tags_of(number)
    form = PrintForm(request.GET or _usual(found))
    if form.is_valid():
        sent = form.cleaned_data
        sheet = lot_tags_pdf(
            number, count=sent["count"], shape=sent["shape"], paper=sent["paper"]
        )
        return pdf(sheet, name=f"tags {number}")
    page = _page(number, found, "", YarnForm(initial=vars(yarn_words(found.base_id))))
    return show(request, _with_form(page, form), status=422)


def _usual(found: LotTags) -> dict[str, object]:
    return {"count": found.count, "shape": "tag", "paper": "a4"}


def _with_form(page: LotTagsPage, form: PrintForm) -> LotTagsPage:
    return LotTagsPage(**(vars(page) | {"form": form}))


def _page(
    number: str, found: LotTags | None, trouble: str, form: YarnForm | None
) -> LotTagsPage:
    return LotTagsPage(
        title=f"Tags of {number}",
        fact="Filled in from what is written down.",
        crumbs=lot_crumbs(number),
        number=number,
        tag=None if found is None else found.tag,
        trouble=Caution(title="No tags for it.", text=trouble) if trouble else None,
        lacks="" if found is None else ", ".join(found.lacks),
        form=None if found is None else PrintForm(initial=_usual(found)),
        yarn_form=form,
        regions=tuple(each for each in regions() if each.is_used),
        check_locally=CHECK_LOCALLY,
        own=reverse("lot-tags", args=[number]),
    )
