"""A mix on a base as the palette foretells it, and as the tools can measure it."""

import pytest

from shadewright.core.colour import Lab, Light, ciede2000
from shadewright.core.mixing import Mix, told_mixes
from shadewright.errors import NotFoundError
from shadewright.records.models import Base, Dye, MeasuringTool
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.shades.measurable import bench_now, measured_mix, step_of
from shadewright.workflows.shades.mixing_page import mix_now
from shadewright.workflows.tools import shaped_tool
from tests.workflows.bench import entered
from tests.workflows.shades.two_yarns import two_yarns

pytestmark = [pytest.mark.store, pytest.mark.django_db]


def test_a_mix_is_told_as_core_tells_it() -> None:
    """Colour, spread and evidence are core's, with 2 % for doses still to be made."""
    yarns = two_yarns()
    palette = yarns.now.palette
    found = mix_now(palette, base_id=None, doses=yarns.mix(Gorse=0.6, Sloe=0.2))
    mix = Mix(base="Hollow 4-ply", doses=(("Gorse", 0.6), ("Sloe", 0.2)))
    told = told_mixes([mix], palette=palette, dose_error=0.02)
    assert found.told is not None
    assert found.told.lab == pytest.approx(told.lab[0])
    assert found.told.within_90 == pytest.approx(told.de_90[0])
    assert found.told.evidence == told.evidence[0]
    assert {*found.told.labs} == {Light.D65, Light.A, Light.LED_B3}
    assert [dye.deepest_percent for dye in found.dyes] == [1.0, 1.0]
    assert "Gorse" not in {each.words for each in found.addable}
    assert [each.words for each in found.bases] == ["Hollow 4-ply", "Drift silk"]


def test_what_is_retired_is_not_offered_first_or_at_all() -> None:
    yarns = two_yarns()
    Dye.objects.filter(name="Kelp").update(is_retired=True)
    Base.objects.filter(pk=yarns.wool).update(is_retired=True)
    found = mix_now(yarns.now.palette, base_id=None, doses=yarns.mix(Gorse=0.6))
    assert found.base.words == "Drift silk"
    assert [each.words for each in found.bases] == ["Drift silk", "Hollow 4-ply"]
    assert "Kelp" not in {each.words for each in found.addable}


def test_the_pot_is_never_nearer_than_its_own_spread() -> None:
    """Against its own colour a mix is expected to be off by what it is off anyway."""
    yarns = two_yarns()
    mix = yarns.mix(Gorse=0.6)
    alone = mix_now(yarns.now.palette, base_id=yarns.silk, doses=mix).told
    assert alone is not None
    aimed = mix_now(
        yarns.now.palette, base_id=yarns.silk, doses=mix, target=alone.lab
    ).told
    assert aimed is not None
    assert aimed.expected_to_target == pytest.approx(alone.expected)


@pytest.mark.parametrize(
    ("base", "dye", "why"),
    [
        ("nylon", "Gorse", "No swatch on Moss nylon was read yet"),
        ("wool", "Madrone", "No swatch of Madrone was read yet"),
    ],
)
def test_it_says_why_nothing_is_foretold(base: str, dye: str, why: str) -> None:
    yarns = two_yarns()
    Dye.objects.create(name="Madrone")
    found = mix_now(
        yarns.now.palette,
        base_id={"nylon": yarns.nylon, "wool": yarns.wool}[base],
        doses=yarns.mix(**{dye: 0.4}),
    )
    assert found.told is None
    assert found.why_not.startswith(why)


def test_a_base_or_a_dye_that_is_not_there_is_refused() -> None:
    yarns = two_yarns()
    with pytest.raises(NotFoundError, match="no base"):
        mix_now(yarns.now.palette, base_id=9999, doses=())
    with pytest.raises(NotFoundError, match="no dye"):
        mix_now(yarns.now.palette, base_id=yarns.wool, doses=((9999, 1.0),))


def test_doses_go_to_steps_of_the_tools_and_keep_the_colour() -> None:
    """100 g at 0.613 % from a 1 % bottle in a 100 ml cylinder: whole millilitres."""
    yarns = two_yarns()
    bottle = entered(yarns.dye("Gorse")).code
    MeasuringTool.objects.create(name="Cylinder", kind=ToolKind.CYLINDER, size=100.0)
    MeasuringTool.objects.create(name="Scale", kind=ToolKind.BALANCE, readability=0.1)
    now = mix_now(
        yarns.now.palette, base_id=yarns.wool, doses=yarns.mix(Gorse=0.613, Sloe=0.24)
    )
    assert now.told is not None
    gorse, sloe = measured_mix(
        yarns.now.palette,
        base="Hollow 4-ply",
        dyes=now.dyes,
        told=now.told,
        bench=bench_now(100.0),
    )
    assert (gorse.code, gorse.unit, gorse.tool) == (bottle, "ml", "Cylinder")
    assert round(gorse.amount, 6) in {61.0, 62.0}
    assert (sloe.code, sloe.unit) == ("", "g")
    assert round(sloe.amount, 6) in {0.2, 0.3}
    doses = tuple((dye.dye_name, dye.depth_percent) for dye in (gorse, sloe))
    mix = Mix(base="Hollow 4-ply", doses=doses)
    rounded = Lab(*told_mixes([mix], palette=yarns.now.palette).lab[0].tolist())
    assert ciede2000(now.told.lab, rounded) < 4.0


@pytest.mark.parametrize(
    ("size_ml", "step"), [(100.0, 1.0), (10.0, 0.1), (250.0, 2.0), (60.0, 0.5)]
)
def test_ware_is_read_to_a_hundredth(size_ml: float, step: float) -> None:
    row = MeasuringTool(name="Ware", kind=ToolKind.SYRINGE, size=size_ml)
    row.save()
    assert step_of(shaped_tool(row)) == pytest.approx(step)
