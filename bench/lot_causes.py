"""How often the true cause of an off lot is named, in invented studios of many laws.

Run with the project's own Python: ``.venv/bin/python bench/lot_causes.py [STUDIOS]``.
Of each law so many studios have one planted cause and as many have none. The baseline
is a list of what differs from the lots before, in any order: new names, and numbers
that stand out. Goals are set for the plain law; the others show what it is worth where
it was not made for. The exit status tells whether a goal is missed.
"""

import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from random import Random
from statistics import fmean
from time import process_time

sys.path.insert(0, str(Path(__file__).parents[1]))

from shadewright.core.quality import Factor, LotCauses, lot_causes
from tests.core.quality.dyed_studios import dyed_studios
from tests.core.quality.made_studios import Law, Studio, studios
from tests.core.quality.test_studios import listed

STUDIOS = 1000
FIRST, AMONG_TWO, QUIET, CALIBRATED = 0.60, 0.75, 0.92, 0.2
NUMBERS = (Factor.BOTTLE_AGE, Factor.LOAD, Factor.HOLD)
LAWS = (
    Law(),
    Law(name="noise of 0.4", noise=0.4, turn=0.4),
    Law(name="grey yarn, noise of 0.3", bare=(60.0, 1.0, 6.0), noise=0.3, turn=0.5),
    Law(name="long tails and drift", has_long_tails=True, drift=0.05, turn=0.4),
    Law(name="numbers jump", jumps=True),
    Law(name="numbers only", planted=NUMBERS),
    Law(name="any factor", jumps=True, planted=tuple(Factor), turn=0.4),
    Law(name="anything may distract", jumps=True, decoys=tuple(Factor)),
    Law(name="did it once before", again=True, turn=0.4),
    Law(
        name="two columns never filled in",
        silent=(Factor.WATER, Factor.PERSON),
        planted=tuple(Factor),
        turn=0.4,
    ),
    Law(
        name="always what nobody wrote",
        planted=(Factor.WATER,),
        silent=(Factor.WATER,),
        turn=0.4,
    ),
)


@dataclass(frozen=True, kw_only=True)
class Told:
    """A studio, what was answered, and the baseline's list."""

    studio: Studio
    found: LotCauses
    listed: list[Factor]

    def is_among(self, first: int) -> bool:
        """Whether the true cause is among the first that are named."""
        named = [cause.factor for cause in self.found.causes[:first]]
        return self.studio.cause in named


def told(made: Iterable[Studio]) -> list[Told]:
    """Answer of every studio."""
    draws = Random(1)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    return [
        Told(studio=x, found=lot_causes(x.lots), listed=listed(x, draws)) for x in made
    ]


def shares(answers: list[Told]) -> str:
    """Return how often the cause is first, among two, and so for the baseline."""
    first, two = (fmean(each.is_among(n) for each in answers) for n in (1, 2))
    bare = fmean(each.studio.cause in each.listed[:2] for each in answers)
    return f"{first:6.1%} {two:6.1%} / {bare:6.1%} = {two / bare if bare else 0.0:4.2f}"


def calibration(answers: list[Told]) -> list[tuple[float, float, int]]:
    """Return mean score, hit rate and count by fifths of the score."""
    pairs = [
        (cause.score, cause.factor is each.studio.cause)
        for each in answers
        for cause in each.found.causes
    ]
    found = []
    for fifth in range(5):
        some = [pair for pair in pairs if fifth / 5 <= pair[0] < (fifth + 1) / 5]
        if some:
            said, hit = (fmean(column) for column in zip(*some, strict=True))
            found.append((said, hit, len(some)))
    return found


def by(answers: list[Told], name: str, key: Callable[[Told], str]) -> None:
    """Print the shares by something that is true of a studio."""
    print(f"by {name}: studios, first, among two / baseline")
    for value in sorted({key(each) for each in answers}):
        some = [each for each in answers if key(each) == value]
        print(f"  {value:16} {len(some):5} {shares(some)}")


def size_of(each: Told) -> str:
    """Return the size of what was planted, in words."""
    least = next(n for n in (3.2, 2.4, 1.8, 0.0) if each.studio.size >= n)
    return f"{least or 1.2} and more"


def of_law(
    name: str, planted: Iterable[Studio], quiet: Iterable[Studio]
) -> tuple[list[Told], float]:
    """Print one law in a line and its calibration; return what the goals ask."""
    answers, still = told(planted), told(quiet)
    left = fmean(not each.found.causes for each in still)
    unsure = fmean(each.found.verdict == "cannot tell" for each in still)
    print(f"{name:28} {shares(answers)}; quiet {left:.1%}, cannot tell {unsure:.1%}")
    bins = (f"{s:.2f} {h:.2f} ({n})" for s, h, n in calibration(answers))
    print(f"{'':28} score, hit rate (causes): {', '.join(bins)}")
    return answers, left


def main() -> int:
    """Print every table; the exit status says whether the goals are met."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else STUDIOS
    began = process_time()
    print("law: first, among two / baseline = ratio; studios with nothing wrong")
    answers, left = of_law(
        "plain", studios(count, LAWS[0]), studios(count, LAWS[0], is_quiet=True)
    )
    for law in LAWS[1:]:
        of_law(law.name, studios(count, law), studios(count, law, is_quiet=True))
    of_law("dyes weaker or stronger", *_other_law(count))
    took = (process_time() - began) / (2 * (len(LAWS) + 1) * count)
    print("the plain law")
    by(answers, "cause", lambda each: str(each.studio.cause))
    by(answers, "size", size_of)
    by(answers, "other changes", lambda each: f"{each.studio.decoys}")
    print(f"{1000 * took:.1f} ms of processor time a studio")
    met = [
        fmean(each.is_among(1) for each in answers) >= FIRST,
        fmean(each.is_among(2) for each in answers) >= AMONG_TWO,
        left >= QUIET,
        all(abs(s - h) <= CALIBRATED for s, h, _n in calibration(answers) if s > 0.4),
    ]
    print(f"{sum(met)} of {len(met)} goals are met, over {count} studios")
    return 0 if all(met) else 1


def _other_law(count: int) -> tuple[Iterable[Studio], Iterable[Studio]]:
    return dyed_studios(count), dyed_studios(count, is_quiet=True)


if __name__ == "__main__":
    sys.exit(main())
