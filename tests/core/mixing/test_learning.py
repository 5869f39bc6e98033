"""What is learned in worlds whose truth is known, and the swatch that lies."""

from dataclasses import replace

import numpy as np
import pytest

from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing import (
    Evidence,
    Learned,
    Mix,
    Palette,
    Part,
    Reading,
    Stage,
    Swatch,
    learn,
    learning,
    told_mixes,
)
from shadewright.core.mixing.arranging import dyed_of
from shadewright.core.mixing.posterior.predicting import foretold
from shadewright.core.mixing.swatches import DOSE_ERROR, seen_of
from shadewright.errors import MissingError
from tests.core.mixing.worlds import (
    LAWS,
    Floats,
    Lab,
    World,
    doses_of,
    ladder,
    ternaries,
    world,
)

DYES = 6


def _held_out(
    truth: World, palette: Palette, draws: np.random.Generator
) -> tuple[float, float]:
    """Return the mean error of held-out mixes and how often the bound held."""
    depths = ternaries(draws, truth.dyes, 40)
    mixes = [Mix(base="wool", doses=doses_of(row), session="day") for row in depths]
    told = told_mixes(mixes, palette=palette)
    off = ciede2000_arrays(told.lab, truth.lab(depths))
    return float(off.mean()), float((off <= told.de_90).mean())


def over_worlds(
    evidence: Evidence,
    noise: float,
    depths: tuple[float, ...] = (0.1, 0.3, 1.0, 2.5),
    mixes: int = 0,
) -> tuple[float, float]:
    """Return mean error and coverage over three laws and three surfaces."""
    found = []
    for seed, (law, surface) in enumerate(
        zip(LAWS, (0.0, 0.005, 0.012), strict=True), start=11
    ):
        truth = world(seed, law, surface, dyes=DYES)
        bench = Lab(truth, np.random.default_rng(seed))
        swatches = bench.read(ladder(DYES, depths), evidence, noise, session="day")
        if mixes:
            more = ternaries(bench.draws, DYES, mixes)
            swatches += bench.read(more, evidence, 0.5, session="day")
        found.append(_held_out(truth, learn(swatches).palette, bench.draws))
    error, held = np.array(found).mean(0)
    return float(error), float(held)


@pytest.mark.parametrize(
    ("evidence", "noise", "depths", "mixes", "most"),
    [
        (Evidence.SPECTRUM, 0.1, (0.1, 0.3, 1.0, 2.5), 0, 0.25),
        (Evidence.LAB, 0.3, (0.1, 0.3, 1.0, 2.5), 0, 0.75),
        (Evidence.THREE_LIGHTS, 0.3, (0.1, 0.3, 1.0, 2.5), 0, 0.35),
        (Evidence.LAB, 2.0, (0.1, 0.3, 1.0, 2.5), 0, 1.6),
        (Evidence.LAB, 0.3, (1.0,), 0, 2.8),
        (Evidence.LAB, 0.3, (1.0,), 20, 0.5),
    ],
)
def test_mixes_are_foretold(
    evidence: Evidence,
    noise: float,
    depths: tuple[float, ...],
    mixes: int,
    most: float,
) -> None:
    error, held = over_worlds(evidence, noise, depths, mixes)
    assert error <= most
    assert held >= 0.8  # three worlds are few; bench/ asks many


@pytest.mark.parametrize(
    ("evidence", "noise", "factor"),
    [
        (Evidence.LAB, 0.3, 3.0),
        (Evidence.SPECTRUM, 0.1, 3.0),
        (Evidence.SPECTRUM, 0.1, 0.4),
    ],
)
@pytest.mark.parametrize(
    "place", [5, 15]
)  # the palest of one dye, a deeper one of another
def test_a_wrong_dose_is_the_first_suspect(
    evidence: Evidence, noise: float, factor: float, place: int
) -> None:
    bench = Lab(world(21, "flags", 0.006, dyes=DYES), np.random.default_rng(3))
    swatches = bench.read(ladder(DYES), evidence, noise)
    (dye, depth) = swatches[place].doses[0]
    swatches[place] = replace(swatches[place], doses=((dye, depth * factor),))
    found = learn(swatches)
    assert [each.swatch.number for each in found.suspects] == [place + 1]
    assert len(found.used) == len(swatches) - 1
    seen = np.log(found.suspects[0].dosed) / -np.log(factor)
    assert 0.45 < seen < 1.2  # part of it may also be how a dye flags


