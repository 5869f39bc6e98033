"""Spectra as people and meters keep them: read, told what is wrong, written."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.errors import UnreadableError
from shadewright.exchange.cgats import read_cgats, written_cgats
from shadewright.exchange.spectrum_file import read_spectra

NM = range(400, 701, 10)
LEVEL = " ".join(["0.25"] * 31)
BANDS = " ".join(f"SPECTRAL_NM{nm}" for nm in NM)


def keyword_text(fields: str, *rows: str) -> str:
    """Return rows as keyword text."""
    head = f'CGATS.17\nORIGINATOR "a test"\n# made up\nBEGIN_DATA_FORMAT\n{fields}\n'
    return "\n".join([f"{head}END_DATA_FORMAT", "BEGIN_DATA", *rows, "END_DATA", ""])


def test_rows_are_read_and_bad_ones_told_with_their_line() -> None:
    text = keyword_text(
        f"SAMPLE_ID SAMPLE_NAME\n{BANDS}",
        f'1 "Gorse ""new"", 1 %" {LEVEL}',
        f"2 Slate {LEVEL} 0.3",
        f"3 Moss {LEVEL.replace('0.25', '25')}",
        f"4 Kelp {LEVEL.replace('0.25', 'x', 1)}",
        f"5 Sloe {LEVEL.replace('0.25', '-0.1', 1)}",
    )
    found = read_spectra(text)
    assert [each.name for each in found.spectra] == ['Gorse "new", 1 %']
    assert found.spectra[0].values == (0.25,) * 31
    assert [each.line for each in found.rejected] == [10, 11, 12, 13]
    whys = [each.why for each in found.rejected]
    assert "34 values for 33 fields" in whys[0]
    assert "divide them all by 100" in whys[1]
    assert "SPECTRAL_NM400 is no number" in whys[2]
    assert "below nothing" in whys[3]


@pytest.mark.parametrize(
    "band", ["SPECTRAL_{nm}", "NM_{nm}", "nm{nm}", "SPECTRAL_NM_{nm}", "{nm}"]
)
def test_columns_are_spelt_in_more_ways_than_one(band: str) -> None:
    fields = "\t".join(band.format(nm=nm) for nm in range(380, 731, 10))
    text = keyword_text(f"SAMPLE_ID\t{fields}", "A1\t" + "\t".join(["0.5"] * 36))
    (spectrum,) = read_spectra(text).spectra
    assert (spectrum.name, spectrum.values) == ("A1", (0.5,) * 31)


def test_a_text_that_was_cut_short_says_so() -> None:
    whole = written_cgats([("Gorse", (0.25,) * 31), ("Slate", (0.5,) * 31)])
    assert read_spectra(whole).rejected == ()
    found = read_spectra(whole.partition('2 "Slate"')[0])
    assert [each.name for each in found.spectra] == ["Gorse"]
    (problem,) = found.rejected
    assert problem.line == 1 + whole.splitlines().index("NUMBER_OF_SETS 2")
    assert problem.why == "it says 2 rows, 1 came; the rest is cut off"


def test_pairs_of_wavelength_and_per_cent() -> None:
    fields = " ".join(["SPECTRAL_NM SPECTRAL_PCT"] * 16)
    row = " ".join(f"{nm} {nm / 10:g}" for nm in range(400, 701, 20))
    (spectrum,) = read_spectra(keyword_text(fields, row)).spectra
    assert spectrum.name == "line 8"
    # A straight line stays one: 0.40, 0.41, 0.42, …
    assert spectrum.values == pytest.approx([nm / 1000 for nm in NM])


@given(
    st.dictionaries(
        st.text(min_size=1, max_size=12).map(lambda text: " ".join(text.split())),
        st.lists(st.floats(0.0, 1.2), min_size=31, max_size=31),
        max_size=3,
    )
)
def test_written_and_read_back_equal(spectra: dict[str, list[float]]) -> None:
    named = {name: values for name, values in spectra.items() if name}
    if not named:
        return
    found = read_cgats(written_cgats(named.items()))
    assert not found.rejected
    back = {name: list(each.values) for name, each in found.by_name.items()}
    assert back == named


def test_a_table_by_rows_or_by_columns() -> None:
    head = "name," + ",".join(f"R{nm}" for nm in NM)
    across = read_spectra(f"{head}\nGorse,{LEVEL.replace(' ', ',')}\nSlate,1\n")
    assert across.by_name["Gorse"].values == (0.25,) * 31
    assert across.rejected[0].line == 3
    rows = "".join(f"{nm},{nm / 1000},55\n" for nm in range(360, 751, 5))
    down = read_spectra(f"wavelength (nm),Gorse,Slate\n{rows}")
    assert down.by_name["Gorse"].values == pytest.approx([nm / 1000 for nm in NM])
    assert "column Slate: a reflectance is 55" in down.rejected[0].why


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "neither columns R400"),
        ("a,b\n1,2\n", "neither columns R400"),
        ("nm,R\n", "It has no rows"),
        ("nm,R\n400,0.5\n500\n", "line 3 has no value"),
        ("nm,R\n400,0.5\n500,0.5\n", "400 to 700 nm"),
        ("R400,R500\n", "It has no rows"),
        ("nm,R\n400,lab(50 1 2)\n", "CSS lab"),
        (keyword_text("SAMPLE_ID LAB_L", "1 50"), "band of a spectrum"),
        (keyword_text(BANDS), "no rows of data"),
        (keyword_text(BANDS, "0.5 0.5"), "2 values for 31 fields"),
    ],
)
def test_no_spectrum_at_all(text: str, words: str) -> None:
    with pytest.raises(UnreadableError, match=words):
        read_spectra(text)


@given(st.text(max_size=200))
def test_no_text_is_worse_than_refused(text: str) -> None:
    for head in ("", "nm,R\n", "R400,R700\n", f"BEGIN_DATA_FORMAT\n{BANDS}\n"):
        try:
            found = read_spectra(head + text)
        except UnreadableError:
            continue
        assert all(each.why for each in found.rejected)
