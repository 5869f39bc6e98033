"""What was found, made into what the page shows."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from uuid import uuid4

from django.urls import reverse

from shadewright.core.baths.sums import POWDER_CAUTION
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.drawing import Difference
from shadewright.exchange.colour_text import on_screen
from shadewright.web.baths.planning import shown_share
from shadewright.web.colours import LIGHT_NAMES, TOO_VIVID, foretold_colour
from shadewright.web.depths import sureness
from shadewright.web.matching.asking import Asked
from shadewright.web.matching.pages import (
    AnswerShown,
    DoseShown,
    FoundShown,
    LightShown,
)
from shadewright.web.matching.troubles import mind, said_above, troubles_of
from shadewright.web.mix_text import mix_text
from shadewright.web.pages import Link
from shadewright.web.parts import Caution
from shadewright.web.targets import target_query
from shadewright.web.ways import way_to
from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.costs import cost_words
from shadewright.workflows.shades.dye_chips import DyeChip, dye_chips
from shadewright.workflows.shades.find_wishes import AtShelf
from shadewright.workflows.shades.finding import Answer, Found, Hunt, UnderLight
from shadewright.workflows.shades.own_lots import own_lots_words

_MOST_BEHIND = 5


@dataclass(frozen=True, kw_only=True)
class _Scene:
    """What every answer of a page is shown against."""

    at: AtShelf
    chips: Mapping[int, DyeChip]
    found: Found
    asked: Asked


def shown_found(ready: Hunt, found: Found, asked: Asked) -> FoundShown:
    """Return all that was found as the page shows it."""
    batch = amount_text(found.wish.batch_g, "g")
    doses = [dose for each in found.answers for dose in each.doses]
    is_dry = any(dose.missing_g for dose in doses)
    chips = dye_chips({dose.dye_id for dose in doses})
    scene = _Scene(at=ready.at, chips=chips, found=found, asked=asked)
    return FoundShown(
        batch=f"{batch} {found.base_name}",
        searched=_searched(ready, found),
        out_of_reach=_out_of_reach(found),
        reach_way=_reach_way(found),
        powder=POWDER_CAUTION if is_dry else "",
        answers=tuple(
            _answer(each, place, scene)
            for place, each in enumerate(found.answers, start=1)
        ),
        save_address=f"{reverse('find-save')}?{asked.query}",
        save_words=_save_words(asked) if found.answers else "",
    )


def _searched(ready: Hunt, found: Found) -> str:
    said = f"{found.searched:,} sets of dyes looked at.".replace(",", NO_BREAK)
    return f"{said} {own_lots_words(ready.now.own_lots)}".strip()


def _save_words(asked: Asked) -> str:
    if asked.parent_id is not None:
        return "“Save as recipe” writes the next version of the recipe you came from."
    return f"“Save as recipe” names it {asked.wish.wanted.name}."


def _out_of_reach(found: Found) -> Caution | None:
    if found.is_within_tolerance and found.answers:
        return None
    if found.is_within_tolerance:
        return Caution(
            title="It needs no dye",
            text=f"Bare {found.base_name} is that colour already: "
            f"ΔE{NO_BREAK}{found.nearest_difference:.1f} away.",
        )
    words = found.nearest_words
    return Caution(
        title="Out of reach" if found.answers else "No dye brings it nearer",
        text=(
            f"The nearest that {_what_comes(found)} to it on {found.base_name} is "
            f"ΔE{NO_BREAK}{found.nearest_difference:.1f} away: {words}."
        ),
    )


def _what_comes(found: Found) -> str:
    """Say what was searched: a batch that empties the bottles is not the palette."""
    if found.wish.is_on_shelf:
        return (
            f"the stock on the shelf for {amount_text(found.wish.batch_g, 'g')} comes"
        )
    return "these dyes come"


def _reach_way(found: Found) -> Link | None:
    if found.is_within_tolerance:
        return None
    query = {"kind": "next", "base": str(found.wish.base_id)}
    address = way_to("swatch-plan-new", **query, **target_query(found.wish.wanted))
    return Link(words="Which swatch would help", address=address)


def _answer(each: Answer, place: int, scene: _Scene) -> AnswerShown:
    day = each.under[0]
    wish = scene.found.wish
    wanted = wish.wanted
    said = f"{wanted.name} left, foretold right: {each.words}"
    said_already = said_above(scene.found, place)
    troubles = tuple(troubles_of(each.doses, scene.at, said=said_already))
    return AnswerShown(
        number=place,
        title=each.why[0],
        also=_also(each.why[1:]),
        cost=f"Dye for a skein of 100{NO_BREAK}g: {cost_words(each.cost)}",
        hexes=_hexes(day),
        said=said,
        too_vivid=_too_vivid(day),
        words=_capital(each.words),
        difference=f"{each.difference:.1f}",
        spread=(
            f"in the pot usually {each.expected:.1f}; "
            f"9 in 10 stay under {each.within_90:.1f}"
        ),
        bar=Difference(
            usual=each.expected,
            low=each.within_10,
            high=each.within_90,
            tolerance=wish.tolerance,
        ),
        chance=_chance(each.chance),
        passes=f"{wish.tolerance:g}",
        lights=tuple(map(_light, each.under)),
        doses=tuple(_dose(dose, scene) for dose in each.doses),
        troubles=troubles,
        mind=mind(troubles),
        colour=foretold_colour(
            each.lab,
            expected=each.off,
            within_90=each.off_90,
            evidence=each.evidence,
        ),
        behind=tuple(
            Link(words=swatch.label, address=reverse("swatch", args=[swatch.id]))
            for swatch in each.behind[:_MOST_BEHIND]
        ),
        mix=mix_text(each.depths),
        deed=uuid4(),
        ways=tuple(_ways(each, scene.asked)),
    )


def _ways(each: Answer, asked: Asked) -> Iterator[Link]:
    wish = asked.wish
    query = {
        "base": str(wish.base_id),
        "mix": mix_text(each.depths),
        **target_query(wish.wanted),
    }
    trials = way_to("swatch-plan-new", kind="bracket", **query)
    yield Link(words="Three trials", address=trials)
    adjust = way_to("mix", **query, yarn=f"{wish.batch_g:g}")
    yield Link(words="Adjust", address=adjust)


def _also(why: Sequence[str]) -> str:
    said = [f"{words[:1].lower()}{words[1:]}" for words in why]
    return f"Also {' and '.join(said)}." if said else ""


def _chance(chance: float) -> str:
    percent = round(100 * chance)
    if chance > 0 and not percent:
        return f"Fewer than 1{NO_BREAK}%"
    return f"{percent}{NO_BREAK}%"


def _light(under: UnderLight) -> LightShown:
    name = LIGHT_NAMES[under.light]
    return LightShown(
        name=name,
        hexes=_hexes(under),
        said=f"Target left, foretold right, under {name}",
        words=f"ΔE{NO_BREAK}{under.difference:.1f}",
        note="target supposed" if under.is_supposed else "",
    )


def _hexes(under: UnderLight) -> tuple[str, ...]:
    return tuple(on_screen(lab).hex_code for lab in (under.target, under.foretold))


def _too_vivid(day: UnderLight) -> str:
    pair = (("The target is", day.target), ("The colour foretold is", day.foretold))
    beyond = [said for said, lab in pair if not on_screen(lab).is_true]
    if len(beyond) > 1:
        return f"Both are {TOO_VIVID}."
    return f"{beyond[0]} {TOO_VIVID}." if beyond else ""


def _dose(dose: PlannedDose, scene: _Scene) -> DoseShown:
    return DoseShown(
        name=dose.dye_name,
        address=reverse("dye", args=[dose.dye_id]),
        chip=scene.chips[dose.dye_id],
        depth=sureness(dose.dosed.how_sure, dose.depth_percent).depth,
        shares=tuple(
            shown_share(
                share,
                share_g,
                is_by_weight=scene.at.tools.is_by_weight,
                tool=dose.dosed.tool,
            )
            for share, share_g in zip(dose.shares, dose.dosed.shares_g, strict=True)
        ),
        missing=amount_text(dose.missing_g, "g") if dose.missing_g else "",
    )


def _capital(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
