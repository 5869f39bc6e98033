"""Sets of swatches: planned, and kept as baths that are dosed at the bench."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

import pytest

from shadewright.errors import MissingError, NotFoundError, OutOfRangeError
from shadewright.records.models import (
    Auxiliary,
    Base,
    Bath,
    ColourReading,
    Dye,
    MeasuringTool,
    Pot,
    Recipe,
    Swatch,
)
from shadewright.records.models.swatches import PlanKind, ReadBy
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import (
    count_retired,
    has_recipes,
    recipes,
    version,
    write_recipe,
)
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.plan_bottles import (
    SetStocks,
    set_stocks,
    take_new_bottles,
)
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.plan_pages import (
    plan_of_recipe,
    swatch_set,
    swatch_sets,
)
from shadewright.workflows.shades.plan_sheets import plan_sheet
from shadewright.workflows.shades.plan_wishes import PlanWish
from shadewright.workflows.shades.planning import plan_swatches
from shadewright.workflows.stamps import stamp_now, today
from tests.paper.pictures import words_on
from tests.workflows.bench import entered, founded, now
from tests.workflows.shades.swatch_rows import kept_singles

pytestmark = pytest.mark.django_db


@pytest.fixture
def base() -> Base:
    """A studio with a yarn, six dyes of which two stand on the shelf, and a palette."""
    founded()
    row = Base.objects.create(name="Hollow 4-ply")
    kept_singles(row)
    for name in ("Gorse", "Sloe"):
        entered(dye(name))
    return row


def dye(name: str) -> int:
    return Dye.objects.get(name=name).pk


def ladder(base: Base, **said: object) -> PlanWish:
    begun: dict[str, object] = {
        "kind": PlanKind.LADDER,
        "base_id": base.pk,
        "dyed_on": today(),
        "dye_ids": (dye("Gorse"), dye("Sloe")),
        "rungs": 5,
    }
    return PlanWish(**(begun | said))  # type: ignore[arg-type]


def names_in(wish: PlanWish) -> set[str]:
    return {draw.dye_name for x in plan_swatches(wish).swatches for draw in x.draws}


def soured() -> None:
    """Write a recipe with acid, which sets then follow."""
    acid = Auxiliary.objects.create(name="Citric acid")
    text = RecipeText(
        doses=(DoseLine(dye_id=dye("Gorse"), dye_name="Gorse", depth_percent=1.0),),
        helpers=(HelperLine(auxiliary_id=acid.pk, amount=2.0),),
        start_c=40.0,
        rise_c_per_min=1.0,
        top_c=90.0,
        hold_min=30.0,
    )
    write_recipe(name="Low Tide", text=text, stamp=now())


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


def test_a_kept_set_is_baths_that_can_be_dosed(base: Base) -> None:
    soured()
    stamp = stamp_now(by=None)
    wish = ladder(base, rungs=2, dyed_on=today() + timedelta(days=1))
    plan_id = keep_plan(wish, stamp)
    assert keep_plan(wish, stamp) == plan_id
    baths = list(Bath.objects.order_by("id"))
    assert len(baths) == 4
    assert all(each.is_swatch and each.fibre_g == 10.0 for each in baths)
    planned = bath_now(baths[1].number)
    (dose,) = [each for each in planned.steps if each.dose is not None]
    assert dose.step.amount == pytest.approx(10.0)
    assert dose.step.code
    assert [each.step.title for each in planned.steps][2:4] == [
        "Yarn in, wet through",
        "Citric acid",
    ]
    assert version(baths[3].version_id).number == 4
    day = wish.dyed_on
    assert planned.recipe_name == f"Swatches {day.day} {day:%b}, Hollow 4-ply"


def test_two_sets_of_a_day_have_two_names(base: Base) -> None:
    for _time in range(3):
        keep_plan(ladder(base, rungs=1), stamp_now(by=None))
    names = sorted(Recipe.objects.values_list("name", flat=True))
    assert len(names) == 3
    assert names[1].endswith("Hollow 4-ply (2)")


def test_a_set_is_no_colourway(base: Base) -> None:
    keep_plan(ladder(base, rungs=1), stamp_now(by=None))
    assert recipes() == ()
    assert not has_recipes()
    Recipe.objects.update(is_retired=True)
    assert recipes(is_retired=True) == ()
    assert count_retired() == 0


def test_what_cannot_be_planned_is_told(base: Base) -> None:
    with pytest.raises(OutOfRangeError, match="at most 20"):
        plan_swatches(ladder(base, yarn_g=30.0))
    with pytest.raises(MissingError, match="A swatch is missing"):
        plan_swatches(ladder(base, dye_ids=()))
    many = tuple(Dye.objects.values_list("pk", flat=True))
    with pytest.raises(OutOfRangeError, match="at most 40"):
        plan_swatches(ladder(base, dye_ids=many, rungs=10))


def test_a_dose_that_waits_for_a_stock_is_drawn_from_it_once_it_stands_there(
    base: Base,
) -> None:
    """10 g at 0.25 % are 2.5 ml of 1 %; of 0.1 % they are 25 ml."""
    plan_id = keep_plan(
        ladder(base, dye_ids=(dye("Gorse"),), rungs=4), stamp_now(by=None)
    )
    before = set_stocks(plan_id)
    assert [each.dye_name for each in before.first] == ["Gorse"]
    assert before.waiting
    assert before.changes == ()
    weak = entered(dye("Gorse"), strength_percent=0.1).code
    assert {each.code for each in set_stocks(plan_id).changes} == {weak}
    stamp = stamp_now(by=None)
    assert take_new_bottles(plan_id, stamp) == 1
    assert set_stocks(plan_id) == SetStocks()
    doses = [each.doses[0] for each in swatch_set(plan_id).swatches]
    assert [each.volume_ml for each in doses] == pytest.approx([20, 10, 5, 25])
    assert doses[3].code == weak


def test_a_kept_set_is_foretold_as_it_was_shown(base: Base) -> None:
    """Doses that wait for a stock are not foretold as if weighed dry."""
    MeasuringTool.objects.create(
        name="Kitchen scale", kind="balance", size=500.0, readability=0.1
    )
    fit_now(why="test")
    wish = ladder(base, dye_ids=(dye("Gorse"), dye("Kelp")), rungs=3)
    shown = [each.told for each in plan_swatches(wish).swatches]
    kept = swatch_set(keep_plan(wish, stamp_now(by=None)))
    for one, each in zip(shown, kept.swatches, strict=True):
        assert one is not None
        assert each.told is not None
        assert each.told.within_90 == pytest.approx(one.within_90)


def test_a_set_tells_what_was_dyed_and_read(base: Base) -> None:
    fit_now(why="test")
    plan_id = keep_plan(ladder(base, rungs=2), stamp_now(by=None))
    now = swatch_set(plan_id)
    assert [each.place for each in now.swatches] == [1, 2, 3, 4]
    assert all(each.told is not None for each in now.swatches)
    assert all(each.status is BathStatus.PLANNED for each in now.swatches)
    row = Bath.objects.get(number=now.swatches[0].bath_number)
    swatch = Swatch.objects.create(
        deed=stamp_now(by=None).deed, label="1", base=base, bath=row
    )
    ColourReading.objects.create(
        deed=swatch.deed, swatch=swatch, read_by=ReadBy.METER, labs={"D65": (76, 6, 62)}
    )
    read = swatch_set(plan_id).swatches[0]
    assert read.swatch_id == swatch.pk
    assert read.reading is not None
    (entry,) = swatch_sets()
    assert (entry.swatches, entry.dyed, entry.read) == (4, 0, 1)
    assert plan_of_recipe(now.recipe_id) == plan_id
    with pytest.raises(NotFoundError, match="set of swatches"):
        swatch_set(plan_id + 1)


def test_the_sheet_says_what_the_bench_will_ask(base: Base) -> None:
    plan_id = keep_plan(
        ladder(base, dye_ids=(dye("Gorse"),), rungs=4), stamp_now(by=None)
    )
    words = words_on(plan_sheet(plan_id))
    for bath in swatch_set(plan_id).swatches:
        assert bath.bath_number in words
    for part in ("20 ml", "new 0.5 %", "made up to", "Hollow 4-ply"):
        assert part in words, part


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
