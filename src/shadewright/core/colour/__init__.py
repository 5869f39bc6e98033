"""Colour: from what a meter reads to how far two yarns are apart, and which way.

A meter measures how much light of each wavelength comes back from a skein. Under a
light, to an eye, that is three numbers; on a scale in which equal steps look about
equal it is Lab. Everything that a dyer asks of a colour is reckoned from there: is the
lot the same as the standard, in what does it differ, will it differ under the shop's
tubes, is the skein level, is this jar stronger than the last.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
R       share of the light that comes back              1
X Y Z   what the eye gets, Y of white being 100         1
L a b   lightness; red to green; yellow to blue         1
C h     chroma, how far from grey; hue, which way       1, °
ΔE      how far apart two colours are                   1
K/S     light absorbed for light scattered              1
======  ==============================================  ====

1. ``spectra``         lights, eyes, weights; from a spectrum to XYZ
2. ``cielab``          from XYZ to Lab and back; chroma and hue
3. ``adaptation``      a colour under another white (Bradford)
4. ``observer_change`` a screen's colour as a meter for yarn reads it
5. ``meter_light``     a meter that is set to another light or eye
6. ``differences``     CIEDE2000, CMC, the grey scale, and plain words
7. ``metamerism``      alike by the window, unlike in the shop
8. ``strength``        one swatch against another
9. ``levelness``       one skein, several spots
10. ``repeats``         several readings of one spot, and what they are worth
11. ``stearns_noechel`` two dyed yarns carded together

Unless it says otherwise, Lab is for daylight D65 and the 10° observer, as hand-held
meters give it. Arrays have the wavelength or the three numbers last. numpy is
imported by the functions that need it; the differences need none.

Sources: [cie15]_ for the rules of the CIE; each method's own source stands in its file.
"""

from shadewright.core.colour.adaptation import adapted_lab, adapted_xyz
from shadewright.core.colour.cielab import XYZ, Lab, lab_of_xyz, xyz_of_lab
from shadewright.core.colour.differences import (
    DE2000Terms,
    GreyScale,
    ciede2000,
    ciede2000_arrays,
    ciede2000_terms,
    cmc,
    difference_words,
    grey_scale,
)
from shadewright.core.colour.levelness import (
    Levelness,
    Unevenness,
    colour_scatter,
    relative_unlevelness,
)
from shadewright.core.colour.metamerism import (
    additive_metamerism,
    multiplicative_metamerism,
)
from shadewright.core.colour.meter_light import lab_of_meter, sd_of_meter
from shadewright.core.colour.observer_change import lab_2_of_10, lab_10_of_2
from shadewright.core.colour.repeats import (
    Averaged,
    OddReading,
    averaged,
    odd_reading,
)
from shadewright.core.colour.spectra import (
    Light,
    Observer,
    WeightTable,
    lab_of_spectra,
    light_power,
    weight_table,
    xyz_of_spectra,
)
from shadewright.core.colour.stearns_noechel import blended_reflectance
from shadewright.core.colour.strength import StrengthBy, relative_strength_percent

__all__ = [
    "XYZ",
    "Averaged",
    "DE2000Terms",
    "GreyScale",
    "Lab",
    "Levelness",
    "Light",
    "Observer",
    "OddReading",
    "StrengthBy",
    "Unevenness",
    "WeightTable",
    "adapted_lab",
    "adapted_xyz",
    "additive_metamerism",
    "averaged",
    "blended_reflectance",
    "ciede2000",
    "ciede2000_arrays",
    "ciede2000_terms",
    "cmc",
    "colour_scatter",
    "difference_words",
    "grey_scale",
    "lab_2_of_10",
    "lab_10_of_2",
    "lab_of_meter",
    "lab_of_spectra",
    "lab_of_xyz",
    "light_power",
    "multiplicative_metamerism",
    "odd_reading",
    "relative_strength_percent",
    "relative_unlevelness",
    "sd_of_meter",
    "weight_table",
    "xyz_of_lab",
    "xyz_of_spectra",
]
