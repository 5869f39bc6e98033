"""A wanted colour: typed, off a swatch or a lot, kept under a name."""

import pytest

from shadewright.core.colour import Lab, Light
from shadewright.errors import ConflictError, MissingError, NotFoundError
from shadewright.records.models import Base, Bath
from shadewright.records.models.lots import ColourEvidence
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.lots import note_colour
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.shades.wanted import (
    CameFrom,
    keep_wanted,
    retire_wanted,
    target_of,
    wanted_colour,
    wanted_colours,
    wanted_of_lot,
    wanted_of_spectrum,
    wanted_of_swatch,
    wanted_of_text,
)
from shadewright.workflows.stamps import stamp_now
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import ready
from tests.workflows.shades.swatch_rows import kept_swatch

GREY = (0.2,) * 31


def test_lab_that_was_typed_is_a_meters() -> None:
    """Numbers come off a meter; they hold as typed, in daylight alone."""
    found = wanted_of_text("44, −17, 17.5", name="Wet Fern")
    assert (found.name, found.read_by) == ("Wet Fern", ReadBy.METER)
    assert found.lab == Lab(44.0, -17.0, 17.5)
    assert target_of(found).is_known_under_one


def test_hex_is_seen_on_a_screen() -> None:
    """A hex code is what an eye picked, and finds itself again."""
    found = wanted_of_text("556F4A")
    assert (found.read_by, found.key) == (ReadBy.EYE, "#556f4a")
    assert found.came_from is CameFrom.COLOUR


def test_spectrum_is_known_under_every_light() -> None:
    """An even spectrum is as grey under the bulb as by the window."""
    found = wanted_of_spectrum(GREY, name="Even grey")
    aim = target_of(found, lights=(Light.A, Light.LED_B3))
    assert [light for light, _lab in aim.labs] == [Light.D65, Light.A, Light.LED_B3]
    assert all(abs(lab.a) < 0.1 and abs(lab.b) < 0.1 for _light, lab in aim.labs)


@pytest.mark.django_db
def test_swatch_gives_its_newest_colour() -> None:
    """What is wanted of a swatch is what was read of it."""
    base = Base.objects.create(name="Hollow 4-ply", fibres="wool 100 %")
    row = kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0))
    found = wanted_of_swatch(swatch_now(row.pk))
    assert (found.lab, found.base_id) == (Lab(76.0, 6.0, 62.0), base.pk)
    assert (found.came_from, found.key) == (CameFrom.SWATCH, str(row.pk))


@pytest.mark.django_db
def test_wet_swatch_has_no_colour_yet() -> None:
    """A wet reading is no colour to aim at."""
    base = Base.objects.create(name="Hollow 4-ply", fibres="wool 100 %")
    row = kept_swatch(base, {"Gorse": 1.0}, (60.0, 6.0, 62.0), is_wet=True)
    with pytest.raises(MissingError, match="rinsed and dry"):
        wanted_of_swatch(swatch_now(row.pk))


@pytest.mark.django_db
def test_lot_gives_the_colour_that_was_noted() -> None:
    """A lot whose colour was noted can be aimed at again; without one it cannot."""
    number = finished(dyed(ready()))
    with pytest.raises(MissingError, match=f"lot {number}"):
        wanted_of_lot(number)
    note_colour(
        number=number,
        colour="50, 2, −8",
        evidence=ColourEvidence.METER,
        stamp=stamp_now(by=None),
    )
    found = wanted_of_lot(number)
    assert (found.lab, found.read_by) == (Lab(50.0, 2.0, -8.0), ReadBy.METER)


@pytest.mark.django_db
def test_lot_that_was_read_gives_the_reading() -> None:
    """A reading of its end says more than a note."""
    number = finished(dyed(ready()))
    base = _bath(number).base
    row = kept_swatch(base, {}, (51.0, 1.0, -9.0), read_by=ReadBy.LIGHTS)
    row.bath = _bath(number)
    row.save()
    found = wanted_of_lot(number)
    assert (found.lab, found.read_by) == (Lab(51.0, 1.0, -9.0), ReadBy.LIGHTS)


@pytest.mark.django_db
def test_kept_colour_comes_back_as_it_was() -> None:
    """Nothing of a colour is lost in keeping it."""
    typed = wanted_of_text("44, -17, 17.5")
    kept = keep_wanted(typed, name=" Wet  Fern ", stamp=stamp_now(by=None))
    again = wanted_colour(kept.wanted_id or 0)
    assert again == kept
    assert (again.name, again.lab, again.as_typed) == (
        "Wet Fern",
        typed.lab,
        "44, -17, 17.5",
    )


@pytest.mark.django_db
def test_two_kept_colours_do_not_share_a_name() -> None:
    """A name means one colour."""
    keep_wanted(wanted_of_text("#556f4a"), name="Wet Fern", stamp=stamp_now(by=None))
    with pytest.raises(ConflictError, match="Wet Fern"):
        keep_wanted(
            wanted_of_text("#000000"), name="wet fern", stamp=stamp_now(by=None)
        )


@pytest.mark.django_db
def test_retired_colour_is_kept_and_comes_back() -> None:
    """Retiring takes it out of the list only."""
    kept = keep_wanted(
        wanted_of_text("#556f4a"), name="Wet Fern", stamp=stamp_now(by=None)
    )
    assert kept.wanted_id
    retire_wanted(kept.wanted_id, stamp=stamp_now(by=None))
    assert wanted_colours() == ()
    assert wanted_colours(is_retired=True) == (kept,)
    retire_wanted(kept.wanted_id, stamp=stamp_now(by=None), is_retired=False)
    assert wanted_colours() == (kept,)


@pytest.mark.django_db
def test_colour_that_is_not_kept_is_said_so() -> None:
    """An old address is answered in a sentence."""
    with pytest.raises(NotFoundError, match="no wanted colour"):
        wanted_colour(99)


def _bath(number: str) -> Bath:

    return Bath.objects.get(number=number)
