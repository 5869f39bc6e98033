"""One swatch: its colour beside what was foretold, its readings, what it teaches."""

from urllib.parse import urlencode
from uuid import uuid4

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.colours import colour_of_reading, foretold_colour
from shadewright.web.depths import depth_rows
from shadewright.web.pages import Link, show
from shadewright.web.standings import standing_chip
from shadewright.web.swatches.pages import (
    ForetoldPart,
    Key,
    ReadingRow,
    SwatchPage,
)
from shadewright.web.swatches.words import (
    CRUMBS,
    dose_words,
    kind_chip,
    title_of,
)
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatch_page import (
    Foretold,
    ReadingLine,
    foretold_of,
    reading_lines,
)
from shadewright.workflows.shades.swatches import Standing, SwatchNow, swatch_now

_WHY = {
    Standing.COUNTS: "It teaches: the palette is fitted to its newest dry reading.",
    Standing.TRUSTED: "It was looked at again, so it teaches even where the other "
    "swatches say otherwise.",
    Standing.SET_ASIDE: "It was set aside and teaches nothing until it is restored.",
    Standing.OFFERED: "It is a lot, and a lot teaches only when somebody says so.",
    Standing.WET: "It was only read wet, and a wet colour teaches nothing. Read it "
    "again when it is dry.",
    Standing.UNREAD: "It teaches once its colour is read.",
}
_SUSPECT = (
    "The other swatches do not believe it, so the last fit left it out. Look at it "
    "again: its dose, its tag, its colour."
)
_RESTORE, _TRUST, _ASIDE = "Let it teach", "It is right: let it teach", "Set it aside"


@require_safe
def swatch(request: HttpRequest, swatch_id: int) -> HttpResponse:
    """Show one swatch."""
    now = swatch_now(swatch_id)
    holds = palette_now()
    suspects = () if holds is None else holds.suspects
    doubted = any(each.swatch_id == swatch_id for each in suspects)
    is_suspect = doubted and now.standing is Standing.COUNTS
    name, seen = title_of(now), now.reading
    page = SwatchPage(
        title=name,
        fact=_fact(now),
        crumbs=CRUMBS,
        seen=None if seen is None else colour_of_reading(seen),
        standing=standing_chip(now, is_suspect=is_suspect),
        why=_SUSPECT if is_suspect else _WHY[now.standing],
        palette_address=reverse("palette", args=[now.base_id]),
        keys=_keys(now, is_suspect=is_suspect),
        key_deed=uuid4(),
        facts=_facts(now),
        note=now.note,
        depths=depth_rows(now.bath_number) if now.bath_number else (),
        foretold=_foretold(foretold_of(now), now, is_suspect=is_suspect),
        readings=tuple(_reading(line) for line in reading_lines(swatch_id)),
        read_address=reverse("swatch-read", args=[swatch_id]),
        find_address=_find_address(now),
        own=reverse("swatch", args=[swatch_id]),
    )
    return show(request, page)


def _fact(now: SwatchNow) -> str:
    if now.label == dose_words(now):
        return f"On {now.base_name}."
    return f"{dose_words(now)} on {now.base_name}."


def _facts(now: SwatchNow) -> tuple[tuple[str, Link], ...]:
    base = reverse("base", args=[now.base_id])
    found = [
        ("Base", Link(words=now.base_name, address=base)),
        ("Dyes", Link(words=dose_words(now), address="")),
    ]
    if now.bath_number:
        bath = reverse("bath", args=[now.bath_number])
        found.append(("Bath", Link(words=now.bath_number, address=bath)))
    if now.plan_id is not None:
        plan = reverse("swatch-plan", args=[now.plan_id])
        found.append(("Planned in", Link(words="a set of swatches", address=plan)))
    if now.is_lot:
        lot = reverse("lot", args=[now.bath_number])
        found.append(("Lot", Link(words=now.bath_number, address=lot)))
    dyed = now.dyed_on
    words = f"{dyed.day} {dyed:%B} {dyed.year}" if dyed else "not written down"
    return (*found, ("Dyed", Link(words=words, address="")))


