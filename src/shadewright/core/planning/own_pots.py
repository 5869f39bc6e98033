"""Which baths can each have a pot to themselves, as those that cool overnight must."""

from collections.abc import Iterable, Sequence


def with_own_pots(pots_by_bath: Sequence[Iterable[int]]) -> tuple[int, ...]:
    """Return the baths that can each have a pot of their own, the first ones first.

    Parameters
    ----------
    pots_by_bath : sequence of iterable of int
        The pots that would hold each bath, the most wanted bath first. [-]

    Returns
    -------
    tuple of int
        Places of the baths, in order. No other choice serves more baths. [-]

    Notes
    -----
    A bath that finds its pots taken asks those who have them to move on
    [kuhn1955]_. Baths that were served stay served, so the first come first.

    Examples
    --------
    The second bath fits only the pot that the first one took: the first moves on.

    >>> with_own_pots([(0, 1), (0,), (1,)])
    (0, 1)
    """
    taken: dict[int, int] = {}
    wanted = [tuple(pots) for pots in pots_by_bath]
    return tuple(
        bath for bath in range(len(wanted)) if _seated(bath, wanted, taken, set())
    )


def _seated(
    bath: int, wanted: list[tuple[int, ...]], taken: dict[int, int], asked: set[int]
) -> bool:
    """Give a bath a pot, moving others on where that helps."""
    for pot in wanted[bath]:
        if pot in asked:
            continue
        asked.add(pot)
        if pot not in taken or _seated(taken[pot], wanted, taken, asked):
            taken[pot] = bath
            return True
    return False
