"""Put yarn on a day: show the baths while it is typed, then keep them."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID, uuid5

from django.http import HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from shadewright.core.quantities import amount_text, counted, number_text
from shadewright.errors import StudioError
from shadewright.web.asking import number_asked
from shadewright.web.baths.pages import NoRecipePage
from shadewright.web.day_baths.forms import AddForm, line_key, usual_way
from shadewright.web.day_baths.pages import AddPage, PastPage, Waiting
from shadewright.web.day_baths.showing import shown_split
from shadewright.web.dye_days.crumbs import crumbs_of
from shadewright.web.frame import person_id
from shadewright.web.named_days import named_day
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Refusal
from shadewright.web.toasts import say
from shadewright.web.ways import way_round, way_to
from shadewright.workflows.choices import bases_in_use, pots_in_use
from shadewright.workflows.days.demand import ToDye, to_dye
from shadewright.workflows.days.split_keeping import (
    baths_kept,
    is_taken_back,
    keep_split,
    take_split_back,
)
from shadewright.workflows.days.splitting import split_wish
from shadewright.workflows.days.waiting import (
    LineWaiting,
    lines_waiting,
    newest_version_id,
    usual_skein_g,
)
from shadewright.workflows.recipes import has_recipes
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.waters import usual_water

_MOST_WAITING = 12


@require_http_methods(["GET", "POST"])
def add(request: HttpRequest, day: date) -> HttpResponse:
    """Show the baths that a wish becomes; a form that is sent keeps them."""
    if day < today():
        return show(request, _past(day), status=422)
    missing = _what_is_missing(day, back=request.get_full_path())
    if missing is not None:
        return show(request, missing)
    wanted = to_dye()
    waiting = lines_waiting(wanted)
    if request.method == "POST":
        return _keep(request, day, wanted, waiting)
    typed = _begun(request.GET, waiting)
    first = {**typed.dict(), "for_lines": typed.getlist("for_lines")}
    form = (
        AddForm(typed, waiting=waiting)
        if _is_ready(typed)
        else AddForm(initial=first, waiting=waiting)
    )
    is_live = "HX-Request" in request.headers
    page = _page(form, day, wanted, waiting, is_live=is_live)
    return show(request, replace(page, rather=_rather(day, request.GET)))


def _rather(day: date, asked: QueryDict) -> tuple[Link, ...]:
    """Return the same yarn on the days that are nearest: today and tomorrow."""
    near = (today(), today() + timedelta(days=1))
    return tuple(
        Link(
            words=f"Rather {named_day(each).partition(',')[0].lower()}",
            address=f"{reverse('day-add', args=[each])}?{asked.urlencode()}",
        )
        for each in near
        if each != day
    )


def _keep(
    request: HttpRequest,
    day: date,
    wanted: tuple[ToDye, ...],
    waiting: tuple[LineWaiting, ...],
) -> HttpResponse:
    kept = _kept_already(request.POST)
    if kept and is_taken_back(kept):
        return _anew(request, day)
    if kept:
        return redirect("day-stock", day)
    form = AddForm(request.POST, waiting=waiting)
    if form.is_valid():
        stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
        try:
            numbers = keep_split(form.wish(day), stamp)
        except StudioError as error:
            form.refuse(error)
        else:
            said = counted(len(numbers), "bath is", "baths are")
            back = reverse("day-add-undo", args=[day, stamp.deed])
            say(request, f"{said} planned: {_from_to(numbers)}", undo=back)
            return redirect("day-stock", day)
    return show(request, _page(form, day, wanted, waiting), status=422)


def _anew(request: HttpRequest, day: date) -> HttpResponse:
    """Show what was typed once more: the baths of this form are off the day again."""
    typed = request.POST.copy()
    for name in ("deed", "csrfmiddlewaretoken"):
        typed.pop(name, None)
    say(request, "Those baths were taken off the day again: look, and put them on anew")
    return redirect(f"{reverse('day-add', args=[day])}?{typed.urlencode()}")


@require_POST
def take_back(request: HttpRequest, day: date, deed: UUID) -> HttpResponse:
    """Take the baths of one sending off the day again; pressing twice does it once."""
    stamp = stamp_now(by=person_id(request), deed=uuid5(deed, "undo"))
    count = take_split_back(deed, stamp)
    said = counted(count, "bath is", "baths are")
    say(request, f"{said} off the day again; the numbers stay used")
    return redirect("day-add", day)


def _kept_already(sent: QueryDict) -> tuple[str, ...]:
    """Return the baths that this very form has kept: what it asks is done."""
    try:
        deed = UUID(sent.get("deed", ""))
    except ValueError:
        return ()
    return baths_kept(deed)


def _from_to(numbers: tuple[str, ...]) -> str:
    return numbers[0] if len(numbers) == 1 else f"{numbers[0]} to {numbers[-1]}"


def _page(
    form: AddForm,
    day: date,
    wanted: tuple[ToDye, ...],
    waiting: tuple[LineWaiting, ...],
    *,
    is_live: bool = False,
) -> AddPage:
    shown, refusal = None, None
    if form.is_bound and form.is_valid():
        try:
            shown = shown_split(split_wish(form.wish(day)), waiting)
        except StudioError as error:
            form.refuse(error)
    if form.errors:
        sentences = [str(each) for errors in form.errors.values() for each in errors]
        note = Caution(title="Not like this", text=" ".join(sentences), kind="problem")
        refusal = Refusal(note=note, takes_focus=not is_live)
    return AddPage(
        title="Put yarn on the day",
        fact=f"{named_day(day)}: yarn, split into baths by what the pots take.",
        crumbs=crumbs_of(day),
        action=reverse("day-add", args=[day]),
        waiting=tuple(_waiting(each, day) for each in wanted[:_MOST_WAITING]),
        form=form,
        plan=shown,
        refusal=refusal,
        back=reverse("day", args=[day]),
    )


def _begun(asked: QueryDict, waiting: tuple[LineWaiting, ...]) -> QueryDict:
    """Return what is asked, with what is known of it filled in."""
    typed = asked.copy()
    recipe = number_asked(typed, "recipe", kind="recipe")
    _fill(typed, _asked_by(_lines_named(typed, recipe, waiting)))
    recipe = number_asked(typed, "recipe", kind="recipe")
    water, bases = usual_water(), bases_in_use()
    known = {
        "deed": str(stamp_now(by=None).deed),
        "version": "" if recipe is None else str(newest_version_id(recipe)),
        "base": str(bases[0].id) if len(bases) == 1 else "",
        "water": "" if water is None else str(water.id),
        "way": usual_way().value,
    }
    _fill(typed, known)
    base = number_asked(typed, "base", kind="base")
    usual = None if base is None else usual_skein_g(base)
    _fill(typed, {"skein_g": "" if usual is None else f"{usual:.10g}"})
    return typed


def _lines_named(
    typed: QueryDict, recipe: int | None, waiting: tuple[LineWaiting, ...]
) -> tuple[LineWaiting, ...]:
    """Return the lines of orders that an address names, or all of its colourway.

    All of one colourway on one base, in skeins of one size.
    """
    named = {x for text in typed.getlist("line") for x in text.split(",")}
    asked = (recipe, number_asked(typed, "base", kind="base"))
    lines = [
        each
        for each in waiting
        if (str(each.line_id) in named if named else _kind(each)[:2] == asked)
    ]
    return tuple(each for each in lines if _kind(each) == _kind(lines[0]))


def _kind(line: LineWaiting) -> tuple[int, int, float]:
    return line.recipe_id, line.base_id, line.skein_g


def _asked_by(lines: tuple[LineWaiting, ...]) -> dict[str, str | list[str]]:
    if not lines:
        return {}
    first = lines[0]
    return {
        "for_lines": [line_key(each) for each in lines],
        "recipe": str(first.recipe_id),
        "base": str(first.base_id),
        "skeins": str(sum(each.skeins for each in lines)),
        "skein_g": number_text(first.skein_g, digits=6),
    }


def _fill(typed: QueryDict, known: Mapping[str, str | list[str]]) -> None:
    """Fill in what an address leaves open."""
    for name, value in known.items():
        if value and name not in typed:
            typed.setlist(name, [value] if isinstance(value, str) else value)


def _is_ready(typed: QueryDict) -> bool:
    """Whether enough is said to show baths; else the form waits, without a fault."""
    has_yarn = any(typed.get(name) for name in ("skeins", "weights", "fibre_g"))
    return bool(typed.get("version") and typed.get("base")) and has_yarn


def _waiting(each: ToDye, day: date) -> Waiting:
    skeins = f"{counted(each.skeins, 'skein')} of {amount_text(each.skein_g, 'g')}"
    asked = {
        "recipe": each.recipe_id,
        "base": each.base_id,
        "skeins": each.skeins,
        "skein_g": number_text(each.skein_g, digits=6),
    }
    address = way_to("day-add", day, **asked)
    lines = "".join(f"&line={line_id}" for line_id, _ in each.for_lines)
    return Waiting(
        words=f"{each.recipe_name} on {each.base_name}: {skeins}",
        why=each.why,
        trouble=each.trouble,
        address=f"{address}{lines}",
    )


def _past(day: date) -> PastPage:
    return PastPage(
        title="That day is over",
        fact=f"{named_day(day)}: nothing more can be put on it.",
        crumbs=crumbs_of(day),
        today=reverse("day-add", args=[today()]),
        day_address=reverse("day", args=[day]),
    )


def _what_is_missing(day: date, *, back: str) -> NoRecipePage | None:
    recipe = reverse("new-recipe")
    base, pot = (way_round(name, back=back) for name in ("add-base", "add-pot"))
    wanted = (
        (has_recipes(), "a recipe", "Write a recipe", recipe),
        (bool(bases_in_use()), "a base, the yarn itself", "Add a base", base),
        (bool(pots_in_use()), "a pot, with what it holds", "Add a pot", pot),
    )
    for is_there, words, key, address in wanted:
        if not is_there:
            return NoRecipePage(
                title="Put yarn on the day",
                crumbs=crumbs_of(day),
                missing=words,
                way_on=Link(words=key, address=address),
            )
    return None
