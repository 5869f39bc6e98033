"""Yarn put on a day: split by what pots take, kept once, refused in a sentence."""

from dataclasses import replace
from datetime import time, timedelta

import pytest

from shadewright.errors import ConflictError, MissingError, NotFoundError, StudioError
from shadewright.records.models import (
    Base,
    Bath,
    BathDose,
    BathFor,
    DayOutage,
    DayWish,
    Dye,
    DyeDay,
    MillLot,
)
from shadewright.records.models import Pot as PotRow
from shadewright.records.models.baths import BathAct
from shadewright.workflows.days.split_keeping import (
    is_taken_back,
    keep_split,
    take_split_back,
)
from shadewright.workflows.days.splitting import SplitWay, SplitWish, split_wish
from shadewright.workflows.planned_baths import plan_anew, wish_of
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.bench import new_dye
from tests.workflows.days.wanted import ordered
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    """Two pots of 10 l, which take 303 g at 1:30, and one of 40 l, which takes 1212."""
    for name, volume_l in (("P1", 10.0), ("P2", 10.0), ("Vat", 40.0)):
        PotRow.objects.create(name=name, volume_l=volume_l)
    return ready()


def wish(pot: Ready, **said: object) -> SplitWish:
    plain = SplitWish(version_id=pot.version, base_id=pot.base, dyed_on=today())
    return replace(plain, **said)  # type: ignore[arg-type]


def small_pots() -> tuple[int, ...]:
    return tuple(PotRow.objects.exclude(name="Vat").values_list("pk", flat=True))


@pytest.mark.store
@pytest.mark.by_hand
def test_a_batch_is_kept_as_baths_of_their_own(pot: Ready) -> None:
    # 8 skeins of 100 g over pots of 303 g: 3, 3 and 2.
    asked = wish(pot, skeins_g=(100.0,) * 8, pots=small_pots())
    plan = split_wish(asked)
    assert [(x.pot, x.turn, x.fibre_g) for x in plan.baths] == [
        ("P1", 1, 300.0),
        ("P2", 1, 300.0),
        ("P1", 2, 200.0),
    ]
    # Bottles of 500 ml of 1 % less 60 and 30 ml for the bath that is planned already:
    # Slate 440 ml for 180, 180 and 120 ml; Gorse 470 ml for 90, 90, 60.
    assert [(x.dye_name, x.enough_for) for x in plan.dyes] == [
        ("Slate", 2),
        ("Gorse", 3),
    ]
    assert [x.wanted_g for x in plan.dyes] == pytest.approx([4.8, 2.4])
    assert plan.dyes[0].short_g == pytest.approx(0.4)
    stamp = stamp_now(by=None)
    numbers = keep_split(asked, stamp)
    assert keep_split(asked, stamp) == numbers
    rows = list(Bath.objects.filter(number__in=numbers).order_by("id"))
    assert [(row.pot.name, row.skeins, row.fibre_g) for row in rows if row.pot] == [
        ("P1", 3, 300.0),
        ("P2", 3, 300.0),
        ("P1", 2, 200.0),
    ]
    assert len({row.day_wish.batch for row in rows}) == 1
    assert rows[0].day_wish.batch is not None
    dry = BathDose.objects.filter(bath__in=rows, bottle=None)
    assert [(x.bath.number, x.dye.name) for x in dry] == [(numbers[2], "Slate")]
    assert sum(x.dye_g for x in dry) == pytest.approx(plan.dyes[0].short_g)


def test_one_bath_is_no_batch(pot: Ready) -> None:
    (number,) = keep_split(wish(pot, skeins_g=(98.0, 103.0)), stamp_now(by=None))
    assert DayWish.objects.get().batch is None
    row = Bath.objects.get(number=number)
    assert (row.fibre_g, row.skeins) == (201.0, 2)


