"""A strip is what the palette says of one dye, and its word keeps to stated limits."""

from dataclasses import replace

import numpy as np
import pytest

from shadewright.core.mixing import Evidence, Mix, learn, told_mixes
from shadewright.core.mixing.strips import Strip, strips
from shadewright.errors import NotFoundError
from tests.core.mixing.worlds import Lab, ladder, world


@pytest.fixture(scope="module")
def found() -> tuple[Strip, ...]:
    """Strips of three dyes: two with ladders, one seen once on a screen."""
    bench = Lab(world(4, "flags", 0.004, dyes=3), np.random.default_rng(2))
    rows = [row for row in ladder(3) if not row[2]]
    guessed = bench.read(np.array([[0.0, 0.0, 1.0]]), Evidence.SCREEN, 6.0)
    known = bench.read(np.array(rows), Evidence.LAB, 0.3)
    palette = learn([*known, *guessed]).palette
    made = strips(palette, base="wool")
    told = told_mixes(
        [Mix(base="wool", doses=((made[1].dye, made[1].depths_percent[9]),))],
        palette=palette,
    )
    np.testing.assert_allclose(made[1].labs[9], told.lab[0])
    assert made[1].within_90[9] == pytest.approx(told.de_90[0])
    with pytest.raises(NotFoundError):
        strips(palette, base="nettle")
    return made


def test_a_strip_goes_from_pale_to_deep(found: tuple[Strip, ...]) -> None:
    for strip in found:
        assert strip.depths_percent[0] == pytest.approx(0.03)
        assert strip.depths_percent[-1] == pytest.approx(4.0)
        ratios = np.diff(np.log(strip.depths_percent))
        assert ratios.max() - ratios.min() < 1e-9
        assert list(np.diff([lab.L for lab in strip.labs]) < 0).count(False) == 0


def test_a_guess_is_wide_and_a_ladder_is_sure(found: tuple[Strip, ...]) -> None:
    assert [str(strip.sureness) for strip in found] == ["sure", "sure", "wide"]
    for strip in found:
        usual = [
            off
            for depth, off in zip(strip.depths_percent, strip.within_90, strict=True)
            if 0.1 <= depth <= 2.0
        ]
        assert min(usual) <= strip.usual_90 <= max(usual)


@pytest.mark.parametrize(
    ("usual_90", "word"),
    [(2.04, "sure"), (2.06, "fair"), (4.04, "fair"), (4.06, "wide")],
)
def test_the_word_keeps_to_its_limits(
    found: tuple[Strip, ...], usual_90: float, word: str
) -> None:
    assert str(replace(found[0], usual_90=usual_90).sureness) == word
