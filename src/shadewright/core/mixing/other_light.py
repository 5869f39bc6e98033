"""Was it another light? Meters for print say D50 where yarn is read under D65.

Nothing in three numbers says under which light they were read. But a ladder of one
dye moves through Lab in a way that its spectrum dictates, and under the wrong light no
spectrum fits all of it. So the swatches are fitted as if read under D50, and the
evidence of the two fits is compared.
"""

from collections.abc import Sequence

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.arranging import Names, kinds_of
from shadewright.core.mixing.posterior.fitting import Fitted, fit
from shadewright.core.mixing.swatches import Evidence, Swatch

OTHER = Light.D50
CLEAR = 4.0
"""Natural logarithm of odds from which another light is named (our choice). [1]"""


def is_other_light(fitted: Fitted, swatches: Sequence[Swatch], names: Names) -> bool:
    """Tell whether Lab was more likely read under D50 than under D65.

    Parameters
    ----------
    fitted : Fitted
        The palette, as read under D65. [1]
    swatches : sequence of Swatch
        The swatches that it rests on. [%]
    names : Names
        Its dyes, bases and sessions. [-]

    Returns
    -------
    bool
        True where the odds are clear; never from spectra or a screen alone. [-]

    Notes
    -----
    On six invented palettes of nine dyes the logarithm of the odds for the true light
    was 4 to 32 from one Lab at four depths, 1 to 18 at two; at one depth it tells
    nothing. Under three lights of which only the first is wrong it was above 300.

    References
    ----------
    .. [rasmussen2006] 5.2 (evidence to choose between models)
    """
    lit = {Evidence.LAB, Evidence.THREE_LIGHTS}
    if not any(each.reading.evidence in lit for each in swatches):
        return False
    kinds = kinds_of(swatches, names, daylight=OTHER)
    other = fit(
        tuple(kind for kind, _group in kinds),
        structure=fitted.known.structure,
        sizes=fitted.known.sizes,
        start_surface=fitted.known.start_surface,
        rounds=0,
    )
    return other.log_evidence - fitted.log_evidence > CLEAR
