"""A history is read up to the lot asked about, or refused with all its faults."""

import pytest

from shadewright.core.colour import Lab
from shadewright.core.quality import Drift, Factor, LotCauses, lot_causes
from shadewright.errors import NotFoundError, UnreadableError
from shadewright.exchange.lot_history import (
    causes_answer,
    read_history,
    unread_columns,
)

HEAD = (
    "lot,date,L,a,b,jar,bottle,bottle_age_days,mill_lot,water,pot,load_g_per_l,"
    "ramp_c_per_min,hold_min,acid_after_min,person"
)
FIRST = "L1,2026-03-02,48.1,22.0,9.7,J1,B3,12,M7,rain,P1,26,1.5,45,15,first"
SECOND = "L2,2026-03-09,48.2,21.9,9.8,,B3,,M7,rain,P2,,1.5,,15,"
BARE = "lot,L,a,b\n"


def test_every_column_is_read() -> None:
    first, second = read_history(f"{HEAD}\n{FIRST}\n{SECOND}\n", number="L2")
    assert first.colour == Lab(48.1, 22.0, 9.7)
    assert [getattr(first, factor) for factor in Factor] == [
        *("J1", "B3", 12.0, "M7", "rain", "P1", 26.0, 1.5, 45.0, 15.0, "first")
    ]
    assert (second.jar, second.bottle_age_days, second.person) == (None, None, None)


def test_rows_after_the_lot_are_not_read() -> None:
    text = f"{HEAD}\n{FIRST}\n{SECOND}\nL3,no date,not,a,colour\n"
    assert [lot.number for lot in read_history(text, number="l2")] == ["L1", "L2"]


def test_columns_may_be_missing_in_another_order_or_more() -> None:
    text = "note,b,a,L,lot,jar\nfine,9.7,22,48.1,7,J1\n"
    (lot,) = read_history(text, number="7")
    assert (lot.colour, lot.jar, lot.pot) == (Lab(48.1, 22.0, 9.7), "J1", None)


def test_a_column_that_is_misspelt_is_found() -> None:
    assert unread_columns("lot,L,a,b,hold,jar,note,date\n") == ("hold",)


def test_a_spreadsheet_that_writes_commas_in_numbers() -> None:
    text = "\ufeffLot;L*;a*;b*;Hold_min\nL1;48,1;22,0;9,7;45,5\n"
    (lot,) = read_history(text, number="L1")
    assert (lot.colour, lot.hold_min) == (Lab(48.1, 22.0, 9.7), 45.5)


def test_one_date_may_be_a_slip() -> None:
    rows = "1,2026-03-02,48,2,3\n2,2025-03-09,48,2,3\n3,2026-03-16,48,2,3\n"
    lots = read_history(f"lot,date,L,a,b\n{rows}4,Easter,48,2,3\n", number="4")
    assert len(lots) == 4


def test_a_lot_that_was_never_read_has_no_colour() -> None:
    lots = read_history(f"{BARE}1,48,2,3\n2,,,\n", number="2")
    assert lots[1].colour is None


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "It is empty"),
        ("lot,L,a\n1,2,3\n", "lacks b"),
        ("L,jar\n1,2\n", "lacks lot and a and b"),
        ("lot,L,a,b,jar,jar\n", "Column jar stands there twice"),
        (f"{BARE}1,48,2\n", "Line 2: it has 3 cells where the first row has 4"),
        (f"{BARE},48,2,3\n", "Line 2: no lot is named"),
        (f"{BARE}1,48,2,x\n", "Line 2: b is no number: “x”"),
        (f"{BARE}1,48,,3\n", "L, a and b must all be written"),
        (f"{BARE}1,148,2,3\n", "L is 148, outside 0 to 100"),
        (f"{BARE}1,48,2,nan\n", "b is no number"),
        (f"{BARE}1,48,2,300\n", "b is 300"),
        (f"{BARE}1,48,2,3\n1,48,2,3\n", "Line 3: lot 1 stands in line 2 too"),
        ("lot,L,a,b,hold_min\n1,48,2,3,-5\n", "hold_min is -5, outside 0 to 10000"),
        ("lot,L,a,b,hold_min\n1,48,2,3,long\n", "hold_min is no number"),
        (
            "lot,date,L,a,b\n1,2026-03-02,48,2,3\n2,2026-02-02,48,2,3\n",
            "Its dates go back from row to row. Put the oldest lot first.",
        ),
    ],
)
def test_what_cannot_be_read_is_said(text: str, said: str) -> None:
    with pytest.raises(UnreadableError) as refused:
        read_history(text, number="9")
    assert said in f"{refused.value}"


def test_all_faults_are_said_at_once() -> None:
    rows = "".join(f"{n},48,2,x\n" for n in range(8))
    with pytest.raises(UnreadableError) as refused:
        read_history(f"{BARE}{rows}", number="7")
    said = f"{refused.value}"
    assert "Line 2: b is no number: “x”; line 3: b" in said
    assert said.endswith("and 3 lines more.")


def test_a_lot_that_is_not_there() -> None:
    with pytest.raises(NotFoundError, match="It goes from 1 to 2"):
        read_history(f"{BARE}1,48,2,3\n2,48,2,3\n", number="9")


def test_an_answer_has_the_agreed_keys() -> None:
    rows = "".join(f"{n},{48 + n % 2 / 5},22,{9 + n % 3 / 5},J1\n" for n in range(9))
    text = f"lot,L,a,b,jar\n{rows}9,51,20,9,J2\n"
    answer = causes_answer(lot_causes(read_history(text, number="9")))
    assert list(answer) == [
        *("de", "expected_de", "verdict", "causes", "unknown", "signals")
    ]
    assert isinstance(answer["causes"], list)
    first = answer["causes"][0]
    assert first == {
        "factor": "jar",
        "was": "J1",
        "now": "J2",
        "score": pytest.approx(first["score"]),
        "expected_shift": None,
    }


def test_where_there_is_no_distance_it_is_said_why() -> None:
    found = LotCauses(
        verdict=Drift.CANNOT_TELL,
        de=None,
        expected_de=0.4,
        why="its colour was not read",
    )
    answer = causes_answer(found)
    assert (answer["de"], answer["de_why"]) == (None, "its colour was not read")
