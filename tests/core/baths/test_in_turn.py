"""Baths that draw on the same bottles one after the other."""

from collections import defaultdict

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.baths.choosing import Candidate, chosen_bottles
from shadewright.core.baths.in_turn import DoseInTurn, chosen_in_turn, enough_for


def bottle(code: str, usable_ml: float, strength: float = 1.0) -> Candidate:
    return Candidate(
        code=code,
        strength_percent=strength,
        usable_ml=usable_ml,
        age_days=3,
        is_good=True,
    )


@pytest.mark.by_hand
def test_enough_for_seven_of_eight() -> None:
    # Eight pots of 300 g at 0.6 %: 1.8 g, 180 ml of 1 % each, 1440 ml in all.
    pots = [DoseInTurn(dye_g=1.8, liquor_ml=9000.0)] * 8
    chosen = chosen_in_turn(
        doses=pots, bottles=[bottle("K9WQ", 900.0), bottle("T7KK", 450.0)]
    )
    assert enough_for(chosen) == 7
    # 1350 ml serve seven and leave 90 ml: 0.9 g are missing of the eighth.
    assert chosen[-1].missing_g == pytest.approx(0.9)


def test_one_bath_chooses_as_if_it_were_alone() -> None:
    bottles = [bottle("K9WQ", 30.0), bottle("T7KK", 500.0)]
    alone = chosen_bottles(dye_g=0.6, liquor_ml=3000.0, bottles=bottles)
    dose = DoseInTurn(dye_g=0.6, liquor_ml=3000.0)
    assert chosen_in_turn(doses=[dose], bottles=bottles) == (alone,)


def test_without_a_bottle_it_is_enough_for_none() -> None:
    chosen = chosen_in_turn(doses=[DoseInTurn(dye_g=0.6, liquor_ml=3000.0)], bottles=[])
    assert enough_for(chosen) == 0
    assert chosen[0].missing_g == 0.6
    assert enough_for(()) == 0


@given(
    doses=st.lists(st.floats(0.01, 3.0), max_size=8),
    held=st.lists(st.floats(0.0, 300.0), max_size=4),
)
def test_no_bottle_gives_more_than_it_holds(
    doses: list[float], held: list[float]
) -> None:
    bottles = [bottle(f"B{at}", ml) for at, ml in enumerate(held)]
    chosen = chosen_in_turn(
        doses=[DoseInTurn(dye_g=g, liquor_ml=3000.0) for g in doses], bottles=bottles
    )
    taken: defaultdict[str, float] = defaultdict(float)
    for each in chosen:
        for share in each.shares:
            taken[share.code] += share.volume_ml
    assert all(taken[one.code] <= one.usable_ml + 1e-6 for one in bottles)
    given_g = sum(share.dye_g for each in chosen for share in each.shares)
    missing_g = sum(each.missing_g for each in chosen)
    assert given_g + missing_g == pytest.approx(sum(doses), abs=1e-6)
