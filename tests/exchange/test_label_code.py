import itertools

import pytest

from shadewright.core.solutions.codes import CODE_DIGITS, CODE_LETTERS
from shadewright.errors import InputError, UnreadableError
from shadewright.exchange import code_from_text, label_text


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
