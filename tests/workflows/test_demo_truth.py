"""The demo's truth: plausible colours, and a palette that foretells them honestly."""

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from itertools import pairwise, starmap
from random import Random

import pytest

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.mixing import (
    Evidence,
    Learned,
    Mix,
    Reading,
    Swatch,
    Told,
    learn,
    told_mixes,
)
from shadewright.exchange.colour_text import measured_lab, typed_colour
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.demo.absorption import DYES, YARNS
from shadewright.workflows.demo.dyes import DYES as IN_JARS
from shadewright.workflows.demo.swatch_book import (
    SUPERWASH,
    WET,
    WRONG_DOSE,
    InBook,
    Seen,
    chance_of,
    dyed,
    seen_of,
    swatch_book,
)
from shadewright.workflows.demo.truth import colour, metered, reflectance
from shadewright.workflows.shades.kinds import SPREADS

CHART_PERCENT = {"Coal": 2.5, "Peat": 1.5}
DRAWS = 600


@cache
def learned() -> Learned:
    book = [one for one in enumerate(swatch_book(), start=1) if not one[1].is_wet]
    return learn(list(starmap(taught, book)))


def taught(place: int, each: InBook) -> Swatch:
    read_by = each.again_by or each.read_by
    return Swatch(
        number=place,
        base=each.yarn,
        doses=each.doses,
        reading=reading(read_by, seen_of(each, place, read_by)),
        session=str(each.dyed_ago),
    )


def reading(read_by: ReadBy, seen: Seen) -> Reading:
    if seen.spectrum:
        return Reading(evidence=Evidence.SPECTRUM, values=seen.spectrum)
    count = len(seen.labs)
    mean = tuple(sum(parts) / count for parts in zip(*seen.labs, strict=True))
    kind = Evidence.LAB if read_by is ReadBy.METER else Evidence.SCREEN
    return Reading(evidence=kind, values=mean, repeat=count, sd=SPREADS[read_by])


def test_twelve_dyes_look_like_their_names() -> None:
    """At the depth of its chart each is near the patch of its chart."""
    charts = {dye.name: dye.chart_hex for dye in IN_JARS}
    assert len(DYES) == 12
    for name in DYES:
        there = colour(reflectance(SUPERWASH, {name: CHART_PERCENT.get(name, 1.0)}))
        patch = Lab(*measured_lab(typed_colour(charts[name])))
        assert ciede2000(there, patch) < 2.0, name


@pytest.mark.parametrize("yarn", list(YARNS))
@pytest.mark.parametrize("dye", list(DYES))
def test_more_dye_is_darker_by_less_and_less(yarn: str, dye: str) -> None:
    """The bath leaves more behind the deeper it is; and yarn shines."""
    ladder = [reflectance(yarn, {dye: 0.02 * 2**step}) for step in range(9)]
    sums = [sum(each) for each in ladder]
    falls = [one - other for one, other in pairwise(sums)]
    assert all(fall > 0.0 for fall in falls)
    assert min(min(each) for each in ladder) > YARNS[yarn].shine


def test_no_dye_is_the_bare_yarn() -> None:
    """The two terms of the surface are undone as they are done."""
    for name, yarn in YARNS.items():
        assert reflectance(name, {}) == pytest.approx(yarn.reflects(), abs=1e-12)


def test_a_meter_reads_beside_the_colour_by_little() -> None:
    """By hand: each part of Lab has √(0.17² + 0.12²) = 0.21 about the truth."""
    spectrum = reflectance(SUPERWASH, {"Kelp": 0.5})
    chance, true = chance_of("a meter"), colour(spectrum)
    off = [metered(spectrum, chance)[0][0] - true[0] for _time in range(2000)]
    assert sum(off) / len(off) == pytest.approx(0.0, abs=0.02)
    assert sum(x * x for x in off) / len(off) == pytest.approx(0.0433, rel=0.1)


def test_the_wrong_dose_is_the_suspect() -> None:
    """It alone is named, with the factor by which the dose was really off."""
    (suspect,) = learned().suspects
    assert (suspect.swatch.base, suspect.swatch.doses) == WRONG_DOSE
    assert suspect.dosed == pytest.approx(3.0, rel=0.1)
    assert not learned().is_other_light


def test_the_book_has_what_the_demo_tells_of() -> None:
    """Two yarns, a wet swatch, colours off a screen, spectra."""
    book = swatch_book()
    assert {(each.yarn, each.doses) for each in book if each.is_wet} == {WET}
    assert {each.again_by or each.read_by for each in book} == {
        ReadBy.EYE,
        ReadBy.METER,
        ReadBy.SPECTRUM,
    }
    assert learned().palette.names.dyes == tuple(sorted(DYES))
    assert set(learned().palette.names.bases) == set(YARNS)


def test_mixes_come_out_within_the_spread_as_often_as_is_said() -> None:
    """New mixes on new days, dosed 2 % off: some nine in ten within the 90 % spread."""
    palette, chance = learned().palette, chance_of("new mixes")
    mixes = [drawn(chance, list(DYES), list(YARNS)) for _time in range(DRAWS)]
    told = told_mixes(mixes, palette=palette, dose_error=0.02)
    assert 0.80 <= came_out(mixes, told, chance) <= 0.98


def test_from_colours_off_a_screen_the_spread_is_wide_and_honest() -> None:
    """Six dyes, one swatch each, picked by eye: nine in ten still about nine in ten."""
    found = [held_from_a_screen(world) for world in range(8)]
    assert 0.84 <= sum(held for held, _most in found) / len(found) <= 0.97
    assert min(most for _held, most in found) > 4.0


def held_from_a_screen(world: int) -> tuple[float, float]:
    """Return the share of forty mixes that held, and their mean spread."""
    chance = chance_of(f"screen {world}")
    dyes = chance.sample(list(DYES), 6)
    book = [InBook(yarn=SUPERWASH, doses=((x, 0.8),), dyed_ago=5000) for x in dyes]
    bare = InBook(yarn=SUPERWASH, doses=(), dyed_ago=5000)
    by_eye = [replace(each, read_by=ReadBy.EYE) for each in (bare, *book)]
    palette = learn([
        taught(1000 * world + at, x) for at, x in enumerate(by_eye)
    ]).palette
    mixes = [drawn(chance, dyes, [SUPERWASH]) for _time in range(40)]
    told = told_mixes(mixes, palette=palette, dose_error=0.02)
    return came_out(mixes, told, chance), float(told.de_90.mean())


def came_out(mixes: Sequence[Mix], told: Told, chance: Random) -> float:
    """Dye mixes, each on a day of its own; return how many kept to their spread."""
    held = 0
    rows = zip(mixes, told.lab, told.de_90, strict=True)
    for place, (mix, lab, most) in enumerate(rows):
        there = dyed(mix.base, mix.doses, days_ago=1000 + place, chance=chance)
        held += ciede2000(Lab(*map(float, lab)), colour(there)) <= most
    return held / len(mixes)


def drawn(chance: Random, among: Sequence[str], yarns: Sequence[str]) -> Mix:
    dyes = chance.sample(list(among), chance.randint(1, 3))
    doses = tuple((dye, round(0.08 * 15 ** chance.random(), 2)) for dye in dyes)
    return Mix(base=chance.choice(list(yarns)), doses=doses)
