"""Metamerism: two skeins alike by the window and unlike in the shop.

Two yarns dyed with other dyes can match in daylight and part under a bulb. The index
is how far they are apart under the second light once what was left between them under
the first is taken out.
"""

from collections.abc import Sequence
from math import dist

from shadewright.core.colour.cielab import XYZ, Lab, lab_of_xyz


def additive_metamerism(
    *,
    standard_reference: Lab,
    sample_reference: Lab,
    standard_test: Lab,
    sample_test: Lab,
) -> float:
    """Return the metamerism index, what was left under the first light subtracted.

    MI² = Σ_L,a,b ((sample − standard)_test − (sample − standard)_ref)²  (9)

    Parameters
    ----------
    standard_reference : Lab
        The standard under the light of the match. [1]
    sample_reference : Lab
        The sample there. [1]
    standard_test : Lab
        The standard under the other light. [1]
    sample_test : Lab
        The sample there. [1]

    Returns
    -------
    float
        The index; 0 where nothing changes from light to light. [1]

    References
    ----------
    .. [iso183144] additive correction

    Examples
    --------
    >>> window, shop = Lab(50, 0, 0), Lab(51, 2, 6)
    >>> additive_metamerism(
    ...     standard_reference=window,
    ...     sample_reference=window,
    ...     standard_test=shop,
    ...     sample_test=Lab(51, 5, 2),
    ... )
    5.0
    """
    reference = [
        one - other
        for one, other in zip(sample_reference, standard_reference, strict=True)
    ]
    test = [one - other for one, other in zip(sample_test, standard_test, strict=True)]
    return dist(test, reference)


def multiplicative_metamerism(
    *,
    standard_reference: Sequence[float],
    sample_reference: Sequence[float],
    standard_test: Sequence[float],
    sample_test: Sequence[float],
    white_test: Sequence[float],
) -> float:
    """Return the metamerism index, XYZ first brought to a match under the first light.

    X'_sample,test = X_sample,test · X_standard,ref / X_sample,ref  (10)

    and likewise for Y and Z; the index is the distance in CIELAB under the other light.

    Parameters
    ----------
    standard_reference : sequence of float
        X, Y, Z of the standard under the light of the match. [1]
    sample_reference : sequence of float
        X, Y, Z of the sample there; above zero. [1]
    standard_test : sequence of float
        X, Y, Z of the standard under the other light. [1]
    sample_test : sequence of float
        X, Y, Z of the sample there. [1]
    white_test : sequence of float
        X, Y, Z of white under the other light. [1]

    Returns
    -------
    float
        The index; 0 where nothing changes from light to light. [1]

    References
    ----------
    .. [cie15] 9.2, special metamerism index: change in illuminant

    Examples
    --------
    >>> grey, white = (19.0, 20.0, 7.0), (95.0, 100.0, 35.0)
    >>> round(
    ...     multiplicative_metamerism(
    ...         standard_reference=(19.0, 20.0, 21.5),
    ...         sample_reference=(9.5, 10.0, 10.75),
    ...         standard_test=grey,
    ...         sample_test=(9.5, 10.0, 3.5),
    ...         white_test=white,
    ...     ),
    ...     9,
    ... )
    0.0
    """
    matched = XYZ(
        *(
            test * standard / sample
            for test, standard, sample in zip(
                sample_test, standard_reference, sample_reference, strict=True
            )
        )
    )
    return dist(
        lab_of_xyz(matched, white=white_test),
        lab_of_xyz(standard_test, white=white_test),
    )
