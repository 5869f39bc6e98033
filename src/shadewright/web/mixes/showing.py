"""What is foretold of a mix, made ready for its page."""

from django.urls import reverse

from shadewright.core.baths.sums import POWDER_CAUTION
from shadewright.core.colour import Lab, Light, ciede2000, difference_words
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.exchange.colour_text import on_screen
from shadewright.web.colours import (
    LIGHT_NAMES,
    TOO_VIVID,
    ColourShown,
    foretold_colour,
    read_colour,
)
from shadewright.web.evidence.standing import behind_shown
from shadewright.web.mix_text import mix_text
from shadewright.web.mixes.asking import MixAsked
from shadewright.web.mixes.pages import DoseRow, DosesShown, Kept, LightShown, Told
from shadewright.web.pages import Link
from shadewright.web.targets import target_query
from shadewright.web.ways import way_to
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.measurable import Measured
from shadewright.workflows.shades.mixing_page import SHOWN_UNDER, MixNow, ToldMix
from shadewright.workflows.shades.wanted import Wanted, target_of


def told_of(asked: MixAsked, now: MixNow) -> Told:
    """Return what is foretold of a mix as its page shows it."""
    wanted, told = asked.wanted, now.told
    target = None if wanted is None else wanted_colour(wanted)
    colour = None if told is None else told_colour(told, name=recipe_words(now))
    shown = [each for each in (target, colour) if each is not None]
    words, difference = _against(wanted, told)
    return Told(
        why_not=now.why_not,
        colour=colour,
        target=target,
        hexes=tuple(each.hex_code for each in shown),
        picture=_picture(target, words),
        mark=mark_of(target, colour),
        words=words,
        difference=difference,
        lights=() if told is None else _lights(told, wanted),
        keys=_keys(asked, now),
        kept=() if told is None else _kept(asked, now),
        said=_said(colour, words) if colour else now.why_not,
        own="" if asked.faults else f"{reverse('mix')}?{_own(asked, now)}",
    )


def told_colour(told: ToldMix, *, name: str = "") -> ColourShown:
    """Return a mix that is foretold as a colour on a page."""
    return foretold_colour(
        told.lab,
        expected=told.expected,
        within_90=told.within_90,
        evidence=told.evidence,
        name=name,
    )


def wanted_colour(wanted: Wanted) -> ColourShown:
    """Return a colour that is wanted as a colour on a page."""
    return read_colour(wanted.lab, wanted.read_by, name=wanted.name)


def recipe_words(now: MixNow) -> str:
    """Return a mix in words: Gorse 0.6 % + Slate 0.2 %; bare yarn without dye."""
    said = mix_words(dose for dose in now.doses if dose[1])
    return f"{said[:1].upper()}{said[1:]}"


def doses_of(rows: tuple[Measured, ...], now: MixNow, *, yarn_g: float) -> DosesShown:
    """Return measured doses as a page shows them, and what the colour rests on."""
    known = now.doses if now.told else ()
    return DosesShown(
        yarn=amount_text(yarn_g, "g"),
        rows=tuple(map(_dose_row, rows)),
        notes=(*_notes(rows), *filter(None, [now.own_lots])),
        behind=behind_shown(known, now.base.words),
    )


def lab_text(lab: Lab) -> str:
    """Return Lab as an address takes it for a colour."""
    return ",".join(f"{part:.2f}" for part in lab)


def _dose_row(each: Measured) -> DoseRow:
    return DoseRow(
        dye=each.dye_name,
        depth=amount_text(each.depth_percent, "%"),
        draw=amount_text(each.amount, each.unit),
        tool=each.tool or "no tool known",
        bottle=_bottle(each.code) if each.code else None,
    )


def _bottle(code: str) -> Link:
    return Link(words=code, address=reverse("bottle", args=[code]))


