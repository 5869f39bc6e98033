"""Fields for amounts: what they read, what they say, what they show again."""

from decimal import Decimal

import pytest

from shadewright.web import amounts
from shadewright.web.forms import StudioForm


class EveryAmount(StudioForm):
    mass = amounts.mass_field(label="Powder", required=False)
    left = amounts.reading_field(label="Left", required=False)
    volume = amounts.volume_field(label="Volume", required=False)
    strength = amounts.strength_field(label="Strength", required=False)
    powder = amounts.powder_strength_field(label="Powder strength", required=False)
    share = amounts.share_field(label="Share", required=False)
    litre = amounts.per_litre_field(label="Solubility", required=False)
    acid = amounts.per_100_ml_field(label="Acid", required=False)
    length = amounts.metres_field(label="Length", required=False)
    heat = amounts.temperature_field(label="At", required=False)
    price = amounts.PriceField(label="Price")


def read(name: str, text: str) -> object:
    form = EveryAmount({name: text})
    assert form.is_valid(), form.errors
    return form.cleaned_data[name]


def fault(name: str, text: str) -> str:
    form = EveryAmount({name: text})
    assert not form.is_valid()
    return " ".join(str(error) for error in form.errors[name])


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("mass", "5,2", 5.2),
        ("mass", "0.5 kg", 500.0),
        ("left", "0", 0.0),
        ("volume", "0,5 l", 500.0),
        ("strength", "1 %", 1.0),
        ("powder", "80", 80.0),
        ("share", "0", 0.0),
        ("litre", "40", 40.0),
        ("litre", "4 g/100 ml", 40.0),
        ("acid", "5 %", 5.0),
        ("acid", "50 g/l", 5.0),
        ("length", "100 yd", 91.44),
        ("heat", "60", 60.0),
        ("heat", "140 F", 60.0),
        ("price", "24,50", Decimal("24.50")),
        ("mass", "", None),
        ("price", "", None),
    ],
)
def test_it_reads(name: str, text: str, value: object) -> None:
    assert read(name, text) == value


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("mass", "-5", "Powder must be above 0 and at most 1000 kg"),
        ("mass", "0", "Powder must be above 0"),
        ("mass", "five", "Powder is written as a weight"),
        ("mass", "5 ml", "Powder is written as a weight"),
        ("mass", "99999999999", "Powder must be above 0 and at most 1000 kg"),
        ("left", "-1", "Left must be from 0"),
        ("volume", "5 g", "Volume is written as a volume"),
        ("strength", "51", "Strength must be above 0 and at most 50"),
        ("strength", "0", "Strength must be above 0 and at most 50"),
        ("powder", "401", "Powder strength must be above 0 and at most 400"),
        ("share", "101", "Share must be from 0 % to 100 %"),
        ("litre", "0", "Solubility must be above 0"),
        ("litre", "40 g", "a number such as 40 g/l"),
        ("acid", "500", "Acid must be above 0 and at most 200"),
        ("length", "-3", "Length must be above 0"),
        ("heat", "200", "At must be from 0 °C to 100 °C"),
        ("price", "-1", "Price must be from 0"),
        ("price", "4 pounds", "a number alone"),
    ],
)
def test_it_refuses_in_one_sentence(name: str, text: str, words: str) -> None:
    said = fault(name, text).replace("\u00a0", " ")
    assert words in said
    assert said.count(". ") == 0


def test_what_is_known_is_shown_without_noise() -> None:
    form = EveryAmount(initial={"mass": 5.2, "price": Decimal("24.50")})
    assert 'value="5.2"' in str(form["mass"])
    assert 'value="24.50"' in str(form["price"])


def test_what_was_typed_is_shown_again() -> None:
    assert 'value="five"' in str(EveryAmount({"mass": "five"})["mass"])


def test_an_empty_field_that_is_needed_is_missing() -> None:
    class Needed(StudioForm):
        mass = amounts.mass_field(label="Powder")

    form = Needed({"mass": " "})
    assert form.errors["mass"] == ["Powder is missing."]
