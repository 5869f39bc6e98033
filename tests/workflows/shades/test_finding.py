"""Recipes for a colour: from a wish to doses, bottles, costs and reasons."""

from dataclasses import replace

import pytest

from shadewright.core.colour import Light, ciede2000
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.errors import MissingError, NotFoundError, OutOfRangeError
from shadewright.records.models import Base, Dye, MeasuringTool, PowderJar
from shadewright.workflows.shades.find_wishes import FindWish, at_shelf
from shadewright.workflows.shades.finding import Found, find, target_under
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.wanted import wanted_of_spectrum, wanted_of_text
from tests.workflows.shades.studios import Fitted, fitted

FERN = wanted_of_text("52, -10, 20", name="Wet Fern")
VIVID = wanted_of_text("80, -70, 60")


def dyes_of(found: Found) -> list[set[str]]:
    return [{dose.dye_name for dose in each.doses} for each in found.answers]


def wish_in(studio: Fitted, **said: object) -> FindWish:
    return FindWish(wanted=FERN, base_id=studio.base.pk, **said)  # type: ignore[arg-type]


@pytest.mark.django_db
def test_answers_stand_by_their_chance_and_each_says_why() -> None:
    """The likeliest to come out right is the first; each has a reason to be shown."""
    found = find(wish_in(fitted()))
    chances = [round(each.chance, 2) for each in found.answers]
    assert chances == sorted(chances, reverse=True)
    assert found.is_within_tolerance
    assert found.answers[0].why[0] == "Most likely to come out right"
    assert all(each.why for each in found.answers)
    assert len({frozenset(dyes) for dyes in dyes_of(found)}) == len(found.answers)


@pytest.mark.django_db
def test_answer_lies_as_far_from_the_target_as_it_says() -> None:
    """The first light is daylight, and its difference is that of the answer."""
    first = find(wish_in(fitted())).answers[0]
    day, *others = first.under
    assert day.light is Light.D65
    assert day.difference == pytest.approx(first.difference, abs=1e-6)
    assert first.difference == pytest.approx(ciede2000(FERN.lab, first.lab), abs=1e-6)
    assert first.within_10 <= first.expected <= first.within_90
    assert [each.is_supposed for each in others] == [True, True]


@pytest.mark.django_db
def test_colour_out_of_reach_is_answered_with_the_nearest() -> None:
    """How far and which way is said; nothing is called likely."""
    studio = fitted()
    found = find(FindWish(wanted=VIVID, base_id=studio.base.pk))
    assert not found.is_within_tolerance
    assert found.nearest_difference > 10
    assert "duller" in found.nearest_words
    assert found.answers[0].why[0] == "As near as it comes"


@pytest.mark.django_db
def test_doses_are_those_of_the_batch() -> None:
    """Gorse has a bottle of 1 %: ml are depth times batch; the others are short."""
    studio = fitted()
    found = find(wish_in(studio, batch_g=200.0))
    gorse = next(
        dose
        for each in found.answers
        for dose in each.doses
        if dose.dye_name == "Gorse" and not dose.missing_g
    )
    share = gorse.shares[0]
    assert share.code == studio.pot.gorse
    assert share.volume_ml == pytest.approx(200.0 * gorse.depth_percent)
    kelp = next(d for each in found.answers for d in each.doses if d.dye_name == "Kelp")
    assert kelp.missing_g == pytest.approx(2.0 * kelp.depth_percent)


@pytest.mark.django_db
def test_only_dyes_of_the_shelf_are_taken_and_no_more_than_it_has() -> None:
    """Of six dyes only Gorse stands on the shelf."""
    studio = fitted()
    found = find(wish_in(studio, is_on_shelf=True))
    assert dyes_of(found) == [{"Gorse"}]
    for batch_g in (5_000.0, 5_300.0, 6_100.0, 7_700.0):
        few = find(wish_in(studio, is_on_shelf=True, batch_g=batch_g))
        assert sum(dose.missing_g for dose in few.answers[0].doses) == 0
        assert few.answers[0].doses[0].depth_percent < 0.1


