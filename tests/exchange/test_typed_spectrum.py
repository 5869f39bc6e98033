"""A spectrum as it is pasted for one colour; tables out of a spreadsheet."""

import pytest

from shadewright.errors import UnreadableError
from shadewright.exchange.spectrum_file import told_apart_spectra
from shadewright.exchange.swatch_file import read_swatches
from shadewright.exchange.table_text import with_commas, with_fractions
from shadewright.exchange.typed_spectrum import typed_spectra

NM = range(400, 701, 10)
RISING = tuple(nm / 1000 for nm in NM)


@pytest.mark.parametrize(
    "text",
    [
        " ".join(f"{r}" for r in RISING),
        ", ".join(f"{r}" for r in RISING),
        ",".join(f"{r}" for r in RISING),
        "\t".join(f"{r}".replace(".", ",") for r in RISING),
        "\n".join(f"{100 * r}" for r in RISING),
        ";".join(f"{100 * r:.1f}".replace(".", ",") for r in RISING),
        " ".join(f"{nm / 10}" for nm in range(400, 701, 20)),
        "\n".join(f"{nm} {nm / 10:.1f}" for nm in NM),
        "\n".join(f"{nm};{nm / 10:.1f}".replace(".", ",") for nm in NM),
        "nm;R\n" + "\n".join(f"{nm};{nm / 10:.1f}".replace(".", ",") for nm in NM),
    ],
)
def test_it_is_read_however_it_is_parted(text: str) -> None:
    (values,) = typed_spectra(text)
    assert values == pytest.approx(RISING)


def test_several_lines_are_several_readings() -> None:
    line = " ".join(["25"] * 31)
    assert typed_spectra(f"{line}\n{line}\n") == ((0.25,) * 31,) * 2


def test_a_whole_text_is_per_cent_or_none_of_it() -> None:
    dark, light = ",".join(["1.5"] * 31), ",".join(["60"] * 31)
    head = ",".join(f"R{nm}" for nm in NM)
    found = told_apart_spectra(f"name,{head}\nPeat,{dark}\nGorse,{light}\n")
    assert [each.values[0] for each in found.spectra] == [0.015, 0.6]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "neither columns R400"),
        ("1 2 3", "3 numbers stand there. Paste 31 numbers from 400 to 700 nm"),
        ("400 0.5\n500 0.5\n600 0.5", "400 to 700 nm"),
        ("rather green", "neither columns R400"),
        (" ".join(["25"] * 31) + "\n1 2", "Line 2: it has 2 cells"),
        ("nm,R\n400,0.5\n500,0.5", "400 to 700 nm"),
    ],
)
def test_what_is_no_spectrum_is_refused(text: str, words: str) -> None:
    with pytest.raises(UnreadableError, match=words) as caught:
        typed_spectra(text)
    assert caught.value.argument == "spectrum"


def test_a_table_out_of_a_spreadsheet_is_read_and_keeps_its_lines() -> None:
    text = (
        "base\tdoses\tL\ta\tb\n"
        "Wool, 4,5 ply\tGorse=0,5;Slate=0,2\t50,5\t-1\t2,5\n\n"
        "Wool\tGorse=1\tx\t1\t1\n"
        "Wool\tGorse=2\t40\t−5,2\t−1\n"
    )
    found = read_swatches(with_commas(text))
    swatch, other = found.swatches
    assert other.reading.values == (40.0, -5.2, -1.0)
    assert swatch.base == "Wool, 4,5 ply"
    assert swatch.doses == (("Gorse", 0.5), ("Slate", 0.2))
    assert swatch.reading.values == (50.5, -1.0, 2.5)
    assert found.rejected[0].line == 4


@pytest.mark.parametrize(
    "text", ["", "base,doses,hex\nWool,A=1;B=2,#123456\n", 'a;b\n"c;d\n']
)
def test_other_texts_stay_as_they_are(text: str) -> None:
    assert with_commas(text) == text


def test_reflectances_of_a_table_are_per_cent_all_or_none() -> None:
    head = "base,doses," + ",".join(f"R{nm}" for nm in range(400, 701, 20))
    dark, light = ",".join(["1.5"] * 16), ",".join(["60"] * 16)
    text = f"{head}\nWool,Peat=5,{dark}\n\nWool,,{light}\nWool,x,{light}\n"
    found = read_swatches(with_fractions(text))
    assert [each.reading.values[0] for each in found.swatches] == [0.015, 0.6]
    assert found.rejected[0].line == 5
    as_fractions = f"{head}\nWool,,{light.replace('60', '0.6')}\n"
    assert with_fractions(as_fractions) == as_fractions
    assert with_fractions('R400\n"x') == 'R400\n"x'
