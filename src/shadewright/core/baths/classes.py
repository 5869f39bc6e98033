"""Classes of dye in one bath: whether they can be dyed as one.

Each class wants its own pH, and evens out at its own pace. Dyes of two classes
in one bath therefore do not go on together.
"""

from collections.abc import Sequence

from shadewright.core.quantities import number_text
from shadewright.core.tables.dye_classes import CLASS_FACTS, DyeClass


def class_caution(*, dye_classes: Sequence[DyeClass | None]) -> str | None:
    """Return a caution where the dyes of a bath are of different classes, or None.

    Parameters
    ----------
    dye_classes : sequence of DyeClass or None
        Class of each dye in the bath; None where nobody has said. [-]

    Returns
    -------
    str or None
        A sentence with the pH that each class wants, or None. [-]

    Notes
    -----
    The pH is that of Table 13.1 in [broadbent2001]_ (p. 242), for wool. A class
    that nobody has named is passed over: what it wants is not known.

    Examples
    --------
    >>> class_caution(dye_classes=[DyeClass.MILLING, DyeClass.MILLING]) is None
    True
    """
    found = [each for each in DyeClass if each in dye_classes]
    if len(found) < 2:
        return None
    return (
        f"The dyes are of different classes: {', '.join(map(_wants, found))}. They go "
        "on at different times, so one can lie uneven or stay in the bath. Heat "
        "slowly, and try a swatch first."
    )


def _wants(dye_class: DyeClass) -> str:
    facts = CLASS_FACTS[dye_class]
    least, most = (number_text(ph, digits=2) for ph in (facts.ph_from, facts.ph_to))
    return f"{dye_class} wants pH {least} to {most}"
