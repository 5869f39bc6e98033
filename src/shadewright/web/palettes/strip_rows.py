"""The strips of a palette: what is drawn, and the same in words."""

from collections.abc import Sequence
from functools import lru_cache
from math import log

from shadewright.core.mixing.strips import MOST_FAIR, MOST_SURE, Strip
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.drawing import DyeStrip, Square, Told
from shadewright.exchange.colour_text import on_screen
from shadewright.web.colours import RESTS_ON, TOO_VIVID
from shadewright.web.pages import Link
from shadewright.web.palettes.pages import StripRow
from shadewright.web.palettes.words import (
    counted_or_no,
    depth_words,
    lab_words,
    listed,
)
from shadewright.web.ways import way_to
from shadewright.workflows.shades.palette_pages import DyeNow, PaletteOnBase
from shadewright.workflows.shades.swatches import SwatchNow


def strip_rows(found: PaletteOnBase) -> tuple[StripRow, ...]:
    """Return the strips of a palette on a base."""
    out = {each.swatch.id for each in found.doubts.doubted}
    out |= {each.id for each in found.doubts.aside}
    return tuple(
        _row(place, dye, frozenset(out)) for place, dye in enumerate(found.dyes)
    )


def legend(rows: Sequence[StripRow]) -> str:
    """Say what the pictures mean beyond the squares and the ribbon."""
    vivid = [row.name for row in rows if any(not x.is_true for x in row.drawn.told)]
    dotted = f"Dotted line: {TOO_VIVID} ({listed(vivid)}). " if vivid else ""
    return (
        f"{dotted}± is what nine in ten swatches of a dye from 0.1 to 2{NO_BREAK}%, "
        f"dyed another day, stay under in CIEDE2000: sure up to {MOST_SURE:g}, fair up "
        f"to {MOST_FAIR:g}, wide above. Daylight D65, 10°."
    )


def _row(place: int, dye: DyeNow, out: frozenset[int]) -> StripRow:
    told = _told(dye.strip)
    measured = _measured(dye, out)
    remarks = _remarks(dye, told)
    usual = f"±{NO_BREAK}{dye.strip.usual_90:.1f}"
    return StripRow(
        place=place,
        name=dye.name,
        address="" if dye.dye_id is None else way_to("dye", dye.dye_id),
        sure=f"{usual}, {dye.strip.sureness}",
        counted=_counted(dye, out),
        drawn=DyeStrip(
            name=f"{dye.name} from 0.03 to 4{NO_BREAK}%",
            more=f"{measured}. {'. '.join(remarks)}.",
            told=told,
            squares=tuple(_square(each, out) for each in dye.alone),
        ),
        measured=measured,
        swatches=tuple(map(_link, dye.alone)),
        at_one=_at_one(dye.strip),
        remarks=remarks,
    )


@lru_cache(maxsize=512)
def _told(strip: Strip) -> tuple[Told, ...]:
    """Return the ribbon; a screen’s colours take their time, so they are kept."""
    shown = map(on_screen, strip.labs)
    return tuple(
        Told(
            depth_percent=depth,
            fill=each.hex_code,
            is_true=each.is_true,
            within_90=off,
        )
        for depth, each, off in zip(
            strip.depths_percent, shown, strip.within_90, strict=True
        )
    )


def _square(swatch: SwatchNow, out: frozenset[int]) -> Square:
    assert swatch.reading is not None  # ruff: ignore[assert] - only these are alone
    shown = on_screen(swatch.reading.lab)
    return Square(
        depth_percent=swatch.doses[0][1],
        fill=shown.hex_code,
        is_true=shown.is_true,
        is_out=swatch.id in out,
    )


def _link(swatch: SwatchNow) -> Link:
    words = amount_text(swatch.doses[0][1], "%")
    return Link(words=words, address=way_to("swatch", swatch.id))


def _measured(dye: DyeNow, out: frozenset[int]) -> str:
    depths = listed([amount_text(each.doses[0][1], "%") for each in dye.alone])
    left_out = [amount_text(x.doses[0][1], "%") for x in dye.alone if x.id in out]
    if not dye.alone:
        return "Not dyed alone on this yarn; all of it is from the model"
    mark = f", of which {listed(left_out)} left out" if left_out else ""
    return f"Measured at {depths}{mark}; between them from the model"


def _counted(dye: DyeNow, out: frozenset[int]) -> str:
    doubted = sum(each.id in out for each in dye.alone)
    good = len(dye.alone) - doubted
    parts = [counted_or_no(good, "swatch", "swatches")] if good or not doubted else []
    if doubted:
        parts.append(f"{doubted} left out")
    if dye.mixes:
        parts.append(counted_or_no(dye.mixes, "mix", "mixes"))
    if not dye.alone and not dye.mixes:
        elsewhere = counted_or_no(dye.elsewhere, "swatch", "swatches")
        return f"none here, {elsewhere} on other yarns"
    return ", ".join(parts)


def _remarks(dye: DyeNow, told: Sequence[Told]) -> tuple[str, ...]:
    """Say what the picture shows beside its squares."""
    rests = f"Rests on {RESTS_ON[dye.evidence]}"
    if dye.elsewhere:
        rests += f", {dye.elsewhere} of them on other yarns"
    vivid = [each.depth_percent for each in told if not each.is_true]
    if not vivid:
        return (rests,)
    span = f"from {depth_words(min(vivid))} to {depth_words(max(vivid))}"
    return rests, f"{TOO_VIVID.capitalize()} {span}"


def _at_one(strip: Strip) -> str:
    """Return the colour foretold nearest to 1 % in numbers."""
    place = min(
        range(len(strip.labs)), key=lambda at: abs(log(strip.depths_percent[at]))
    )
    return (
        f"{lab_words(strip.labs[place])} at {depth_words(strip.depths_percent[place])}"
    )
