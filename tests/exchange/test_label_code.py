import itertools

import pytest

from shadewright.core.solutions.codes import CODE_DIGITS, CODE_LETTERS
from shadewright.errors import InputError, OutOfRangeError, UnreadableError
from shadewright.exchange import (
    Scanned,
    bath_text,
    code_from_text,
    label_text,
    scanned_from_text,
)


def test_every_code_comes_back_from_its_label() -> None:
    for signs in itertools.product(CODE_LETTERS, CODE_DIGITS, CODE_LETTERS):
        code = "".join(signs)
        assert code_from_text(label_text(code)) == code


@pytest.mark.parametrize(
    "text", ["T7K", " t7k\n", "t 7 k", "shadewright:bottle:t7k", label_text("T7K")]
)
def test_scanned_or_typed_it_is_the_same_bottle(text: str) -> None:
    assert code_from_text(text) == "T7K"


@pytest.mark.parametrize(
    "text", ["https://example.org/T7K", "shadewright:lot:T7K", "WIFI:S:x;;"]
)
def test_other_codes_are_no_bottle(text: str) -> None:
    with pytest.raises(UnreadableError, match="not from a bottle’s label") as refusal:
        code_from_text(text)
    assert refusal.value.argument == "code"


@pytest.mark.parametrize("text", ["", "777", "O0I", "T7", "T7KAA", "<b>"])
def test_what_no_bottle_can_be_called_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        code_from_text(text)


@pytest.mark.parametrize(
    "text",
    ["261125-B2", "261125 b2", "261125b2", " 261125-b02\n", bath_text("261125-B2")],
)
def test_a_bath_is_found_however_its_number_is_written(text: str) -> None:
    assert scanned_from_text(text) == Scanned("bath", "261125-B2")


def test_a_bottle_is_found_beside_baths() -> None:
    assert scanned_from_text(label_text("T7K")) == Scanned("bottle", "T7K")


@pytest.mark.parametrize("text", ["261125", "261125-X2", "261125-B", "261125-B12345"])
def test_what_no_bath_can_be_called_is_refused(text: str) -> None:
    with pytest.raises(OutOfRangeError, match="as on its card") as refusal:
        scanned_from_text(text)
    assert refusal.value.argument == "code"
