"""The papers that sheets and cards are printed on."""

from collections.abc import Mapping

from shadewright.errors import OutOfRangeError

PAPERS: Mapping[str, tuple[float, float]] = {
    "a4": (210.0, 297.0),
    "a5": (148.0, 210.0),
    "letter": (215.9, 279.4),
}
TWO_UP = frozenset({"a4", "letter"})


def paper_size(paper: str) -> tuple[float, float]:
    """Return the width and the height of an upright sheet in millimetres."""
    if paper not in PAPERS:
        raise OutOfRangeError(
            name="The paper",
            given=f"“{paper[:20]}”",
            allowed=f"one of {', '.join(PAPERS)}",
            argument="paper",
        )
    return PAPERS[paper]
