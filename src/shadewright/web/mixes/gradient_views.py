"""A row whose steps look equal: the page, and the row kept in one tap."""

from collections.abc import Mapping
from itertools import starmap
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.core.baths.sums import POWDER_CAUTION
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.errors import StudioError
from shadewright.web.amounts import share, some_mass
from shadewright.web.asking import number_asked
from shadewright.web.colours import TOO_VIVID
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.mix_text import mix_of, mix_text
from shadewright.web.mixes.gradient_form import ENDS, GradientForm, initial_of
from shadewright.web.mixes.gradient_pages import GradientPage, StepRow
from shadewright.web.mixes.pages import Kept
from shadewright.web.mixes.saving import RowForm
from shadewright.web.mixes.showing import told_colour
from shadewright.web.mixes.views import no_palette
from shadewright.web.pages import show
from shadewright.web.swatches.words import SHADES
from shadewright.web.toasts import say
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.recipes import version
from shadewright.workflows.shades.gradients import (
    PALEST_SHARE,
    GradientNow,
    GradientWish,
    Step,
    colourways,
    gradient_now,
    keep_gradient,
    swatch_wish,
)
from shadewright.workflows.shades.measurable import Measured, bench_now, measured_mix
from shadewright.workflows.shades.mixing_page import palette_bases, palette_dyes
from shadewright.workflows.shades.palettes import (
    PaletteNow,
    palette_now,
    palette_or_refuse,
)
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.stamps import stamp_now

USUAL_STEPS, USUAL_YARN_G = 5, 100.0


@require_safe
def gradient(request: HttpRequest) -> HttpResponse:
    """Show a row, or bring what was typed into its address."""
    palette = palette_now()
    if palette is None:
        return show(request, no_palette("Gradient"))
    if "first_1" not in request.GET:
        return show(request, _page(palette, request.GET))
    form = _form(palette, request.GET)
    if form.is_valid():
        return redirect(f"{reverse('gradient')}?{_query(form)}")
    return show(request, _page(palette, {}, form=form), status=422)


@require_POST
def save_gradient(request: HttpRequest) -> HttpResponse:
    """Write every skein of a row down as a recipe."""
    palette, form = palette_or_refuse(), RowForm(request.POST)
    if form.is_valid():
        sent = form.cleaned_data
        stamp = stamp_now(by=person_id(request), deed=sent["deed"])
        row = gradient_now(palette, _wish(request.POST))
        try:
            made = keep_gradient(row, name=sent["called"], stamp=stamp)
        except StudioError as error:
            form.refuse(error)
        else:
            names = [each.recipe_name for each in made]
            say(request, f"{len(names)} recipes are written, {names[0]} to {names[-1]}")
            query = urlencode({"q": " ".join(sent["called"].split())})
            return redirect(f"{reverse('recipes')}?{query}")
    return show(request, _page(palette, request.POST, row_form=form), status=422)


@require_POST
def plan_gradient(request: HttpRequest) -> HttpResponse:
    """Plan the skeins of a row as a set of swatches."""
    palette, form = palette_or_refuse(), DeedForm(request.POST)
    deed = form.cleaned_data["deed"] if form.is_valid() else None
    row = gradient_now(palette, _wish(request.POST))
    stamp = stamp_now(by=person_id(request), deed=deed)
    plan_id = keep_plan(swatch_wish(row), stamp)
    say(request, "The row is planned as swatches: one bath for each")
    return redirect("swatch-plan", plan_id)


def _wish(said: Mapping[str, str]) -> GradientWish:
    typed, palest = said.get("steps", ""), said.get("palest", "")
    is_number = typed.isascii() and typed.isdecimal() and len(typed) < 4
    return GradientWish(
        base_id=number_asked(said, "base", kind="base"),
        first=mix_of(said.get("mix", "")),
        last=mix_of(said.get("last", "")),
        steps=int(typed) if is_number else USUAL_STEPS,
        palest_share=_share(palest) if palest else PALEST_SHARE,
    )


def _share(text: str) -> float:
    return min(share(text, name="The palest", default_unit="%") / 100, 0.99)


def _yarn_g(said: Mapping[str, str]) -> float:
    text = said.get("yarn", "")
    return some_mass(text, name="The yarn") if text else USUAL_YARN_G


def _form(
    palette: PaletteNow,
    data: Mapping[str, str] | None = None,
    initial: Mapping[str, object] | None = None,
) -> GradientForm:
    return GradientForm(
        data,
        bases=palette_bases(palette.palette),
        dyes=palette_dyes(palette.palette),
        recipes=colourways(),
        initial=initial,
    )


