"""How sure a stock is that is planned, made, or written down as it was made."""

from dataclasses import dataclass

from shadewright.core.quantities import require_mass
from shadewright.core.solutions.filling import filled_mass_g
from shadewright.core.solutions.ledger import BottleState
from shadewright.core.solutions.shares import diluted_strength
from shadewright.core.solutions.sureness import made_strength, weighed_volume
from shadewright.core.uncertainty import Value, exact
from shadewright.workflows.readings import read_mass, read_volume, tool_said
from shadewright.workflows.tools import ToolNow

METHOD = "spread of a strength, version 1"
"""Name and version of the sum that a bottle's first spread comes from."""

NO_SCALE = "what the powder was weighed on"
NO_WARE = "what it was made up in"
NO_MEASURE = "what the stock was measured with"


@dataclass(frozen=True, kw_only=True)
class MadeWith:
    """The tools of a stock; a ``ware`` that is a scale means made up by weight.

    ``filled_g`` is then what the finished stock weighed, where that was read.
    """

    scale: ToolNow | None = None
    ware: ToolNow | None = None
    filled_g: float | None = None

    @property
    def is_by_weight(self) -> bool:
        """Whether the finished stock is weighed, not read at a mark."""
        return self.ware is not None and self.ware.balance is not None


NOTHING_SAID = MadeWith()
"""No tool was named: how sure the stock is stays unknown."""


@dataclass(frozen=True, kw_only=True)
class StockSpread:
    """A stock's first strength and volume with their terms, and what is not known."""

    strength: Value
    volume: Value
    lacks: tuple[str, ...]


def made_with(
    scale_id: int | None, ware_id: int | None, *, filled_g: float | None = None
) -> MadeWith:
    """Return the tools of these numbers, as they are now."""
    return MadeWith(
        scale=tool_said(scale_id, usual=None),
        ware=tool_said(ware_id, usual=None),
        filled_g=filled_g,
    )


def weighed_ml(*, filled_g: float, powder_g: float) -> float:
    """Return the volume of a stock that weighs so much without its vessel."""
    filled = exact(require_mass(filled_g, name="Finished stock", argument="filled_g"))
    return weighed_volume(filled=filled, powder=exact(powder_g), key="").value


def made_spread(
    *,
    powder_g: float,
    final_ml: float,
    powder_strength_percent: float,
    made_with: MadeWith,
    deed: str,
) -> StockSpread:
    """Return how sure a stock is, by the tools that it was made with."""
    powder = read_mass(made_with.scale, powder_g, role="powder", deed=deed)
    if made_with.is_by_weight:
        filled_g = made_with.filled_g or filled_mass_g(
            volume_ml=final_ml, powder_g=powder_g
        )
        filled = read_mass(made_with.ware, filled_g, role="finished stock", deed=deed)
        volume = weighed_volume(filled=filled, powder=powder, key=deed)
    else:
        volume = read_volume(made_with.ware, final_ml, role="stock", deed=deed)
    return StockSpread(
        strength=made_strength(
            powder=powder,
            volume=volume,
            powder_strength_percent=powder_strength_percent,
        ),
        volume=volume,
        lacks=_lacks(powder, volume),
    )


def thinned_spread(
    *,
    stock: BottleState,
    stock_ml: float,
    volume_ml: float,
    measure: ToolNow | None,
    ware: ToolNow | None,
    deed: str,
) -> StockSpread:
    """Return how sure a weaker stock is: the first one's errors, and two readings."""
    taken = read_volume(measure, stock_ml, role="stock", deed=deed)
    filled = read_volume(ware, volume_ml, role="weaker stock", deed=deed)
    unknown = {NO_MEASURE: not taken.terms, NO_WARE: not filled.terms}
    return StockSpread(
        strength=diluted_strength(
            stock_percent=stock.strength, stock_ml=taken, filled=filled
        ),
        volume=filled,
        lacks=(*stock.lacks, *(words for words, is_so in unknown.items() if is_so)),
    )


def _lacks(powder: Value, volume: Value) -> tuple[str, ...]:
    unknown = {NO_SCALE: not powder.terms, NO_WARE: not volume.terms}
    return tuple(words for words, is_so in unknown.items() if is_so)
