"""A mix goes into an address and comes back."""

from operator import itemgetter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.errors import InputError
from shadewright.web.mix_text import MOST_DYES, mix_of, mix_text

DOSES = st.lists(
    st.tuples(
        st.integers(1, 999_999),
        st.floats(0.0005, 20.0).map(lambda depth: float(f"{depth:.4g}")),
    ),
    unique_by=itemgetter(0),
    max_size=MOST_DYES,
).map(tuple)


@given(doses=DOSES)
def test_a_mix_comes_back(doses: tuple[tuple[int, float], ...]) -> None:
    assert mix_of(mix_text(doses)) == doses


def test_a_mix_reads_plainly() -> None:
    assert mix_text(((12, 0.6), (7, 0.2))) == "12:0.6,7:0.2"


@pytest.mark.parametrize(
    ("text", "doses"),
    [
        ("", ()),
        ("  ", ()),
        ("12:0.6, 7:.2", ((12, 0.6), (7, 0.2))),
        ("12:1.", ((12, 1.0),)),
        ("12:0,7:0.2", ((7, 0.2),)),
    ],
)
def test_what_is_allowed(text: str, doses: tuple[tuple[int, float], ...]) -> None:
    assert mix_of(text) == doses


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("Gorse:1", "“Gorse:1” is no dye with its depth"),
        ("12", "“12” is no dye"),
        ("12:", "“12:” is no dye"),
        ("12:.", "“12:.” is no dye"),
        ("12:-1", "“12:-1” is no dye"),
        ("12:1e3", "“12:1e3” is no dye"),
        ("12:nan", "“12:nan” is no dye"),
        ("12:٣", "is no dye"),
        ("12:1,,", "“” is no dye"),
        ("12:20.1", "Depth of a dye must be from 0\xa0% to 20\xa0%; got 20.1\xa0%."),
        ("12:1,12:2", "names dye 12 twice"),
        (",".join(f"{dye}:1" for dye in range(1, 14)), "at most 12; got 13"),
    ],
)
def test_bad_text_is_one_clear_sentence(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as refused:
        mix_of(text)
    assert sentence in refused.value.sentence
    assert refused.value.argument == "mix"
