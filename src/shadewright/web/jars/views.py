"""Jars: the list, a jar that comes in, one jar and what happens to it."""

from uuid import UUID, uuid4

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse
from django.views.decorators.http import (
    require_http_methods,
    require_POST,
    require_safe,
)

from shadewright.core.quantities import amount_text
from shadewright.errors import StudioError
from shadewright.web.finding import asked, says
from shadewright.web.frame import person_id
from shadewright.web.jars.forms import ReceiveForm, WeighForm
from shadewright.web.jars.pages import JarPage, JarRow, JarsPage, ReceivePage
from shadewright.web.jars.words import FATE, FATE_OF_METAL, POWDER
from shadewright.web.pages import Link, show
from shadewright.web.sorting import Keys, arrange, read_order
from shadewright.web.toasts import say
from shadewright.workflows import jars as shelf
from shadewright.workflows.jars import ShelfJar
from shadewright.workflows.ledger_pages import jar_page
from shadewright.workflows.stamps import Stamp, stamp_now

_KEYS: Keys[JarRow] = {
    "code": lambda row: row.jar.id,
    "dye": lambda row: row.jar.dye_name.casefold(),
    "left": lambda row: row.jar.left_g,
    "opened": lambda row: row.jar.opened_on,
}


@require_safe
def jars(request: HttpRequest) -> HttpResponse:
    """Show the jars in use."""
    query = asked(request)
    found = [
        one for one in shelf.jars() if says(query, one.code, one.dye_name, one.lot)
    ]
    order = read_order(request, _KEYS, default="dye")
    page = JarsPage(
        title="Jars of powder",
        fact="What is left by the ledger; weigh a jar anew when in doubt.",
        rows=arrange((_row(one) for one in found), order, _KEYS),
        order=order,
        query=query,
        gone=shelf.jars_gone(),
    )
    return show(request, page)


@require_http_methods(["GET", "POST"])
def receive(request: HttpRequest) -> HttpResponse:
    """Put a jar on the shelf."""
    if request.method == "POST":
        form = ReceiveForm(request.POST)
        jar = _received(request, form) if form.is_valid() else None
        if jar is not None:
            return _to(jar.id)
    else:
        form = ReceiveForm(
            initial={"strength_percent": 100, "dye": request.GET.get("dye")}
        )
    page = ReceivePage(
        title="Receive a jar",
        crumbs=(_above(),),
        form=form,
        powder=POWDER,
    )
    return show(request, page, status=422 if form.errors else 200)


@require_safe
def jar(request: HttpRequest, jar_id: int) -> HttpResponse:
    """Show one jar with its ledger."""
    return show(request, _jar_page(jar_id, WeighForm()))


@require_POST
def weigh(request: HttpRequest, jar_id: int) -> HttpResponse:
    """Write down what is really left in a jar."""
    form = WeighForm(request.POST)
    if form.is_valid() and _weighed(request, jar_id, form):
        return _to(jar_id)
    return show(request, _jar_page(jar_id, form), status=422)


@require_POST
def hand_in(request: HttpRequest, jar_id: int) -> HttpResponse:
    """Write down that a jar has left the studio."""
    try:
        deed = UUID(request.POST.get("deed", ""))
    except ValueError:
        deed = uuid4()
    found = shelf.hand_in_jar(jar_id=jar_id, stamp=_stamp(request, deed))
    say(request, f"Jar {found.code} is gone", undo=reverse("undo", args=[deed]))
    return _to(jar_id)


def _received(request: HttpRequest, form: ReceiveForm) -> ShelfJar | None:
    sent = dict(form.cleaned_data)
    deed = sent.pop("deed")
    try:
        jar = shelf.receive_jar(
            dye_id=sent.pop("dye"), stamp=_stamp(request, deed), **sent
        )
    except StudioError as error:
        form.refuse(error)
        return None
    said = f"Jar {jar.code} received: write the code on it"
    say(request, said, undo=reverse("undo", args=[deed]))
    return jar


def _weighed(request: HttpRequest, jar_id: int, form: WeighForm) -> bool:
    sent = dict(form.cleaned_data)
    deed = sent.pop("deed")
    try:
        jar = shelf.count_jar(jar_id=jar_id, stamp=_stamp(request, deed), **sent)
    except StudioError as error:
        form.refuse(error)
        return False
    said = f"Jar {jar.code} holds {amount_text(jar.left_g, 'g')}"
    say(request, said, undo=reverse("undo", args=[deed]))
    return True


def _jar_page(jar_id: int, form: WeighForm) -> JarPage:
    found = jar_page(jar_id)
    row = _row(found.jar)
    return JarPage(
        title=f"Jar {found.jar.code}",
        fact=f"{found.jar.dye_name}, {amount_text(found.jar.left_g, 'g')} left.",
        crumbs=(_above(),),
        jar=found.jar,
        full=row.full,
        bar=row.bar,
        bottles=tuple(
            Link(words=code, address=reverse("bottle", args=[code]))
            for code in found.bottle_codes
        ),
        entries=found.entries,
        form=form,
        powder=POWDER,
        hand_in_deed=uuid4(),
        fate=FATE_OF_METAL if found.jar.is_metal_complex else FATE,
    )


def _row(jar: ShelfJar) -> JarRow:
    return JarRow(
        jar=jar,
        full=jar.left_g / jar.filled_g if jar.filled_g else 0.0,
        bar="low" if jar.is_low else "",
    )


def _stamp(request: HttpRequest, deed: UUID) -> Stamp:
    return stamp_now(by=person_id(request), deed=deed)


def _above() -> Link:
    return Link(words="Jars", address=reverse("jars"))


def _to(jar_id: int) -> HttpResponse:
    return HttpResponseRedirect(reverse("jar", args=[jar_id]))
