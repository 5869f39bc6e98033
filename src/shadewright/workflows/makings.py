"""A stock in the making as it stands: the plan, and what was read so far."""

from dataclasses import dataclass
from datetime import date, datetime

from shadewright.core.solutions.filling import filled_mass_g
from shadewright.core.solutions.steps import MakingStep, making_steps
from shadewright.records import reads
from shadewright.records.models import StockMaking
from shadewright.workflows.stock_spreads import (
    MadeWith,
    StockSpread,
    made_spread,
    made_with,
)
from shadewright.workflows.stocks import (
    PlannedStock,
    begun_stock,
    label_strength_percent,
)


@dataclass(frozen=True, kw_only=True)
class Making:
    """A stock in the making: the plan, where it is, and what was read so far."""

    id: int
    stock: PlannedStock
    steps: tuple[MakingStep, ...]
    step_number: int
    powder_g: float | None
    final_ml: float | None
    label_percent: float | None
    spread: StockSpread | None
    made_with: MadeWith
    water: str
    place: str
    discard_by: date | None
    notes: str
    started_at: datetime
    started_by: str
    bottle_code: str
    is_abandoned: bool

    @property
    def step(self) -> MakingStep:
        """The step that waits."""
        return self.steps[self.step_number - 1]

    @property
    def is_by_weight(self) -> bool:
        """Whether the finished stock is weighed, not read at a mark."""
        return self.made_with.is_by_weight

    @property
    def fill_to_g(self) -> float:
        """What the finished stock is to weigh, with the powder that is in it."""
        plan = self.stock.plan
        return filled_mass_g(
            volume_ml=plan.final_volume_ml, powder_g=self.powder_g or plan.powder_g
        )


def makings() -> tuple[Making, ...]:
    """Return the stocks in the making, newest first."""
    return tuple(_shape(row) for row in reads.making_rows())


def making(making_id: int) -> Making:
    """Return one stock in the making."""
    return _shape(reads.making_row(making_id))


def label_percent(
    powder_g: float | None, final_ml: float | None, row: StockMaking
) -> float | None:
    """Return what the label will say; None while nothing is weighed or filled."""
    if powder_g is None or final_ml is None:
        return None
    return label_strength_percent(
        powder_g=powder_g,
        final_ml=final_ml,
        powder_strength_percent=100.0 if row.jar is None else row.jar.strength_percent,
    )


def _spread(row: StockMaking, tools: MadeWith) -> StockSpread | None:
    """Return how sure the stock is so far; the plan’s volume until it is read."""
    if row.powder_g is None:
        return None
    return made_spread(
        powder_g=row.powder_g,
        final_ml=row.final_ml or row.volume_ml,
        powder_strength_percent=100.0 if row.jar is None else row.jar.strength_percent,
        made_with=tools,
        deed=f"deed {row.deed.hex}",
    )


def _shape(row: StockMaking) -> Making:
    planned = begun_stock(
        dye=row.dye,
        jar=row.jar,
        volume_ml=row.volume_ml,
        strength_percent=row.wanted_percent,
    )
    tools = made_with(row.scale_id, row.ware_id, filled_g=row.filled_g)
    filled_g = filled_mass_g(
        volume_ml=row.volume_ml, powder_g=row.powder_g or planned.plan.powder_g
    )
    steps = making_steps(planned.plan, filled_g=filled_g if row.is_by_weight else None)
    keys = [step.key for step in steps]
    return Making(
        id=row.pk,
        stock=planned,
        steps=steps,
        step_number=keys.index(row.step) + 1,
        powder_g=row.powder_g,
        final_ml=row.final_ml,
        label_percent=label_percent(row.powder_g, row.final_ml or row.volume_ml, row),
        spread=_spread(row, tools),
        made_with=tools,
        water=row.water,
        place=row.place,
        discard_by=row.discard_by,
        notes=row.notes,
        started_at=row.started_at,
        started_by="" if row.started_by is None else row.started_by.name,
        bottle_code="" if row.bottle is None else row.bottle.code,
        is_abandoned=row.abandoned_at is not None,
    )