@pytest.mark.by_hand
def test_whole_pots_take_further_skeins_for_the_shelf(pot: Ready) -> None:
    # Four skeins in two baths of two; each small pot takes three.
    line = ordered(pot, 4)
    asked = wish(
        pot,
        skeins_g=(100.0,) * 4,
        pots=small_pots(),
        is_whole_pots=True,
        for_lines=((line.pk, 4),),
    )
    plan = split_wish(asked)
    assert ([len(x.skeins_g) for x in plan.baths], plan.more) == ([3, 3], 2)
    numbers = keep_split(asked, stamp_now(by=None))
    shares = BathFor.objects.filter(line=line).values_list("bath__number", "skeins")
    assert set(shares) == {(numbers[0], 3), (numbers[1], 1)}


@pytest.mark.by_hand
def test_side_by_side_each_pot_is_filled_once_where_that_will_do(pot: Ready) -> None:
    # 12, 3 and 3 skeins: 14 go into the vat and one small pot, 12 and 2 as full.
    asked = wish(pot, skeins_g=(100.0,) * 14, way=SplitWay.SIDE_BY_SIDE)
    plan = split_wish(asked)
    assert [(x.pot, len(x.skeins_g)) for x in plan.baths] == [("Vat", 12), ("P2", 2)]
    assert plan.room_for == 1
    alike = split_wish(replace(asked, way=SplitWay.ALIKE))
    assert [(x.pot, x.turn) for x in alike.baths] == [("Vat", 1), ("Vat", 2)]


@pytest.mark.by_hand
def test_loose_yarn_is_split_evenly_without_skeins(pot: Ready) -> None:
    # 750 g over pots of 303 g: three baths of 250 g.
    asked = wish(pot, loose_g=750.0, pots=small_pots(), is_whole_pots=True)
    rows = Bath.objects.filter(number__in=keep_split(asked, stamp_now(by=None)))
    assert [(x.fibre_g, x.skeins) for x in rows] == [(250.0, None)] * 3


def test_what_cannot_be_meant_is_said_by_its_field(pot: Ready) -> None:
    refused: list[tuple[dict[str, object], str, str]] = [
        ({"skeins_g": ()}, "Say how many skeins there are", "skeins"),
        ({"skeins_g": (0.0,)}, "Weigh the dry yarn", "fibre_g"),
        ({"skeins_g": (1300.0,)}, "wind it off into smaller skeins", "pots"),
        ({"pots": (999,)}, "A pot is missing", "pots"),
        ({"liquor_ratio": 2000.0}, "Liquor ratio must be", "liquor_ratio"),
        ({"dyed_on": today() - timedelta(days=1)}, "today or later", "dyed_on"),
        ({"dyed_on": today() + timedelta(days=500)}, "a year from now", "dyed_on"),
        ({"loose_g": 1e9}, "must be", "fibre_g"),
    ]
    for said, sentence, argument in refused:
        with pytest.raises(StudioError) as error:
            split_wish(wish(pot, **({"skeins_g": (100.0,)} | said)))
        assert sentence in error.value.sentence
        assert error.value.argument == argument


def test_an_incomplete_recipe_and_a_strange_lot_are_refused(pot: Ready) -> None:
    old = write_recipe(
        name="Old card",
        text=RecipeText(doses=(DoseLine(as_written="a pinch of blue"),)),
        stamp=stamp_now(by=None),
    )
    with pytest.raises(ConflictError, match="incomplete"):
        split_wish(wish(pot, version_id=old.id, skeins_g=(100.0,)))
    other = MillLot.objects.create(base=Base.objects.create(name="Moor"), lot="M9")
    with pytest.raises(ConflictError, match="another base"):
        split_wish(wish(pot, mill_lot_id=other.pk, skeins_g=(100.0,)))


def test_an_order_for_something_else_is_refused(pot: Ready) -> None:
    line = ordered(pot, 2)
    other = Base.objects.create(name="Moor")
    asked = wish(
        pot, base_id=other.pk, skeins_g=(100.0,) * 2, for_lines=((line.pk, 2),)
    )
    with pytest.raises(ConflictError, match="asks for Low Tide on Fell DK"):
        split_wish(asked)


def test_without_any_pot_the_way_on_is_said(pot: Ready) -> None:
    PotRow.objects.update(is_retired=True)
    with pytest.raises(MissingError, match="add your pots"):
        split_wish(wish(pot, skeins_g=(100.0,)))


