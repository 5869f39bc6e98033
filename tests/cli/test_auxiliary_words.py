"""How acid and salt are written."""

import pytest

from shadewright.cli.auxiliary_words import acid_from_words, salt_from_words
from shadewright.core.baths import AcidWanted, Amount, AmountUnit, SaltWanted
from shadewright.core.tables.acids import ACETIC, ACIDS, CITRIC, VINEGAR5
from shadewright.core.tables.salts import GLAUBER_DECAHYDRATE, SALTS
from shadewright.errors import InputError, MissingError, OutOfRangeError, UnitError


def acid(text: str) -> AcidWanted:
    return acid_from_words(text, name="Acid", argument="--acid")


def salt(text: str) -> SaltWanted:
    return salt_from_words(text, name="Salt", argument="--salt")


TWO_PERCENT = Amount(value=2, unit=AmountUnit.PERCENT_OWF)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("citric:2%", AcidWanted(acid=CITRIC, amount=TWO_PERCENT)),
        ("Citric : 2 % owf", AcidWanted(acid=CITRIC, amount=TWO_PERCENT)),
        (
            "citric:1,5 g/l",
            AcidWanted(acid=CITRIC, amount=Amount(value=1.5, unit=AmountUnit.G_PER_L)),
        ),
        (
            "citric:1,5 g per litre",
            AcidWanted(acid=CITRIC, amount=Amount(value=1.5, unit=AmountUnit.G_PER_L)),
        ),
        (
            "citric:0.002kg",
            AcidWanted(acid=CITRIC, amount=Amount(value=2, unit=AmountUnit.G)),
        ),
        (
            "vinegar5:0.03l",
            AcidWanted(acid=VINEGAR5, amount=Amount(value=30, unit=AmountUnit.ML)),
        ),
        (
            "acetic@56%:2%",
            AcidWanted(acid=ACETIC, amount=TWO_PERCENT, strength_g_per_100ml=56),
        ),
    ],
)
def test_an_acid_is_read(text: str, expected: AcidWanted) -> None:
    assert acid(text) == expected


def test_a_salt_is_read() -> None:
    expected = SaltWanted(salt=GLAUBER_DECAHYDRATE, amount=TWO_PERCENT)
    assert salt("glauber-decahydrate:2%") == expected


@pytest.mark.parametrize("key", ACIDS)
def test_every_acid_has_its_word(key: str) -> None:
    assert acid(f"{key}:2%").acid == ACIDS[key]


@pytest.mark.parametrize("key", SALTS)
def test_every_salt_has_its_word(key: str) -> None:
    assert salt(f"{key}:2%").salt == SALTS[key]


@pytest.mark.parametrize("text", ["", "citric", "lemon:2%", ":2%", "citric 2%"])
def test_an_unknown_acid_is_told_the_kinds(text: str) -> None:
    with pytest.raises(UnitError) as caught:
        acid(text)
    assert caught.value.argument == "--acid"
    assert "citric, citric-mono, vinegar5" in caught.value.sentence
    assert "sulphuric" not in caught.value.sentence


@pytest.mark.parametrize("text", ["", "glauber:5%", "glauber-anhydrous", "salt:5%"])
def test_an_unknown_salt_is_told_the_kinds(text: str) -> None:
    with pytest.raises(UnitError) as caught:
        salt(text)
    assert caught.value.argument == "--salt"
    assert "glauber-anhydrous, glauber-decahydrate" in caught.value.sentence


@pytest.mark.parametrize("text", ["citric:2", "citric:2C", "citric:two%"])
def test_an_amount_needs_its_unit(text: str) -> None:
    with pytest.raises(UnitError) as caught:
        acid(text)
    assert caught.value.sentence.startswith("Amount of acid is written as")


def test_an_amount_left_out_is_missed() -> None:
    with pytest.raises(MissingError):
        acid("citric:")


@pytest.mark.parametrize("strength", ["0%", "-5%", "186%", "5", "", "x%"])
def test_a_strength_that_cannot_be_is_refused(strength: str) -> None:
    with pytest.raises(InputError) as caught:
        acid(f"acetic@{strength}:2%")
    assert caught.value.argument == "--acid"
    assert "Strength of the acid" in caught.value.sentence


def test_a_liquid_cannot_be_stronger_than_the_strongest() -> None:
    with pytest.raises(OutOfRangeError) as caught:
        acid("acetic@186%:2%")
    assert "at most 185\u00a0%" in caught.value.sentence


def test_a_vinegar_that_is_named_by_its_strength_has_no_other() -> None:
    """It would be poured as of 6 % and called vinegar of 5 % in the same line."""
    with pytest.raises(UnitError, match="acetic@6%:30ml"):
        acid("vinegar5@6%:30ml")
