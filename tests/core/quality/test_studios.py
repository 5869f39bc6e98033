"""The true cause is named in invented studios of two laws; a bare list does worse."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from random import Random
from statistics import fmean, stdev

import pytest

from shadewright.core.quality import Drift, Factor, LotCauses, lot_causes
from shadewright.core.quality.causes.history import NAMES
from tests.core.quality.dyed_studios import dyed_studios
from tests.core.quality.made_studios import Law, Studio, studios

COUNT = 200
OTHERS = (
    Law(name="grey yarn", bare=(60.0, 1.0, 6.0), noise=0.3, turn=0.5),
    Law(name="long tails", has_long_tails=True, drift=0.05, turn=0.4),
    Law(name="jumps", jumps=True),
    Law(name="any factor", jumps=True, planted=tuple(Factor), turn=0.4),
)


@dataclass(frozen=True, kw_only=True)
class Told:
    """A studio and what was answered of it."""

    studio: Studio
    found: LotCauses

    @property
    def rank(self) -> int:
        """Place of the true cause, from 1; far back where it is not named."""
        named = [cause.factor for cause in self.found.causes]
        return named.index(self.studio.cause) + 1 if self.studio.cause in named else 99


@cache
def plain() -> list[Told]:
    """Return the studios that the goals are set for."""
    return told(studios(COUNT, Law()))


@cache
def dyed() -> list[Told]:
    """Return studios of the other law."""
    return told(dyed_studios(COUNT))


def told(made: Iterable[Studio]) -> list[Told]:
    return [Told(studio=each, found=lot_causes(each.lots)) for each in made]


def share(answers: list[Told], *, rank: int) -> float:
    """Return in how many the true cause is among the first."""
    return fmean(each.rank <= rank for each in answers)


def listed(studio: Studio, draws: Random) -> list[Factor]:
    """Return what differs in any order: new names, and numbers that stand out."""
    last, before = studio.lots[-1], studio.lots[:-1]
    found = []
    for factor in Factor:
        now = getattr(last, factor)
        past = [x for each in before if (x := getattr(each, factor)) is not None]
        if now is None or len(past) < 2:
            continue
        is_other = (
            now != past[-1]
            if factor in NAMES
            else abs(now - fmean(past)) > 2.0 * stdev(past)
        )
        found += [factor] * is_other
    return draws.sample(found, len(found))


def test_the_true_cause_is_named() -> None:
    """Asked are 60 and 75 %; who knows this law can reach 68 and 90 %."""
    assert share(plain(), rank=1) >= 0.63
    assert share(plain(), rank=2) >= 0.80


def test_a_list_of_what_differs_does_worse() -> None:
    draws = Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    lists = [listed(each.studio, draws) for each in plain()]
    pairs = list(zip(plain(), lists, strict=True))
    among_two = fmean(each.studio.cause in found[:2] for each, found in pairs)
    assert 0.5 < among_two < 0.65
    assert share(plain(), rank=2) > among_two + 0.15


def test_studios_with_nothing_wrong_are_left_in_peace() -> None:
    quiet = told(studios(COUNT, Law(), is_quiet=True))
    assert fmean(each.found.verdict is not Drift.DRIFTED for each in quiet) >= 0.92
    assert all(
        not each.found.causes for each in quiet if each.found.verdict != "drifted"
    )


@pytest.mark.parametrize("law", ["plain", "dyed"])
def test_scores_say_how_often_they_are_right(law: str) -> None:
    answers = plain() if law == "plain" else dyed()
    named = [
        (cause.score, cause.factor is each.studio.cause)
        for each in answers
        for cause in each.found.causes
    ]
    for least, most in ((0.4, 0.6), (0.6, 1.01)):
        some = [pair for pair in named if least <= pair[0] < most]
        assert len(some) >= 15
        said, hit = (fmean(column) for column in zip(*some, strict=True))
        assert abs(said - hit) <= 0.2


@pytest.mark.parametrize("law", OTHERS, ids=lambda law: law.name)
def test_it_holds_in_studios_that_it_was_not_made_for(law: Law) -> None:
    answers = told(studios(COUNT // 2, law))
    assert share(answers, rank=1) >= 0.40
    assert share(answers, rank=2) >= 0.65
    quiet = told(studios(COUNT // 2, law, is_quiet=True))
    assert fmean(not each.found.causes for each in quiet) >= 0.88


def test_it_holds_where_dyes_are_weaker_or_stronger() -> None:
    """The other law, in which nothing is a vector or a slope."""
    assert share(dyed(), rank=1) >= 0.50
    assert share(dyed(), rank=2) >= 0.75
    quiet = told(dyed_studios(COUNT // 2, is_quiet=True))
    assert fmean(not each.found.causes for each in quiet) >= 0.92


def test_a_name_that_did_it_before_is_found_out() -> None:
    law = Law(name="again", again=True, turn=0.4)
    assert share(told(studios(COUNT // 2, law)), rank=1) >= 0.65
