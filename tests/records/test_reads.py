"""Questions to the store, and what they say when there is no answer."""

from collections.abc import Callable

import pytest

from shadewright.errors import NotFoundError
from shadewright.records import reads

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("ask", "words", "argument"),
    [
        (lambda: reads.person_row(7), "no person “7”", "person"),
        (lambda: reads.dye_row(7), "no dye “7”", "dye"),
        (lambda: reads.jar_row(7), "no jar “7”", "jar"),
        (lambda: reads.locked_jar(7), "no jar “7”", "jar"),
        (lambda: reads.bottle_row("T7KK"), "no bottle “T7KK”", "code"),
        (lambda: reads.locked_bottle("T7KK"), "Read the code on its label", "code"),
        (lambda: reads.making_row(7), "no stock in the making “7”", ""),
    ],
)
def test_what_is_not_there_is_said_so(
    ask: Callable[[], object], words: str, argument: str
) -> None:
    with pytest.raises(NotFoundError) as refused:
        ask()
    assert words in refused.value.sentence
    assert refused.value.argument == argument
