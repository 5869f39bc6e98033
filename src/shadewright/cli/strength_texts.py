"""How sure a strength is, as ``shadewright stock`` says it: its keys and its row."""

from collections.abc import Sequence

from shadewright.core.quantities.writing import NO_BREAK, spread_text
from shadewright.core.uncertainty import Value, budget, half_width

_MOSTLY = 0.5  # share of the variance


def strength_answer(strength: Value, *, why_not: str) -> dict[str, object]:
    """Return the keys of a spread; without a term they are null, and say why."""
    if not strength.terms:
        return {
            "u_strength_rel": None,
            "u_why": why_not,
            "strength_from_percent": None,
            "strength_to_percent": None,
            "terms": [],
        }
    reach = half_width(strength)
    lines = budget(strength)
    return {
        "u_strength_rel": strength.u_rel,
        "strength_from_percent": max(strength.value - reach, 0.0),
        "strength_to_percent": strength.value + reach,
        "terms": [{"name": line.name, "u_rel": line.u_rel} for line in lines],
    }


def how_sure_rows(strength: Value) -> Sequence[tuple[str, str]]:
    """Return how sure a strength is, 19 times in 20, and what spoils it most."""
    if not strength.terms:
        return []
    relative = 100.0 * half_width(strength) / strength.value
    worst = budget(strength)[0]
    share = "mostly" if worst.share >= _MOSTLY else "most of it"
    said = f"±{NO_BREAK}{spread_text(relative)}{NO_BREAK}% of it"
    return [("how sure", f"{said} ({share}: {worst.name})")]
