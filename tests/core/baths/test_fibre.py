import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths import (
    bone_dry_mass_g,
    conditioned_mass_g,
    depth_on_dyeable_percent,
    dye_mass_g,
    dyeable_mass_g,
    regain_from_content_percent,
)
from shadewright.core.tables.fibres import WOOL
from shadewright.errors import OutOfRangeError

masses_g = st.floats(min_value=1, max_value=10_000)
regains_percent = st.floats(min_value=0, max_value=100)


@pytest.mark.by_hand
def test_conditioned_wool_without_its_water() -> None:
    # 100 / 1.16 = 86.2069
    assert bone_dry_mass_g(fibre_mass_g=100, regain_percent=16) == pytest.approx(
        86.2069, abs=5e-5
    )


@pytest.mark.by_hand
def test_damp_wool_is_weighed_too_heavy() -> None:
    # 130 g at 30 % regain are 100 g bone dry, 113.6 g at 13.6 %
    assert conditioned_mass_g(
        fibre_mass_g=130,
        regain_percent=30,
        standard_regain_percent=WOOL.regain_astm_percent,
    ) == pytest.approx(113.6)


@given(fibre_g=masses_g, now=regains_percent, ordinary=regains_percent)
def test_conditioning_and_back_is_no_change(
    fibre_g: float, now: float, ordinary: float
) -> None:
    there = conditioned_mass_g(
        fibre_mass_g=fibre_g, regain_percent=now, standard_regain_percent=ordinary
    )
    back = conditioned_mass_g(
        fibre_mass_g=there, regain_percent=ordinary, standard_regain_percent=now
    )
    assert back == pytest.approx(fibre_g, rel=1e-12)


@given(fibre_g=masses_g, content=st.floats(0, 79))
def test_regain_and_content_leave_the_same_dry_fibre(
    fibre_g: float, content: float
) -> None:
    regain = regain_from_content_percent(moisture_content_percent=content)
    dry_g = bone_dry_mass_g(fibre_mass_g=fibre_g, regain_percent=regain)
    assert dry_g == pytest.approx(fibre_g * (1 - content / 100), rel=1e-9)


@pytest.mark.by_hand
def test_the_two_conventions_for_a_blend() -> None:
    # 100 g with 25 % linen at 1 %: 1 g on the whole, 0.75 g on the wool
    wool_g = dyeable_mass_g(fibre_mass_g=100, undyeable_share_percent=25)
    assert dye_mass_g(fibre_mass_g=wool_g, depth_percent=1) == pytest.approx(0.75)
    # and 1 g on 75 g of wool is 1.3333 %
    assert depth_on_dyeable_percent(
        depth_percent=1, undyeable_share_percent=25
    ) == pytest.approx(1.33333, abs=5e-6)


@given(fibre_g=masses_g, depth=st.floats(0.01, 10), share=st.floats(0, 79))
def test_both_conventions_agree_on_the_dye(
    fibre_g: float, depth: float, share: float
) -> None:
    on_all = dye_mass_g(fibre_mass_g=fibre_g, depth_percent=depth)
    on_dyeable = dye_mass_g(
        fibre_mass_g=dyeable_mass_g(
            fibre_mass_g=fibre_g, undyeable_share_percent=share
        ),
        depth_percent=depth_on_dyeable_percent(
            depth_percent=depth, undyeable_share_percent=share
        ),
    )
    assert on_dyeable == pytest.approx(on_all, rel=1e-12)


@pytest.mark.parametrize("share", [-1, 99.5, 100])
def test_a_share_that_leaves_nothing_to_dye_is_refused(share: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        dyeable_mass_g(fibre_mass_g=100, undyeable_share_percent=share)
    assert caught.value.argument == "undyeable_share_percent"


def test_moisture_that_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRangeError) as content:
        regain_from_content_percent(moisture_content_percent=81)
    assert content.value.argument == "moisture_content_percent"
    with pytest.raises(OutOfRangeError) as now:
        bone_dry_mass_g(fibre_mass_g=100, regain_percent=-1)
    assert now.value.argument == "regain_percent"
    with pytest.raises(OutOfRangeError) as ordinary:
        conditioned_mass_g(
            fibre_mass_g=100, regain_percent=0, standard_regain_percent=501
        )
    assert ordinary.value.argument == "standard_regain_percent"
