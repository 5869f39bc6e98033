"""Skein tags and bands: what a buyer reads, and what leads back to the bath.

Each carries the colourway, the yarn, the lot with its square code, and whatever else
the studio wrote: fibre content, net weight, length, care in words, origin, maker. Care
is never said in symbols, which are licensed marks. Text shrinks until it fits; where
even the smallest does not, the tag says so instead of losing a word.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shadewright.errors import MissingError, OutOfRangeError
from shadewright.paper.papers import paper_size
from shadewright.paper.squares import square_svg
from shadewright.paper.typeset import printable, typeset

MOST_TAGS = 400


@dataclass(frozen=True)
class TagShape:
    """One way in which tags are cut, in mm; alone on its paper, or many to a sheet."""

    key: str
    name: str
    size_mm: tuple[float, float]
    is_single: bool = False
    is_band: bool = False


TAG_SHAPES = (
    TagShape("tag", "Tags with a hole, 60 × 90 mm", (60.0, 90.0)),
    TagShape("band", "Bands round the skein, 190 × 50 mm", (190.0, 50.0), is_band=True),
    TagShape("single", "Single labels, 102 × 51 mm", (102.0, 51.0), is_single=True),
)


@dataclass(frozen=True, kw_only=True)
class SkeinTag:
    """What one skein's tag says; an empty text is left out."""

    lot: str
    qr_text: str
    colourway: str
    base: str
    fibre_content: str = ""
    weight: str = ""
    length: str = ""
    care: str = ""
    origin: str = ""
    maker: str = ""
    address: str = ""
    remark: str = ""
    is_demo: bool = False


def skein_tags_pdf(
    tags: Sequence[SkeinTag], *, shape: str, paper: str = "a4", printed_on: dt.date
) -> bytes:
    """Return the tags as a PDF, to be cut along the dotted lines."""
    data = tags_data(tags, shape=tag_shape(shape), paper=paper)
    return typeset("skein_tags.typ", data=data, on=printed_on)


def tag_shape(key: str) -> TagShape:
    """Return the shape of that key."""
    for known in TAG_SHAPES:
        if known.key == key:
            return known
    raise OutOfRangeError(
        name="The shape of the tags",
        given=f"“{key[:20]}”",
        allowed=f"one of {', '.join(known.key for known in TAG_SHAPES)}",
        argument="shape",
    )


def tags_data(
    tags: Sequence[SkeinTag], *, shape: TagShape, paper: str
) -> Mapping[str, object]:
    """Return what the template is given: sizes and texts."""
    if not tags:
        raise MissingError(
            name="A skein", advice="Say how many tags to print.", argument="count"
        )
    if len(tags) > MOST_TAGS:
        raise OutOfRangeError(
            name="The number of tags",
            given=str(len(tags)),
            allowed=f"at most {MOST_TAGS} at a time",
            argument="count",
        )
    page = shape.size_mm if shape.is_single else paper_size(paper)
    return {
        "title": f"Tags of lot {tags[0].lot}",
        "page_mm": page,
        "size_mm": shape.size_mm,
        "single": shape.is_single,
        "band": shape.is_band,
        "tags": [_texts(tag) for tag in tags],
    }


def _texts(tag: SkeinTag) -> Mapping[str, object]:
    facts = (tag.fibre_content, ", ".join(filter(None, (tag.weight, tag.length))))
    small = (tag.care, tag.origin, tag.remark, ", ".join(_who(tag)))
    return {
        "lot": tag.lot,
        "square": square_svg(tag.qr_text),
        "colourway": printable(tag.colourway[:90]),
        "base": printable(tag.base[:90]),
        "facts": [printable(text[:300]) for text in facts if text],
        "small": [printable(text[:400]) for text in small if text],
        "demo": tag.is_demo,
    }


def _who(tag: SkeinTag) -> list[str]:
    return [text for text in (tag.maker, tag.address) if text]