def _notes(rows: tuple[Measured, ...]) -> list[str]:
    """Say what the bottles and tools at hand cannot do."""
    said = []
    dry = [each.dye_name for each in rows if not each.code]
    if dry:
        said += [
            (
                f"No bottle holds enough {' or '.join(dry)}: this is dry dye. "
                "Make a stock of it to measure it better."
            ),
            POWDER_CAUTION,
        ]
    small = [each for each in rows if each.is_too_small]
    said += [
        f"{each.dye_name} at {amount_text(each.wanted_percent, '%')} is too little for "
        f"{each.tool}, which shows steps of {amount_text(each.step, each.unit)}: "
        "take a weaker stock or a finer tool."
        for each in small
    ]
    return said


def _against(wanted: Wanted | None, told: ToldMix | None) -> tuple[str, str]:
    """Return how a mix differs from a target: in words, and in numbers."""
    if wanted is None or told is None:
        return "", ""
    words = difference_words(wanted.lab, told.lab)
    away = ciede2000(wanted.lab, told.lab)
    pot = told.expected_to_target or 0.0
    number = (
        f"ΔE{NO_BREAK}{away:.1f} (CIEDE2000) to {wanted.name}; in the pot expect "
        f"ΔE{NO_BREAK}{pot:.1f}."
    )
    return f"{words[:1].upper()}{words[1:]}", number


def _picture(target: ColourShown | None, words: str) -> str:
    if target is None:
        return "The colour foretold"
    return f"{target.name} left, foretold right: {words or 'nothing is foretold'}"


def mark_of(target: ColourShown | None, colour: ColourShown | None) -> str:
    """Say which of two colours a screen cannot show."""
    named = (("The wanted colour", target), ("The colour foretold", colour))
    beyond = [name for name, each in named if each is not None and not each.is_true]
    return f"{' and '.join(beyond)}: {TOO_VIVID}." if beyond else ""


def _lights(told: ToldMix, wanted: Wanted | None) -> tuple[LightShown, ...]:
    aim = {} if wanted is None else dict(target_of(wanted, lights=SHOWN_UNDER).labs)
    return tuple(
        _light(light, told.labs[light], aim.get(light)) for light in SHOWN_UNDER
    )


def _light(light: Light, lab: Lab, aim: Lab | None) -> LightShown:
    labs = [lab] if aim is None else [aim, lab]
    away = "" if aim is None else f"ΔE{NO_BREAK}{ciede2000(aim, lab):.1f}"
    return LightShown(
        name=LIGHT_NAMES[light],
        hexes=tuple(on_screen(each).hex_code for each in labs),
        words=away,
    )


def _said(colour: ColourShown, words: str) -> str:
    against = f"{words}. " if words else ""
    return f"{against}{colour.title}."


def _own(asked: MixAsked, now: MixNow) -> str:
    return asked.query(base=str(now.base.id))


def _kept(asked: MixAsked, now: MixNow) -> tuple[Kept, ...]:
    values = {
        "base": str(now.base.id),
        "mix": mix_text(asked.mix),
        "yarn": f"{asked.yarn_g:g}",
    }
    values |= {} if asked.wanted is None else target_query(asked.wanted)
    return tuple(
        Kept(name="wanted_name" if name == "name" else name, value=value)
        for name, value in values.items()
    )


def _keys(asked: MixAsked, now: MixNow) -> tuple[Link, ...]:
    if now.told is None:
        return ()
    base, mix = str(now.base.id), mix_text(asked.mix)
    aim = {} if asked.wanted is None else target_query(asked.wanted)
    here = {"colour": lab_text(now.told.lab), "name": recipe_words(now)[:60]}
    ways = (
        ("Three trials", "swatch-plan-new", {"kind": "bracket", "mix": mix} | aim),
        ("Find others like it", "find", here),
        ("Gradient from it", "gradient", {"mix": mix}),
    )
    return tuple(
        Link(words=words, address=way_to(name, base=base, **query))
        for words, name, query in ways
        if mix or name == "find"
    )
