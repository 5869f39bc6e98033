"""Timed heat-ups: what the ledgers of past baths tell of a pot on its source."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from functools import cached_property

from shadewright.core.baths.heating import HeatUp, Load, heat_kwh, is_held_back
from shadewright.core.tables.heat import Material
from shadewright.errors import InputError
from shadewright.records import heat_reads
from shadewright.records.models import Bath, BathLine, HeatSource, Pot
from shadewright.records.models.baths import BathAct
from shadewright.workflows.recipe_curves import programme_of, stops_of

_NEAR = timedelta(minutes=5)
_LEAST_RISE_C, _LEAST_MIN, _MOST_MIN = 10.0, 2.0, 300.0


@dataclass(frozen=True, kw_only=True)
class HeatUps:
    """What a pot's baths on a source show.

    ``at_full`` are heat-ups that the source set the pace of; ``kept`` counts
    those that kept the recipe's own pace, which somebody did by hand.
    """

    at_full: tuple[HeatUp, ...] = ()
    kept: int = 0


@dataclass(frozen=True, kw_only=True)
class Timed:
    """The way to the top as a ledger has it."""

    start_c: float
    top_c: float
    minutes: float


class HeatBook:
    """The timed heat-ups of pots on sources, each place looked up once."""

    def __init__(self) -> None:
        self._lines: dict[tuple[int, int], list[tuple[Bath, list[BathLine]]]] = {}

    @cached_property
    def _places(self) -> set[tuple[int, int]]:
        return heat_reads.timed_places()

    def of(self, pot: Pot, source: HeatSource, *, but_for: str = "") -> HeatUps:
        """Return the timed heat-ups of a pot on a source, the newest twenty."""
        at_full: list[HeatUp] = []
        kept = 0
        for bath, lines in self._timed(pot.pk, source.pk):
            timed = timed_way(bath, lines)
            if timed is None or bath.number == but_for:
                continue
            if is_held_back(minutes=timed.minutes, recipe_min=_recipe_min(bath)):
                kept += 1
            else:
                at_full += _heat_up(bath, pot, source, timed)
        return HeatUps(at_full=tuple(at_full), kept=kept)

    def _timed(self, pot_id: int, source_id: int) -> list[tuple[Bath, list[BathLine]]]:
        place = (pot_id, source_id)
        if place not in self._places:
            return []
        if place not in self._lines:
            baths = list(heat_reads.heated_baths(pot_id=pot_id, source_id=source_id))
            lines = list(heat_reads.heat_lines(baths))
            self._lines[place] = [
                (bath, [line for line in lines if line.bath_id == bath.pk])
                for bath in baths
            ]
        return self._lines[place]


def load_of(pot: Pot, *, fibre_g: float, liquor_ml: float) -> Load:
    """Return what is heated; a pot that nobody weighed counts as nothing."""
    return Load(
        water_ml=liquor_ml,
        fibre_g=fibre_g,
        vessel_kg=pot.mass_kg or 0.0,
        material=Material(pot.material),
    )


def timed_way(bath: Bath, lines: Sequence[BathLine]) -> Timed | None:
    """Return the way to the top, stops taken off; None where it cannot be meant."""
    on = _first(lines, BathAct.HEAT_ON)
    top = _first(lines, BathAct.AT_TOP)
    if on is None or top is None:
        return None
    start_c, top_c = _start_c(bath, on, lines), _top_c(bath, top, lines)
    minutes = (top.at - on.at).total_seconds() / 60 - _held_min(bath)
    if start_c is None or top_c is None or top_c - start_c < _LEAST_RISE_C:
        return None
    if not _LEAST_MIN <= minutes <= _MOST_MIN:
        return None
    return Timed(start_c=start_c, top_c=top_c, minutes=minutes)


def _heat_up(
    bath: Bath, pot: Pot, source: HeatSource, timed: Timed
) -> Iterator[HeatUp]:
    load = load_of(pot, fibre_g=bath.fibre_g, liquor_ml=bath.liquor_ml)
    try:
        energy = heat_kwh(load=load, start_c=timed.start_c, top_c=timed.top_c)
    except InputError:
        return  # what was written down cannot have been
    yield HeatUp(energy_kwh=energy, power_kw=source.power_kw, minutes=timed.minutes)


def _first(lines: Sequence[BathLine], act: BathAct) -> BathLine | None:
    return next((line for line in lines if line.act == act), None)


def _start_c(bath: Bath, on: BathLine, lines: Sequence[BathLine]) -> float | None:
    """Return the last reading before the heat, or soon after; else the recipe's."""
    read = [x.value for x in _readings(lines) if x.at <= on.at + _NEAR]
    return read[-1] if read else bath.version.start_c


def _top_c(bath: Bath, top: BathLine, lines: Sequence[BathLine]) -> float | None:
    """Return the reading nearest to the tick, what was ticked, or the recipe's."""
    read = [x.value for x in _readings(lines) if abs(x.at - top.at) <= _NEAR]
    if read:
        return read[-1]
    return top.value if top.unit == "°C" and top.value else bath.version.top_c


def _readings(lines: Sequence[BathLine]) -> list[BathLine]:
    acts = (line for line in lines if line.act == BathAct.TEMPERATURE)
    return [line for line in acts if line.value is not None]


def _held_min(bath: Bath) -> float:
    return sum(leg.hold_min for leg in stops_of(bath.version.curve))


def _recipe_min(bath: Bath) -> float | None:
    """Return the recipe's minutes of rising alone."""
    whole = programme_of(bath.version, stops_of(bath.version.curve)).rise_min
    return None if whole is None else whole - _held_min(bath)
