"""Amounts as they are written by hand, and as they must not be."""

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shadewright.core.quantities import (
    amount_text,
    mass_g,
    percent,
    power_kw,
    require_between,
    require_strength,
    temperature_c,
    volume_ml,
)
from shadewright.errors import (
    InputError,
    MissingError,
    OutOfRangeError,
    UnitError,
)

READERS: tuple[Callable[..., float], ...] = (
    mass_g,
    volume_ml,
    percent,
    temperature_c,
    power_kw,
)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("5.2 g", 5.2),
        ("5,2g", 5.2),
        (" 5.2\u00a0g ", 5.2),
        (".5 g", 0.5),
        ("+5 G", 5.0),
        ("0,125 g", 0.125),
        ("1.5 kg", 1500.0),
        ("250 mg", 0.25),
        ("1,5oz", 42.5242846875),  # 1.5 × 28.349523125
        ("2 lb", 907.18474),  # 2 × 453.59237
        ("10 grains", 0.6479891),  # 10 × 0.06479891
        ("0 g", 0.0),
    ],
)
def test_a_weight_is_read(text: str, grams: float) -> None:
    assert mass_g(text, name="Powder") == pytest.approx(grams, rel=1e-15)


@pytest.mark.by_hand
@pytest.mark.parametrize(
    ("text", "millilitres"),
    [
        ("500ml", 500.0),
        ("500 mL", 500.0),
        ("0.5 l", 500.0),
        ("2 litres", 2000.0),
        ("5 dl", 500.0),
        ("16 fl oz", 473.176473),  # 16 × 29.5735295625
        ("16 US fl oz", 473.176473),
        ("16 uk fl oz", 454.609),  # 16 × 28.4130625
        ("1 pt", 473.176473),
        ("1 imperial pint", 568.26125),
        ("1 uk qt", 1136.5225),
        ("1 gal", 3785.411784),
        ("1 uk gallon", 4546.09),
        ("1 cup", 236.5882365),
        ("1 metric cup", 250.0),
        ("2 tbsp", 29.5735295625),  # 2 × 14.78676478125
        ("1 metric tbsp", 15.0),
        ("1 tsp", 4.92892159375),
    ],
)
def test_a_volume_is_read(text: str, millilitres: float) -> None:
    assert volume_ml(text, name="Volume") == pytest.approx(millilitres, rel=1e-15)


@pytest.mark.by_hand
def test_the_other_kinds_are_read() -> None:
    assert percent("0,5 %", name="Strength") == 0.5
    assert temperature_c("104F", name="Temperature") == 40.0
    assert temperature_c("-5 °C", name="Temperature") == -5.0
    assert power_kw("1.8kW", name="Heater") == 1.8
    assert power_kw("1800 W", name="Heater") == pytest.approx(1.8)


@pytest.mark.parametrize("spoon", ["1 tsp", "2 tablespoons", "1/4 cup", "1 uk cup"])
def test_powder_by_the_spoon_is_refused(spoon: str) -> None:
    with pytest.raises(UnitError) as refused:
        mass_g(spoon, name="Powder")
    assert refused.value.given == spoon
    if "/" not in spoon:
        assert "weigh it" in refused.value.sentence


def test_a_bare_ounce_is_no_volume() -> None:
    with pytest.raises(UnitError, match="fl oz"):
        volume_ml("16 oz", name="Water")


def test_a_bare_number_needs_a_printed_unit() -> None:
    assert mass_g("5,2", name="Powder", default_unit="g") == 5.2
    assert temperature_c("104", name="Bath", default_unit="F") == 40.0
    assert mass_g("5 kg", name="Powder", default_unit="g") == 5000.0
    with pytest.raises(UnitError):
        mass_g("5.2", name="Powder")


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize(
    "text",
    [
        "nan",
        "nan g",
        "inf",
        "inf ml",
        "1e999",
        "1e3 g",
        "g",
        "-",
        "five g",
        "٣ g",
        "5 5 g",
        "1.2.3 g",
        "5 g\x00",
        "<b>5</b> g",
        "5 parsecs",
        "9" * 500,
    ],
)
def test_what_is_no_amount_is_refused(reader: Callable[..., float], text: str) -> None:
    with pytest.raises(UnitError) as refused:
        reader(text, name="Thing", argument="thing", default_unit=None)
    assert refused.value.argument == "thing"
    assert len(refused.value.sentence) < 250


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("1,234.5 g", "one decimal sign"),
        ("1.234,5 g", "one decimal sign"),
        ("1,500 g", "as 1.500 or as 1500"),
    ],
)
def test_what_has_two_meanings_is_refused(text: str, says: str) -> None:
    with pytest.raises(UnitError) as refused:
        mass_g(text, name="Yarn")
    assert says in refused.value.sentence


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("text", ["", "   "])
def test_nothing_written_is_missing(reader: Callable[..., float], text: str) -> None:
    with pytest.raises(MissingError, match=r"Thing is missing\. Write a"):
        reader(text, name="Thing")


