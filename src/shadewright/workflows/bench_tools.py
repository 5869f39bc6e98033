"""Which tool a dose at the pot was measured with, by what was planned."""

from shadewright.records.models import Bath, BathDose
from shadewright.workflows.bath_shapes import PART
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.usual_tools import usual_tools


def tool_of(bath: Bath, *, step: str, unit: str, bottle: str) -> int | None:
    """Return the number of the tool, None where it is not a dose or not known.

    What comes in the planned unit came from the planned tool; what comes in the
    other one from the studio's usual scale, or its usual tool.
    """
    dose = _planned(bath, step)
    if dose is None:
        return None
    is_as_planned = (unit == "g") == (bath.is_by_weight or dose.bottle_id is None)
    if is_as_planned and bool(bottle) == (dose.bottle_id is not None):
        return dose.tool_id
    return _id(_usual(unit)) if bottle else None


def _planned(bath: Bath, step: str) -> BathDose | None:
    key = step.removesuffix(PART)
    if not key.startswith("dose-"):
        return None
    doses = {f"dose-{n}": dose for n, dose in enumerate(bath.doses.all(), start=1)}
    return doses.get(key)


def _usual(unit: str) -> ToolNow | None:
    usual = usual_tools()
    if unit == "g":
        return usual.dose_scale
    tool = usual.dose_tool
    return tool if tool is not None and tool.ware else None


def _id(tool: ToolNow | None) -> int | None:
    return None if tool is None else tool.id
