"""A whole studio: what would narrow its recipes most."""

from dataclasses import replace

import pytest

from shadewright.core.baths.levers.habits import Change, effects
from shadewright.core.baths.levers.practice import (
    Job,
    Practice,
    job_reaches,
    mean_reach,
    stocks_made,
)
from shadewright.core.baths.levers.scaling import DyeAtHand, batch_sureness
from shadewright.core.baths.levers.strengths import strengths_to_keep
from tests.core.baths.levers.studio import (
    CYLINDER,
    KITCHEN,
    MAKING,
    SMALL,
    STRONG,
    SYRINGE,
    scale,
    wanted,
    ware,
)

PRACTICE = Practice(
    making=MAKING, devices=(SYRINGE,), strengths_percent={"Gorse": (1.0,)}
)
JOBS = (
    Job(recipe="Pale", wanted=wanted(depth=0.02), times=3),
    Job(recipe="Deep", wanted=wanted(depth=0.6), times=1),
)


def changed(name: str, price: float | None = 0.0, **changes: object) -> Change:
    return Change(
        name=name,
        practice=replace(PRACTICE, **changes),  # type: ignore[arg-type]
        jobs=JOBS,
        price=price,
    )


@pytest.mark.by_hand
def test_the_mean_counts_a_dose_as_often_as_it_is_dyed() -> None:
    assert mean_reach(jobs=JOBS, reaches=[0.2, 0.04]) == pytest.approx(0.16)


def test_habits_go_first_then_tools_by_what_they_narrow_for_their_price() -> None:
    syringe = ware("syringe 2ml")
    found = effects(
        jobs=JOBS,
        practice=PRACTICE,
        changes=[
            changed("no price", None, devices=(SYRINGE, syringe)),
            changed("dear", 60.0, devices=(SYRINGE, syringe)),
            changed("cheap", 6.0, devices=(SYRINGE, syringe)),
            changed("weigh doses", devices=(SYRINGE, SMALL)),
            changed("nothing new"),
            changed("weak stock", strengths_percent={"Gorse": (1.0, 0.1)}),
        ],
    )
    assert [each.change.name for each in found] == [
        "weak stock",
        "weigh doses",
        "nothing new",
        "cheap",
        "dear",
        "no price",
    ]
    nothing = found[2]
    assert nothing.before == nothing.after
    assert (nothing.narrowed, nothing.of, nothing.is_worth_it) == (0, 2, False)
    cheap, dear, unpriced = found[3:]
    assert cheap.for_one == pytest.approx(10 * (dear.for_one or 0.0))
    assert unpriced.for_one is None
    assert unpriced.after == cheap.after < cheap.before


def test_a_dose_that_cannot_be_measured_is_left_out_of_both() -> None:
    unknown = Job(recipe="Odd", wanted=replace(wanted(), dye="Nobody has it"))
    jobs = (*JOBS, unknown)
    assert job_reaches(jobs=jobs, practice=PRACTICE)[2] is None
    (found,) = effects(
        jobs=jobs,
        practice=PRACTICE,
        changes=[replace(changed("same"), jobs=jobs)],
    )
    assert found.of == 2


def test_a_better_scale_mends_the_next_stock_and_what_is_thinned_from_it() -> None:
    fine = scale("fine scale", step_g=0.01, error_g=0.02)
    before = stocks_made(strengths_percent=[1.0, 0.1], practice=PRACTICE)
    better = replace(PRACTICE, making=replace(MAKING, powder_scale=fine))
    after = stocks_made(strengths_percent=[1.0, 0.1], practice=better)
    for strength in (1.0, 0.1):
        assert after[strength].strength.u_rel < before[strength].strength.u_rel


def test_a_studio_of_pale_and_deep_keeps_two_strengths() -> None:
    practice = replace(PRACTICE, devices=(SYRINGE, CYLINDER))
    (found,) = strengths_to_keep(jobs=JOBS, practice=practice)
    strong, weak = found.keep_percent
    assert weak <= 0.1
    assert strong >= 0.5
    assert found.is_change
    assert found.to_make_percent[-1] == weak
    assert found.then < (found.now or 0.0)
    assert (found.doses, found.cannot) == (2, 0)


def test_what_is_kept_already_is_kept_where_it_is_nearly_as_good() -> None:
    practice = replace(PRACTICE, devices=(SYRINGE, CYLINDER))
    deep = [Job(recipe="Deep", wanted=wanted(depth=1.0, yarn_scale=KITCHEN))]
    (found,) = strengths_to_keep(jobs=deep, practice=practice)
    assert found.keep_percent == found.kept_percent == (1.0,)
    assert not found.is_change


def test_a_dye_that_no_strength_serves_is_left_out() -> None:
    bare = Practice(making=replace(MAKING, vessel=None), devices=(SYRINGE,))
    assert strengths_to_keep(jobs=JOBS, practice=bare) == ()


def test_a_smaller_batch_is_less_sure() -> None:
    dyes = [DyeAtHand(dye="Gorse", depth_percent=0.1, stocks=(STRONG,))]
    worst = []
    for yarn_g in (20.0, 100.0, 400.0):
        found = batch_sureness(
            dyes=dyes,
            devices=[SYRINGE, CYLINDER],
            wanted=wanted(yarn_g=yarn_g, yarn_scale=KITCHEN),
        )
        assert found.worst is not None
        worst.append(found.worst.reach or 0.0)
    assert worst == sorted(worst, reverse=True)


def test_a_recipe_with_a_dye_without_a_bottle_has_no_worst() -> None:
    dyes = [
        DyeAtHand(dye="Gorse", depth_percent=0.1, stocks=(STRONG,)),
        DyeAtHand(dye="Slate", depth_percent=0.1, stocks=()),
    ]
    found = batch_sureness(dyes=dyes, devices=[SYRINGE], wanted=wanted())
    assert found.worst is None
    assert [dose.reach is None for dose in found.doses] == [False, True]


def test_a_dose_of_many_fills_is_known_as_its_plan_has_it() -> None:
    dyes = [DyeAtHand(dye="Gorse", depth_percent=1.5, stocks=(STRONG,))]
    found = batch_sureness(dyes=dyes, devices=[SYRINGE], wanted=wanted())
    (dose,) = found.doses
    assert dose.way is not None
    assert dose.way.device == SYRINGE  # 150 ml in eight fills: there is no other way
    found = batch_sureness(dyes=dyes, devices=[SYRINGE, CYLINDER], wanted=wanted())
    assert found.doses[0].way is not None
    assert found.doses[0].way.device == CYLINDER