@pytest.mark.django_db
def test_filters_by_dye_hold() -> None:
    """Wanted dyes are in every answer, unwanted and metal-complex ones in none."""
    studio = fitted()
    Dye.objects.filter(name="Kelp").update(is_metal_complex=True)
    wish = wish_in(
        studio,
        with_dyes=(studio.dyes["Sloe"],),
        without_dyes=(studio.dyes["Peat"],),
        is_without_metal=True,
        most_dyes=3,
    )
    for dyes in dyes_of(find(wish)):
        assert "Sloe" in dyes
        assert not dyes & {"Peat", "Kelp"}
        assert len(dyes) <= 3


@pytest.mark.django_db
def test_retired_dye_is_taken_only_where_it_is_asked_for() -> None:
    """Kelp is in what matches best, until it is retired."""
    studio = fitted()
    assert any("Kelp" in dyes for dyes in dyes_of(find(wish_in(studio))))
    Dye.objects.filter(name="Kelp").update(is_retired=True)
    assert not any("Kelp" in dyes for dyes in dyes_of(find(wish_in(studio))))
    asked = find(wish_in(studio, with_dyes=(studio.dyes["Kelp"],)))
    assert all("Kelp" in dyes for dyes in dyes_of(asked))


@pytest.mark.django_db
def test_cost_names_the_price_that_is_missing() -> None:
    """A dye without a priced jar leaves the sum open, by name."""
    studio = fitted()
    found = find(wish_in(studio, is_on_shelf=True))
    cost = found.answers[0].cost
    assert cost.money is None
    assert "not known" in cost.missing[0].why
    assert not PowderJar.objects.filter(price__isnull=False).exists()


@pytest.mark.django_db
def test_spectrum_is_met_under_the_lights_that_were_read() -> None:
    """Of a spectrum nothing is supposed."""
    studio = fitted()
    grey = wanted_of_spectrum(tuple(0.2 + n / 300 for n in range(31)))
    found = find(FindWish(wanted=grey, base_id=studio.base.pk))
    assert not any(each.is_supposed for each in found.answers[0].under)
    lab, is_supposed = target_under(grey, Light.LED_B3)
    assert (lab, is_supposed) == (found.answers[0].under[2].target, False)


@pytest.mark.django_db
def test_what_cannot_be_searched_is_refused() -> None:
    """No palette, an unknown base, no yarn: one sentence each."""
    base = Base.objects.create(name="Silk", fibres="silk 100 %")
    wish = FindWish(wanted=FERN, base_id=base.pk)
    with pytest.raises(MissingError, match="one swatch of each dye"):
        find(wish)
    studio = fitted()
    with pytest.raises(NotFoundError, match="Silk"):
        find(wish)
    with pytest.raises(OutOfRangeError, match="batch"):
        find(replace(wish, base_id=studio.base.pk, batch_g=-1.0))


@pytest.mark.django_db
def test_search_asks_the_store_few_questions(
    django_assert_max_num_queries: object,
) -> None:
    """However many answers there are."""
    studio = fitted()
    with django_assert_max_num_queries(25):  # type: ignore[operator]
        find(wish_in(studio))


@pytest.mark.django_db
def test_small_dose_off_a_coarse_measure_is_less_sure() -> None:
    """Half a millilitre out of a cylinder of 250 is no dose; 200 ml are."""
    studio = fitted()
    MeasuringTool.objects.create(
        name="Cylinder 250 ml", kind="cylinder", size=250.0, tool_class="B"
    )
    now = palette_now()
    assert now is not None
    at = at_shelf(now.palette, base_id=studio.base.pk, batch_g=100.0)
    small, large = (at.dose_error("Gorse", depth) for depth in (0.005, 2.0))
    assert small > 10 * large
    assert at.dose_error("Kelp", 0.005) == DOSE_ERROR  # nobody said on which scale


@pytest.mark.django_db
def test_dose_that_no_tool_here_weighs_is_not_likely_to_come_out() -> None:
    """Only Gorse has a bottle; 10 mg of the others on a kitchen scale are a guess."""
    studio = fitted()
    MeasuringTool.objects.create(
        name="Kitchen scale", kind="balance", size=500.0, readability=0.1
    )
    pale = wanted_of_text("88, -1, 14")
    answers = find(FindWish(wanted=pale, base_id=studio.base.pk)).answers
    assert {dose.dye_name for dose in answers[0].doses} == {"Gorse"}
    for each in answers:
        if any(dose.missing_g for dose in each.doses):
            assert each.chance < answers[0].chance
            assert each.off_90 > answers[0].off_90
