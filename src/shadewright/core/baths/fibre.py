"""The weight that the per cents are taken on.

Depth of shade is taken on conditioned yarn: dry to the hand, with the water
that the fibre holds in ordinary air. Damp yarn weighs more, oven-dry yarn
less, and both make the same per cent a different dose.

Regain R is water in per cent of the bone-dry fibre; moisture content C is
water in per cent of what was weighed. With 16 % regain the content is 13.8 %.
"""

from shadewright.core.quantities import require_between, require_mass

_MOST_REGAIN_PERCENT = 500.0


def bone_dry_mass_g(*, fibre_mass_g: float, regain_percent: float) -> float:
    """Return the fibre alone, without the water that it holds.

    D = W / (1 + R / 100)                                     (11)

    Parameters
    ----------
    fibre_mass_g : float
        Weight as it lies on the scale, W; above zero. [g]
    regain_percent : float
        Regain it has now, R; zero or more. [%]

    Returns
    -------
    float
        Bone-dry weight, D. [g]

    Raises
    ------
    OutOfRangeError
        If the weight or the regain is out of range.

    Notes
    -----
    Source: the definition of regain, [iso6741]_ part 1 (from memory).

    Examples
    --------
    >>> round(bone_dry_mass_g(fibre_mass_g=100.0, regain_percent=16.0), 1)
    86.2
    """
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    _require_regain(regain_percent, argument="regain_percent")
    return fibre_mass_g / (1 + regain_percent / 100)


def conditioned_mass_g(
    *,
    fibre_mass_g: float,
    regain_percent: float,
    standard_regain_percent: float,
) -> float:
    """Return what yarn weighs once it holds its ordinary water.

    W' = W (1 + R' / 100) / (1 + R / 100)                     (12)

    Parameters
    ----------
    fibre_mass_g : float
        Weight as it lies on the scale, damp or bone dry, W. [g]
    regain_percent : float
        Regain it has now, R; 0 for bone dry. [%]
    standard_regain_percent : float
        Regain in ordinary air, R', as the tables give it. [%]

    Returns
    -------
    float
        Conditioned weight, W', which per cents are taken on. [g]

    Raises
    ------
    OutOfRangeError
        If one of them is out of range.

    Notes
    -----
    Wool holds up to about 30 % regain without feeling wet [awta]_, so yarn
    straight from a damp store can be an eighth too heavy: 130/116 = 1.12.

    Examples
    --------
    >>> damp_g = 113.6
    >>> round(
    ...     conditioned_mass_g(
    ...         fibre_mass_g=damp_g, regain_percent=30.0, standard_regain_percent=13.6
    ...     ),
    ...     1,
    ... )
    99.3
    """
    _require_regain(standard_regain_percent, argument="standard_regain_percent")
    dry_g = bone_dry_mass_g(fibre_mass_g=fibre_mass_g, regain_percent=regain_percent)
    return dry_g * (1 + standard_regain_percent / 100)


def regain_from_content_percent(*, moisture_content_percent: float) -> float:
    """Return regain from moisture content, which a moisture meter shows.

    R = 100 C / (100 − C)                                     (13)

    Parameters
    ----------
    moisture_content_percent : float
        Water in per cent of the weight as weighed, C; 0 to 80. [%]

    Returns
    -------
    float
        Water in per cent of the bone-dry fibre, R. [%]

    Raises
    ------
    OutOfRangeError
        If the content is out of range.

    Notes
    -----
    Checked against [astmd2118]_ (scoured wool, 12.0 % content) beside
    [astmd1909]_ (wool, 13.6 % regain).

    Examples
    --------
    >>> round(regain_from_content_percent(moisture_content_percent=12.0), 1)
    13.6
    """
    require_between(
        moisture_content_percent,
        least=0.0,
        most=80.0,
        unit="%",
        name="Moisture content",
        argument="moisture_content_percent",
    )
    return 100 * moisture_content_percent / (100 - moisture_content_percent)


def dyeable_mass_g(*, fibre_mass_g: float, undyeable_share_percent: float) -> float:
    """Return the part of a blend that takes acid dye.

    W_d = W (1 − f / 100)                                     (14)

    Parameters
    ----------
    fibre_mass_g : float
        Conditioned weight of the yarn, W; above zero. [g]
    undyeable_share_percent : float
        Cotton, linen, viscose, polyester and the like, f; 0 to 99. [%]

    Returns
    -------
    float
        Weight of the wool, silk and nylon in it, W_d. [g]

    Raises
    ------
    OutOfRangeError
        If the weight or the share is out of range.

    Notes
    -----
    The two ways to take the per cents differ, and a recipe must say which it
    means. On the whole yarn, 1 % on 100 g is 1 g of dye whatever the blend,
    and the fibre that takes it is dyed deeper (`depth_on_dyeable_percent`). On
    the dyeable weight, 1 % on 100 g with 25 % linen is 0.75 g: the wool in it
    is as deep as pure wool, the yarn as a whole looks paler. Source: common
    practice.

    Examples
    --------
    >>> dyeable_mass_g(fibre_mass_g=100.0, undyeable_share_percent=25.0)
    75.0
    """
    require_mass(fibre_mass_g, name="Weight of fibre", argument="fibre_mass_g")
    return fibre_mass_g * _dyeable_share(undyeable_share_percent)


def depth_on_dyeable_percent(
    *, depth_percent: float, undyeable_share_percent: float
) -> float:
    """Return how deep the dyeable part comes out for a depth on the whole yarn.

    d_d = d / (1 − f / 100)                                   (15)

    Parameters
    ----------
    depth_percent : float
        Depth on the weight of the whole yarn, d. [%]
    undyeable_share_percent : float
        Share that takes no acid dye, f; 0 to 99. [%]

    Returns
    -------
    float
        Depth on the fibre that takes the dye, d_d. [%]

    Raises
    ------
    OutOfRangeError
        If the share is out of range.

    Examples
    --------
    >>> depth_on_dyeable_percent(depth_percent=1.0, undyeable_share_percent=20.0)
    1.25
    """
    return depth_percent / _dyeable_share(undyeable_share_percent)


def _dyeable_share(undyeable_share_percent: float) -> float:
    require_between(
        undyeable_share_percent,
        least=0.0,
        most=99.0,
        unit="%",
        name="Undyeable share",
        argument="undyeable_share_percent",
    )
    return 1 - undyeable_share_percent / 100


def _require_regain(regain_percent: float, *, argument: str) -> None:
    require_between(
        regain_percent,
        least=0.0,
        most=_MOST_REGAIN_PERCENT,
        unit="%",
        name="Regain",
        argument=argument,
    )
