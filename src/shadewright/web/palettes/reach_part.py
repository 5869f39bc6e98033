"""The reach of a palette: what is drawn, and the same as a table."""

from collections.abc import Sequence

from shadewright.core.recipes.reaching import Reach
from shadewright.drawing import Aim, Outline, ReachShown, Spot
from shadewright.exchange.colour_text import on_screen
from shadewright.web.palettes.pages import ReachPart, ReachRow, WantedRow
from shadewright.web.palettes.words import counted_or_no, lab_words
from shadewright.web.targets import target_query
from shadewright.web.ways import way_to
from shadewright.workflows.shades.palette_pages import PaletteOnBase
from shadewright.workflows.shades.swatches import SwatchNow
from shadewright.workflows.shades.wanted import Wanted

_KINDS = {70.0: "light", 50.0: "mid", 30.0: "dark"}


def reach_part(found: PaletteOnBase, wanted: Sequence[Wanted]) -> ReachPart:
    """Return the reach of a palette with its swatches and what is wanted."""
    rows = tuple(map(_row, found.reaches))
    spots = tuple(_spot(each) for each in found.swatches)
    return ReachPart(
        shown=ReachShown(
            name=f"Reach of the palette on {found.base.name} in a* and b*",
            more=_more(rows, spots, wanted),
            outlines=tuple(
                Outline(kind=_KINDS[each.lightness], loops=each.outlines)
                for each in found.reaches
            ),
            spots=spots,
            aims=tuple(Aim(at=(x.lab.a, x.lab.b), name=x.name) for x in wanted),
        ),
        rows=rows,
        wanted=tuple(
            WantedRow(
                number=number,
                name=each.name,
                address=way_to("find", base=found.base.id, **target_query(each)),
                words=f"{lab_words(each.lab)}; {each.read_by.label}",
            )
            for number, each in enumerate(wanted, start=1)
        ),
    )


def _spot(swatch: SwatchNow) -> Spot:
    assert swatch.reading is not None  # ruff: ignore[assert] - only read ones are here
    lab = swatch.reading.lab
    return Spot(at=(lab.a, lab.b), fill=on_screen(lab).hex_code)


def _row(reach: Reach) -> ReachRow:
    points = [point for outline in reach.outlines for point in outline]
    a, b = ([point[axis] for point in points] for axis in (0, 1))
    kind = _KINDS[reach.lightness]
    return ReachRow(
        lightness=f"{kind}, L* {reach.lightness:.0f}",
        kind=kind,
        reddest=_number(max(a, default=0.0)),
        greenest=_number(min(a, default=0.0)),
        yellowest=_number(max(b, default=0.0)),
        bluest=_number(min(b, default=0.0)),
        is_empty=not points,
    )


def _more(
    rows: Sequence[ReachRow], spots: Sequence[Spot], wanted: Sequence[Wanted]
) -> str:
    """Say the picture at length."""
    told = [
        f"{row.lightness}: nothing is that light or dark"
        if row.is_empty
        else f"{row.lightness}: a* {row.greenest} to {row.reddest}, "
        f"b* {row.bluest} to {row.yellowest}"
        for row in rows
    ]
    aims = [f"wanted: {each.name}, {lab_words(each.lab)}" for each in wanted]
    dots = counted_or_no(len(spots), "swatch", "swatches")
    return f"{'; '.join([*told, f'{dots} as dots', *aims])}."


def _number(value: float) -> str:
    text = f"{value:.0f}".replace("-", "−")
    return "0" if text == "−0" else text
