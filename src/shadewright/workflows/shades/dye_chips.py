"""The little square beside a dye’s name: its chart’s colour, else its own swatch."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from shadewright.core.quantities import amount_text
from shadewright.exchange.colour_text import on_screen
from shadewright.records import shade_reads
from shadewright.records.models import Dye

_USUAL_PERCENT = 1.0


@dataclass(frozen=True, kw_only=True)
class DyeChip:
    """A colour as ``#rrggbb``, empty where there is none, and where it comes from."""

    hex_code: str = ""
    words: str = ""


def dye_chips(dye_ids: Collection[int]) -> Mapping[int, DyeChip]:
    """Return the squares of some dyes by number.

    Without a chart's colour it is that of the swatch of this dye alone whose depth is
    nearest to 1 %.
    """
    rows = dict(Dye.objects.filter(pk__in=dye_ids).values_list("pk", "chart_hex"))
    found = {
        dye: DyeChip(hex_code=code, words="Chart colour, a guess")
        if code
        else DyeChip()
        for dye, code in rows.items()
    }
    bare = [dye for dye, code in rows.items() if not code]
    return found | _swatched(bare) if bare else found


def _swatched(dye_ids: list[int]) -> dict[int, DyeChip]:
    nearest: dict[int, tuple[float, DyeChip]] = {}
    for one in shade_reads.lone_colours(dye_ids):
        off = abs(one.depth_percent - _USUAL_PERCENT)
        if off <= nearest.get(one.dye_id, (off, None))[0]:
            chip = DyeChip(
                hex_code=on_screen(one.lab).hex_code,
                words=f"Own swatch, {amount_text(one.depth_percent, '%')}",
            )
            nearest[one.dye_id] = off, chip
    return {dye: chip for dye, (_off, chip) in nearest.items()}
