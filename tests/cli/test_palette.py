"""``shadewright palette``: from a table of swatches to a colour foretold."""

import json
import os
from pathlib import Path

import numpy as np
import pytest

from shadewright.cli import run
from shadewright.core.colour.differences.ciede2000_arrays import ciede2000_arrays
from shadewright.core.mixing import Evidence
from shadewright.exchange.swatch_file import written_swatches
from tests.cli.typed import Terminal
from tests.core.mixing.worlds import Lab, ladder, world

TRUTH = world(3, "flags", 0.004, dyes=4)


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with a table of swatches, two of whose rows are bad."""
    folder = tmp_path_factory.mktemp("palette")
    bench = Lab(TRUTH, np.random.default_rng(1))
    swatches = bench.read(ladder(4), Evidence.LAB, 0.3, session="May")
    table = written_swatches(swatches).splitlines()
    cells = table[5].split(",")
    table += [",".join(["wool", "Gorse", *cells[2:]]), "wool,d01=1"]
    (folder / "swatches.csv").write_text("\n".join(table), encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def fitted(files: Path) -> Path:
    """Return the palette that the table gives."""
    path = files / "palette.json"
    assert run(["palette", "fit", f"{files}/swatches.csv", "-o", f"{path}"]) == 0
    return path


def test_fit_says_what_it_used_and_what_not(files: Path, typed: Terminal) -> None:
    line = f"palette fit {files}/swatches.csv -o {files}/again.json"
    answer = typed(f"{line} --json").answer
    assert answer["swatches_used"] == 17
    assert [row["line"] for row in answer["rejected"]] == [19, 20]
    assert answer["bases"] == ["wool"]
    assert answer["leave_one_out"]["median_de"] < 1.0
    assert answer["suspect"] == []
    shown = typed(line).out
    assert "Line 19 was left out" in shown


def test_a_mix_is_foretold(fitted: Path, typed: Terminal) -> None:
    line = f"palette predict {fitted} --base wool --dose d00=0.4% --dose d02=0.2%"
    answer = typed(f"{line} --session May --light A --light FL11 --json").answer
    true = TRUTH.lab(np.array([[0.4, 0.0, 0.2, 0.0]]))
    off = float(ciede2000_arrays(np.array([answer["lab"]]), true)[0])
    assert off <= answer["de_90"]
    assert 0 < answer["expected_de"] < answer["de_90"]
    assert len(answer["reflectance"]) == len(answer["wavelength_nm"]) == 31
    assert set(answer["lab_by_light"]) == {"A", "FL11"}
    assert answer["hex"].startswith("#")
    assert answer["evidence"] == "lab"
    new_day = typed(f"{line} --json").answer
    assert new_day["de_90"] > answer["de_90"]
    assert "in nine of ten" in typed(line).out


def test_many_mixes_from_a_table(files: Path, fitted: Path, typed: Terminal) -> None:
    table = files / "doses.csv"
    table.write_text("doses\nd00=0.4\n\nd01=1;d03=0.2\n", encoding="utf-8")
    line = f"palette predict {fitted} --base wool --doses {table} --json"
    found = typed(line).answer["predictions"]
    assert [len(each["doses"]) for each in found] == [1, 2]


def test_the_next_swatches_have_falling_gains(fitted: Path, typed: Terminal) -> None:
    line = f"palette next {fitted} --base wool --count 4"
    found = typed(f"{line} --json").answer["swatches"]
    gains = [each["expected_gain"] for each in found]
    assert len(found) == 4
    assert all(gain > 0 for gain in gains)
    assert gains[0] == max(gains)
    towards = typed(f"{line} --towards '#a0522d' --json").answer["swatches"]
    assert towards != found


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ("", "It has no rows"),
        ("d00=1\nd01=-1", "Line 3: Depth of d01 must be above 0"),
        ("d00=1\nd01=60", "Line 3: Depth of d01 must be above 0"),
        ("d00", "Line 2: the dose “d00” is not written as Gorse=0.5."),
        (f"d00={'1' * 200_000}", "It is no table (field larger"),
        ("d00=1;d00=2", "Line 2: d00 stands in it twice."),
    ],
)
def test_a_bad_table_of_doses_gets_one_sentence(
    tmp_path: Path, fitted: Path, typed: Terminal, rows: str, words: str
) -> None:
    table = tmp_path / "doses.csv"
    table.write_text(f"doses\n{rows}", encoding="utf-8")
    line = f"palette predict {fitted} --base wool --doses {table}"
    assert words in typed(line).refusal


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("predict {p} --base silk --dose d00=1%", "There is no base in this palette"),
        ("predict {p} --base wool --dose Gorse=1%", "There is no dye in this palette"),
        ("predict {p} --base wool", "one of the two"),
        ("predict {p} --base wool --dose d00=1% --session June", "It knows May"),
        ("predict {p} --base wool --dose d00=1% --light Z", "one of A, D50"),
        ("predict {p}x --base wool --dose d00=1%", "No such file"),
        ("next {p} --base wool --count 0", "a whole number from 1 up"),
        ("next {p} --base wool --count 99", "from 1 to 60"),
        ("fit {p} -o out.json", "first row lacks"),
    ],
)
def test_bad_input_gets_one_sentence(
    fitted: Path, typed: Terminal, line: str, words: str
) -> None:
    assert words in typed(f"palette {line.format(p=fitted)}").refusal


def test_the_same_file_gives_the_same_palette(files: Path, typed: Terminal) -> None:
    line = f"palette fit {files}/swatches.csv --json -o"
    typed(f"{line} {files}/one.json")
    typed(f"{line} {files}/two.json")
    one, two = ((files / f"{name}.json").read_bytes() for name in ("one", "two"))
    assert one == two
    assert json.loads(one)["version"] == 1


def test_the_terminals_threads_do_not_count(
    fitted: Path, typed: Terminal, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("OPENBLAS_NUM_THREADS", "2")  # which sums in another order
    assert typed(f"palette predict {fitted} --base wool --dose d00=1%").status == 0
    assert os.environ["OPENBLAS_NUM_THREADS"] == "1"
