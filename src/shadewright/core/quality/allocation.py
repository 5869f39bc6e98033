"""Whole orders from one lot: a sweater shows every change of lot.

Skeins of one lot are alike for certain. So an order comes out of the smallest lot that
holds enough, and large lots stay whole for large orders. Where no lot does, lots that
may share a sweater are put together; where they do not do either, nothing is promised.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from shadewright.errors import OutOfRangeError


@dataclass(frozen=True, kw_only=True)
class Allocation:
    """Where the skeins of an order come from, by lot; empty where it cannot be."""

    skeins: int
    parts: tuple[tuple[str, int], ...]

    @property
    def is_mixed(self) -> bool:
        """Whether more than one lot is in it."""
        return len(self.parts) > 1


def allocated(
    skeins: int, *, left: Mapping[str, int], groups: Iterable[Sequence[str]]
) -> Allocation:
    """Return out of which lots an order comes.

    Parameters
    ----------
    skeins : int
        Skeins that are wanted, one at least. [-]
    left : mapping of str to int
        Skeins that are left, by lot. [-]
    groups : iterable of sequence of str
        Lots that may share a sweater. [-]

    Returns
    -------
    Allocation
        The smallest lot that holds enough; else the fewest lots of one group, and of
        those the ones with least left over; else nothing. [-]

    Raises
    ------
    OutOfRangeError
        If no skein is wanted.

    Examples
    --------
    >>> left = {"A": 3, "B": 5, "C": 2}
    >>> allocated(4, left=left, groups=[("A", "B"), ("C",)]).parts
    (('B', 4),)
    >>> allocated(6, left=left, groups=[("A", "B"), ("C",)]).parts
    (('B', 5), ('A', 1))
    >>> allocated(9, left=left, groups=[("A", "B"), ("C",)]).parts
    ()
    """
    if skeins < 1:
        raise OutOfRangeError(
            name="The skeins of an order",
            given=f"{skeins}",
            allowed="at least 1",
            argument="skeins",
        )
    enough = [lot for lot, count in left.items() if count >= skeins]
    if enough:
        lot = min(enough, key=lambda each: (left[each], each))
        return Allocation(skeins=skeins, parts=((lot, skeins),))
    mixes = [_mix(skeins, left, group) for group in groups]
    found = [mix for mix in mixes if mix]
    return Allocation(
        skeins=skeins,
        parts=min(found, key=lambda mix: (len(mix), _over(mix, left)), default=()),
    )


def _mix(
    skeins: int, left: Mapping[str, int], group: Sequence[str]
) -> tuple[tuple[str, int], ...]:
    """Return the largest lots of a group until there are enough, or nothing."""
    parts: list[tuple[str, int]] = []
    wanted = skeins
    for lot in sorted(group, key=lambda each: (-left.get(each, 0), each)):
        taken = min(wanted, left.get(lot, 0))
        if taken:
            parts.append((lot, taken))
            wanted -= taken
    return () if wanted else tuple(parts)


def _over(mix: Sequence[tuple[str, int]], left: Mapping[str, int]) -> int:
    return sum(left[lot] - taken for lot, taken in mix)
