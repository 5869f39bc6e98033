"""A mix by sliders: the page, the colour alone, the doses alone, and kept."""

from dataclasses import replace

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from shadewright.errors import StudioError
from shadewright.web.mix_text import MOST_DYES
from shadewright.web.mixes.asking import MixAsked, mix_asked
from shadewright.web.mixes.pages import (
    DosesPart,
    Kept,
    MixPage,
    NoPalettePage,
    Slider,
    ToldPart,
)
from shadewright.web.mixes.saving import SaveForm, save_asked
from shadewright.web.mixes.showing import (
    doses_of,
    told_of,
)
from shadewright.web.mixes.sliders import LEAST_PERCENT, MOST_PERCENT, STEPS, place_of
from shadewright.web.pages import Link, show
from shadewright.web.swatches.words import SHADES
from shadewright.web.targets import target_query
from shadewright.web.toasts import say
from shadewright.web.ways import way_to
from shadewright.workflows.shades.measurable import Measured, bench_now, measured_mix
from shadewright.workflows.shades.mixing_page import MixNow, mix_now
from shadewright.workflows.shades.own_lots import own_lots_words
from shadewright.workflows.shades.palettes import (
    PaletteNow,
    palette_now,
    palette_or_refuse,
)


@require_safe
def mix(request: HttpRequest) -> HttpResponse:
    """Show a mix with its sliders."""
    palette = palette_now()
    if palette is None:
        return show(request, no_palette("Mix by hand"))
    asked = mix_asked(request.GET)
    if asked.is_sent and not asked.faults:
        return redirect(_place(asked, request.GET.get("add", "")))
    return show(request, _page(asked, palette), status=422 if asked.faults else 200)


@require_safe
def mix_told(request: HttpRequest) -> HttpResponse:
    """Answer a slider with the colour alone."""
    asked = mix_asked(request.GET)
    return show(
        request, ToldPart(told=told_of(asked, _now(asked, palette_or_refuse())))
    )


@require_safe
def mix_doses(request: HttpRequest) -> HttpResponse:
    """Answer with the doses alone, once the sliders rest."""
    asked, palette = mix_asked(request.GET), palette_or_refuse()
    now = _now(asked, palette)
    rows = _measured(asked, now, palette)
    return show(request, DosesPart(doses=doses_of(rows, now, yarn_g=asked.yarn_g)))


@require_POST
def save_mix(request: HttpRequest) -> HttpResponse:
    """Write a mix down as a recipe of its own."""
    form, asked = SaveForm(request.POST), save_asked(request.POST)
    palette = palette_or_refuse()
    if form.is_valid():
        try:
            kept = form.save(request, asked, _now(asked, palette))
        except StudioError as error:
            form.refuse(error)
        else:
            say(request, f"Recipe {kept.recipe_name} is written")
            return redirect("recipe", kept.recipe_id)
    return show(request, _page(asked, palette, form=form), status=422)


def no_palette(title: str) -> NoPalettePage:
    """Return the page that stands where a palette would be asked."""
    ways = (
        Link(words="Begin a palette", address=way_to("swatch-start")),
        Link(words="Swatches", address=way_to("swatches")),
    )
    return NoPalettePage(title=title, crumbs=(SHADES,), ways=ways)


def _now(asked: MixAsked, palette: PaletteNow) -> MixNow:
    """Return the mix; nothing is foretold of one that cannot be read."""
    now = mix_now(
        palette.palette,
        base_id=asked.base_id,
        doses=asked.doses,
        target=None if asked.wanted is None else asked.wanted.lab,
    )
    if not asked.faults:
        return replace(now, own_lots=own_lots_words(palette.own_lots))
    return replace(now, told=None, why_not=" ".join(asked.faults.values()))


def _place(asked: MixAsked, added: str) -> str:
    mark = f"#dye-{added}" if added else ""
    return f"{reverse('mix')}?{asked.query()}{mark}"


def _measured(
    asked: MixAsked, now: MixNow, palette: PaletteNow
) -> tuple[Measured, ...]:
    if now.told is None:
        return ()
    return measured_mix(
        palette.palette,
        base=now.base.words,
        dyes=now.dyes,
        told=now.told,
        bench=bench_now(asked.yarn_g),
    )


def _page(
    asked: MixAsked, palette: PaletteNow, *, form: SaveForm | None = None
) -> MixPage:
    now = _now(asked, palette)
    form = form or SaveForm()
    return MixPage(
        title="Mix by hand",
        fact=f"On {now.base.words}. The colour follows as you move a dye.",
        crumbs=(SHADES,),
        base=now.base,
        bases=now.bases,
        sliders=_sliders(asked, now),
        addable=now.addable if len(now.dyes) < MOST_DYES else (),
        wanted=_wanted(asked),
        yarn=asked.typed.get("yarn", f"{asked.yarn_g:g}"),
        yarn_fault=asked.faults.get("yarn", ""),
        steps=STEPS,
        least=LEAST_PERCENT,
        most=MOST_PERCENT,
        told=told_of(asked, now),
        doses=doses_of(_measured(asked, now, palette), now, yarn_g=asked.yarn_g),
        deed=str(form["deed"].value()),
        name=form["called"].value() or "",
        name_fault=form.fault,
    )


def _sliders(asked: MixAsked, now: MixNow) -> tuple[Slider, ...]:
    return tuple(
        Slider(
            id=dye.id,
            name=dye.name,
            place=place_of(dye.depth_percent),
            depth=asked.typed.get(f"d{dye.id}", f"{dye.depth_percent:.4g}"),
            hint=_hint(dye.deepest_percent),
            fault=asked.faults.get(f"d{dye.id}", ""),
        )
        for dye in now.dyes
    )


def _hint(deepest_percent: float) -> str:
    if not deepest_percent:
        return "no swatch of it was read yet"
    return f"deepest swatch {deepest_percent:.3g}\u00a0%; beyond that it is guessed"


def _wanted(asked: MixAsked) -> tuple[Kept, ...]:
    if asked.wanted is None:
        return ()
    return tuple(
        Kept(name=name, value=value)
        for name, value in target_query(asked.wanted).items()
    )
