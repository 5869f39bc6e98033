"""Lots for spreads that are drawn: the same command gives the same answer."""

from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from random import Random

_SEED = 1


class Lots:
    """Python’s own generator, seeded, and not even imported before the first draw."""

    @cached_property
    def _begun(self) -> "Random":
        from random import Random  # most sums draw nothing

        return Random(_SEED)  # ruff: ignore[suspicious-non-cryptographic-random-usage]

    def random(self) -> float:
        """Return a number from 0 to 1."""
        return self._begun.random()

    def gauss(self, mu: float, sigma: float) -> float:
        """Return a normal number."""
        return self._begun.gauss(mu, sigma)
