"""Yarn split into baths: by load, as few and as alike as can be."""

from collections.abc import Sequence
from itertools import product
from math import ceil, floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.planning.loads import MOST_BATHS, SplitPot, pot_load_g
from shadewright.core.planning.sharing import allotted, filled_up
from shadewright.core.planning.side_by_side import split_side_by_side
from shadewright.core.planning.splits import even_parts_g, split_skeins
from shadewright.errors import MissingError, OutOfRangeError

SMALL = SplitPot(name="Small pot", volume_l=10.0)
OTHER = SplitPot(name="Other pot", volume_l=10.0)
LARGE = SplitPot(name="Large pot", volume_l=40.0)

weights = st.lists(st.floats(20.0, 300.0), min_size=1, max_size=30)
few = st.lists(st.integers(1, 30), min_size=1, max_size=7)


@pytest.mark.by_hand
def test_a_pot_takes_its_load() -> None:
    # 10 l / 1.1 = 9.0909 l of liquor; at 30 ml to the gram that is 303.03 g.
    load = pot_load_g(volume_l=10.0, liquor_ratio=30.0)
    assert load == pytest.approx(303.0303, abs=5e-5)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "pots", "told"),
    [
        # 40 l take 1212 g: twelve skeins in one.
        (12, (SMALL, LARGE), [("Large pot", 1, 12)]),
        # Three skeins a small pot; the pots go round twice.
        (
            11,
            (SMALL, OTHER),
            [
                ("Small pot", 1, 3),
                ("Other pot", 1, 3),
                ("Small pot", 2, 3),
                ("Other pot", 2, 2),
            ],
        ),
        # 13 are more than one large pot: 7 and 6, not 12 and 1.
        (13, (LARGE,), [("Large pot", 1, 7), ("Large pot", 2, 6)]),
    ],
)
def test_skeins_alike(
    skeins: int, pots: Sequence[SplitPot], told: list[tuple[str, int, int]]
) -> None:
    baths = split_skeins(skeins_g=[100.0] * skeins, pots=pots, liquor_ratio=30.0)
    assert [(each.pot, each.turn, len(each.skeins_g)) for each in baths] == told


@given(skeins=weights, least=st.integers(1, 5))
def test_every_skein_is_dyed_once_in_a_pot_that_holds_it(
    skeins: list[float], least: int
) -> None:
    baths = split_skeins(
        skeins_g=skeins, pots=(SMALL, OTHER), liquor_ratio=30.0, least_baths=least
    )
    assert sorted(g for bath in baths for g in bath.skeins_g) == sorted(skeins)
    assert all(bath.fibre_g <= bath.load_g * (1 + 1e-9) for bath in baths)
    assert len(baths) >= min(least, len(skeins))
    assert all(bath.skeins_g for bath in baths)


@given(skeins=few, count=st.integers(1, 3))
def test_the_heaviest_bath_keeps_grahams_bound(skeins: list[int], count: int) -> None:
    """Against every way to deal the skeins, tried one by one."""
    best = min(
        max(sum(g for g, at in zip(skeins, way, strict=True) if at == n) for n in way)
        for way in product(range(count), repeat=len(skeins))
    )
    huge = SplitPot(name="Vat", volume_l=1000.0)
    baths = split_skeins(
        skeins_g=skeins, pots=(huge,), liquor_ratio=30.0, least_baths=count
    )
    bound = 4.0 / 3.0 - 1.0 / (3.0 * count)
    assert baths[0].fibre_g <= bound * best * (1 + 1e-9)


def test_one_skein_too_heavy_says_the_ways_on() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        split_skeins(skeins_g=[400.0, 100.0], pots=(SMALL,), liquor_ratio=30.0)
    said = refused.value.sentence.replace("\u00a0", " ")
    assert "at most 303 g, which Small pot takes at 1:30" in said
    assert "dye at 1:22.7, or wind it off" in said
    # 400 g at 22.7 ml to the gram: 9.08 l, a tenth more is 9.99 l.
    assert len(split_skeins(skeins_g=[400.0], pots=(SMALL,), liquor_ratio=22.7)) == 1


def test_a_liquor_too_short_is_not_proposed() -> None:
    with pytest.raises(OutOfRangeError) as refused:
        split_skeins(skeins_g=[4000.0], pots=(SMALL,), liquor_ratio=30.0)
    assert "dye at" not in refused.value.sentence


@pytest.mark.parametrize(
    ("skeins", "pots", "argument"), [((), (SMALL,), "skeins"), ((100.0,), (), "pots")]
)
def test_without_yarn_or_pot(
    skeins: tuple[float, ...], pots: tuple[SplitPot, ...], argument: str
) -> None:
    with pytest.raises(MissingError) as missing:
        split_skeins(skeins_g=skeins, pots=pots, liquor_ratio=30.0)
    assert missing.value.argument == argument


def test_a_slip_of_the_pen_is_no_thousand_baths() -> None:
    with pytest.raises(OutOfRangeError, match=str(MOST_BATHS)):
        split_skeins(skeins_g=[300.0] * 300, pots=(SMALL,), liquor_ratio=30.0)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("skeins", "told"),
    [
        # 303 g and 1212 g: eleven skeins fit into the large pot alone.
        (11, [("Large pot", 1, 11)]),
        # 12 of 12.12 and 2 of 3.03; the last could go to either and goes to the large.
        (14, [("Large pot", 1, 12), ("Small pot", 1, 2)]),
        # 16 are more than both hold at once: the large one twice, and no third bath.
        (16, [("Large pot", 1, 8), ("Large pot", 2, 8)]),
    ],
)
def test_side_by_side(skeins: int, told: list[tuple[str, int, int]]) -> None:
    baths = split_side_by_side(
        skeins_g=[100.0] * skeins, pots=(SMALL, LARGE), liquor_ratio=30.0
    )
    assert [(each.pot, each.turn, len(each.skeins_g)) for each in baths] == told


