"""Sets of swatches: planned, and kept as baths that are dosed at the bench."""

from dataclasses import replace
from itertools import pairwise

import pytest

from shadewright.errors import MissingError, OutOfRangeError
from shadewright.records.models import (
    Base,
    Dye,
    Pot,
)
from shadewright.records.models.swatches import PlanKind
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.plan_wishes import PlanWish
from shadewright.workflows.shades.planning import plan_swatches
from tests.workflows.shades.planned import dye, ladder, soured, standing

pytestmark = pytest.mark.django_db


@pytest.fixture
def base() -> Base:
    """A studio with a yarn, six dyes of which two stand on the shelf, and a palette."""
    return standing()


def names_in(wish: PlanWish) -> set[str]:
    return {draw.dye_name for x in plan_swatches(wish).swatches for draw in x.draws}


def test_a_ladder_says_what_it_takes(base: Base) -> None:
    """10 g at 2 to 0.125 %: 20 to 1.25 ml of 1 %, so 0.1 or 0.5 % is thinned first."""
    plan = plan_swatches(ladder(base))
    assert [s.draws[0].depth_percent for s in plan.swatches[:5]] == [
        2.0,
        1.0,
        0.5,
        0.25,
        0.125,
    ]
    assert len(plan.swatches) == 10
    assert plan.yarn_g == 100.0
    for swatch in plan.swatches:
        for draw in swatch.draws:
            assert 5.0 <= draw.volume_ml <= plan.liquor_ml / 4
            assert draw.is_suiting
    assert len({draw.stock for s in plan.swatches[:5] for draw in s.draws}) <= 2
    assert [each.dye_name for each in plan.first] == ["Gorse", "Sloe"]
    assert all(each.new.from_code for each in plan.first)
    assert "made up to" in plan.first[0].words
    assert dict(plan.dye_g)["Gorse"] == pytest.approx(10 * 3.875 / 100)


def test_heavier_swatches_spare_stocks(base: Base) -> None:
    """0.5 % is 2.5 ml of 1 % on 5 g, 5 ml on 10 g."""
    wish = ladder(base, yarn_g=5.0, top_percent=1.0, rungs=2)
    plan = plan_swatches(wish)
    assert len(plan.first) == 2
    assert plan.advice == "With 10\xa0g a swatch no stock is to be had first."
    assert not plan_swatches(replace(wish, yarn_g=20.0)).advice


def test_jars_and_pots_are_counted(base: Base) -> None:
    """10 x 500 ml with a tenth to spare: jars of 750 ml; half of 12 l holds eight."""
    assert plan_swatches(ladder(base)).jars.per_pot == 0
    Pot.objects.create(name="Steamer", volume_l=12.0)
    jars = plan_swatches(ladder(base)).jars
    assert (jars.jars, jars.jar_ml, jars.per_pot, jars.loads) == (10, 750.0, 8, 2)


def test_the_palette_foretells_where_it_knows_the_dyes(base: Base) -> None:
    assert {each.told for each in plan_swatches(ladder(base)).swatches} == {None}
    fit_now(why="test")
    Dye.objects.create(name="Rust")
    plan = plan_swatches(ladder(base, dye_ids=(dye("Gorse"), dye("Rust")), rungs=3))
    told = [each.told for each in plan.swatches]
    assert told[3:] == [None] * 3
    lights = [each.lab.L for each in told[:3] if each is not None]
    assert all(deep < pale for deep, pale in pairwise(lights))


def test_mixes_are_a_triangle(base: Base) -> None:
    dyes = (dye("Gorse"), dye("Sloe"), dye("Kelp"))
    plan = plan_swatches(ladder(base, kind=PlanKind.MIXES, dye_ids=dyes, parts=4))
    assert len(plan.swatches) == 15
    with pytest.raises(OutOfRangeError, match="Dyes to mix"):
        plan_swatches(ladder(base, kind=PlanKind.MIXES, dye_ids=dyes[:1]))


def test_what_helps_most_and_a_bracket_need_a_palette(base: Base) -> None:
    for kind in (PlanKind.NEXT, PlanKind.BRACKET):
        with pytest.raises(MissingError, match="A palette"):
            plan_swatches(ladder(base, kind=kind))
    fit_now(why="test")
    assert len(plan_swatches(ladder(base, kind=PlanKind.NEXT)).swatches) == 4
    mix = ((dye("Gorse"), 0.6), (dye("Sloe"), 0.2))
    plan = plan_swatches(ladder(base, kind=PlanKind.BRACKET, mix=mix))
    low, itself, high = ([d.depth_percent for d in s.draws] for s in plan.swatches)
    assert itself == [0.6, 0.2]
    for one, mid, other in zip(low, itself, high, strict=True):
        assert min(one, other) < mid < max(one, other)


def test_a_dye_that_was_renamed_or_retired_since_the_fit_is_not_advised(
    base: Base,
) -> None:
    fit_now(why="six swatches")
    wish = ladder(base, kind=PlanKind.NEXT, count=8)
    assert names_in(wish) >= {"Kelp", "Peat"}
    Dye.objects.filter(name="Kelp").update(name="Dulse")
    Dye.objects.filter(name="Peat").update(is_retired=True)
    assert names_in(wish) == {"Gorse", "Rosehip", "Foxglove", "Sloe"}


def test_what_cannot_be_planned_is_told(base: Base) -> None:
    with pytest.raises(OutOfRangeError, match="at most 20"):
        plan_swatches(ladder(base, yarn_g=30.0))
    with pytest.raises(MissingError, match="A swatch is missing"):
        plan_swatches(ladder(base, dye_ids=()))
    many = tuple(Dye.objects.values_list("pk", flat=True))
    with pytest.raises(OutOfRangeError, match="at most 40"):
        plan_swatches(ladder(base, dye_ids=many, rungs=10))


def test_powder_acid_heat_and_metal_are_named(base: Base) -> None:
    """Gorse and Sloe are thinned from bottles; of Kelp powder is weighed."""
    soured()
    plan = plan_swatches(ladder(base))
    assert [each.title for each in plan.cautions] == ["Acid", "Heat"]
    Dye.objects.filter(name="Kelp").update(is_metal_complex=True)
    plan = plan_swatches(ladder(base, dye_ids=(dye("Kelp"),)))
    said = {each.title: each.text for each in plan.cautions}
    assert list(said) == ["Powder", "Acid", "Heat", "Metal"]
    assert said["Metal"].startswith("Kelp holds a metal")
