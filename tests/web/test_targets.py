"""A wanted colour stands in an address and is found there again."""

import pytest
from django.http import QueryDict

from shadewright.errors import NotFoundError, OutOfRangeError, UnreadableError
from shadewright.records.models import Base
from shadewright.web.targets import target_asked, target_text
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.shades.wanted import (
    keep_wanted,
    wanted_of_spectrum,
    wanted_of_swatch,
    wanted_of_text,
)
from shadewright.workflows.stamps import stamp_now
from tests.workflows.shades.swatch_rows import kept_swatch


@pytest.mark.parametrize("text", ["#556f4a", "44, -17, 17.5", "teal"])
@pytest.mark.parametrize("name", ["", "Wet Fern"])
def test_typed_colour_comes_back(text: str, name: str) -> None:
    """What was typed is the same colour again, under the same name."""
    wanted = wanted_of_text(text, name=name)
    again = target_asked(QueryDict(target_text(wanted)))
    assert again is not None
    assert (again.lab, again.read_by) == (wanted.lab, wanted.read_by)
    assert not name or again.name == name


def test_spectrum_comes_back() -> None:
    """Thirty-one numbers fit in an address, to four figures."""
    wanted = wanted_of_spectrum(tuple(0.1 + n / 91 for n in range(31)))
    again = target_asked(QueryDict(target_text(wanted)))
    assert again is not None
    assert again.spectrum == pytest.approx(wanted.spectrum, rel=1e-3)


@pytest.mark.django_db
def test_swatch_and_kept_colour_come_back() -> None:
    """A number finds what stands in the store."""
    base = Base.objects.create(name="Hollow 4-ply", fibres="wool 100 %")
    row = kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0))
    swatch = wanted_of_swatch(swatch_now(row.pk))
    kept = keep_wanted(swatch, name="Broom", stamp=stamp_now(by=None))
    for wanted in (swatch, kept):
        assert target_asked(QueryDict(target_text(wanted))) == wanted


def test_address_without_a_colour_wants_none() -> None:
    """Nothing asked is no fault."""
    assert target_asked(QueryDict("base=3&colour=")) is None


@pytest.mark.parametrize(
    ("address", "error"),
    [
        ("colour=greenish", UnreadableError),
        ("colour=200,0,0", OutOfRangeError),
        ("spectrum=a,b", UnreadableError),
        ("spectrum=0.1,0.2", OutOfRangeError),
        ("spectrum=" + ",".join(["nan"] * 31), OutOfRangeError),
    ],
)
def test_what_is_no_colour_is_refused(address: str, error: type[Exception]) -> None:
    """A bad colour is one sentence, not a fault of the page."""
    with pytest.raises(error):
        target_asked(QueryDict(address))


@pytest.mark.django_db
@pytest.mark.parametrize("address", ["wanted=9", "wanted=x", "swatch=²", "lot=none"])
def test_number_of_nothing_is_refused(address: str) -> None:
    """An old or mangled address says what is not there."""
    with pytest.raises(NotFoundError):
        target_asked(QueryDict(address))
