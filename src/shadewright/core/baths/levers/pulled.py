"""What a lever is, and what comes of pulling it."""

from dataclasses import dataclass, replace
from enum import StrEnum

from shadewright.core.baths.levers.ways import Device, Scale, Stock, Wanted, Way
from shadewright.core.quantities import is_more
from shadewright.core.uncertainty import Value

WORTH = 0.1
"""A lever that narrows by less than this share is not worth a word. [-] (our choice)"""


class Lever(StrEnum):
    """What can be done about a spread, the least work first."""

    TOOL = "another tool"
    BOTTLE = "another bottle"
    YARN = "another scale for the yarn"
    WEIGHT = "dosing by weight"
    CHECK = "checking the scale"
    MAKE = "a new stock"
    BATCH = "a larger batch"


@dataclass(frozen=True, kw_only=True)
class Hand:
    """What is at hand for one dose.

    ``most_yarn_g`` is what the pot holds; None where no pot is named.
    """

    stocks: tuple[Stock, ...] = ()
    makeable: tuple[Stock, ...] = ()
    devices: tuple[Device, ...] = ()
    most_yarn_g: float | None = None


@dataclass(frozen=True, kw_only=True)
class Proposal:
    """One lever: the dose and the way with it, and how far it may then be off."""

    lever: Lever
    wanted: Wanted
    way: Way
    after: float


@dataclass(frozen=True, kw_only=True)
class DoseAdvice:
    """What a dose is worth as it is planned, at best, and by each lever.

    ``now`` and ``best`` are shares that hold 19 times in 20; ``proposals`` are
    those worth a word, the strongest first; ``depth`` is the depth as it is.
    """

    wanted: Wanted
    way: Way
    depth: Value
    now: float
    best: float
    best_way: Way
    proposals: tuple[Proposal, ...]

    @property
    def strongest(self) -> Proposal | None:
        """The lever to pull first."""
        return self.proposals[0] if self.proposals else None


def is_worth(*, before: float, after: float) -> bool:
    """Return whether a spread that was ``before`` narrowed enough to speak of it.

    Parameters
    ----------
    before : float
        Spread as it is, a share of the value. [-]
    after : float
        Spread as it would be. [-]

    Returns
    -------
    bool
        Whether it is narrower by a tenth at least. [-]

    Examples
    --------
    >>> is_worth(before=0.1, after=0.095)
    False
    """
    return not is_more(after, than=(1.0 - WORTH) * before)


def scales_to_check(advice: DoseAdvice, proposal: Proposal) -> tuple[Scale, ...]:
    """Return the scales that a proposal supposes to be checked.

    Parameters
    ----------
    advice : DoseAdvice
        The dose as it is. [-]
    proposal : Proposal
        One of its levers. [-]

    Returns
    -------
    tuple of Scale
        Each once; none where the lever is not a check.

    Examples
    --------
    See ``advice_sentence``, which names them.
    """
    if proposal.lever is not Lever.CHECK:
        return ()
    pairs = (
        (advice.wanted.yarn_scale, proposal.wanted.yarn_scale),
        (advice.way.device, proposal.way.device),
    )
    found = [was for was, now in pairs if isinstance(was, Scale) and was != now]
    return tuple({scale.key: scale for scale in found}.values())


def batch_of(wanted: Wanted, *, times: float) -> Wanted:
    """Return the same dose for so many times the yarn.

    Parameters
    ----------
    wanted : Wanted
        The dose. [-]
    times : float
        How many times the yarn and the liquor. [-]

    Returns
    -------
    Wanted
        The dose of the larger or smaller batch. [-]

    Examples
    --------
    >>> pale = Wanted(dye="Gorse", depth_percent=0.2, yarn_g=100.0, liquor_ml=3000.0)
    >>> batch_of(pale, times=2).yarn_g
    200.0
    """
    return replace(
        wanted, yarn_g=wanted.yarn_g * times, liquor_ml=wanted.liquor_ml * times
    )
