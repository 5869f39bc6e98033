"""``shadewright palette fit`` with bad files: faults are told, and nothing crashes."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing import Evidence, Swatch
from shadewright.core.mixing.model.seeing import as_seen
from shadewright.core.mixing.model.shapes import wavelengths_nm
from shadewright.core.mixing.swatches import seen_of
from shadewright.exchange.swatch_file import written_swatches
from tests.cli.typed import Terminal
from tests.core.mixing.worlds import Lab, ladder, world

_PLAIN = world(3, "flags", 0.004, dyes=5)
CREAM = 1.0 + 2.0 * np.exp((400.0 - wavelengths_nm()) / 80.0)
TRUTH = replace(_PLAIN, ground=_PLAIN.ground * CREAM)
DEPTHS = ladder(5)
Row = list[str]


def read(evidence: Evidence) -> list[Swatch]:
    """Return 21 honest swatches."""
    noise = 0.1 if evidence is Evidence.SPECTRUM else 0.3
    return Lab(TRUTH, np.random.default_rng(1)).read(DEPTHS, evidence, noise)


def read_as(swatches: Sequence[Swatch], seen: np.ndarray, lines: set[int]) -> str:
    """Return a table in which some lines say another colour."""
    return written_swatches([
        replace(each, reading=replace(each.reading, values=tuple(map(float, other))))
        if line in lines
        else each
        for line, (each, other) in enumerate(zip(swatches, seen, strict=True), start=2)
    ])


def with_rows(text: str, lines: set[int], change: Callable[[Row], Row]) -> str:
    """Return a table with some of its lines changed."""
    rows = [row.split(",") for row in text.splitlines()]
    changed = [
        change(row) if line in lines else row for line, row in enumerate(rows, start=1)
    ]
    return "\n".join(",".join(row) for row in changed)


@pytest.fixture
def fit(tmp_path: Path, typed: Terminal) -> Callable[[str], Any]:
    """Return what a fit of a table answers."""

    def fitted(text: str) -> Any:  # ruff: ignore[any-type]
        path = tmp_path / "swatches.csv"
        path.write_text(text, encoding="utf-8")
        return typed(f"palette fit {path} -o {tmp_path}/palette.json --json")

    return fitted


def named(answer: Any) -> set[int]:  # ruff: ignore[any-type]
    """Return the lines that were refused or are suspect."""
    return {row["line"] for row in [*answer["rejected"], *answer["suspect"]]}


RUBBISH = ["", ",,,", "wool,d01=1", "x", "ä=b;c,1,2", "\x00,\x01", "wool,=,;,;"]


def test_a_third_of_rubbish_is_told_line_by_line(fit: Callable[[str], Any]) -> None:
    rows = written_swatches(read(Evidence.LAB)).splitlines()
    for place, rubbish in enumerate(RUBBISH):
        rows.insert(3 * place + 2, rubbish)
    answer = fit("\n".join(rows)).answer
    assert answer["swatches_used"] == 21
    assert len(answer["rejected"]) == len(RUBBISH) - 2  # blank rows are no rows
    assert answer["suspect"] == []


def test_numbers_out_of_a_hat_are_suspects(fit: Callable[[str], Any]) -> None:
    draws = np.random.default_rng(5)
    seen = draws.uniform((10, -60, -60), (95, 60, 60), (21, 3))
    lines = {4, 9, 12, 15, 17, 22}
    found = named(fit(read_as(read(Evidence.LAB), seen, lines)).answer)
    assert len(found & lines) >= 5  # of a dye with more lies than truth, any is odd


def test_swapped_columns(fit: Callable[[str], Any]) -> None:
    text = written_swatches(read(Evidence.LAB))
    swapped = with_rows(text, set(range(2, 23)), lambda row: [row[1], row[0], *row[2:]])
    assert "No row of it can be used. Line 2: no base" in fit(swapped).refusal
    lines = {5, 10, 18}
    some = with_rows(text, lines, lambda row: [*row[:2], row[3], row[2], *row[4:]])
    assert named(fit(some).answer) == lines
    pink = with_rows(
        text,
        set(range(2, 23)),
        lambda row: [*row[:3], row[4], row[3], *row[5:]],
    )
    assert "columns a and b are swapped" in fit(pink).answer["warnings"][0]


def test_per_cent_for_fractions(fit: Callable[[str], Any]) -> None:
    text = written_swatches(read(Evidence.SPECTRUM))

    def percent(row: Row) -> Row:
        return [
            repr(100 * float(cell)) if 10 < place < 42 else cell
            for place, cell in enumerate(row)
        ]

    assert (
        "divide them all by 100"
        in fit(with_rows(text, set(range(2, 23)), percent)).refusal
    )
    assert named(fit(with_rows(text, {7, 13}, percent)).answer) == {7, 13}


@pytest.mark.parametrize("evidence", [Evidence.LAB, Evidence.THREE_LIGHTS])
def test_another_light(fit: Callable[[str], Any], evidence: Evidence) -> None:
    daylight = seen_of(evidence, daylight=Light.D50)
    seen = as_seen(TRUTH.reflectance(DEPTHS), daylight)
    honest = fit(read_as(read(evidence), seen, set())).answer
    assert honest["warnings"] == []
    assert honest["suspect"] == []
    some = fit(read_as(read(evidence), seen, {5, 11, 19})).answer
    assert named(some) <= {5, 11, 19}
    assert named(some)  # a row may move no more under D50 than its dose would let it
    whole = fit(read_as(read(evidence), seen, set(range(2, 23)))).answer
    assert "read under D50" in whole["warnings"][0]


def test_two_yarns_mixed_up(fit: Callable[[str], Any]) -> None:
    silk = replace(TRUTH, ground=2.0 * TRUTH.ground, gains=1.6 * TRUTH.gains)
    seen = as_seen(silk.reflectance(DEPTHS), seen_of(Evidence.LAB))
    found = fit(read_as(read(Evidence.LAB), seen, {6, 12, 19})).answer
    assert named(found) == {6, 12, 19}


def test_css_lab(fit: Callable[[str], Any]) -> None:
    text = written_swatches(read(Evidence.LAB))
    css = with_rows(
        text, {3}, lambda row: [*row[:2], f"lab({row[2]} {row[3]} {row[4]})", *row[3:]]
    )
    (rejected,) = fit(css).answer["rejected"]
    assert rejected["line"] == 3
    assert "CSS lab(), which means another light" in rejected["why"]


def test_no_dyed_row_left_names_the_first_bad_one(fit: Callable[[str], Any]) -> None:
    table = "base,doses,L,a,b\nwool,,90,0,9\nwool,Gorse=-1,50,2,30"
    refusal = fit(table).refusal
    assert "No dyed swatch of it can be used. Line 3: Depth of Gorse" in refusal
    assert refusal.endswith("got −1 %.")


def test_a_reason_ends_in_one_full_stop(tmp_path: Path, typed: Terminal) -> None:
    text = written_swatches(read(Evidence.LAB)).replace("d00=0.1,", "d00=-1,")
    path = tmp_path / "swatches.csv"
    path.write_text(text, encoding="utf-8")
    shown = typed(f"palette fit {path} -o {tmp_path}/palette.json").out
    assert "was left out: Depth of d00" in shown
    assert ".." not in shown


@pytest.mark.parametrize("output", [".", "missing/palette.json"])
def test_where_no_palette_can_be_written(
    tmp_path: Path, typed: Terminal, output: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("swatches.csv").write_text(written_swatches(read(Evidence.LAB)), "utf-8")
    refusal = typed(f"palette fit swatches.csv -o {output}").refusal
    assert f"--output: “{output}” cannot be written" in refusal
    assert [each.name for each in tmp_path.iterdir()] == ["swatches.csv"]