def _keys(now: SwatchNow, *, is_suspect: bool) -> tuple[Key, ...]:
    aside = Key(words=_ASIDE, address=_act("set-aside", now))
    restore = Key(words=_RESTORE, address=_act("restore", now))
    trust = Key(words=_TRUST, address=_act("trust", now))
    wanted: tuple[Key, ...] = ()
    if is_suspect:
        wanted = (trust, aside)
    elif now.is_evidence:
        wanted = (aside,)
    elif now.standing in {Standing.SET_ASIDE, Standing.OFFERED}:
        wanted = (restore,)
    return wanted


def _act(name: str, now: SwatchNow) -> str:
    return reverse(name, args=[now.id])


def _find_address(now: SwatchNow) -> str:
    asked = urlencode({"base": now.base_id, "swatch": now.id})
    return f"{reverse('find')}?{asked}" if now.reading else ""


def _reading(line: ReadingLine) -> ReadingRow:
    reading = line.reading
    said = (reading.meter, _several(line), _typed(line))
    return ReadingRow(
        seen=colour_of_reading(reading),
        kind=kind_chip(reading.read_by),
        at=reading.at,
        by=reading.by,
        how=", ".join(part for part in said if part),
        odd=_odd(line),
        is_wet=reading.is_wet,
        is_undone=line.is_undone,
        may_undo=line.may_undo,
        deed=line.deed,
    )


def _several(line: ReadingLine) -> str:
    if line.reading.repeat < 2:
        return ""
    each = "" if line.sd is None else f", each ±{NO_BREAK}{line.sd:.1f} in Lab"
    return f"mean of {line.reading.repeat} readings{each}"


def _typed(line: ReadingLine) -> str:
    """Say what was typed where a meter’s light had to be carried over."""
    return f"typed for {line.typed_for}: {line.as_typed}" if line.typed_for else ""


def _odd(line: ReadingLine) -> str:
    if line.odd is None:
        return ""
    return (
        f"Reading {line.odd.place} lies {line.odd.distance:.1f} from the others in "
        "Lab: another spot, or a slip? Read it again."
    )


def _foretold(
    told: Foretold | None, now: SwatchNow, *, is_suspect: bool
) -> ForetoldPart | None:
    if told is None:
        return None
    seen = foretold_colour(
        told.lab,
        expected=told.expected,
        within_90=told.within_90,
        evidence=told.evidence,
    )
    read = None if now.reading is None else colour_of_reading(now.reading)
    return ForetoldPart(
        seen=seen,
        pair=("" if read is None else read.hex_code, seen.hex_code),
        pair_name="As read, left, beside as foretold, right",
        head="as foretold before it was dyed" if told.is_before else "as foretold now",
        says=_says(told, is_waiting=now.is_evidence and not is_suspect),
        more=_more(told),
    )


def _says(told: Foretold, *, is_waiting: bool) -> str:
    if told.difference is None:
        return ""
    away = f"{told.words.capitalize()}: ΔE{NO_BREAK}{told.difference:.1f} from what"
    if not told.is_before:
        return (
            f"{away} the palette says, which {_learned(told, is_waiting=is_waiting)}."
        )
    where = "within" if told.difference <= told.within_90 else "outside"
    return f"{away} was foretold, {where} the stated {told.within_90:.1f}."


def _learned(told: Foretold, *, is_waiting: bool) -> str:
    if told.is_learned:
        return "learned from it too"
    return "has not learned from it yet" if is_waiting else "did not learn from it"


def _more(told: Foretold) -> str:
    if not told.is_learned:
        return ""
    if told.left_out is None:
        return "No other swatch tells of its dyes yet, so nothing checks it."
    return (
        "From the other swatches alone, the palette would have been "
        f"ΔE{NO_BREAK}{told.left_out:.1f} off."
    )
