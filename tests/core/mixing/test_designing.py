"""The next swatch takes off what it says it takes off."""

import numpy as np

from shadewright.core.mixing import Evidence, learn
from shadewright.core.mixing.arranging import dyed_of
from shadewright.core.mixing.designing import Reading, next_swatches
from shadewright.core.mixing.swatches import Mix, seen_of
from tests.core.mixing.worlds import Lab, doses_of, ladder, ternaries, world


def test_gains_fall_and_no_candidate_is_worth_more_than_the_first() -> None:
    bench = Lab(world(6, "power", 0.004, dyes=5), np.random.default_rng(1))
    palette = learn(bench.read(ladder(5, (1.0,)), Evidence.LAB, 0.3)).palette
    draws = np.random.default_rng(3)

    def mixes(rows: np.ndarray) -> list[Mix]:
        return [Mix(base="wool", doses=doses_of(row)) for row in rows]

    candidates = dyed_of(mixes(ternaries(draws, 5, 40)), palette.names)
    targets = dyed_of(mixes(ternaries(draws, 5, 20)), palette.names)
    reading = Reading(seen=seen_of(Evidence.LAB), noise=0.17, dose_error=0.02)
    metric = np.broadcast_to(np.eye(3), (20, 3, 3))
    picks = next_swatches(candidates, targets, metric, palette.known, reading, count=6)
    gains = [pick.before - pick.after for pick in picks]
    assert all(gain > 0 for gain in gains)
    assert gains[0] == max(gains)
    assert [pick.after for pick in picks[:-1]] == [pick.before for pick in picks[1:]]
    assert picks[-1].after < 0.5 * picks[0].before
    assert len({pick.candidate for pick in picks}) >= 5
