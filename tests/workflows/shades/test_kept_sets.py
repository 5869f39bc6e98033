"""A set that was kept: its baths, its stocks, its sheet."""

from datetime import timedelta

import pytest

from shadewright.errors import NotFoundError
from shadewright.records.models import (
    Base,
    Bath,
    ColourReading,
    MeasuringTool,
    Recipe,
    RecipeVersion,
    Swatch,
)
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.bath_pages import BathStatus, bath_now
from shadewright.workflows.recipes import (
    count_retired,
    has_recipes,
    recipes,
    version,
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
from shadewright.workflows.shades.plan_sheets import cautions_now, plan_sheet
from shadewright.workflows.shades.planning import plan_swatches
from shadewright.workflows.stamps import stamp_now, today
from tests.paper.pictures import words_on
from tests.workflows.bench import entered
from tests.workflows.shades.planned import dye, ladder, soured, standing

pytestmark = pytest.mark.django_db


@pytest.fixture
def base() -> Base:
    """A studio with a yarn, six dyes of which two stand on the shelf, and a palette."""
    return standing()


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
    """Doses that wait for a stock are not foretold as if weighed dry.

    What is kept counts each dose by its own error, what is shown 2 % for all.
    """
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
        assert each.told.within_90 == pytest.approx(one.within_90, rel=0.02)


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


def test_a_set_without_acid_says_so_as_long_as_it_waits(base: Base) -> None:
    bare = keep_plan(ladder(base, rungs=1), stamp_now(by=None))
    said = [x.title for x in cautions_now(swatch_set(bare), set_stocks(bare))]
    assert said[0] == "No acid"
    soured()
    like = RecipeVersion.objects.get(recipe__name="Low Tide").pk
    sour = keep_plan(ladder(base, rungs=1, like_id=like), stamp_now(by=None))
    said = [x.title for x in cautions_now(swatch_set(sour), set_stocks(sour))]
    assert "No acid" not in said
    assert "Acid" in said
