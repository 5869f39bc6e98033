"""What fits where: liquor in pots, steam on steamers, pins, and what is going."""

from collections.abc import Iterator

from shadewright.core.baths.liquor import ROOM_TO_SPARE
from shadewright.core.baths.programme import HEAVY_KG
from shadewright.core.planning.day import Day, DayPot, DaySource, WantedBath
from shadewright.core.tables.heat import Material, Source

TRAYS = DayPot(name="", volume_l=0.0, mass_kg=0.0, material=Material.STAINLESS)
"""What a steamed bath lies on; there are enough of them. [-]"""


def pot_of(day: Day, place: int) -> DayPot:
    """Return the pot of a place; those after the last pot are trays.

    Parameters
    ----------
    day : Day
        The day. [-]
    place : int
        Which of its pots, or beyond them the trays of a bath. [-]

    Returns
    -------
    DayPot
        The pot, or trays. [l, kg]
    """
    return day.pots[place] if place < len(day.pots) else TRAYS


def room_of(day: Day, pot: int) -> tuple[bool, float]:
    """Return how much a pot would be missed: one that is pinned, then a large one.

    Parameters
    ----------
    day : Day
        The day. [-]
    pot : int
        Which of its pots. [-]

    Returns
    -------
    tuple of (bool, float)
        Whether a bath is pinned to it; its volume. [l]
    """
    each = pot_of(day, pot)
    is_pinned = any(x.pin is not None and x.pin.pot == each.name for x in day.baths)
    return is_pinned, each.volume_l


def fits(bath: WantedBath, pot: DayPot) -> bool:
    """Return whether a pot holds a bath with a tenth to spare.

    Parameters
    ----------
    bath : WantedBath
        Yarn and liquor ratio. [g]
    pot : DayPot
        The pot. [l]

    Returns
    -------
    bool
        True if it does. [-]
    """
    return bath.liquor_l * ROOM_TO_SPARE <= pot.volume_l + 1e-9


def stays_on_source(bath: WantedBath, pot: DayPot) -> bool:
    """Return whether a pot cools where it stands: as wished, or if it is heavy.

    Parameters
    ----------
    bath : WantedBath
        The bath. [g]
    pot : DayPot
        Its pot. [kg]

    Returns
    -------
    bool
        True above 10 kg of pot, liquor and yarn, which nobody carries hot. [-]
    """
    if bath.cools_on_source is not None or bath.is_steamed:
        return bool(bath.cools_on_source)
    return pot.mass_kg + bath.liquor_l + bath.fibre_g / 1000.0 > HEAVY_KG


def takes(bath: WantedBath, source: DaySource) -> bool:
    """Return whether a bath may go on a source: steam on steamers, within their room.

    Parameters
    ----------
    bath : WantedBath
        Its yarn, and whether it is steamed. [g]
    source : DaySource
        A source. [g]

    Returns
    -------
    bool
        True if it may. [-]
    """
    if bath.is_steamed != (source.kind is Source.STEAMER):
        return False
    return source.room_g is None or bath.fibre_g <= source.room_g


def places_of(bath: WantedBath, day: Day) -> Iterator[tuple[int, DayPot]]:
    """Yield every pot; for a steamed bath the trays that are its own.

    Parameters
    ----------
    bath : WantedBath
        A bath of the day. [-]
    day : Day
        The day. [-]

    Yields
    ------
    tuple of (int, DayPot)
        Which of the places, and the pot there. [l, kg]
    """
    if not bath.is_steamed:
        yield from enumerate(day.pots)
        return
    names = [each.name for each in day.baths]
    yield len(day.pots) + names.index(bath.name), TRAYS


def may_stand(bath: WantedBath, pot: DayPot, source: DaySource) -> bool:
    """Return whether a bath may stand in a pot on a source.

    Parameters
    ----------
    bath : WantedBath
        A bath, perhaps pinned, perhaps going. [g]
    pot : DayPot
        A pot, or trays. [l]
    source : DaySource
        A source. [-]

    Returns
    -------
    bool
        True if it may; one that is going may only where it is. [-]
    """
    pin, going = bath.pin, bath.going
    if going is not None and going.has_heat:
        return pot.name == going.pot and going.source in {"", source.name}
    is_pinned_elsewhere = pin is not None and pin.source not in {"", source.name}
    if is_pinned_elsewhere or not takes(bath, source):
        return False
    if going is not None:
        return pot.name == going.pot
    if pin is not None and pin.pot not in {"", pot.name}:
        return False
    return bath.is_steamed or fits(bath, pot)
