"""``shadewright palette match`` and ``correct``: from a colour to doses."""

from pathlib import Path

import numpy as np
import pytest

from shadewright.core.mixing import Mix, told_mixes
from shadewright.exchange.palette_file import written_palette
from tests.cli.typed import Terminal
from tests.core.recipes.palettes import palette

DOSES = (("d00", 0.3), ("d02", 0.5), ("d05", 0.1))


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with a palette and the spectrum of one of its mixes."""
    folder = tmp_path_factory.mktemp("recipes")
    (folder / "palette.json").write_text(written_palette(palette()), encoding="utf-8")
    told = told_mixes([Mix(base="wool", doses=DOSES)], palette=palette())
    head = ",".join(f"R{nm}" for nm in range(400, 701, 10))
    row = ",".join(f"{value:.9f}" for value in told.reflectance[0])
    (folder / "target.csv").write_text(f"name,{head}\nwanted,{row}\n", encoding="utf-8")
    return folder


def test_recipes_for_a_colour(files: Path, typed: Terminal) -> None:
    line = f"palette match {files}/palette.json --base wool --target Lab=45,10,10"
    answer = typed(f"{line} --top 5 --json").answer
    first = answer["recipes"][0]
    assert len(answer["recipes"]) == 5
    assert answer["searched"] == 98
    assert answer["within_tolerance"] is True
    assert 0 < answer["seconds"] < 60
    assert first["de"] < 0.01
    assert first["de_by_light"] == {"D65": first["de"]}
    assert first["metamerism"] is None
    assert first["metamerism_why"] == "The target is known in daylight alone."
    assert first["cost"] is None
    assert first["expected_de"] > first["de"]
    total = sum(dose["depth_percent"] for dose in first["doses"])
    assert first["total_depth_percent"] == pytest.approx(total)
    shown = typed(line).out.replace("\u00a0", " ")
    assert "on paper" in shown
    assert "passes in" in shown


def test_recipes_for_a_spectrum(files: Path, typed: Terminal) -> None:
    line = f"palette match {files}/palette.json --base wool"
    target = f"--target-spectrum {files}/target.csv"
    answer = typed(f"{line} {target} --light A --light FL11 --top 20 --json").answer
    assert min(each["de"] for each in answer["recipes"]) < 0.01
    assert {*answer["recipes"][0]["de_by_light"]} == {"D65", "A", "FL11"}
    assert answer["recipes"][0]["metamerism"] >= 0
    assert {*answer["target"]} == {"D65", "A", "FL11"}
    bulb = typed(f"{line} {target} --json").answer
    assert {*bulb["target"]} == {"D65", "A"}


def test_wishes_are_kept(files: Path, typed: Terminal) -> None:
    line = f"palette match {files}/palette.json --base wool --target teal"
    wishes = "--most-dyes 2 --with d03 --without d00,d06 --most-depth 1.5% --json"
    for recipe in typed(f"{line} {wishes}").answer["recipes"]:
        dyes = {dose["dye"] for dose in recipe["doses"]}
        assert "d03" in dyes
        assert len(dyes) <= 2
        assert not dyes & {"d00", "d06"}
        assert recipe["total_depth_percent"] <= 1.5 + 1e-6


def test_out_of_reach_is_an_answer(files: Path, typed: Terminal) -> None:
    line = f"palette match {files}/palette.json --base wool --target Lab=60,90,-90"
    answer = typed(f"{line} --json").answer
    assert answer["within_tolerance"] is False
    assert answer["nearest"]["de"] > 5
    assert "duller" in answer["nearest"]["words"]
    shown = typed(line).out
    assert "! No recipe comes within 1 (CIEDE2000). The nearest is" in shown


def test_a_bath_that_missed(files: Path, typed: Terminal) -> None:
    less = Mix(base="wool", doses=tuple((dye, 0.7 * c) for dye, c in DOSES))
    mixes = [less, Mix(base="wool", doses=DOSES)]
    now, wanted = (
        "Lab=" + ",".join(f"{part:.4f}" for part in lab)
        for lab in np.asarray(told_mixes(mixes, palette=palette()).lab)
    )
    bath = " ".join(f"--dose {dye}={0.7 * depth}%" for dye, depth in DOSES)
    line = f"palette correct {files}/palette.json --base wool {bath}"
    answer = typed(f"{line} --measured {now} --target {wanted} --json").answer
    added = {dose["dye"]: dose["depth_percent"] for dose in answer["additions"]}
    assert added == pytest.approx({dye: 0.3 * c for dye, c in DOSES}, rel=0.02)
    assert answer["reachable"] is True
    assert answer["de_after"] < 0.05 < answer["de_before"]
    assert 0.7 <= answer["share_first"] <= 0.8
    first = {dose["dye"]: dose["depth_percent"] for dose in answer["add_first"]}
    assert first["d02"] == pytest.approx(answer["share_first"] * added["d02"])
    shown = typed(f"{line} --measured {now} --target {wanted}").out
    assert "then look again" in shown


def test_what_is_too_deep_says_so(files: Path, typed: Terminal) -> None:
    line = (
        f"palette correct {files}/palette.json --base wool --dose d00=0.8% "
        "--measured Lab=35,20,10 --target Lab=70,20,10"
    )
    answer = typed(f"{line} --json").answer
    assert answer["additions"] == []
    assert answer["reachable"] is False
    shown = typed(line).out
    assert "nothing: no addition brings it nearer" in shown
    assert "Dye cannot be taken out again" in shown.replace("\n  ", " ")


@pytest.mark.parametrize(
    ("rest", "says"),
    [
        ("", "Name a --target or a --target-spectrum: one of the two."),
        ("--target teal --most-dyes 5", "--most-dyes: Most dyes in a recipe must be"),
        ("--target teal --with Kelp", "--with: There is no dye in this palette “Kelp”"),
        ("--target teal --most-depth 0%", "--most-depth: Most depth of all dyes must"),
        ("--target teal --tolerance no", "--tolerance: Tolerance must be a plain"),
        ("--target teal --top 99", "--top: Recipes asked for must be"),
        ("--target-spectrum nowhere.csv", "The spectrum file “nowhere.csv” cannot"),
    ],
)
def test_faults_are_told_in_one_sentence(
    files: Path, typed: Terminal, rest: str, says: str
) -> None:
    line = f"palette match {files}/palette.json --base wool {rest}"
    assert says in typed(line).refusal


def test_a_base_that_nobody_dyed_is_told(files: Path, typed: Terminal) -> None:
    line = f"palette match {files}/palette.json --base silk --target teal"
    assert "--base: There is no base in this palette “silk”" in typed(line).refusal


def test_a_correction_needs_what_went_in(files: Path, typed: Terminal) -> None:
    line = f"palette correct {files}/palette.json --base wool"
    said = typed(f"{line} --measured Lab=50,0,0 --target Lab=45,0,0").refusal
    assert said.startswith("--dose: Dose is missing")


def test_a_light_that_cannot_count_is_told(files: Path, typed: Terminal) -> None:
    line = f"palette match {files}/palette.json --base wool --target teal"
    shown = typed(f"{line} --light A --light D65").out
    assert "! The target is known in daylight alone. For A too, give" in shown
    assert "daylight alone" not in typed(f"{line} --light D65").out
