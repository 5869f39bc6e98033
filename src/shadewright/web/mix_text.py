"""A mix in an address: ``mix=12:0.6,7:0.2`` is dye 12 at 0.6 % and dye 7 at 0.2 %."""

import re

from shadewright.core.mixing.swatches import MOST_DEPTH_PERCENT
from shadewright.core.quantities import require_between
from shadewright.errors import OutOfRangeError, UnreadableError
from shadewright.workflows.shades.swatches import DyeDoses

MOST_DYES = 12
_PART = re.compile(r"([0-9]{1,9}):([0-9]{0,3}(?:\.[0-9]{0,12})?)", re.ASCII)


def mix_of(text: str) -> DyeDoses:
    """Return the dyes of a mix with their depths; dyes at 0 % are left out."""
    found: dict[int, float] = {}
    parts = text.replace(" ", "").split(",") if text.strip() else []
    for part in parts:
        dye_id, depth_percent = _part(part)
        if dye_id in found:
            raise UnreadableError(
                name="The mix in this address",
                why=f"It names dye {dye_id} twice.",
                argument="mix",
            )
        found[dye_id] = depth_percent
    wanted = tuple((dye, depth) for dye, depth in found.items() if depth)
    _require_few(wanted)
    return wanted


def mix_text(doses: DyeDoses) -> str:
    """Return a mix as an address says it, to four figures."""
    return ",".join(f"{dye}:{_number(depth)}" for dye, depth in doses)


def _part(text: str) -> tuple[int, float]:
    read = _PART.fullmatch(text)
    if read is None or not any(sign.isdigit() for sign in read[2]):
        raise UnreadableError(
            name="The mix in this address",
            why=f"“{text[:20]}” is no dye with its depth, such as 12:0.6.",
            argument="mix",
        )
    depth_percent = require_between(
        float(read[2]),
        least=0.0,
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name="Depth of a dye",
        argument="mix",
    )
    return int(read[1]), depth_percent


def _require_few(doses: DyeDoses) -> None:
    if len(doses) > MOST_DYES:
        raise OutOfRangeError(
            name="Dyes in one mix",
            given=str(len(doses)),
            allowed=f"at most {MOST_DYES}",
            argument="mix",
        )


def _number(depth_percent: float) -> str:
    return f"{float(f'{depth_percent:.4g}'):.9f}".rstrip("0").rstrip(".")
