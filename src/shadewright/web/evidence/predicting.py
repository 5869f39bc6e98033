"""Predictions beside what came out."""

from collections.abc import Iterator

from django.http import HttpRequest, HttpResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from shadewright.core.colour import difference_words
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.colours import colour_of_reading, foretold_colour
from shadewright.web.evidence.pages import OutcomeShown, PredictionsPage
from shadewright.web.evidence.standing import shaped_behind
from shadewright.web.evidence.words import one_or_counted
from shadewright.web.pages import Link, show
from shadewright.web.parts import Chip
from shadewright.workflows.recipe_words import mix_words
from shadewright.workflows.shades.outcomes import (
    PROMISED,
    Counts,
    HitRate,
    Outcome,
    hit_rate,
    outcomes,
)

_FEW = 10
"""Under so many predictions a count says nothing yet (our choice)."""


@require_safe
def predictions(request: HttpRequest) -> HttpResponse:
    """Show what was foretold beside what came out, and how often it held."""
    found = outcomes()
    page = PredictionsPage(
        title="Foretold, and what came out",
        fact="A prediction is kept when a bath is planned. Its bound is for the doses "
        "as planned.",
        crumbs=(
            Link(words="Shades", address=reverse("palette-home")),
            Link(words="Fits of the palette", address=reverse("fits")),
        ),
        rate=rate_words(hit_rate(found)),
        rows=tuple(_shown(x) for x in found if x.counts is not Counts.WAITS),
        waiting=tuple(_shown(x) for x in found if x.counts is Counts.WAITS),
    )
    return show(request, page)


def rate_words(rate: HitRate | None) -> tuple[str, ...]:
    """Say how often the bound held, and what that is worth."""
    if rate is None:
        return ()
    percent = f"{100 * PROMISED:.0f}{NO_BREAK}%"
    number = one_or_counted(rate.counted, "prediction", "predictions").lower()
    said = [
        f"Of {number} at {percent}, {rate.held} held.",
        _verdict(rate),
        f"Half of them came out within ΔE{NO_BREAK}{rate.median:.1f}.",
    ]
    if rate.mixes < rate.counted:
        mixes = one_or_counted(rate.mixes, "mix", "mixes").lower()
        said.append(
            f"They are of {mixes}: lots of one recipe hold or miss together, so the "
            "count swings more than by chance."
        )
    if rate.poor:
        said.append(
            f"Read roughly, on a screen or off a photo: {rate.poor} of these "
            f"{rate.counted}. They are no measure of the spreads."
        )
    return tuple(said)


def _verdict(rate: HitRate) -> str:
    well, held = rate.counted - rate.poor, rate.held - rate.poor_held
    if well < _FEW:
        return "That is too few to judge by."
    read = f"Of the {well} that a meter read, {held} held. " if rate.poor else ""
    usual = f"an honest spread would hold {rate.fewest} to {rate.most} of them"
    if held < rate.fewest:
        said = f"That is fewer than it should be: {usual}. Take the spreads for wider."
    elif held > rate.most:
        said = f"That is more than it need be: {usual}. The spreads are wide."
    else:
        said = f"That is as it should be: {usual}."
    return read + said


def _shown(each: Outcome) -> OutcomeShown:
    read = each.reading
    return OutcomeShown(
        label=each.label,
        address=reverse("lot" if each.is_lot else "bath", args=[each.bath_number]),
        mix=mix_words(each.doses),
        base_name=each.base_name,
        foretold=foretold_colour(
            each.foretold,
            expected=each.expected,
            within_90=each.within_90,
            evidence=each.evidence,
            name="Foretold",
        ),
        read=None if read is None else colour_of_reading(read, name="Came out"),
        behind=shaped_behind(each.behind),
        state=_state(each),
        words=tuple(_words(each)),
    )


def _state(each: Outcome) -> Chip:
    if each.counts is Counts.WAITS:
        return Chip(words="not read yet")
    if each.counts in {Counts.KNEW, Counts.OTHERWISE}:
        return Chip(words="not counted")
    if each.is_held:
        return Chip(words="held", kind="good")
    return Chip(words="missed", kind="caution")


def _words(each: Outcome) -> Iterator[str]:
    bound = f"{each.within_90:.1f}"
    if each.apart is None or each.reading is None:
        yield f"Within ΔE{NO_BREAK}{bound}, nine times in ten"
    else:
        how = difference_words(each.foretold, each.reading.lab)
        yield f"Off by ΔE{NO_BREAK}{each.apart:.1f}, bound {bound}: {how}"
    if each.counts is Counts.KNEW:
        yield "The fit knew this swatch already"
    if each.otherwise:
        yield f"Not dosed as planned: {', '.join(each.otherwise)}"
    if each.is_poor:
        yield "Read roughly"
