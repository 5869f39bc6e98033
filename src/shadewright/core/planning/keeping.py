"""As little change as possible: what a plan moves of the plan that stood before.

A bath on another pot or another source is carried, labelled and soaked anew, and each
counts as two minutes of the day; one that starts at another time is looked for in vain
once, which counts as one. So a plan that ends a few minutes earlier moves nothing, and
one that ends an hour earlier moves what it must. The prices are ours.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from shadewright.core.planning.board import Stay
from shadewright.core.planning.day import Day, PlaceBefore
from shadewright.core.planning.fitting import pot_of

POT_PRICE, SOURCE_PRICE, START_PRICE = 2.0, 2.0, 1.0
"""What another pot, source or start counts for. [min]"""


@dataclass(frozen=True, kw_only=True)
class Change:
    """A bath that stood elsewhere, or at another time; ``now`` is None if left out."""

    name: str
    was: PlaceBefore
    now: PlaceBefore | None


def place_of(stay: Stay, day: Day) -> PlaceBefore:
    """Return where a bath stands in a plan, as the next one has to know it.

    Parameters
    ----------
    stay : Stay
        The bath as placed. [min]
    day : Day
        The day. [-]

    Returns
    -------
    PlaceBefore
        Pot, source, start of the filling. [min]
    """
    going = day.baths[stay.bath].going
    source = day.sources[stay.way.source].name
    start = stay.fill.start
    if going is not None:
        start = going.fill_start
        source = going.source if going.has_heat else source
    return PlaceBefore(pot=pot_of(day, stay.pot).name, source=source, start=start)


def changes_of(
    stays: Iterable[Stay], day: Day, before: Mapping[str, PlaceBefore]
) -> Iterator[Change]:
    """Yield the baths that stand otherwise than before, in the order of the day.

    Parameters
    ----------
    stays : iterable of Stay
        A plan. [min]
    day : Day
        The day. [-]
    before : mapping of str to PlaceBefore
        Where each bath stood, by its name; new baths are not in it. [min]

    Yields
    ------
    Change
        What differs. [min]
    """
    places = {day.baths[stay.bath].name: place_of(stay, day) for stay in stays}
    for bath in day.baths:
        was, now = before.get(bath.name), places.get(bath.name)
        if was is not None and now != was:
            yield Change(name=bath.name, was=was, now=now)


def price_of(change: Change) -> float:
    """Return what a change counts for; a bath that is left out is counted elsewhere.

    Parameters
    ----------
    change : Change
        What differs. [min]

    Returns
    -------
    float
        The prices of pot, source and start together. [min]

    Examples
    --------
    >>> was = PlaceBefore(pot="P1", source="S1", start=0)
    >>> now = PlaceBefore(pot="P1", source="S2", start=20)
    >>> price_of(Change(name="B1", was=was, now=now))
    3.0
    """
    was, now = change.was, change.now
    if now is None:
        return 0.0
    return (
        POT_PRICE * (now.pot != was.pot)
        + SOURCE_PRICE * (now.source != was.source)
        + START_PRICE * (now.start != was.start)
    )
