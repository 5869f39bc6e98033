"""A temperature programme as a small picture beside its words, for the card."""

from collections.abc import Mapping

from shadewright.core.baths.curves import Curve, curve_points
from shadewright.core.quantities import amount_text

_COOL_C = 20.0


def heat_picture(curve: Curve | None) -> Mapping[str, object]:
    """Return the corners of a curve as shares of the picture, and what stands by it."""
    if curve is None or not curve.total_min:
        return {}
    low = min(_COOL_C, curve.start_c)
    span = curve.top_c - low or 1.0
    corners = [
        [point.minute / curve.total_min, (point.temperature_c - low) / span]
        for point in curve_points(curve)
    ]
    return {
        "curve": {
            "corners": corners,
            "begins": amount_text(curve.start_c, "°C"),
            "ends": f"{amount_text(curve.top_c, '°C')}, "
            f"{amount_text(round(curve.total_min), 'min')} in all",
        }
    }
