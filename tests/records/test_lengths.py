"""A text that no column holds is refused in a sentence, on both databases."""

from collections.abc import Callable

import pytest

from shadewright.errors import OutOfRangeError
from shadewright.workflows.bottles import draw, enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import receive_jar
from shadewright.workflows.people import add_person
from shadewright.workflows.studio import found_studio
from tests.workflows.bench import entered, new_dye, now

pytestmark = pytest.mark.django_db
LONG = "x" * 5000


def drawn(note: str) -> None:
    code = entered(new_dye()).code
    draw(code=code, volume_ml=5.0, note=note, stamp=now())


def placed(place: str) -> None:
    enter_bottle(
        dye_id=new_dye(),
        strength_percent=1.0,
        volume_ml=500.0,
        stamp=now(),
        about=Particulars(place=place),
    )


@pytest.mark.parametrize("text", [LONG, "a\0b"])
@pytest.mark.parametrize(
    ("verb", "argument"),
    [
        (add_person, "name"),
        (lambda text: found_studio(name=text, person="Ines"), "name"),
        (lambda text: found_studio(name="Us", person="Ines", water=text), "water"),
        (new_dye, "name"),
        (drawn, "note"),
        (
            lambda text: receive_jar(
                dye_id=new_dye(), powder_g=5.0, lot=text, stamp=now()
            ),
            "lot",
        ),
        (placed, "place"),
    ],
)
def test_a_text_that_does_not_fit_is_refused_in_a_sentence(
    verb: Callable[[str], object], argument: str, text: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        verb(text)
    assert refused.value.argument == argument
    assert "must be" in refused.value.sentence


def test_the_sentence_counts() -> None:
    with pytest.raises(OutOfRangeError, match="Name must be at most 40") as refused:
        add_person(LONG)
    assert "got 5000" in refused.value.sentence


def test_what_just_fits_is_kept() -> None:
    assert add_person("x" * 40).name == "x" * 40
