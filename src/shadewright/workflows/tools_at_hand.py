"""The tools that a bath is measured with: as it is said, as usual, or the best."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from operator import attrgetter

from shadewright.core.uncertainty.tools import fills, half_width_ml
from shadewright.workflows.tools import ToolNow, tools_now
from shadewright.workflows.usual_tools import UsualTools, usual_among

_POURED_FROM = {"syringe", "cylinder", "pipette"}
_MOST_FILLS = 8
_STEPS_OF_YARN = 100.0


@dataclass(frozen=True, kw_only=True)
class DosingWish:
    """What is said of a bath's tools; what is None or left out is as usual.

    ``tools`` holds the number of a tool by the dose's place in the recipe, from 1.
    """

    yarn_scale: int | None = None
    is_by_weight: bool | None = None
    tools: Mapping[int, int] = field(default_factory=dict)


AS_USUAL = DosingWish()


@dataclass(frozen=True, kw_only=True)
class AtHand:
    """The tools in use, those that usually do a job, and what is said of this bath."""

    every: tuple[ToolNow, ...]
    usual: UsualTools
    wish: DosingWish
    fibre_g: float = 0.0

    @property
    def is_by_weight(self) -> bool:
        """Whether stock goes on the scale."""
        said = self.wish.is_by_weight
        return self.usual.doses_by_weight if said is None else said

    @property
    def yarn_scale(self) -> ToolNow | None:
        """What the yarn is weighed on.

        Where nobody says, the coarsest scale that shows a hundredth of it.
        """
        said = self._said(self.wish.yarn_scale) or self.usual.yarn_scale
        fit = [x for x in self.scales if x.step_g <= self.fibre_g / _STEPS_OF_YARN]
        return said or max(fit, key=attrgetter("step_g"), default=self._finest)

    @property
    def scales(self) -> tuple[ToolNow, ...]:
        """Everything that weighs."""
        return tuple(tool for tool in self.every if tool.balance)

    @property
    def ware(self) -> tuple[ToolNow, ...]:
        """Everything that a dose could be poured from, or into."""
        return tuple(tool for tool in self.every if tool.ware)

    def dose_tool(self, place: int, volume_ml: float) -> ToolNow | None:
        """Return what a dose of stock is measured in, or weighed on."""
        said = self._said(self.wish.tools.get(place))
        if self.is_by_weight:
            scale = said if said and said.balance else self.usual.dose_scale
            return scale or self._finest
        if said and said.ware:
            return said
        usual = self.usual.dose_tool
        return usual if usual and usual.ware else self._best(volume_ml)

    @property
    def dry_scale(self) -> ToolNow | None:
        """What dry dye is weighed on."""
        return self.usual.powder_scale or self._finest

    @property
    def _finest(self) -> ToolNow | None:
        return min(self.scales, key=attrgetter("step_g"), default=None)

    def _best(self, volume_ml: float) -> ToolNow | None:
        """Return the tool that measures a volume best, in a few fillings."""
        fit = [tool for tool in self.ware if _is_fit(tool, volume_ml)]
        return min(fit, key=lambda tool: _off_ml(tool, volume_ml), default=None)

    def _said(self, tool_id: int | None) -> ToolNow | None:
        return next((tool for tool in self.every if tool.id == tool_id), None)


def at_hand(wish: DosingWish = AS_USUAL, *, fibre_g: float = 0.0) -> AtHand:
    """Return the tools in use, for so much yarn."""
    every = tools_now()
    return AtHand(every=every, usual=usual_among(every), wish=wish, fibre_g=fibre_g)


def _is_fit(tool: ToolNow, volume_ml: float) -> bool:
    ware = tool.ware
    if ware is None or ware.kind not in _POURED_FROM:
        return False
    return fills(tool=ware, volume_ml=volume_ml) <= _MOST_FILLS


def _off_ml(tool: ToolNow, volume_ml: float) -> float:
    if tool.ware is None or not volume_ml:
        return 0.0
    return half_width_ml(tool=tool.ware, volume_ml=volume_ml)
