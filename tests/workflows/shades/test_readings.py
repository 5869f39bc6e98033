"""A colour that was read: typed, averaged, carried, kept."""

from math import sqrt
from uuid import uuid4

import pytest

from shadewright.core.colour import Lab, Light, Observer, lab_of_meter, sd_of_meter
from shadewright.errors import InputError
from shadewright.records.models import Base, ColourReading, Meter
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.evidence import evidence
from shadewright.workflows.shades.readings import (
    NewReading,
    ReadWords,
    keep_reading,
    reading_from,
)
from shadewright.workflows.shades.spectra import labs_of_spectrum
from shadewright.workflows.shades.swatches import Standing, swatch_now
from shadewright.workflows.stamps import stamp_now
from tests.workflows.shades.swatch_rows import kept_swatch

pytestmark = pytest.mark.django_db

LEVEL = " ".join(["25"] * 31)


def by_meter(*texts: str, meter: Meter | None = None, **further: str) -> NewReading:
    """Return what a meter gave."""
    return reading_from(
        ReadWords(
            read_by=ReadBy.METER,
            texts=texts,
            meter_id=None if meter is None else meter.pk,
            further=further,
        )
    )


def test_a_colour_off_a_screen_is_a_guess_of_its_usual_spread() -> None:
    found = reading_from(ReadWords(read_by=ReadBy.EYE, texts=("#808080",)))
    assert found.lab == pytest.approx((53.585, 0.0, 0.0), abs=0.01)
    assert (found.repeat, found.sd) == (1, None)
    assert found.each == ({"hex": "#808080"},)


def test_picking_again_does_not_mend_the_screen() -> None:
    words = ReadWords(read_by=ReadBy.PHOTO, texts=("#808080\n#848484\n#7c7c7c",))
    found = reading_from(words)
    assert found.sd is not None
    assert found.sd / sqrt(found.repeat) > 4.0


@pytest.mark.by_hand
def test_readings_are_averaged_and_their_scatter_told() -> None:
    found = by_meter("51 10 20\n50 12 20\n\n49,0 8,0 20,0")
    assert found.lab == (50.0, 10.0, 20.0)
    assert found.repeat == 3
    assert found.sd == pytest.approx(sqrt(5.0))
    assert found.as_typed == "51 10 20; 50 12 20; 49,0 8,0 20,0"
    assert found.each[1] == {"light": "D65", "observer": 10, "lab": [50.0, 12.0, 20.0]}


def test_what_the_meter_is_known_for_holds_where_the_readings_show_less() -> None:
    meter = Meter.objects.create(name="Wren", spread=0.4)
    assert by_meter("50 10 20", "50 10 20.1", meter=meter).sd == 0.4
    assert by_meter("50 10 20", meter=meter).sd == 0.4
    assert by_meter("50 10 20", "50 10 20").sd is None


def test_three_lights_are_more_than_two() -> None:
    whole = by_meter("50 10 20", A="52 13 24", FL11="51 8 22")
    assert whole.read_by is ReadBy.LIGHTS
    assert whole.labs["FL11"] == (51.0, 8.0, 22.0)
    part = by_meter("50 10 20", A="52 13 24", FL11=" ")
    assert part.read_by is ReadBy.METER
    assert part.labs["A"] == (52.0, 13.0, 24.0)


def test_a_meter_of_another_light_is_carried_and_less_sure() -> None:
    meter = Meter.objects.create(name="Print", light="D50", observer="2", spread=0.3)
    found = by_meter("50 40 20\n50 40 20", meter=meter, A="54 46 30")
    two = Observer.TWO_DEGREES
    carried = lab_of_meter(Lab(50, 40, 20), light=Light.D50, observer=two)
    assert found.lab == carried
    lamp = lab_of_meter(Lab(54, 46, 30), light=Light.A, observer=two)
    assert found.labs["A"] == lamp
    assert found.each[0] == {"light": "D50", "observer": 2, "lab": [50.0, 40.0, 20.0]}
    off = sd_of_meter(Lab(50, 40, 20), light=Light.D50, observer=two)
    assert found.sd is not None
    assert (found.sd / sqrt(2)) ** 2 == pytest.approx(0.3**2 / 2 + off**2)


def test_a_spectrum_is_read_per_cent_or_not_and_seen_under_three_lights() -> None:
    words = ReadWords(read_by=ReadBy.METER, spectrum_text=f"{LEVEL}\n{LEVEL}")
    found = reading_from(words)
    assert found.read_by is ReadBy.SPECTRUM
    assert found.spectrum == (0.25,) * 31
    assert found.labs == labs_of_spectrum([0.25] * 31)
    # L* of Y = 25: 116 · 0.25^(1/3) − 16.
    assert found.lab == pytest.approx((57.0754, 0.0, 0.0), abs=1e-4)
    assert found.repeat == 2


@pytest.mark.parametrize(
    ("words", "argument", "sentence"),
    [
        (ReadWords(read_by=ReadBy.METER), "texts", "The colour is missing"),
        (
            ReadWords(read_by=ReadBy.METER, texts=("50 1 2\n51 1",)),
            "texts",
            "Reading 2, “51 1”, cannot be read",
        ),
        (
            ReadWords(read_by=ReadBy.METER, texts=("#a0522d",)),
            "texts",
            "A meter gives L, a and b, not #a0522d",
        ),
        (
            ReadWords(read_by=ReadBy.EYE, texts=("50 1 2\n101 0 0",)),
            "texts",
            "Reading 2, “101 0 0”, must be L from 0 to 100",
        ),
        (
            ReadWords(read_by=ReadBy.METER, texts=("50 145 0",)),
            "texts",
            "under D65 must be",
        ),
        (
            ReadWords(read_by=ReadBy.METER, texts=("50 1 2",), further={"A": "x"}),
            "further_A",
            "The colour cannot be read",
        ),
        (
            ReadWords(read_by=ReadBy.METER, texts=("50 1 2\n" * 21,)),
            "texts",
            "at most 20; got 21",
        ),
        (
            ReadWords(read_by=ReadBy.SPECTRUM, texts=("50 1 2",)),
            "spectrum_text",
            "The spectrum is missing",
        ),
        (
            ReadWords(read_by=ReadBy.METER, spectrum_text=" ".join(["0"] * 31)),
            "spectrum_text",
            "Reflectance must be",
        ),
    ],
)
def test_what_cannot_be_read_is_told_in_one_sentence(
    words: ReadWords, argument: str, sentence: str
) -> None:
    with pytest.raises(InputError, match=sentence) as caught:
        reading_from(words)
    assert caught.value.argument == argument


def test_a_reading_is_kept_once_and_a_wet_one_teaches_nothing() -> None:
    row = kept_swatch(Base.objects.create(name="Wool"), {"Gorse": 1.0}, (70, 5, 60))
    stamp = stamp_now(by=None, deed=uuid4())
    words = ReadWords(read_by=ReadBy.METER, texts=("71 5 61", "71 5 62"))
    first = keep_reading(swatch_id=row.pk, words=words, stamp=stamp)
    assert keep_reading(swatch_id=row.pk, words=words, stamp=stamp) == first
    wet = ReadWords(read_by=ReadBy.METER, texts=("60 5 61",), is_wet=True)
    keep_reading(swatch_id=row.pk, words=wet, stamp=stamp_now(by=None))
    now = swatch_now(row.pk)
    assert now.standing is Standing.COUNTS
    assert now.reading is not None
    assert now.reading.lab == (71.0, 5.0, 61.5)
    assert ColourReading.objects.filter(swatch=row).count() == 3
    (taught,) = evidence()
    assert taught.reading.repeat == 2
