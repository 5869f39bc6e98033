"""What is said of palettes: depths, colours, lists, and how well it foretells."""

from collections.abc import Sequence

from shadewright.core.quantities.writing import NO_BREAK, counted, number_text
from shadewright.workflows.shades.palette_pages import LeftOut, PaletteOnBase


def counted_or_no(count: int, one: str, many: str) -> str:
    """Return a count with its noun: “1 swatch”, “3 swatches”, “no swatch”."""
    return counted(count, one, many) if count else f"no {one}"


def listed(words: Sequence[str]) -> str:
    """Return words in a row, the last joined by “and”; each once."""
    once = list(dict.fromkeys(words))
    if len(once) < 2:
        return "".join(once)
    return f"{', '.join(once[:-1])} and {once[-1]}"


def depth_words(depth_percent: float) -> str:
    """Return a depth that the model was asked at, in two digits: “0.97 %”."""
    return f"{number_text(depth_percent, digits=2)}{NO_BREAK}%"


def lab_words(lab: Sequence[float]) -> str:
    """Return a colour in whole units."""
    light, a, b = (f"{part:.0f}".replace("-", "−") for part in lab)
    light, a, b = ("0" if part == "−0" else part for part in (light, a, b))
    return f"L{NO_BREAK}{light}, a{NO_BREAK}{a}, b{NO_BREAK}{b}"


def head_words(found: PaletteOnBase) -> str:
    """Return what a palette on a base rests on, and how well it foretells."""
    swatches = found.base.taught - found.lots
    rests = [
        counted_or_no(len(found.dyes), "dye", "dyes"),
        counted_or_no(swatches, "swatch", "swatches"),
        *([counted_or_no(found.lots, "lot", "lots")] if found.lots else []),
    ]
    return f"{listed(rests)}. {_left_out_words(found.left_out)}"


def known_words(found: PaletteOnBase) -> tuple[str, ...]:
    """Say what the palette knows of this base only by the others."""
    others = listed([x.name for x in found.bases if x.dyed and x.id != found.base.id])
    if not found.base.dyed and others:
        told = (
            f"No dyed swatch on {found.base.name} yet: what stands here is carried "
            f"over from {others}. One swatch of each dye would tell how this yarn "
            "takes them."
        )
        return (told,)
    far = [x.name for x in found.dyes if not x.alone and not x.mixes and x.elsewhere]
    if not far:
        return ()
    return (
        f"{listed(far)}: not dyed on {found.base.name} yet, known from {others} only.",
    )


def _left_out_words(left_out: LeftOut) -> str:
    if left_out.half is None or left_out.nine_in_ten is None:
        return "Too few to say yet how well it foretells."
    return (
        "Each swatch foretold from the others: half come out within "
        f"{left_out.half:.1f}, nine in ten within {left_out.nine_in_ten:.1f} "
        "(CIEDE2000)."
    )
