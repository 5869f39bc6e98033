"""Swatches as a table: read, told what is wrong with a row, written."""

import csv
import io
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.mixing import Evidence
from shadewright.errors import UnreadableError
from shadewright.exchange.swatch_file import read_swatches, written_swatches
from shadewright.exchange.table_lines import lines_to_mend, table_lines
from tests.core.mixing.worlds import Lab, ladder, world

LAB = "base,doses,L,a,b,L_A,a_A,b_A,L_FL11,a_FL11,b_FL11,hex,repeat,sd,session\n"
SPECTRUM = "base,doses," + ",".join(f"R{nm}" for nm in range(400, 701, 20)) + "\n"


def row(text: str) -> str:
    """Fill a row up to the head of ``LAB``."""
    return text + "," * (14 - text.count(",")) + "\n"


def why(text: str, head: str = LAB) -> str:
    """Return why the only row of a table is refused."""
    found = read_swatches(head + text)
    assert not found.swatches
    assert found.rejected[0].line == 2
    return found.rejected[0].why


def test_a_row_of_each_kind() -> None:
    rows = [
        row("Fell DK,,92,-0.4,7.9"),
        row("Fell DK,Gorse=0.5;Slate = 0.2 %,55,3.2,21.7,60,4,25,58,3,24"),
        row("Fell DK,Gorse=1,,,,,,,,,,#a0522d"),
    ]
    found = read_swatches("\ufeff" + LAB + "".join(rows))
    assert not found.rejected
    kinds = [each.reading.evidence for each in found.swatches]
    assert kinds == [Evidence.LAB, Evidence.THREE_LIGHTS, Evidence.SCREEN]
    assert found.swatches[1].doses == (("Gorse", 0.5), ("Slate", 0.2))
    assert [each.number for each in found.swatches] == [2, 3, 4]


def test_bands_of_twenty_are_filled_in() -> None:
    values = ",".join(f"{0.1 + 0.02 * place:g}" for place in range(16))
    (swatch,) = read_swatches(SPECTRUM + f"wool,Gorse=1,{values}\n").swatches
    # A straight line stays one: 0.1, 0.11, 0.12, …
    np.testing.assert_allclose(swatch.reading.values, 0.1 + 0.01 * np.arange(31))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (row(",Gorse=1,50,1,2"), "no base"),
        (row("wool,Gorse,50,1,2"), "not written as Gorse=0.5"),
        (row("wool,Gorse=1;Gorse=2,50,1,2"), "Gorse stands in it twice"),
        (row("wool,Gorse=-1,50,1,2"), "Depth of Gorse must be above 0"),
        (row("wool,Gorse=x,50,1,2"), "the depth of Gorse is no number"),
        (row("wool,Gorse=1,150,1,2"), "L* under D65 must be from 0"),
        (row("wool,Gorse=1,50,1"), "must all be written"),
        (row("wool,Gorse=1"), "no colour is written"),
        (row("wool,Gorse=1,lab(50 1 2),1,2"), "CSS lab(), which means another light"),
        (row("wool,Gorse=1,50,nan,2"), "a is no number"),
        (row("wool,Gorse=1,,,,,,,,,,lab(50 1 2)"), "another light"),
        (row("wool,Gorse=1,50,1,2,,,,,,,,0"), "repeat is no whole number"),
        (row("wool,Gorse=1,50,1,2,,,,,,,,,-1"), "Spread (sd) must be above 0"),
        ("wool,Gorse=1\n", "it has 2 cells where the first row has 15"),
    ],
)
def test_a_bad_row_says_why(text: str, words: str) -> None:
    assert words in why(text).replace("\u00a0", " ")


def test_reflectances_in_per_cent_and_with_gaps() -> None:
    percent = ",".join(["55"] * 16)
    assert "divide them all by 100" in why(f"wool,,{percent}\n", SPECTRUM)
    gap = ",".join(["0.5"] * 7 + [""] + ["0.5"] * 8)
    assert "at 540 nm is missing" in why(f"wool,,{gap}\n", SPECTRUM)
    short = "base,doses,R420,R440,R460\n"
    assert "400 to 700 nm" in why("wool,,0.5,0.5,0.5\n", short)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "It is empty"),
        ("doses,L,a,b\n", "lacks base"),
        ("base,doses,date\n", "no column for a colour"),
        ("base,doses,L,a,b,L\n", "stands there twice"),
        ('base,doses,L,a,b\nwool,"Gorse=1,50,1,2\n', "no row of a table"),
    ],
)
def test_no_such_table(text: str, words: str) -> None:
    with pytest.raises(UnreadableError, match=words):
        read_swatches(text)


