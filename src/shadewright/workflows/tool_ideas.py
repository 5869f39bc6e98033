"""Tools that a studio could buy, as they come: by their standard, not checked yet."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from shadewright.core.baths.levers.ways import Device, Scale, Ware
from shadewright.core.quantities import MeasuringTool, amount_text
from shadewright.core.uncertainty.tools import unchecked_balance
from shadewright.records import tool_reads
from shadewright.records.models import MeasuringTool as MeasuringToolRow
from shadewright.workflows.levers_at_hand import device_of
from shadewright.workflows.tools import ToolNow


@dataclass(frozen=True, kw_only=True)
class ToolIdea:
    """A tool that could be bought; ``slug`` is its field on the page.

    ``size`` is in ml, of a scale what it carries in g; ``step_g`` is a scale's alone.
    """

    slug: str
    kind: str
    size: float
    step_g: float | None = None
    is_for_yarn: bool = False

    @property
    def name(self) -> str:
        """What it is called in a shop."""
        if self.step_g is None:
            return f"{amount_text(self.size, 'ml')} {self.kind}"
        tail = " for the yarn" if self.is_for_yarn else ""
        return f"{amount_text(self.step_g, 'g')} scale{tail}"

    @property
    def device(self) -> Device:
        """The tool: ware of class B by its ISO table, a scale that nobody checked."""
        if self.step_g is not None:
            balance = unchecked_balance(step_g=self.step_g)
            return Scale(name=self.name, key="new", balance=balance, most_g=self.size)
        tool = MeasuringTool(
            kind=self.kind,
            size_ml=self.size,
            accuracy_class="" if self.kind == "syringe" else "B",
            standard="ISO",
        )
        return Ware(name=self.name, key="new", tool=tool)


IDEAS = (
    ToolIdea(slug="fine-scale", kind="balance", size=200, step_g=0.01),
    ToolIdea(
        slug="yarn-scale", kind="balance", size=2000, step_g=0.1, is_for_yarn=True
    ),
    ToolIdea(slug="cylinder-25", kind="cylinder", size=25),
    ToolIdea(slug="cylinder-50", kind="cylinder", size=50),
    ToolIdea(slug="cylinder-100", kind="cylinder", size=100),
    ToolIdea(slug="syringe-5", kind="syringe", size=5),
    ToolIdea(slug="syringe-20", kind="syringe", size=20),
    ToolIdea(slug="flask-500", kind="flask", size=500),
)
"""What is compared: what a studio commonly buys next (common practice)."""


def written_prices() -> dict[str, Decimal]:
    """Return the prices that the dyer wrote down for such a tool, in use or retired."""
    return {
        idea.slug: row.price
        for row in tool_reads.tool_rows()
        for idea in IDEAS
        if row.price is not None and _is_one(row, idea)
    }


def _is_one(row: MeasuringToolRow, idea: ToolIdea) -> bool:
    if idea.step_g is not None:
        return row.kind == idea.kind and row.readability == idea.step_g
    return row.kind == idea.kind and row.size == idea.size


def ideas_for(tools: Iterable[ToolNow]) -> tuple[ToolIdea, ...]:
    """Return the ideas that are not hanging there already, or something better."""
    devices = [device for tool in tools if (device := device_of(tool)) is not None]
    return tuple(
        idea for idea in IDEAS if not any(_is_as_good(x, idea) for x in devices)
    )


def _is_as_good(owned: Device, idea: ToolIdea) -> bool:
    if isinstance(owned, Ware):
        same = (owned.tool.kind, owned.tool.size_ml) == (idea.kind, idea.size)
        return same and idea.step_g is None
    carries = owned.most_g is None or owned.most_g >= idea.size
    return idea.step_g is not None and carries and owned.balance.step_g <= idea.step_g