@pytest.mark.parametrize(
    ("reader", "text", "given"),
    [
        (mass_g, "-5 g", "−5"),
        (mass_g, "−5 g", "−5"),
        (mass_g, "2000 kg", "2000\u00a0kg"),
        (volume_ml, "99999999 l", "99999999\u00a0l"),
        (percent, "20000 %", "20000"),
        (temperature_c, "1000 C", "1000"),
        (power_kw, "-1 kW", "−1"),
    ],
)
def test_out_of_all_reason_is_refused(
    reader: Callable[..., float], text: str, given: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        reader(text, name="Thing", argument="thing")
    assert given in refused.value.given
    assert refused.value.argument == "thing"


@given(st.text(max_size=60))
def test_no_text_does_anything_but_answer_or_refuse(text: str) -> None:
    for reader in READERS:
        try:
            value = reader(text, name="Thing")
        except InputError:
            continue
        else:
            assert -50.0 <= value <= 1e6


@given(
    st.decimals(min_value=0, max_value=99999, places=3),
    st.sampled_from([".", ","]),
    st.sampled_from(["", " ", "\u00a0"]),
)
def test_what_is_written_is_what_is_read(
    number: Decimal, sign: str, blank: str
) -> None:
    text = f"{number:.4f}".replace(".", sign)  # four places: no thousands in doubt
    assert mass_g(f"{text}{blank}g", name="Powder") == float(number)


@given(st.floats(min_value=0.001, max_value=999_000.0))
def test_text_for_people_can_be_read_back(value: float) -> None:
    assert mass_g(amount_text(value, "g"), name="P") == pytest.approx(value, rel=5.1e-4)
    assert volume_ml(amount_text(value, "ml"), name="V") == pytest.approx(
        value, rel=5.1e-3
    )


@pytest.mark.by_hand
@pytest.mark.parametrize("text", ["16 fl. oz.", "16 US fl. oz", "16 FL OZ."])
def test_dots_of_an_abbreviation_are_not_minded(text: str) -> None:
    # 16 × 29.5735295625 ml
    assert volume_ml(text, name="Water") == pytest.approx(473.176473, rel=1e-12)


@pytest.mark.parametrize("text", ["40 ° C", "40℃", "40 ºC", "40 deg C", "104 ℉"])
def test_a_degree_is_written_in_many_ways(text: str) -> None:
    assert temperature_c(text, name="Bath") == pytest.approx(40.0)


def test_a_guard_has_the_last_word() -> None:
    assert percent("50%", name="Strength", guard=require_strength) == 50.0
    for text in ("-1%", "0%", "50.01%", "20000%"):
        with pytest.raises(OutOfRangeError, match="above 0 and at most 50\u00a0%"):
            percent(text, name="Strength", guard=require_strength)


def test_a_number_just_outside_is_told_in_enough_digits() -> None:
    with pytest.raises(OutOfRangeError, match=r"got 50\.0001\s%"):
        require_strength(50.0001)
    with pytest.raises(OutOfRangeError, match=r"got 537\.3\sml"):
        require_between(537.3, least=0.0, most=537.0, unit="ml", name="Water")


def test_what_no_sentence_can_hold_is_not_said_again() -> None:
    with pytest.raises(UnitError) as refused:
        mass_g("5\n\x1b[31m stone", name="Powder")
    assert "“5 \ufffd[31m stone”" in refused.value.sentence
