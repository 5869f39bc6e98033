"""A bottle, and the acts on it."""

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from shadewright import drawing
from shadewright.core.quantities import amount_text, number_text
from shadewright.core.solutions.keeping import Fate
from shadewright.errors import ConflictError, StudioError
from shadewright.web.bottles.acts import ACTS, Act
from shadewright.web.bottles.forms import BottleForm
from shadewright.web.bottles.outcomes import Sent
from shadewright.web.bottles.pages import ActLink, ActPage, BottlePage, Key
from shadewright.web.bottles.words import (
    KINDS,
    LOOK_WORDS,
    REWARMED,
    SETTLED,
    SPOILS,
)
from shadewright.web.frame import person_id
from shadewright.web.pages import Link, show
from shadewright.web.parts import Caution, Chip, ChipKind
from shadewright.web.shelf.keeping_words import days_of
from shadewright.web.sureness import bottle_strength
from shadewright.web.templatetags.house import day, moment
from shadewright.web.toasts import say
from shadewright.web.ways import way_back
from shadewright.workflows import ledger_pages
from shadewright.workflows.catalogue import EarlierVersion
from shadewright.workflows.shelf import ShelfBottle, shelf_bottle
from shadewright.workflows.stamps import stamp_now

_ON_THE_PAGE = {
    "draw": "Draw",
    "look": "Check",
    "test": "Test strength",
    "level": "Read level",
    "weigh": "Weigh",
    "water": "Add water",
    "powder": "Strengthen",
    "dilute": "Dilute",
    "merge": "Merge",
    "pour": "Pour away",
}
_FIRST = {
    Fate.REWARM: "look",
    Fate.LOOK: "look",
    Fate.TEST: "test",
    Fate.POUR: "pour",
}
_ICONS = {"draw": "drop", "look": "eye"}


@require_safe
def bottle(request: HttpRequest, code: str) -> HttpResponse:
    """Show one bottle with its ledger."""
    about = ledger_pages.bottle_page(code.upper())
    shown = about.bottle
    page = BottlePage(
        title=f"{shown.dye_name}, bottle {shown.code}",
        fact=_made(about),
        crumbs=(_shelf(),),
        about=about,
        drawn=_drawn(shown),
        strength=bottle_strength(shown),
        made_with=_made_with(about),
        chips=_chips(shown),
        keeps=days_of(shown),
        trouble=_trouble(shown),
        acts=_acts(shown),
        spoils=SPOILS,
        earlier=tuple(_before(version) for version in about.earlier),
    )
    return show(request, page)


@require_http_methods(["GET", "POST"])
def act(request: HttpRequest, code: str, key: str) -> HttpResponse:
    """Show the form of an act; write the act down."""
    if key not in ACTS:
        raise Http404
    chosen, shown = ACTS[key], shelf_bottle(code.upper())
    if request.method != "POST":
        _refuse_gone(shown)
        begun = {**chosen.initial(shown), **request.GET.dict()}
        form = chosen.form(bottle=shown, initial=begun)
        foretold = _foretold(chosen, shown, begun) if request.GET else ""
        return show(request, _page(chosen, shown, form, outcome=foretold))
    if "work_out" in request.POST and chosen.work_out is not None:
        return _worked_out(request, chosen, shown)
    form = chosen.form(request.POST, bottle=shown)
    found = _written(request, chosen, form) if form.is_valid() else None
    if found is not None:
        own = reverse("bottle", args=[found.code])
        return HttpResponseRedirect(way_back(request, otherwise=own))
    return show(request, _page(chosen, shown, form), status=422)


def _written(request: HttpRequest, act: Act, form: BottleForm) -> ShelfBottle | None:
    deed = form.cleaned_data["deed"]
    stamp = stamp_now(by=person_id(request), deed=deed)
    try:
        found = act.verb(form.bottle.code, form.cleaned_data, stamp)
    except StudioError as error:
        form.refuse(error)
        return None
    said = act.said.format(
        code=found.code,
        left=amount_text(found.volume_ml, "ml"),
        strength=amount_text(found.strength_percent, "%"),
        look=LOOK_WORDS.get(form.cleaned_data.get("look", ""), ""),
    )
    has_deed = act is not ACTS["particulars"]
    say(request, said, undo=reverse("undo", args=[deed]) if has_deed else "")
    return found


def _foretold(act: Act, shown: ShelfBottle, begun: Sent) -> str:
    """Return what a form would come to that an advice has filled in."""
    form = act.form(begun, bottle=shown)
    form.full_clean()
    if set(form.errors) - {"deed"}:
        return ""
    try:
        outcome = act.outcome(shown, form.cleaned_data)
    except StudioError:
        return ""
    return "" if outcome is None else outcome.words


def _worked_out(request: HttpRequest, act: Act, shown: ShelfBottle) -> HttpResponse:
    """Answer with the form as it was typed, and what it would come to."""
    typed = request.POST.copy()
    form = act.form(typed, bottle=shown)
    form.full_clean()
    form.errors.pop(act.answer, None)  # it is what is asked for
    try:
        outcome = None if form.errors else act.outcome(shown, form.cleaned_data)
    except StudioError as error:
        form.refuse(error)
        outcome = None
    if outcome is None:
        return show(request, _page(act, shown, form), status=422)
    if act.answer:
        typed[act.answer] = number_text(outcome.number, digits=4)
    return show(request, _page(act, shown, form, outcome=outcome.words))


