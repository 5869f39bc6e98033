"""A swatch is entered by names; a bath becomes one once dye went in."""

from datetime import timedelta

import pytest

from shadewright.errors import ConflictError, StudioError
from shadewright.records.models import Base, Dye, Swatch
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.entering_swatches import (
    SwatchWords,
    doses_label,
    keep_swatch,
    swatch_of_bath,
)
from shadewright.workflows.shades.reading_swatches import keep_read_swatch
from shadewright.workflows.shades.readings import ReadWords
from shadewright.workflows.shades.swatches import Standing, swatch_now
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.dyed import dyed
from tests.workflows.pots import ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]
MIX = (("Gorse", 0.6), ("slate", 0.2))


def test_what_is_new_is_made_and_what_is_known_is_found() -> None:
    Dye.objects.create(name="Slate")
    words = SwatchWords(base="Hollow", fibres="100 % wool", doses=MIX)
    now = swatch_now(keep_swatch(words=words, stamp=stamp_now(by=None)))
    assert now.doses == (("Gorse", 0.6), ("Slate", 0.2))
    assert now.label.replace("\u00a0", " ") == "Gorse 0.6 % + slate 0.2 %"
    assert now.standing is Standing.UNREAD
    assert Dye.objects.count() == 2


def test_sent_twice_it_is_kept_once() -> None:
    stamp = stamp_now(by=None)
    words = SwatchWords(base="Hollow", fibres="wool", label="H1")
    first = keep_swatch(words=words, stamp=stamp)
    assert keep_swatch(words=words, stamp=stamp) == first
    assert Swatch.objects.get().label == "H1"


@pytest.mark.parametrize(
    "said",
    [
        {"doses": (("Gorse", 0.5), ("gorse", 0.5))},
        {"doses": (("Gorse", 25.0),)},
        {"fibres": ""},
        {"dyed_on": today() + timedelta(days=2)},
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_left(said: dict[str, object]) -> None:
    words = {"base": "Hollow", "fibres": "wool"} | said
    with pytest.raises(StudioError):
        keep_swatch(words=SwatchWords(**words), stamp=stamp_now(by=None))  # type: ignore[arg-type]
    assert not Base.objects.exists()
    assert not Dye.objects.exists()


def test_a_bath_is_a_swatch_once_dye_went_in() -> None:
    """Its doses are what went in; asked again it is the same swatch."""
    pot = ready()
    with pytest.raises(ConflictError):
        swatch_of_bath(pot.number, stamp=stamp_now(by=None))
    number = swatch_of_bath(dyed(pot), stamp=stamp_now(by=None))
    assert swatch_of_bath(pot.number, stamp=stamp_now(by=None)) == number
    now = swatch_now(number)
    assert now.bath_number == pot.number
    assert {dye for dye, _depth in now.doses} == {"Slate", "Gorse"}


@pytest.mark.by_hand
def test_a_label_that_is_too_long_ends_in_a_dot_dot_dot() -> None:
    """60 signs fit on it: 59 and the dots."""
    label = doses_label([("A very long name of a dye", 0.125)] * 3)
    assert len(label) == 60
    assert label.endswith("…")
    assert doses_label(()) == "bare yarn"


def test_the_very_same_swatch_is_not_kept_twice() -> None:
    """Entered twice it would count double; under another label it is another one."""
    read = ReadWords(read_by=ReadBy.METER, texts=("76.2, 6.1, 62.4",))

    def keep(label: str = "") -> int:
        words = SwatchWords(base="Hollow", fibres="wool", doses=MIX, label=label)
        return keep_read_swatch(words=words, read=read, stamp=stamp_now(by=None))

    keep()
    with pytest.raises(ConflictError, match="kept already with this very colour"):
        keep()
    assert Swatch.objects.count() == 1
    assert swatch_now(keep("second skein")).label == "second skein"
