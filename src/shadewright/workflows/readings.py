"""An amount read from a tool of the studio, with what reading it there is worth."""

from shadewright.core.quantities import water_density_g_per_ml
from shadewright.core.solutions.filling import USED_AT_C
from shadewright.core.solutions.sureness import of_stock
from shadewright.core.uncertainty import Value, exact, scaled
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.tools import ToolNow, tool_now


def tool_said(tool_id: int | None, *, usual: ToolNow | None) -> ToolNow | None:
    """Return the tool that was named, else the usual one, if there is one."""
    return usual if tool_id is None else tool_now(tool_id)


def read_mass(tool: ToolNow | None, mass_g: float, *, role: str, deed: str) -> Value:
    """Return grams with the terms of the scale; without a scale no term is known."""
    if tool is None or tool.balance is None:
        return exact(mass_g)
    return _of_deed(tool.read(mass_g, role=role), mass_g, deed)


def read_volume(
    tool: ToolNow | None, volume_ml: float, *, role: str, deed: str
) -> Value:
    """Return millilitres with the terms of ware, or of a scale that weighed them."""
    if tool is None:
        return exact(volume_ml)
    if tool.balance is None:
        return _of_deed(tool.read(volume_ml, role=role), volume_ml, deed)
    density = water_density_g_per_ml(temperature_c=USED_AT_C)
    weighed = read_mass(tool, volume_ml * density, role=role, deed=deed)
    return scaled(weighed, by=1.0 / density)


def deed_key(stamp: Stamp) -> str:
    """Return what the errors of one deed are kept under: the same at every reading."""
    return f"deed {stamp.deed.hex}"


def _of_deed(read: Value | None, amount: float, deed: str) -> Value:
    return exact(amount) if read is None else of_stock(read, key=deed)