def _query(form: GradientForm) -> str:
    sent = form.cleaned_data
    first, last = (_end(form, end) for end in ENDS)
    parts = {
        "base": str(sent["base"]),
        "mix": mix_text(first),
        "last": mix_text(last),
        "steps": str(sent["steps"]),
        "palest": "" if sent["palest"] is None else f"{sent['palest']:g}",
        "yarn": f"{sent['yarn']:g}",
    }
    said = {name: value for name, value in parts.items() if value}
    return urlencode(said, safe=":,")


def _end(form: GradientForm, end: str) -> DyeDoses:
    """Return the mix of one end: of the recipe that was chosen, or as it was typed."""
    chosen = form.recipe(end)
    if chosen is None:
        return form.doses(end)
    return tuple(
        (dose.dye_id, dose.depth_percent)
        for dose in version(chosen).text.doses
        if dose.dye_id is not None and dose.depth_percent
    )


def _page(
    palette: PaletteNow,
    said: Mapping[str, str],
    *,
    form: GradientForm | None = None,
    row_form: RowForm | None = None,
) -> GradientPage:
    wish, yarn_g = _wish(said), _yarn_g(said)
    row = gradient_now(palette, wish)
    measured = _measured(palette, row, yarn_g)
    row_form = row_form or RowForm()
    rows = tuple(starmap(_step_row, zip(row.steps, measured, strict=True)))
    initial = initial_of(wish, yarn_g=yarn_g) | {"base": row.base.id}
    return GradientPage(
        title="Gradient",
        fact="Skeins in steps that look equal: laid out by colour, not by grams.",
        crumbs=(SHADES,),
        form=form or _form(palette, initial=initial),
        why_not=row.why_not,
        hexes=tuple(each.colour.hex_code for each in rows),
        picture=f"{len(rows)} skeins in a row, from {rows[0].doses} to {rows[-1].doses}"
        if rows
        else "",
        rows=rows,
        yarn=amount_text(yarn_g, "g"),
        whole=_whole(row, yarn_g),
        too_vivid=_too_vivid(rows),
        caution=_caution(measured),
        kept=tuple(_kept(row, wish, yarn_g)) if rows else (),
        deed=str(row_form["deed"].value()),
        name=row_form["called"].value() or "",
        name_fault=row_form.fault,
    )


def _measured(
    palette: PaletteNow, row: GradientNow, yarn_g: float
) -> tuple[tuple[Measured, ...], ...]:
    if not row.steps:
        return ()
    bench = bench_now(yarn_g)
    return tuple(
        measured_mix(
            palette.palette,
            base=row.base.words,
            dyes=step.dyes,
            told=step.told,
            bench=bench,
        )
        for step in row.steps
    )


def _caution(measured: tuple[tuple[Measured, ...], ...]) -> str:
    """Return what to mind where dye is weighed dry; nothing else."""
    is_dry = any(not each.code for draws in measured for each in draws)
    return POWDER_CAUTION if is_dry else ""


def _step_row(step: Step, draws: tuple[Measured, ...]) -> StepRow:
    away = step.from_before
    return StepRow(
        place=step.place,
        colour=told_colour(step.told),
        doses=mix_words(step.doses),
        draws=tuple(map(_draw_words, draws)),
        step="" if away is None else f"ΔE{NO_BREAK}{away:.1f}",
    )


def _draw_words(each: Measured) -> str:
    where = f"of {each.code}" if each.code else "dry"
    small = ", too little to measure well" if each.is_too_small else ""
    return f"{each.dye_name} {amount_text(each.amount, each.unit)} {where}{small}"


def _whole(row: GradientNow, yarn_g: float) -> tuple[str, ...]:
    """Return the dye of all skeins together."""
    grams: dict[str, float] = {}
    for step in row.steps:
        for name, depth in step.doses:
            grams[name] = grams.get(name, 0.0) + yarn_g * depth / 100
    return tuple(f"{name} {amount_text(g, 'g')}" for name, g in grams.items())


def _too_vivid(rows: tuple[StepRow, ...]) -> str:
    beyond = [str(row.place) for row in rows if not row.colour.is_true]
    if not beyond:
        return ""
    return f"Step {', '.join(beyond)}: {TOO_VIVID}."


def _kept(row: GradientNow, wish: GradientWish, yarn_g: float) -> list[Kept]:
    return [
        Kept(name="base", value=str(row.base.id)),
        Kept(name="mix", value=mix_text(wish.first)),
        Kept(name="last", value=mix_text(wish.last)),
        Kept(name="steps", value=str(wish.steps)),
        Kept(name="palest", value=f"{100 * wish.palest_share:g}"),
        Kept(name="yarn", value=f"{yarn_g:g}"),
    ]
