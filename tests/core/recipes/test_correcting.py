"""Corrections of invented baths whose truth is known."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

import numpy as np
import pytest

from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.differences.ciede2000 import ciede2000
from shadewright.core.recipes import Correction, Wishes, correction
from shadewright.errors import MissingError, NotFoundError
from tests.core.mixing.worlds import LAWS, Floats, ternaries
from tests.core.recipes.palettes import lab, named, palette, truth


@dataclass(frozen=True)
class Missed:
    """A bath: what was meant, how strong each dye came out, what was wanted."""

    law: str
    said: Floats
    strength: Floats
    target: Lab

    def colour(self, more: Floats) -> Lab:
        """Return the true colour with so much more of each dye."""
        depths = (self.said + more) * self.strength
        return lab(truth(self.law).lab(depths[None])[0])

    def corrected(self, noise: Floats) -> Correction:
        """Return what is advised."""
        return correction(
            palette(self.law),
            base="wool",
            doses=named(self.said),
            measured=Lab(*(np.array(self.colour(np.zeros(7))) + noise).tolist()),
            target=self.target,
        )


def baths(kind: str) -> Iterator[tuple[Missed, Floats]]:
    """Return baths that came out weak, or whose target lies deeper."""
    draws = np.random.default_rng(6)
    for law in LAWS:
        for said in ternaries(draws, 7, 5):
            strength, wanted = np.exp(0.02 * draws.standard_normal(7)), said.copy()
            if kind == "weak":
                strength *= draws.uniform(0.6, 0.95, 7)
            else:
                wanted *= draws.uniform(1.1, 1.6, 7)
            target = lab(truth(law).lab(wanted[None])[0])
            yield Missed(law, said, strength, target), draws.normal(0, 0.17, 3)


@pytest.mark.parametrize("kind", ["weak", "deeper"])
def test_one_correction_takes_most_of_the_error_away(kind: str) -> None:
    removed = []
    for missed, noise in baths(kind):
        found = missed.corrected(noise)
        more = np.zeros(7)
        for dye, depth in found.additions:
            more[int(dye[1:])] = depth
        before = ciede2000(missed.target, missed.colour(np.zeros(7)))
        removed.append(1 - ciede2000(missed.target, missed.colour(more)) / before)
    assert np.mean(removed) >= 0.65


def test_the_baths_own_dyes_come_first() -> None:
    for missed, noise in islice(baths("deeper"), 5):
        found = missed.corrected(noise)
        assert {dye for dye, _depth in found.additions} <= {*dict(named(missed.said))}
        assert found.is_reachable
        assert 0.7 <= found.share <= 0.8
        assert all(depth > 0 for _dye, depth in found.additions)


def test_another_dye_comes_only_where_it_is_needed() -> None:
    (missed, _noise), *_rest = baths("deeper")
    more = np.zeros(7)
    others = [d for d in range(7) if not missed.said[d]]
    more[others[0]] = 0.4
    wanted = Missed(missed.law, missed.said, missed.strength, missed.colour(more))
    found = wanted.corrected(np.zeros(3))
    assert len({*dict(found.additions)} - {*dict(named(missed.said))}) == 1
    assert found.de_after < 1.0


def test_what_is_too_deep_already_cannot_be_reached() -> None:
    doses = (("d00", 0.8), ("d03", 0.6))
    found = correction(
        palette(),
        base="wool",
        doses=doses,
        measured=Lab(35, 20, 10),
        target=Lab(70, 20, 10),
    )
    assert not found.is_reachable
    assert found.additions == ()
    assert found.de_after == found.de_before
    assert found.words.startswith("very much darker")


def test_a_bath_on_its_target_needs_nothing() -> None:
    found = correction(
        palette(),
        base="wool",
        doses=(("d00", 0.8),),
        measured=Lab(40, 20, 10),
        target=Lab(40, 20, 10),
    )
    assert found.additions == ()
    assert found.de_before == found.de_after == 0.0


def test_dyes_left_out_are_not_added() -> None:
    (missed, noise), *_rest = baths("deeper")
    dyes = tuple(dict(named(missed.said)))
    found = correction(
        palette(missed.law),
        base="wool",
        doses=named(missed.said),
        measured=Lab(*(np.array(missed.colour(np.zeros(7))) + noise).tolist()),
        target=missed.target,
        wishes=Wishes(unwanted=dyes[:1]),
    )
    assert dyes[0] not in dict(found.additions)


def test_what_cannot_be_corrected_is_told() -> None:
    grey = Lab(50, 0, 0)
    with pytest.raises(MissingError, match="Dose is missing"):
        correction(palette(), base="wool", doses=(), measured=grey, target=grey)
    with pytest.raises(NotFoundError, match="no dye"):
        correction(
            palette(), base="wool", doses=(("Kelp", 1.0),), measured=grey, target=grey
        )