@pytest.mark.parametrize("evidence", [Evidence.LAB, Evidence.SPECTRUM])
def test_written_and_read_back_equal(evidence: Evidence) -> None:
    bench = Lab(world(3, "flags", 0.004, dyes=3), np.random.default_rng(1))
    swatches = bench.read(ladder(3), evidence, 0.3, session="May")
    back = read_swatches(written_swatches(swatches))
    assert not back.rejected
    assert [each.reading for each in back.swatches] == [s.reading for s in swatches]
    assert [each.doses for each in back.swatches] == [s.doses for s in swatches]
    assert {each.session for each in back.swatches} == {"May"}


def test_a_screens_colour_is_written_as_its_hex_where_it_has_one() -> None:
    (read,) = read_swatches(LAB + row("wool,Gorse=1,,,,,,,,,,#a0522d")).swatches
    beyond = replace(read.reading, values=(60.0, 100.0, -80.0))
    text = written_swatches(
        [read, replace(read, number=3, reading=beyond)],
        dates={2: "2026-05-01"},
        notes={3: "vivid, very"},
    )
    back = read_swatches(text)
    assert back.swatches[0].reading == read.reading
    assert back.swatches[1].reading.values == (60.0, 100.0, -80.0)
    lines = table_lines(text)
    assert lines.cell(2, "date") == "2026-05-01"
    assert lines.cell(3, "note") == "vivid, very"


def test_bad_rows_go_out_with_their_reasons_and_come_back_mended() -> None:
    text = LAB + row("wool,Gorse=1,50,1,2") + row("wool,Gorse=x,51,1,2")
    rejected = read_swatches(text).rejected
    out = lines_to_mend(table_lines(text), rejected)
    assert out.splitlines()[1].endswith("the depth of Gorse is no number: “x”")
    mended = read_swatches(out.replace("Gorse=x", "Gorse=2"))
    assert mended.swatches[0].doses == (("Gorse", 2.0),)
    again = lines_to_mend(table_lines(out), read_swatches(out).rejected)
    assert again.splitlines()[0].count("reason") == 1


def test_no_spreadsheet_reckons_with_a_word() -> None:
    """Names and notes of somebody else come back as they were, numbers as numbers."""
    swatch = read_swatches(LAB + row("'=A1,@dye=1,50,-1,2")).swatches[0]
    assert (swatch.base, swatch.doses) == ("=A1", (("@dye", 1.0),))
    text = written_swatches([swatch], notes={2: '=HYPERLINK("x")', 3: "-"})
    cells = next(csv.reader(io.StringIO(text.splitlines()[1])))
    assert not [x for x in cells if x[:1] in set("=+@")]
    assert "-1.0" in cells
    assert table_lines(text).cell(2, "note") == '=HYPERLINK("x")'
    back = read_swatches(text).swatches[0]
    assert (back.base, back.doses) == (swatch.base, swatch.doses)
    bad = LAB + row("'+yarn,Gorse=x,51,-1,2")
    out = lines_to_mend(table_lines(bad), read_swatches(bad).rejected)
    assert out.splitlines()[1].startswith("'+yarn,Gorse=x,51,-1,2")


@given(st.text(max_size=200))
def test_no_text_is_worse_than_refused(text: str) -> None:
    for head in ("", LAB, SPECTRUM):
        try:
            found = read_swatches(head + text)
        except UnreadableError:
            continue
        assert all(each.why for each in found.rejected)


def test_uneven_bands_are_told_by_their_steps() -> None:
    nm = [nm for nm in range(400, 701, 10) if nm != 450]
    head = ",".join(f"R{each}" for each in nm)
    row = ",".join("0.5" for _each in nm)
    (rejected,) = read_swatches(f"base,doses,{head}\nwool,,{row}").rejected
    assert rejected.why.endswith("got 400 to 700 nm in steps of 10 and 20 nm")
