"""What other rooms show of this one: the fit, the suspects, the lots on offer.

Include them without ``only``, for their forms want the page’s token::

    {% include "evidence/_fit.html" with fit=page.fit %}
    {% include "evidence/_suspects.html" with suspects=page.suspects %}
    {% include "evidence/_offered.html" with offered=page.offered %}
"""

from dataclasses import dataclass
from datetime import datetime
from uuid import UUID, uuid4

from django.urls import reverse

from shadewright.core.mixing import Evidence
from shadewright.core.quantities import NO_BREAK
from shadewright.web.colours import ColourShown, colour_of_reading, read_colour
from shadewright.web.evidence.background import is_busy, take_up_left_behind
from shadewright.web.evidence.words import fit_words, one_or_counted, why_doubted
from shadewright.web.templatetags.house import day as day_words
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.doubts import Doubt, Doubts
from shadewright.workflows.shades.fit_pages import FitStatus, Running, fit_status
from shadewright.workflows.shades.kinds import TEACHES_AS
from shadewright.workflows.shades.offering import LotOnOffer
from shadewright.workflows.shades.swatches import SwatchNow

_FIRST = 4
"""Of so many lots on offer each is shown, the rest behind one tap."""
_OTHER_LIGHT = (
    "The colours look read under D50. Mend the meter’s light first: then these may "
    "well go together."
)
_BEGINNING = Running(stage="Looking at the swatches", share=0.0)


@dataclass(frozen=True, kw_only=True)
class FitShown:
    """Where the palette stands.

    ``percent`` counts while a fit runs; ``at`` is when the one that holds was done,
    None before the first; ``meters`` where a meter’s light is changed; ``news`` where
    a palette that was just fitted is shown. ``is_first`` tells that the page waits for
    its first palette, and so is asked for again by itself.
    """

    is_running: bool
    stage: str
    percent: int
    words: str
    at: datetime | None
    fault: str
    is_stale: bool
    is_other_light: bool
    meters: str
    is_first: bool
    news: str = ""


@dataclass(frozen=True, kw_only=True)
class SuspectShown:
    """A swatch that the others do not believe, and why; ``deed`` keys what is said."""

    swatch_id: int
    label: str
    base_name: str
    address: str
    read_again: str
    colour: ColourShown | None
    why: tuple[str, ...]
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class AsideShown:
    """A swatch that somebody set aside: who and when, and how far it is off."""

    swatch_id: int
    label: str
    base_name: str
    address: str
    colour: ColourShown | None
    words: str
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class SuspectsShown:
    """What does not teach: doubted by the fit, and set aside by somebody."""

    title: str
    hint: str
    doubted: tuple[SuspectShown, ...]
    aside: tuple[AsideShown, ...]


@dataclass(frozen=True, kw_only=True)
class OfferShown:
    """A lot that could teach."""

    number: str
    recipe_name: str
    base_name: str
    colour: ColourShown
    deed: UUID


@dataclass(frozen=True, kw_only=True)
class OfferedShown:
    """The lots on offer: the newest, the rest, and those that a meter read."""

    count: int
    title: str
    first: tuple[OfferShown, ...]
    rest: tuple[OfferShown, ...]
    by_meter: tuple[str, ...]
    deed: UUID


def fit_shown() -> FitShown:
    """Return where the palette stands; a fit that was left behind begins again."""
    take_up_left_behind()
    return shaped_fit(fit_status())


def shaped_fit(status: FitStatus) -> FitShown:
    """Return a status as a page shows it."""
    holds = status.holds
    running = status.running or (_BEGINNING if is_busy() else None)
    return FitShown(
        is_running=running is not None,
        stage="" if running is None else running.stage,
        percent=0 if running is None else round(100 * running.share),
        words=fit_words(status),
        at=None if holds is None else holds.at,
        fault=status.fault,
        is_stale=status.is_stale,
        is_other_light=holds is not None and holds.is_other_light,
        is_first=holds is None,
        meters=reverse("meters"),
    )


def shaped_suspects(found: Doubts, *, base_id: int | None = None) -> SuspectsShown:
    """Return doubts as a page shows them."""
    doubted = [x for x in found.doubted if base_id in {None, x.swatch.base_id}]
    aside = [x for x in found.aside if base_id in {None, x.base_id}]
    looks = "looks" if len(doubted) == 1 else "look"
    return SuspectsShown(
        title=f"{one_or_counted(len(doubted), 'swatch', 'swatches')} {looks} wrong",
        hint=_OTHER_LIGHT if found.is_other_light else "",
        doubted=tuple(map(_suspect, doubted)),
        aside=tuple(_aside(each, found) for each in aside),
    )


def shaped_offers(found: tuple[LotOnOffer, ...]) -> OfferedShown:
    """Return offers as a page shows them."""
    shown = tuple(map(_offer, found))
    by_meter = tuple(
        x.number for x in found if TEACHES_AS[x.read_by] is not Evidence.SCREEN
    )
    return OfferedShown(
        count=len(shown),
        title=f"{one_or_counted(len(shown), 'lot', 'lots')} could teach",
        first=shown[:_FIRST],
        rest=shown[_FIRST:],
        by_meter=by_meter if len(by_meter) > 1 else (),
        deed=uuid4(),
    )


def _offer(offer: LotOnOffer) -> OfferShown:
    colour = read_colour(
        offer.lab,
        offer.read_by,
        sd=offer.sd,
        repeat=offer.repeat,
        name=f"Lot {offer.number}",
    )
    return OfferShown(
        number=offer.number,
        recipe_name=offer.recipe_name,
        base_name=offer.base_name,
        colour=colour,
        deed=uuid4(),
    )


def _suspect(doubt: Doubt) -> SuspectShown:
    swatch = doubt.swatch
    return SuspectShown(
        swatch_id=swatch.id,
        label=_named(swatch),
        base_name=swatch.base_name,
        address=reverse("swatch", args=[swatch.id]),
        read_again=reverse("swatch-read", args=[swatch.id]),
        colour=_colour(swatch),
        why=why_doubted(doubt),
        deed=uuid4(),
    )


def _aside(swatch: SwatchNow, found: Doubts) -> AsideShown:
    return AsideShown(
        swatch_id=swatch.id,
        label=_named(swatch),
        base_name=swatch.base_name,
        address=reverse("swatch", args=[swatch.id]),
        colour=_colour(swatch),
        words=_aside_words(swatch, found.away.get(swatch.id)),
        deed=uuid4(),
    )


def _aside_words(swatch: SwatchNow, away: float | None) -> str:
    at = swatch.judged_at
    day = "" if at is None else f" {day_words(at)}"
    by = f" by {swatch.judged_by}" if swatch.judged_by else ""
    off = ""
    if away is not None:
        off = f" It is ΔE{NO_BREAK}{away:.1f} from what the others foretell."
    return f"Set aside{day}{by}.{off}"


def _named(swatch: SwatchNow) -> str:
    """Name what came out of a bath by its dyes too: a number alone tells nobody."""
    if swatch.label != swatch.bath_number:
        return swatch.label
    return f"{swatch.label}, {mix_words(swatch.doses)}"


def _colour(swatch: SwatchNow) -> ColourShown | None:
    if swatch.reading is None:
        return None
    return colour_of_reading(swatch.reading, name=swatch.label)
