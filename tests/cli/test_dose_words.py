"""How doses are written."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.cli.dose_words import dose_from_words
from shadewright.core.baths import Dose
from shadewright.errors import InputError, OutOfRangeError, UnitError


def read(text: str) -> Dose:
    return dose_from_words(text, name="Dose", argument="--dose")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Gorse=0.6%", Dose(dye="Gorse", depth_percent=0.6)),
        ("Gorse=0,6 %", Dose(dye="Gorse", depth_percent=0.6)),
        (
            "Gorse=0.6%@1%",
            Dose(dye="Gorse", depth_percent=0.6, strength_percent=1),
        ),
        (
            "Gorse = 0.6% @ 1%+-2%",
            Dose(
                dye="Gorse", depth_percent=0.6, strength_percent=1, u_strength_rel=0.02
            ),
        ),
        (
            "Gorse=0.6%@1%±0%",
            Dose(dye="Gorse", depth_percent=0.6, strength_percent=1),
        ),
        ('"Sea Kelp"=2%', Dose(dye="Sea Kelp", depth_percent=2)),
        ("'a=b@c;d,e'=2%", Dose(dye="a=b@c;d,e", depth_percent=2)),
        ("O'Hara=2%", Dose(dye="O'Hara", depth_percent=2)),
        ("Krapp-Röte.3=2%", Dose(dye="Krapp-Röte.3", depth_percent=2)),
    ],
)
def test_a_dose_is_read(text: str, expected: Dose) -> None:
    assert read(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "",
        "Gorse",
        "Gorse=",
        "=0.6%",
        "Sea Kelp=0.6%",
        '""=0.6%',
        '" "=0.6%',
        '"Gorse=0.6%',
        '"Gor\x1bse"=0.6%',
        "Gorse=0.6%@",
        "Gorse=0.6%+-2%",
        "Gorse=0.6%@1%+-",
        "Gorse=0.6%;Slate=0.4%",
        "Gorse=0.6%@1%@1%",
        "Gorse=0.6%" + "0" * 200,
    ],
)
def test_what_is_no_dose_is_told_how_it_is_written(text: str) -> None:
    with pytest.raises(UnitError) as caught:
        read(text)
    assert caught.value.argument == "--dose"
    assert "NAME=DEPTH@STRENGTH" in caught.value.sentence


@pytest.mark.parametrize("text", ["G=1", "G=1g", "G=a%", "G=1%@1", "G=1%@1%+-2"])
def test_an_amount_without_its_sign_names_the_dye(text: str) -> None:
    with pytest.raises(UnitError) as caught:
        read(text)
    assert " of G is written as a percentage" in caught.value.sentence


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("G=0%", "Depth of G must be above 0"),
        ("G=-1%", "got −1\u00a0%"),
        ("G=51%", "at most 50\u00a0%"),
        ("G=1%@0%", "Strength of G must be above 0"),
        ("G=1%@51%", "at most 50\u00a0%"),
        ("G=1%@1%+-101%", "Spread of G"),
        ("G=1%@1%+--1%", "Spread of G"),
    ],
)
def test_a_number_out_of_range_names_the_dye(text: str, told: str) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        read(text)
    assert told in caught.value.sentence


@given(text=st.text(max_size=60))
def test_any_text_is_a_dose_or_a_sentence(text: str) -> None:
    try:
        dose = read(text)
    except InputError as refused:
        assert refused.sentence  # ruff: ignore[pytest-assert-in-except]
    else:
        assert dose.depth_percent > 0
