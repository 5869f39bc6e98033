"""A meter whose light was written down wrongly, and what it read."""

from datetime import UTC, datetime
from uuid import uuid4

import pytest

from shadewright.core.colour import Lab, Light, Observer, lab_of_meter
from shadewright.records.models import Base, ColourReading, Meter, Swatch
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.kinds import reading_of
from shadewright.workflows.shades.meter_changes import keep_meter
from shadewright.workflows.shades.readings import ReadWords, keep_reading
from shadewright.workflows.shades.swatches import swatch_now
from shadewright.workflows.stamps import stamp_now

pytestmark = pytest.mark.django_db

THEN = datetime(2026, 5, 1, 9, tzinfo=UTC)


def swatch(label: str) -> Swatch:
    """Return a swatch without a reading."""
    base, _ = Base.objects.get_or_create(name="Wool")
    return Swatch.objects.create(deed=uuid4(), label=label, base=base)


def read(row: Swatch, text: str, meter: Meter | None, **further: str) -> int:
    """Read a swatch and return the reading’s number."""
    meter_id = None if meter is None else meter.pk
    words = ReadWords(
        read_by=ReadBy.METER, texts=(text,), meter_id=meter_id, further=further
    )
    stamp = stamp_now(by=None, at=THEN)
    return keep_reading(swatch_id=row.pk, words=words, stamp=stamp)


@pytest.mark.parametrize(
    ("light", "observer", "is_carried"),
    [("D65", "10", False), ("D50", "10", True), ("D65", "2", True)],
)
def test_a_carried_colour_is_told_from_a_plain_one(
    light: str, observer: str, *, is_carried: bool
) -> None:
    """All that a meter reads for another light or eye errs alike."""
    meter = Meter.objects.create(name="Hand meter", light=light, observer=observer)
    row = swatch("Gorse 1 %")
    number = read(row, "70, 10, 50", meter)
    found = reading_of(ColourReading.objects.get(pk=number))
    assert found.is_carried is is_carried


def lab_now(row: Swatch) -> Lab:
    """Return its colour as it holds."""
    found = swatch_now(row.pk).reading
    assert found is not None
    return found.lab


def test_what_it_read_is_carried_anew_and_no_more() -> None:
    meter = Meter.objects.create(name="Wren")
    one, other, two = swatch("one"), swatch("other"), swatch("two")
    read(one, "50 40 20\n50 42 20", meter, A="54 46 30", FL11="52 38 28")
    read(other, "50 40 20", meter)
    read(other, "60 30 10", None)
    read(two, "50 40 20", None)
    meter.light, meter.observer = "D50", "2"
    found = keep_meter(meter, stamp_now(by=None))
    assert (found.carried, found.left) == (1, 0)
    assert found.words == "; 1 colour was carried anew"
    two_degrees = Observer.TWO_DEGREES
    now = lab_of_meter(Lab(50, 41, 20), light=Light.D50, observer=two_degrees)
    assert lab_now(one) == pytest.approx(now)
    kept = ColourReading.objects.filter(swatch=one).last()
    assert kept is not None
    lamp = lab_of_meter(Lab(54, 46, 30), light=Light.A, observer=two_degrees)
    assert kept.labs["A"] == pytest.approx(lamp)
    assert (kept.at, kept.read_by, kept.repeat) == (THEN, ReadBy.LIGHTS, 2)
    assert kept.as_typed == "50 40 20; 50 42 20"
    assert lab_now(other) == (60.0, 30.0, 10.0)
    assert lab_now(two) == (50.0, 40.0, 20.0)


def test_and_back_again_nothing_is_lost() -> None:
    meter = Meter.objects.create(name="Wren")
    row = swatch("one")
    read(row, "50 40 20", meter)
    for light in ("D50", "D65"):
        meter.light = light
        keep_meter(meter, stamp_now(by=None))
    assert lab_now(row) == (50.0, 40.0, 20.0)
    assert ColourReading.objects.filter(swatch=row).count() == 3


def test_what_changes_no_light_carries_nothing() -> None:
    meter = Meter.objects.create(name="Wren")
    row = swatch("one")
    read(row, "50 40 20", meter)
    meter.spread = 0.4
    assert not keep_meter(meter, stamp_now(by=None)).words
    assert ColourReading.objects.count() == 1


def test_a_reading_that_kept_no_singles_stays_as_it_is() -> None:
    meter = Meter.objects.create(name="Wren")
    row = swatch("one")
    ColourReading.objects.create(
        deed=uuid4(),
        swatch=row,
        read_by=ReadBy.METER,
        meter=meter,
        labs={"D65": [50.0, 40.0, 20.0]},
    )
    meter.observer = "2"
    found = keep_meter(meter, stamp_now(by=None))
    assert (found.carried, found.left) == (0, 1)
    assert "1 could not be" in found.words
    assert lab_now(row) == (50.0, 40.0, 20.0)
