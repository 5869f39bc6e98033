"""Spectra: lights, eyes, and the weights that turn a spectrum into three numbers.

1. ``lights``      the power of a light at each nanometre
2. ``weights``     one number for each band a meter reads, and each of X, Y, Z
3. ``tristimulus`` from a spectrum to XYZ and Lab

Which table of weights was used is part of a colour: the same spectrum summed with
another differs by up to 0.3 in Lab. So each table has a name that is kept with it.
"""

from shadewright.core.colour.spectra.lights import Light, light_power
from shadewright.core.colour.spectra.tristimulus import lab_of_spectra, xyz_of_spectra
from shadewright.core.colour.spectra.weights import Observer, WeightTable, weight_table

__all__ = [
    "Light",
    "Observer",
    "WeightTable",
    "lab_of_spectra",
    "light_power",
    "weight_table",
    "xyz_of_spectra",
]
