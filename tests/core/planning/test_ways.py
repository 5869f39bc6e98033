"""In which pots and on which sources a bath fits, and for how long."""

from dataclasses import replace

import pytest

from shadewright.core.planning import (
    Day,
    DayPerson,
    DayPot,
    DaySource,
    Going,
    Pin,
    Stage,
    WantedBath,
)
from shadewright.core.planning.fitting import fits, stays_on_source
from shadewright.core.planning.ways import ways_of
from shadewright.core.tables.heat import Source
from shadewright.errors import OutOfRangeError

POT = DayPot(name="P1", volume_l=10.0, mass_kg=2.0, material="stainless")
MINUTES = dict.fromkeys(Stage, 10)


def bath(**changed: object) -> WantedBath:
    """Return 400 g in 8 litres."""
    plain = WantedBath(
        name="B1",
        family="blue",
        depth_percent=1.0,
        fibre_g=400.0,
        skeins=4,
        liquor_ratio=20.0,
        minutes=dict(MINUTES),
    )
    return replace(plain, **changed)  # type: ignore[arg-type]


def day(*pots: DayPot) -> Day:
    """Return a day with two sources."""
    strong = DaySource(name="S1", power_kw=2.0, kind=Source.INDUCTION)
    weak = DaySource(name="S2", power_kw=1.0, kind=Source.COIL)
    return Day(
        length=600,
        people=(DayPerson(name="first", starts=0, ends=600),),
        pots=pots,
        circuits=(),
        sources=(strong, weak),
        sinks=1,
        rack_slots=40,
        rack_used=0,
        washout=10,
        baths=(),
    )


@pytest.mark.by_hand
def test_a_tenth_is_spared() -> None:
    """8 l want a pot of 8.8 l."""
    assert fits(bath(), replace(POT, volume_l=8.8))
    assert not fits(bath(), replace(POT, volume_l=8.79))


@pytest.mark.by_hand
def test_above_ten_kilograms_it_stays() -> None:
    """Pot 1.6 kg, liquor 8 l and yarn 0.4 kg are 10 kg; 1.7 kg are more."""
    assert not stays_on_source(bath(), replace(POT, mass_kg=1.6))
    assert stays_on_source(bath(), replace(POT, mass_kg=1.7))
    assert not stays_on_source(bath(cools_on_source=False), POT)


def test_given_minutes_make_one_way_a_source() -> None:
    """Both pots are light, so that they make no difference."""
    light = replace(POT, mass_kg=1.0)
    found = ways_of(bath(), day(light, replace(light, name="P2", volume_l=14.0)))
    assert [(way.source, way.pots) for way in found] == [(0, (0, 1)), (1, (0, 1))]
    assert all(way.block == 50 and way.power == 40 for way in found)


def test_the_heat_model_tells_sources_apart() -> None:
    """A weak source takes longer; no rise is steeper than 1.5 °C a minute."""
    minutes = {k: v for k, v in MINUTES.items() if k not in {Stage.HEAT, Stage.RAMP}}
    strong, weak = ways_of(bath(minutes=minutes), day(POT))
    assert strong.heat < weak.heat
    assert 37 <= strong.ramp < weak.ramp


def test_learned_minutes_are_those_of_a_place() -> None:
    """On the strong source alone, and not once the heat is on."""
    learned = {("P1", "S1"): (7, 33)}
    ways = ways_of(bath(minutes_by_place=learned), day(POT))
    assert [(way.heat, way.ramp) for way in ways] == [(7, 33), (10, 10)]
    going = Going(pot="P1", source="S1", fill_start=0, heat_start=5)
    (only,) = ways_of(bath(minutes_by_place=learned, going=going), day(POT))
    assert (only.heat, only.ramp) == (10, 10)


def test_steam_goes_on_steamers_within_their_room() -> None:
    """And liquor goes on none."""
    steamer = DaySource(name="T", power_kw=2.0, kind=Source.STEAMER, room_g=400.0)
    steamed = bath(is_steamed=True)
    whole = replace(day(POT), baths=(bath(name="B0"), steamed))
    whole = replace(whole, sources=(*whole.sources, steamer))
    (only,) = ways_of(steamed, whole)
    assert (only.source, only.pots) == (2, (2,))
    assert all(way.source < 2 for way in ways_of(bath(), whole))
    assert ways_of(replace(steamed, fibre_g=401.0), whole) == ()


def test_how_long_steam_takes_is_not_reckoned() -> None:
    """It has to be given."""
    steamer = DaySource(name="T", power_kw=2.0, kind=Source.STEAMER)
    steamed = bath(is_steamed=True, minutes={Stage.FILL: 5, Stage.HEAT: 10})
    whole = replace(day(POT), baths=(steamed,), sources=(steamer,))
    with pytest.raises(OutOfRangeError, match="time it and give its minutes"):
        ways_of(steamed, whole)


def test_a_pin_leaves_one_place() -> None:
    """Its pot and its source alone."""
    pinned = bath(pin=Pin(pot="P1", source="S2"))
    (only,) = ways_of(pinned, day(POT, replace(POT, name="P2")))
    assert (only.source, only.pots) == (1, (0,))