def _page(
    act: Act, shown: ShelfBottle, form: BottleForm, *, outcome: str = ""
) -> ActPage:
    address = reverse("bottle", args=[shown.code])
    return ActPage(
        title=act.title.format(code=shown.code),
        fact=_now(shown),
        crumbs=(_shelf(), Link(words=f"Bottle {shown.code}", address=address)),
        form=form,
        caution=act.caution(shown),
        advice=act.advice,
        other_way=_other_way(act, shown),
        outcome=outcome,
        keys=_keys(act, shown, has_outcome=bool(outcome)),
        instead=_instead(form, shown),
        back=address,
    )


def _instead(form: BottleForm, shown: ShelfBottle) -> Link | None:
    if form.instead is None:
        return None
    key, words = form.instead
    return Link(words=words, address=reverse("bottle-act", args=[shown.code, key]))


def _keys(act: Act, shown: ShelfBottle, *, has_outcome: bool) -> tuple[Key, ...]:
    keys = act.keys_of(shown)
    if act.work_out is None or (has_outcome and act.is_shown_first):
        return keys
    css = "first" if act.is_shown_first else ""
    work_out = Key(words="Work it out", name="work_out", value="1", css=css)
    return (work_out,) if act.is_shown_first else (*keys, work_out)


def _other_way(act: Act, shown: ShelfBottle) -> Link | None:
    if not act.other:
        return None
    address = reverse("bottle-act", args=[shown.code, act.other])
    return Link(words=act.other_words, address=address)


def _refuse_gone(shown: ShelfBottle) -> None:
    if shown.is_on_shelf:
        return
    raise ConflictError(
        why=f"Bottle {shown.code} is {shown.trouble}: nothing more can be done to it.",
        advice="Its ledger is kept; what was done today can still be undone there.",
    )


def _trouble(shown: ShelfBottle) -> Caution | None:
    if not (shown.is_settled and shown.is_on_shelf):
        return None
    return REWARMED if shown.keeping.is_rewarmed else SETTLED


def _acts(shown: ShelfBottle) -> tuple[ActLink, ...]:
    """Return what can be done, the key first that the bottle asks for."""
    if not shown.is_on_shelf:
        return ()
    first = _FIRST.get(shown.keeping.fate, "draw")
    return tuple(
        ActLink(
            words=words,
            address=_act_address(shown.code, key),
            icon=_ICONS.get(key, ""),
            css="first" if key == first else "",
        )
        for key, words in _ON_THE_PAGE.items()
    )


def _act_address(code: str, key: str) -> str:
    if key == "test":
        return reverse("strength-test", args=[code])
    return reverse("bottle-act", args=[code, key])


def _drawn(shown: ShelfBottle) -> drawing.Bottle:
    return drawing.Bottle(
        code=shown.code,
        full=shown.volume_ml / shown.final_ml if shown.final_ml else 0.0,
        age=shown.age.age_class,
        is_settled=shown.is_settled is True,
        life=shown.keeping.life_left,
    )


def _chips(shown: ShelfBottle) -> tuple[Chip, ...]:
    states: dict[str, ChipKind | None] = {
        shown.trouble: KINDS.get(shown.trouble, ""),
        "clear": "good" if shown.is_settled is False else None,
        "label is out of date": "caution" if _has_old_label(shown) else None,
        "a guess": "guess" if shown.is_strength_guess else None,
    }
    return tuple(
        Chip(words=words, kind=kind)
        for words, kind in states.items()
        if words and kind is not None
    )


def _has_old_label(shown: ShelfBottle) -> bool:
    return shown.labelled_percent is not None and shown.wants_label


def _made(about: ledger_pages.BottlePage) -> str:
    shown = about.bottle
    when = "" if shown.made_on is None else f" {day(shown.made_on)}"
    circa = " about" if when and shown.is_date_about else ""
    by = f" by {about.made_by}" if about.made_by else ""
    known = f"made{circa}{when}{by}" if when or by else "day made not known"
    return f"{about.dye_class} · {known}"


def _made_with(about: ledger_pages.BottlePage) -> str:
    """Say what a bottle’s first strength was read from."""
    way = "by weight on" if about.is_by_weight else "made up in"
    said = (
        f"weighed on {about.scale}" if about.scale else "",
        f"{way} {about.ware}" if about.ware else "",
    )
    return ", ".join(filter(None, said)) or "not said"


def _now(shown: ShelfBottle) -> str:
    strength = amount_text(shown.strength_percent, "%")
    left = amount_text(shown.volume_ml, "ml")
    return f"{shown.dye_name}, {strength}, {left} left."


def _before(version: EarlierVersion) -> str:
    kept = version.values
    said = (
        f"place {kept['place'] or '–'}",
        f"water {kept['water'] or '–'}",
        f"discard by {kept['discard_by'] or '–'}",
        f"last drops {kept['dead_volume_ml']} ml",
        f"notes {kept['notes'] or '–'}",
    )
    by = f" ({version.replaced_by})" if version.replaced_by else ""
    return f"Until {moment(version.replaced_at)}{by}: {'; '.join(said)}"


def _shelf() -> Link:
    return Link(words="Shelf", address=reverse("shelf"))
