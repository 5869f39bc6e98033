"""A recipe on every base: the page, and the corrected version kept in one tap."""

from uuid import uuid4

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from shadewright.core.colour import difference_words
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.errors import MissingError
from shadewright.web.asking import number_asked
from shadewright.web.colours import ColourShown
from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.mix_text import mix_text
from shadewright.web.mixes.carry_pages import (
    BaseRow,
    CarriedDose,
    CarriedShown,
    CarryPage,
)
from shadewright.web.mixes.showing import told_colour, wanted_colour
from shadewright.web.mixes.views import no_palette
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.web.toasts import say
from shadewright.web.ways import way_to
from shadewright.workflows.recipe_words import dose_words
from shadewright.workflows.shades.carry_keeping import keep_carried
from shadewright.workflows.shades.carrying import (
    CarriedNow,
    CarryNow,
    OnBase,
    carried_now,
    carry_now,
)
from shadewright.workflows.shades.palettes import PaletteNow, palette_now
from shadewright.workflows.shades.plan_pages import plan_of_recipe
from shadewright.workflows.stamps import stamp_now

_TESTED = Chip(words="tested", kind="good")
_UNTESTED = Chip(words="untested", kind="guess")
_NOT_POSSIBLE = Chip(words="not possible yet", kind="caution")


@require_http_methods(["GET", "POST"])
def carry(request: HttpRequest, version_id: int) -> HttpResponse:
    """Show a recipe on every base, or keep what was carried to one.

    A set of swatches is no colourway: nothing is carried from it.
    """
    palette = palette_now()
    if palette is None:
        return show(request, no_palette("On other bases"))
    said = request.POST or request.GET
    made_for = number_asked(said, "from", kind="base")
    shown = carry_now(palette, version_id=version_id, made_for_id=made_for)
    set_id = plan_of_recipe(shown.version.recipe_id)
    if set_id is not None:
        return redirect("swatch-plan", set_id)
    to_id = number_asked(said, "to", kind="base")
    if request.method == "POST":
        return _kept(request, palette, shown, to_id)
    return show(request, _page(palette, shown, to_id))


def _kept(
    request: HttpRequest, palette: PaletteNow, shown: CarryNow, to_id: int | None
) -> HttpResponse:
    form = DeedForm(request.POST)
    if not form.is_valid() or to_id is None:
        raise MissingError(
            name="The base", advice="Choose where it is carried to.", argument="to"
        )
    stamp = stamp_now(by=person_id(request), deed=form.cleaned_data["deed"])
    made = keep_carried(palette, to_id=to_id, shown=shown, stamp=stamp)
    say(request, f"{made.recipe_name}, version {made.number} is written")
    return redirect("recipe-version", made.recipe_id, made.number)


def _page(palette: PaletteNow, shown: CarryNow, to_id: int | None) -> CarryPage:
    version, open_to = shown.version, shown.open_to
    doses = " + ".join(dose_words(dose) for dose in version.text.doses)
    wanted = to_id if to_id or not open_to else open_to[0].id
    carried = None
    if wanted is not None and open_to and shown.made_for.told is not None:
        carried = _carried(shown, carried_now(palette, shown, to_id=wanted))
    address = reverse("recipe-version", args=[version.recipe_id, version.number])
    return CarryPage(
        title=f"{version.recipe_name} on other bases",
        fact=f"Version {version.number}: {doses}.",
        crumbs=(
            Link(words="Recipes", address=reverse("recipes")),
            Link(words=version.recipe_name, address=address),
        ),
        version_id=version.id,
        why_not=shown.why_not,
        rows=tuple(_row(shown, row) for row in shown.rows),
        bases=tuple(row.base for row in shown.rows),
        made_for=shown.made_for.base,
        carried=carried,
        deed=str(uuid4()),
    )


def _row(shown: CarryNow, row: OnBase) -> BaseRow:
    read = None if row.read is None else wanted_colour(row.read)
    told = None if row.told is None else told_colour(row.told)
    both = [each for each in (read, told) if each is not None]
    is_open = row.base in shown.open_to
    return BaseRow(
        base=row.base.words,
        hexes=tuple(each.hex_code for each in both) or ("",),
        picture=_picture(row, both),
        state=_state(row),
        is_made_for=row.is_made_for,
        read=read,
        told=told,
        notes=tuple(_notes(shown, row)),
        key=_carry_key(shown, row) if is_open else None,
    )


def _state(row: OnBase) -> Chip:
    if row.is_tested:
        return _TESTED
    return _UNTESTED if row.told else _NOT_POSSIBLE


def _picture(row: OnBase, both: list[ColourShown]) -> str:
    if not both:
        return f"{row.base.words}: no colour known"
    sides = "read left, foretold right: " if len(both) == 2 else ""
    return f"{row.base.words}: {sides}{'; '.join(each.title for each in both)}"


def _notes(shown: CarryNow, row: OnBase) -> list[str]:
    said = []
    if row.lots:
        said.append("1 lot of it" if row.lots == 1 else f"{row.lots} lots of it")
    if row.read is not None and row.told is not None:
        words = difference_words(row.told.lab, row.read.lab)
        said.append(f"It came out {words} than foretold")
    if row.guessed:
        said.append(f"{_never(row)} on it: guessed from the other bases")
    if row.told is None and not shown.why_not:
        said.append("No swatch on it teaches the palette yet, so nothing is foretold")
    return said


def _never(row: OnBase) -> str:
    verb = "was" if len(row.guessed) == 1 else "were"
    return f"{' and '.join(row.guessed)} {verb} never dyed"


def _carry_key(shown: CarryNow, row: OnBase) -> Link:
    asked = {"from": shown.made_for.base.id, "to": row.base.id}
    here = way_to("carry", shown.version.id, **asked)
    return Link(words=f"Carry to {row.base.words}", address=f"{here}#h-carried")


def _carried(shown: CarryNow, found: CarriedNow) -> CarriedShown:
    origin, plain, base = shown.made_for, found.to.told, found.to.base
    if origin.told is None or plain is None:
        raise MissingError(name="A colour foretold")
    seen = [told_colour(each) for each in (origin.told, plain, found.told)]
    before = difference_words(origin.told.lab, plain.lab)
    after = difference_words(origin.told.lab, found.told.lab)
    return CarriedShown(
        base=base.words,
        base_id=base.id,
        hexes=tuple(each.hex_code for each in seen),
        names=(f"On {origin.base.words}", "As it is", "Corrected"),
        picture=f"On {origin.base.words}, as it is on {base.words}, corrected there: "
        f"as it is {before}, corrected {after}",
        before=f"{before}, ΔE{NO_BREAK}{found.before:.1f}",
        after=f"{after}, ΔE{NO_BREAK}{found.after:.1f}",
        expected=f"In the pot expect ΔE{NO_BREAK}{found.expected:.1f}.",
        colour=seen[2],
        doses=_doses(shown, found),
        trials=way_to(
            "swatch-plan-new",
            kind="bracket",
            base=str(base.id),
            mix=mix_text(tuple((x.id, x.depth_percent) for x in found.doses)),
        ),
        guessed=f"{_never(found.to)} on {base.words}: test it there first."
        if found.to.guessed
        else "",
    )


def _doses(shown: CarryNow, found: CarriedNow) -> tuple[CarriedDose, ...]:
    after = {dye.id: dye.depth_percent for dye in found.doses}
    return tuple(
        CarriedDose(
            dye=dye.name,
            before=amount_text(dye.depth_percent, "%"),
            after=amount_text(after[dye.id], "%") if dye.id in after else "left out",
        )
        for dye in shown.dyes
    )
