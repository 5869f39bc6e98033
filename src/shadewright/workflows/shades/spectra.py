"""What a spectrum looks like under the lights that the studio keeps Lab for."""

from collections.abc import Sequence

from shadewright.core.colour import lab_of_spectra, weight_table
from shadewright.core.mixing.swatches import LIGHTS
from shadewright.workflows.shades.kinds import Labs


def labs_of_spectrum(values: Sequence[float]) -> Labs:
    """Return Lab (10°) under D65, A and FL11 of 31 reflectances, 400 to 700 nm."""
    import numpy as np

    found: Labs = {}
    for light in LIGHTS:
        seen = lab_of_spectra(np.array(values), weights=weight_table(light=light))
        lightness, a, b = seen.tolist()
        found[light] = (lightness, a, b)
    return found
