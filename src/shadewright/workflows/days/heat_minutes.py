"""How long each bath of a day takes to the top, in every pot on every source."""

from collections.abc import Mapping, Sequence
from math import ceil

from shadewright.records.models import Bath, HeatSource, Pot
from shadewright.workflows.days.bath_facts import Place
from shadewright.workflows.heating import HeatAsked, StudioHeat, heat_of
from shadewright.workflows.recipe_curves import programme_of, stops_of


class HeatKnown:
    """The heat-ups of every pot on every source, looked up once for a whole day."""

    def __init__(self, pots: Sequence[Pot], sources: Sequence[HeatSource]) -> None:
        self._book = StudioHeat()
        self._places = [(pot, source) for pot in pots for source in sources]

    def minutes(self, bath: Bath) -> Mapping[Place, int]:
        """Return the whole minutes to the top by place; none where no one can say."""
        programme = programme_of(bath.version, stops_of(bath.version.curve))
        found: dict[Place, int] = {}
        for pot, source in self._places:
            heat = heat_of(
                HeatAsked(
                    pot=pot,
                    source=source,
                    programme=programme,
                    fibre_g=bath.fibre_g,
                    liquor_ml=bath.liquor_ml,
                    book=self._book,
                )
            )
            if heat is not None:
                found[pot.name, source.name] = max(1, ceil(heat.way.minutes - 1e-9))
        return found
