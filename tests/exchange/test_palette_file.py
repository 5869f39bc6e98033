"""A palette as a file: the same afterwards, and refused where it is none."""

import json

import numpy as np
import pytest

from shadewright.core.mixing import Evidence, Mix, Palette, learn, told_mixes
from shadewright.errors import UnreadableError
from shadewright.exchange.palette_file import read_palette, written_palette
from tests.core.mixing.worlds import Lab, ladder, ternaries, world


@pytest.fixture(scope="module")
def palette() -> Palette:
    bench = Lab(world(3, "flags", 0.004, dyes=3), np.random.default_rng(1))
    swatches = bench.read(ladder(3), Evidence.LAB, 0.3, session="May")
    swatches += bench.read(ternaries(bench.draws, 3, 2), Evidence.LAB, 0.3)
    return learn(swatches).palette


def test_what_is_read_back_foretells_the_same_to_the_last_bit(palette: Palette) -> None:
    text = written_palette(palette)
    back = read_palette(text)
    assert written_palette(back) == text
    mix = [Mix(base="wool", doses=(("d00", 0.4), ("d02", 0.1)), session="May")]
    one, other = told_mixes(mix, palette=palette), told_mixes(mix, palette=back)
    assert one.lab.tobytes() == other.lab.tobytes()
    assert one.de_90.tobytes() == other.de_90.tobytes()
    assert back.evidence == palette.evidence


def test_a_person_can_read_what_it_is(palette: Palette) -> None:
    whole = json.loads(written_palette(palette))
    assert whole["format"] == "shadewright-palette"
    assert whole["version"] == 1
    assert whole["dyes"][0] == {
        "name": "d00",
        "evidence": "lab",
        "least_depth_percent": 0.1,
        "most_depth_percent": 2.5,
    }


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "no palette that Shadewright wrote"),
        ("[" * 100_000, "no palette that Shadewright wrote"),
        ("[1, 2]", "no palette that Shadewright wrote"),
        ('{"format": "other"}', "no palette that Shadewright wrote"),
        ('{"format": "shadewright-palette", "version": 2}', "version 2, not 1"),
        ('{"format": "shadewright-palette", "version": 1}', "damaged"),
    ],
)
def test_what_is_none_is_refused(text: str, words: str) -> None:
    with pytest.raises(UnreadableError, match=words):
        read_palette(text)


@pytest.mark.parametrize("name", ["parameters", "own", "prior_mean"])
def test_a_damaged_array_is_refused(palette: Palette, name: str) -> None:
    whole = json.loads(written_palette(palette))
    whole["arrays"][name]["doubles"] = whole["arrays"][name]["doubles"][:-8]
    with pytest.raises(UnreadableError, match="damaged"):
        read_palette(json.dumps(whole))


@pytest.mark.parametrize("number", [float("inf"), float("nan"), -1.0, "x", None])
@pytest.mark.parametrize("name", ["width", "start_surface"])
def test_a_damaged_number_is_refused(
    palette: Palette, name: str, number: object
) -> None:
    whole = json.loads(written_palette(palette)) | {name: number}
    with pytest.raises(UnreadableError, match="damaged"):
        read_palette(json.dumps(whole))