@given(skeins=weights, least=st.integers(1, 5))
def test_side_by_side_every_skein_is_dyed_once(skeins: list[float], least: int) -> None:
    baths = split_side_by_side(
        skeins_g=skeins,
        pots=(SMALL, OTHER, LARGE),
        liquor_ratio=30.0,
        least_baths=least,
    )
    assert sorted(g for bath in baths for g in bath.skeins_g) == sorted(skeins)
    assert all(bath.fibre_g <= bath.load_g * (1 + 1e-9) for bath in baths)
    assert len(baths) >= min(least, len(skeins))
    assert len({(bath.pot, bath.turn) for bath in baths}) == len(baths)


@given(skeins=st.integers(1, 60))
def test_no_pot_is_filled_more_often_than_it_must_be(skeins: int) -> None:
    """Three skeins each in the small pots, twelve in the large one: 18 a filling."""
    baths = split_side_by_side(
        skeins_g=[100.0] * skeins, pots=(SMALL, OTHER, LARGE), liquor_ratio=30.0
    )
    assert max(bath.turn for bath in baths) == ceil(skeins / 18)


def test_a_jar_that_holds_no_skein_is_no_pot() -> None:
    jar = SplitPot(name="Jar", volume_l=1.0)
    baths = split_side_by_side(
        skeins_g=[100.0] * 6, pots=(SMALL, jar), liquor_ratio=30.0
    )
    assert {bath.pot for bath in baths} == {"Small pot"}
    with pytest.raises(OutOfRangeError, match=str(MOST_BATHS)):
        split_side_by_side(skeins_g=[300.0] * 300, pots=(SMALL,), liquor_ratio=30.0)


@given(grams=st.floats(1.0, 20_000.0))
def test_loose_yarn_is_shared_evenly(grams: float) -> None:
    parts = even_parts_g(fibre_g=grams, pots=(SMALL,), liquor_ratio=30.0)
    load = pot_load_g(volume_l=10.0, liquor_ratio=30.0)
    assert sum(parts) == pytest.approx(grams)
    assert len(parts) == ceil(grams / load * (1 - 1e-9))
    assert max(parts) <= load * (1 + 1e-9)


@pytest.mark.by_hand
def test_what_one_pot_holds_goes_into_the_smallest_that_does() -> None:
    pots = [
        SplitPot(name=name, volume_l=volume_l)
        for name, volume_l in (("Big", 30.0), ("Mid", 20.0), ("Small", 5.0))
    ]  # 909, 606 and 151 g at 1:30
    baths = split_side_by_side(skeins_g=[100.0] * 3, pots=pots, liquor_ratio=30.0)
    assert [(bath.pot, len(bath.skeins_g)) for bath in baths] == [("Mid", 3)]


@given(
    skeins=st.integers(1, 40),
    skein_g=st.floats(20.0, 300.0),
    pots=st.sampled_from([(SMALL,), (SMALL, LARGE), (SMALL, OTHER)]),
)
def test_whole_pots_hold_no_further_skein(
    skeins: int, skein_g: float, pots: tuple[SplitPot, ...]
) -> None:
    baths = split_skeins(skeins_g=[skein_g] * skeins, pots=pots, liquor_ratio=30.0)
    whole, more = filled_up(baths=baths, skein_g=skein_g)
    for bath in whole:
        assert len(bath.skeins_g) == floor(bath.load_g / skein_g * (1 + 1e-9))
    alike, _ = filled_up(baths=baths, skein_g=skein_g, most_g=baths[-1].load_g)
    assert all(
        len(one.skeins_g) <= max(len(two.skeins_g), len(had.skeins_g))
        for one, two, had in zip(alike, whole, baths, strict=True)
    )
    assert sum(len(bath.skeins_g) for bath in whole) == skeins + more
    assert all(bath.fibre_g <= bath.load_g * (1 + 1e-9) for bath in whole)


@given(
    places=st.lists(st.integers(0, 12), min_size=1, max_size=6),
    wanted=st.lists(st.integers(1, 12), max_size=5),
)
def test_skeins_are_given_away_once(places: list[int], wanted: list[int]) -> None:
    rows = allotted(places=places, wanted=wanted)
    for row, want in zip(rows, wanted, strict=True):
        assert sum(row) <= want
    given_away = [sum(row[bath] for row in rows) for bath in range(len(places))]
    assert all(used <= room for used, room in zip(given_away, places, strict=True))
    assert sum(given_away) == min(sum(places), sum(wanted))


@pytest.mark.by_hand
def test_a_jumper_comes_from_one_lot() -> None:
    # Six skeins go into the bath of six, though the bath of eight comes first;
    # five more fit whole into the eight, and the two left over take what is left.
    assert allotted(places=[8, 6], wanted=[5, 6, 2]) == ((5, 0), (0, 6), (2, 0))
    assert allotted(places=[3, 3], wanted=[5]) == ((3, 2),)
