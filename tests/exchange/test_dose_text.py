"""Doses as they are typed, or written on a sample."""

import pytest

from shadewright.errors import InputError
from shadewright.exchange.dose_text import doses_in_name, doses_of_words


@pytest.mark.parametrize(
    ("text", "doses"),
    [
        ("Gorse 0.6 % + Slate 0.2 %", (("Gorse", 0.6), ("Slate", 0.2))),
        ("Gorse=0.5;Slate=0,2", (("Gorse", 0.5), ("Slate", 0.2))),
        ("Sea Green 2  1\u00a0%", (("Sea Green 2", 1.0),)),
        ("bare", ()),
        ("Bare yarn", ()),
    ],
)
def test_they_are_read(text: str, doses: tuple[tuple[str, float], ...]) -> None:
    assert doses_of_words(text) == doses


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("Gorse", "“Gorse” cannot be read. It is no dye with its depth."),
        ("Gorse 1 + gorse 2", "gorse stands in it twice"),
        ("Gorse 0 %", "Depth of Gorse must be above 0"),
        ("Gorse 50 %", "Depth of Gorse must be above 0 and at most 20"),
    ],
)
def test_what_are_none_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        doses_of_words(text)
    assert sentence in caught.value.sentence.replace("\u00a0", " ")
    assert caught.value.argument == "doses"


def test_a_samples_name_may_tell_them() -> None:
    assert doses_in_name(" Gorse  1 % ") == "Gorse 1 %"
    assert not doses_in_name("line 7 of May")