@pytest.mark.parametrize("seed", [5, 13])
def test_what_a_wrong_spectrum_dragged_along_is_put_back(seed: int) -> None:
    """Of two dyes mixed up the ladder of the one, read as Lab, stays as it is."""
    bench = Lab(world(seed, "flags", 0.006, dyes=DYES), np.random.default_rng(3))
    swatches = bench.read(ladder(DYES), Evidence.LAB, 0.3)
    (other,) = bench.read(0.5 * np.eye(DYES)[4:5], Evidence.SPECTRUM, 0.1)
    wrong = replace(other, number=99, doses=(("d02", 0.5),))
    found = learn([*swatches, wrong])
    assert [each.swatch.number for each in found.suspects] == [99]
    assert len(found.used) == len(swatches)


def test_swapped_tags_are_both_named_and_an_honest_table_is_left_alone() -> None:
    bench = Lab(world(8, "power", 0.004, dyes=4), np.random.default_rng(3))
    swatches = bench.read(ladder(4), Evidence.THREE_LIGHTS, 0.3)
    assert not learn(swatches).suspects
    one, other = swatches[6], swatches[15]
    swatches[6] = replace(one, reading=other.reading)
    swatches[15] = replace(other, reading=one.reading)
    named = {each.swatch.number for each in learn(swatches).suspects}
    assert named == {7, 16}


def days_of(spread: float) -> list[Swatch]:
    """Return a ladder and mixes of two more days, every dye off by a factor a day."""
    truth = world(9, "flags", 0.004, dyes=4)
    draws = np.random.default_rng(8)
    found = Lab(truth, draws).read(ladder(4), Evidence.SPECTRUM, 0.1, session="1")
    for day in ("2", "3"):
        factors = np.exp(spread * draws.standard_normal(4))
        off = replace(truth, gains=truth.gains * factors)
        mixes = ternaries(draws, 4, 6)
        found += Lab(off, draws).read(mixes, Evidence.SPECTRUM, 0.1, session=day)
    return found


def test_days_say_how_far_they_differ() -> None:
    steady, wild = (learn(days_of(spread)).palette.known for spread in (0.02, 0.25))
    assert steady.sizes.session < 0.08
    assert wild.sizes.session > 0.13


def test_what_is_owed_to_a_day_is_never_narrowed() -> None:
    """At κ = 0 a known day has hardly a spread; a new one has its factor twice over.

    The dyes are known through a day that had a factor of its own, and the new day has
    another: σ² + σ² at the most, each along g = dy / d ln c.
    """
    palette = learn(days_of(0.1)[:17]).palette
    seen = seen_of(Evidence.LAB)
    mixes = [
        Mix(base="wool", doses=(("d01", 0.4),), session=day) for day in ("1", "new")
    ]
    told = foretold(dyed_of(mixes, palette.names), palette.known, seen, width=0.0)
    known, new = (np.trace(each) for each in told.covariance)
    day = palette.known.sizes.session
    step = foretold(
        dyed_of(mixes, palette.names), palette.known, seen, width=0.0, dose_error=day
    )
    once = np.trace(step.covariance[0] - told.covariance[0])  # σ² |g|²
    assert known < 0.1 * once
    assert 1.7 * once < new < 2.05 * once


def test_the_same_swatches_give_the_same_palette_to_the_last_bit() -> None:
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    swatches = bench.read(ladder(3), Evidence.LAB, 0.3)
    first, second = (learn(swatches).palette.known for _ in range(2))
    assert first.parameters.tobytes() == second.parameters.tobytes()


@pytest.mark.parametrize("session", ["", "day"])
def test_little_is_enough_to_begin_with(session: str) -> None:
    """Mixes alone, one dye alone, one swatch alone, one hex alone; no bare yarn."""
    truth = world(5, "power", 0.004, dyes=3)
    bench = Lab(truth, np.random.default_rng(2))
    ladders = bench.read(ladder(3), Evidence.LAB, 0.3, session=session)
    mixes = bench.read(ternaries(bench.draws, 3, 6), Evidence.LAB, 0.3)
    (one,) = ladders[3:4]
    chart = replace(one.reading, evidence=Evidence.SCREEN, sd=None)
    widths = []
    for swatches in (mixes, ladders[1:5], [one], [replace(one, reading=chart)]):
        palette = learn(swatches).palette
        told = told_mixes([Mix(base="wool", doses=(("d00", 0.4),))], palette=palette)
        true = truth.lab(np.array([[0.4, 0.0, 0.0]]))
        assert ciede2000_arrays(told.lab, true)[0] < 1.5 * told.de_90[0]
        widths.append(float(told.de_90[0]))
    assert widths[1] < widths[2] < widths[3]


