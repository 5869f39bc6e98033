"""How far a lot lies from the usual, and what the palette says that its doses did."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import log
from statistics import median

from shadewright.core.colour import Lab, ciede2000, difference_words
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.quality.causes.usual import usual_of
from shadewright.workflows.judging.histories import History
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.predictions import is_known

LEAST_OFF = 0.02
"""A dose that is off by less than this share is none that went differently. [1]"""

_STEP = 1.05


@dataclass(frozen=True, kw_only=True)
class DoseOff:
    """A dye of which more or less went in than into the lots before.

    ``words`` and ``difference`` say what that does to the colour, by the palette;
    empty and None where it cannot say.
    """

    dye: str
    usual_percent: float
    given_percent: float
    words: str = ""
    difference: float | None = None


@dataclass(frozen=True, kw_only=True)
class Slopes:
    """What the palette foretells of a lot.

    ``step`` is what its doses moved against the usual ones, ``by_dye`` the shift in
    L, a, b that each dye gives for each unit of the logarithm of its strength.
    """

    step: tuple[float, float, float]
    by_dye: dict[str, tuple[float, float, float]]


def usual_colour(history: History) -> Lab | None:
    """Return the mean of the lots in control before the last one, if any was read."""
    colours = [x.past.colour for x in history.lots[:-1] if x.past.colour is not None]
    return Lab(*usual_of(colours).mean(colours)) if colours else None


def doses_off(history: History) -> tuple[DoseOff, ...]:
    """Return the dyes that went into the last lot otherwise, the most telling first."""
    usual = _usual_depths(history)
    given = {x.name: x.depth_percent for x in history.lots[-1].dyes}
    found = [
        DoseOff(dye=dye, usual_percent=usual[dye], given_percent=depth)
        for dye, depth in given.items()
        if depth is not None
        and usual.get(dye)
        and abs(depth / usual[dye] - 1.0) > LEAST_OFF
    ]
    told = list(_told(history, usual, found))
    return tuple(sorted(told, key=lambda each: -(each.difference or 0.0)))


def slopes_of(history: History) -> Slopes | None:
    """Return what each dye does to the last lot; None where the palette cannot say."""
    usual = _usual_depths(history)
    given = {x.name: x.depth_percent for x in history.lots[-1].dyes}
    known = {dye: depth for dye, depth in given.items() if depth}
    if len(known) < len(given) or set(usual) != set(known):
        return None
    more = [known | {dye: known[dye] * _STEP} for dye in known]
    labs = _labs(history.what.base_name, [usual, known, *more])
    if not labs:
        return None
    plain, now, *others = labs
    return Slopes(
        step=_less(now, plain),
        by_dye={
            dye: _scaled(_less(lab, now), 1.0 / log(_STEP))
            for dye, lab in zip(known, others, strict=True)
        },
    )


def _usual_depths(history: History) -> dict[str, float]:
    """Return the middle of what went into the lots before of like doses, by dye."""
    depths: dict[str, list[float]] = {}
    planned = history.lots[-1].planned
    for lot in (each for each in history.lots[:-1] if each.planned == planned):
        for dye in lot.dyes:
            if dye.depth_percent:
                depths.setdefault(dye.name, []).append(dye.depth_percent)
    return {dye: median(known) for dye, known in depths.items()}


def _told(
    history: History, usual: dict[str, float], found: Sequence[DoseOff]
) -> Iterator[DoseOff]:
    mixes = [usual | {each.dye: each.given_percent} for each in found]
    labs = _labs(history.what.base_name, [usual, *mixes]) if found else ()
    if not labs:
        yield from found
        return
    for each, lab in zip(found, labs[1:], strict=True):
        yield DoseOff(
            dye=each.dye,
            usual_percent=each.usual_percent,
            given_percent=each.given_percent,
            words=difference_words(labs[0], lab),
            difference=ciede2000(labs[0], lab),
        )


def _labs(base_name: str, mixes: Sequence[dict[str, float]]) -> tuple[Lab, ...]:
    """Return the colours of mixes by the palette; none where it lacks one of them."""
    wanted = [{dye: depth for dye, depth in mix.items() if depth} for mix in mixes]
    holds = palette_now()
    if holds is None or not all(is_known(base_name, mix, holds) for mix in wanted):
        return ()
    asked = [Mix(base=base_name, doses=tuple(mix.items())) for mix in wanted]
    told = told_mixes(asked, palette=holds.palette)
    return tuple(Lab(*map(float, lab)) for lab in told.lab)


def _less(one: Lab, two: Lab) -> tuple[float, float, float]:
    return (one.L - two.L, one.a - two.a, one.b - two.b)


def _scaled(
    vector: tuple[float, float, float], by: float
) -> tuple[float, float, float]:
    return (vector[0] * by, vector[1] * by, vector[2] * by)