def test_a_base_that_is_part_bare_and_a_metal_are_said(pot: Ready) -> None:
    Base.objects.filter(pk=pot.base).update(undyeable_percent=20.0)
    metal = new_dye("Peat")
    text = RecipeText(
        doses=(DoseLine(dye_id=metal, dye_name="Peat", depth_percent=1.0),)
    )
    version = write_recipe(name="Peat", text=text, stamp=stamp_now(by=None)).id
    Dye.objects.filter(pk=metal).update(is_metal_complex=True)
    plan = split_wish(wish(pot, version_id=version, skeins_g=(100.0,)))
    assert any("stays bare" in said for said in plan.heaviest.notes)
    assert any("Peat holds a metal" in said for said in plan.heaviest.cautions)
    assert plan.dyes[0].enough_for == 0


@pytest.mark.by_hand
def test_the_steps_from_a_trial_to_a_vat(pot: Ready) -> None:
    asked = wish(pot, skeins_g=(100.0,) * 11)
    # Never dyed: a swatch of 20 g, 100, 500 and then 1100 g.
    assert split_wish(asked).scale.steps_g == (20.0, 100.0, 500.0)
    dyed(pot)
    finished(pot.number)
    scale = split_wish(asked).scale
    assert scale.trial is not None
    assert (scale.trial.fibre_g, scale.trial.liquor_ratio) == (100.0, 30.0)
    assert scale.steps_g == (500.0,)
    assert "Citric acid" in scale.straight
    assert [each.dye_name for each in scale.dyes] == ["Slate", "Gorse"]


def test_a_bath_that_is_planned_anew_stays_for_its_order(pot: Ready) -> None:
    line = ordered(pot, 2)
    asked = wish(pot, skeins_g=(100.0,) * 2, for_lines=((line.pk, 2),))
    (number,) = keep_split(asked, stamp_now(by=None))
    new = plan_anew(number=number, wish=wish_of(number), stamp=stamp_now(by=None))
    share = BathFor.objects.get(line=line)
    assert (share.bath.number, share.skeins) == (new, 2)
    assert DayWish.objects.get().bath.number == new


def test_which_skeins_go_into_which_bath_stands_on_its_card(pot: Ready) -> None:
    weights = (98.0, 104.0, 101.5, 99.0)
    asked = wish(pot, skeins_g=weights, pots=small_pots(), notes="blue tag")
    rows = Bath.objects.filter(number__in=keep_split(asked, stamp_now(by=None)))
    notes = {row.fibre_g: row.notes.replace("\u00a0", " ") for row in rows}
    # Dealt out: 104, then 101.5, then 99 to the lighter, then 98 to the lighter.
    assert notes == {
        200.5: "The skeins of 101.5, 99 g.\nblue tag",
        202.0: "The skeins of 104, 98 g.\nblue tag",
    }


def test_a_pot_that_is_out_all_day_takes_no_bath(pot: Ready) -> None:
    day = DyeDay.objects.create(day=today())
    vat = PotRow.objects.get(name="Vat")
    DayOutage.objects.create(dye_day=day, pot=vat)
    late = PotRow.objects.get(name="P2")
    DayOutage.objects.create(dye_day=day, pot=late, starts_at=time(15))
    plan = split_wish(wish(pot, skeins_g=(100.0,) * 6))
    assert [bath.pot for bath in plan.baths] == ["P1", "P2"]


def test_a_split_is_taken_back_while_none_has_begun(pot: Ready) -> None:
    asked = wish(pot, skeins_g=(100.0,) * 6, pots=small_pots())
    stamp = stamp_now(by=None)
    numbers = keep_split(asked, stamp)
    other = stamp_now(by=None)
    assert take_split_back(stamp.deed, other) == 2
    assert take_split_back(stamp.deed, other) == 0
    assert is_taken_back(numbers)
    with pytest.raises(NotFoundError):
        take_split_back(other.deed, stamp_now(by=None))
    again = stamp_now(by=None)
    first, _ = keep_split(asked, again)
    tapped(first, BathAct.STARTED, "fill")
    with pytest.raises(ConflictError, match=f"Bath {first} has begun"):
        take_split_back(again.deed, stamp_now(by=None))