def test_colours_that_err_alike_narrow_nothing() -> None:
    """A meter said to be less sure than it is: κ falls, unless they were carried."""
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    swatches = bench.read(ladder(3), Evidence.LAB, 0.3)
    doubted = [
        replace(each, reading=replace(each.reading, sd=1.5)) for each in swatches
    ]
    carried = [
        replace(each, reading=replace(each.reading, is_carried=True))
        for each in doubted
    ]
    narrow, wide = (learn(each).palette.width for each in (doubted, carried))
    assert narrow < 0.8
    assert 0.95 < wide <= 1.0


def test_bare_yarn_alone_teaches_no_dye() -> None:
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    with pytest.raises(MissingError, match="dyed swatch"):
        learn(bench.read(np.zeros((2, 3)), Evidence.LAB, 0.3))


def test_a_swatch_that_was_measured_badly_pulls_less() -> None:
    """One swatch is half as deep as its label says; told so, the fit moves less."""
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    swatches = bench.read(ladder(3, depths=(0.3, 1.0)), Evidence.LAB, 0.3)
    ((dye, depth),) = swatches[2].doses
    wrong = replace(swatches[2], doses=((dye, 2.0 * depth),))
    mix = Mix(base="wool", doses=((dye, depth),))

    def told(taught: list[Swatch]) -> Floats:
        trusted = {each.number for each in taught}
        palette = learn(taught, trusted=trusted).palette
        found: Floats = told_mixes([mix], palette=palette).lab[0]
        return found

    honest = told(swatches)
    sure = told([*swatches[:2], wrong, *swatches[3:]])
    doubted = told([*swatches[:2], replace(wrong, dose_error=0.5), *swatches[3:]])
    assert np.linalg.norm(sure - honest) > 2.0
    assert np.linalg.norm(doubted - honest) < 0.5 * np.linalg.norm(sure - honest)


def test_doses_known_as_well_as_usual_change_nothing() -> None:
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    swatches = bench.read(ladder(3), Evidence.LAB, 0.3)
    said = [replace(each, dose_error=DOSE_ERROR) for each in swatches]
    first, second = (learn(each).palette.known for each in (swatches, said))
    assert first.parameters.tobytes() == second.parameters.tobytes()


def test_each_stage_is_told_before_it_begins() -> None:
    """A wrong swatch costs one more turn; the light comes last."""
    bench = Lab(world(5, "power", 0.004, dyes=3), np.random.default_rng(2))
    swatches = bench.read(ladder(3), Evidence.LAB, 0.3)
    ((dye, depth),) = swatches[3].doses
    swatches[3] = replace(swatches[3], doses=((dye, 3.0 * depth),))
    *stages, learned = learning(swatches)
    told = [(each.part, each.turn) for each in stages if isinstance(each, Stage)]
    by_turns = [(part, turn) for turn in (1, 2) for part in (Part.FIT, Part.DOUBT)]
    assert told == [*by_turns, (Part.LIGHT, 2)]
    assert isinstance(learned, Learned)


def test_a_dye_of_one_swatch_is_foretold_by_no_other() -> None:
    """Its prior comes from that very swatch: leaving it out would prove nothing."""
    bare = Swatch(number=1, base="wool", doses=(), reading=meter(91.0, -0.5, 9.0))
    gold = [
        Swatch(number=n, base="wool", doses=(("Gorse", depth),), reading=meter(*seen))
        for n, depth, seen in (
            (2, 0.3, (83.0, 1.0, 45.0)),
            (3, 1.0, (76.0, 6.0, 62.0)),
        )
    ]
    sole = Swatch(
        number=4, base="wool", doses=(("Sloe", 1.0),), reading=meter(38.0, 4.0, -32.0)
    )
    learned = learn([bare, *gold, sole])
    assert [number for number, _de in learned.left_out] == [1, 2, 3]
    assert [de for _number, de in learned.left_out] == list(learned.palette.left_out)


def meter(*values: float) -> Reading:
    """Return what a meter read."""
    return Reading(evidence=Evidence.LAB, values=values)
