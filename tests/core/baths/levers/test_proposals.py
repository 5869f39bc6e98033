"""The levers of one dose, and the sentence that proposes the strongest."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.core.baths.levers.makeable import stocks_to_make
from shadewright.core.baths.levers.proposals import dose_levers
from shadewright.core.baths.levers.pulled import Hand, Lever, batch_of, is_worth
from shadewright.core.baths.levers.saying import advice_sentence, share_words
from shadewright.core.baths.levers.ways import Way, can_be_done, reach_rel, way_depth
from shadewright.core.solutions.sureness import labelled_strength
from shadewright.core.uncertainty import exact
from tests.core.baths.levers.studio import (
    CYLINDER,
    KITCHEN,
    MAKING,
    SMALL,
    STRONG,
    SYRINGE,
    WEAK,
    bottle,
    wanted,
    ware,
)

DEVICES = (SYRINGE, CYLINDER, SMALL)
SYRINGED = Way(stock=STRONG, device=SYRINGE)


def said(sentence: str) -> str:
    return sentence.replace("\u00a0", " ")


@pytest.mark.by_hand
def test_a_weaker_bottle_on_the_shelf() -> None:
    # 2 ml of 1 %: ± 15 %; 20 ml of 0.1 % full to the mark: ± 4 % of it, × 0.95
    advice = dose_levers(
        wanted=wanted(),
        way=SYRINGED,
        hand=Hand(stocks=(STRONG, WEAK), devices=(SYRINGE,)),
    )
    assert [each.lever for each in advice.proposals] == [Lever.BOTTLE]
    assert said(advice_sentence(advice=advice)) == (
        "Take bottle G4RR, 0.1 %: 20 ml instead of 2 ml; ± 15 % becomes ± 4 %."
    )


def test_a_stock_to_be_made_says_how() -> None:
    made = stocks_to_make(
        making=MAKING,
        standing=[STRONG],
        devices=DEVICES,
        strengths_percent=[0.1],
    )
    advice = dose_levers(
        wanted=wanted(),
        way=SYRINGED,
        hand=Hand(stocks=(STRONG,), makeable=made, devices=(SYRINGE,)),
    )
    assert said(advice_sentence(advice=advice)).startswith(
        "Make a 0.1 % stock (50 ml of bottle T7KK, weighed, to 500 ml): "
        "20 ml instead of 2 ml; "
    )


SENTENCES = {
    "Measure the 2 ml with the syringe 2ml instead of the syringe 20ml; ": Hand(
        stocks=(STRONG,), devices=(SYRINGE, ware("syringe 2ml"))
    ),
    "Weigh the dose on the small scale: 2 g instead of 2 ml; ": Hand(
        stocks=(STRONG,), devices=(SYRINGE, SMALL)
    ),
    "Dye 300 g of yarn at once, not 100 g: 6 ml instead of 2 ml; ": Hand(
        stocks=(STRONG,), devices=(SYRINGE,), most_yarn_g=350.0
    ),
}


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("start", "after"),
    list(
        zip(
            SENTENCES,
            [
                "5 %",  # a rectangle of 5 % and one of 1 %: 6 − √(0.2 · 5 · 1) = 5.0
                "11 %",  # 10 % for the scale, a triangle of 5 % for reading it
                "6 %",  # 0.36 ml of 6 and 1 %: 7 − √(0.2 · 6 · 1) = 5.9
            ],
            strict=True,
        )
    ),
)
def test_each_lever_has_its_sentence(start: str, after: str) -> None:
    advice = dose_levers(wanted=wanted(), way=SYRINGED, hand=SENTENCES[start])
    sentence = said(advice_sentence(advice=advice))
    assert sentence == f"{start}± 15 % becomes ± {after}."


def test_an_unchecked_scale_is_to_be_checked() -> None:
    dose = wanted(depth=1.0, yarn_g=20.0, yarn_scale=KITCHEN)
    way = Way(stock=STRONG, device=CYLINDER)
    hand = Hand(stocks=(STRONG,), devices=(CYLINDER,))
    advice = dose_levers(wanted=dose, way=way, hand=hand)
    (only,) = advice.proposals
    assert only.lever is Lever.CHECK
    words = said(advice_sentence(advice=advice))
    assert words.startswith(
        "Check the kitchen scale with a check weight: if it is right, ± 13 % becomes "
    )
    checked = replace(dose, yarn_scale=replace(KITCHEN, is_checked=True))
    assert not dose_levers(wanted=checked, way=way, hand=hand).proposals


def test_a_swatch_is_weighed_on_the_finer_scale() -> None:
    dose = wanted(depth=1.0, yarn_g=20.0, yarn_scale=KITCHEN)
    hand = Hand(stocks=(STRONG,), devices=(CYLINDER, SMALL))
    way = Way(stock=STRONG, device=CYLINDER)
    words = said(advice_sentence(advice=dose_levers(wanted=dose, way=way, hand=hand)))
    assert words.startswith(
        "Weigh the yarn on the small scale, not on the kitchen scale; ± 13 % becomes "
    )
    heavy = replace(hand, devices=(CYLINDER, replace(SMALL, most_g=19.0)))
    advice = dose_levers(wanted=dose, way=way, hand=heavy)
    assert Lever.YARN not in {each.lever for each in advice.proposals}


def test_nothing_to_gain_is_said_with_its_reason() -> None:
    way = Way(stock=STRONG, device=CYLINDER)
    hand = Hand(stocks=(STRONG,), devices=(CYLINDER,))
    advice = dose_levers(wanted=wanted(depth=0.5), way=way, hand=hand)
    assert advice.strongest is None
    assert advice.best == advice.now
    assert said(advice_sentence(advice=advice)) == (
        "Nothing to gain: ± 2.4 % is as sure as it gets with what is at hand. "
        "Most of it: mark of the 100 ml cylinder."
    )


def test_a_strength_as_labelled_is_to_be_tested() -> None:
    guess = labelled_strength(strength_percent=1.0, key="T7KK")
    way = Way(stock=replace(STRONG, strength=guess), device=CYLINDER)
    hand = Hand(stocks=(way.stock,), devices=(CYLINDER,))
    advice = dose_levers(wanted=wanted(depth=0.5), way=way, hand=hand)
    assert advice_sentence(advice=advice).endswith(
        "a guess. Test its strength, or make it fresh from weighed powder."
    )


def test_where_nothing_is_known_nothing_is_advised() -> None:
    unknown = replace(STRONG, strength=exact(1.0))
    jug = ware("jug 1000ml")
    sure = replace(jug, tool=replace(jug.tool, error_ml=0.0))
    advice = dose_levers(
        wanted=wanted(), way=Way(stock=unknown, device=sure), hand=Hand()
    )
    assert "No error of this dose is known" in advice_sentence(advice=advice)


def test_what_comes_out_alike_goes_by_its_work_and_is_told() -> None:
    # 10 ml from ± 1 ml; from ± 0.2 ml; or 50 ml of a fifth as strong from ± 1 ml
    pale = wanted(depth=0.5, yarn_g=20.0)
    way = Way(stock=STRONG, device=CYLINDER)
    small = ware("cylinder 10ml B")
    hand = Hand(
        stocks=(STRONG, bottle("K9WW", percent=0.2)),
        devices=(CYLINDER, small),
    )
    advice = dose_levers(wanted=pale, way=way, hand=hand)
    assert [each.lever for each in advice.proposals] == [Lever.TOOL, Lever.BOTTLE]
    first, second = advice.proposals
    assert is_worth(before=advice.now, after=first.after)
    assert first.after == pytest.approx(second.after)
    words = said(advice_sentence(advice=advice))
    assert words.endswith("Bottle K9WW does as much.")


@settings(deadline=None, max_examples=40)
@given(
    st.floats(min_value=0.001, max_value=3.0),
    st.floats(min_value=5.0, max_value=1000.0),
    st.sampled_from(DEVICES),
)
def test_every_proposal_can_be_done_and_narrows(
    depth: float, yarn_g: float, device: object
) -> None:
    way = Way(stock=STRONG, device=device)  # type: ignore[arg-type]
    dose = wanted(depth=depth, yarn_g=yarn_g, yarn_scale=KITCHEN)
    made = stocks_to_make(making=MAKING, standing=[STRONG], devices=DEVICES)
    hand = Hand(
        stocks=(STRONG, WEAK), makeable=made, devices=DEVICES, most_yarn_g=800.0
    )
    advice = dose_levers(wanted=dose, way=way, hand=hand)
    assert advice.best <= advice.now
    for each in advice.proposals:
        assert is_worth(before=advice.now, after=each.after)
        assert each.after == reach_rel(way_depth(wanted=each.wanted, way=each.way))
        if each.lever not in {Lever.CHECK, Lever.YARN}:
            assert can_be_done(wanted=each.wanted, way=each.way)
        assert each.wanted.yarn_g <= max(800.0, yarn_g)
        assert each.wanted.depth_percent == depth


def test_a_batch_keeps_its_liquor_ratio() -> None:
    more = batch_of(wanted(), times=3.0)
    assert (more.yarn_g, more.liquor_ml) == (300.0, 9000.0)


def test_a_spread_in_words() -> None:
    assert said(share_words(0.1234)) == "± 12 %"


def test_a_larger_batch_is_told_last() -> None:
    hand = Hand(
        stocks=(STRONG,), devices=(SYRINGE, ware("syringe 5ml")), most_yarn_g=400.0
    )
    advice = dose_levers(wanted=wanted(), way=SYRINGED, hand=hand)
    first, last = advice.proposals
    assert (first.lever, last.lever) == (Lever.TOOL, Lever.BATCH)
    assert is_worth(before=advice.now, after=last.after)
