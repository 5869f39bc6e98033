"""The square beside a dye's name: a chart's colour, else its own swatch."""

import pytest

from shadewright.records.models import Base, Dye
from shadewright.workflows.shades.dye_chips import DyeChip, dye_chips
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.workflows.shades.swatch_rows import kept_swatch

pytestmark = pytest.mark.django_db
WHITE = (100.0, 0.0, 0.0)


def test_the_chart_comes_first_then_the_swatch_nearest_to_one_per_cent() -> None:
    base = Base.objects.create(name="Fell DK")
    charted = Dye.objects.create(name="Gorse", chart_hex="#e0b02c")
    unknown = Dye.objects.create(name="Peat")
    kept_swatch(base, {"Sloe": 0.1}, (80.0, 0.0, 0.0))
    kept_swatch(base, {"Sloe": 0.8}, WHITE)
    kept_swatch(base, {"Sloe": 3.0}, (20.0, 0.0, 0.0))
    kept_swatch(base, {"Sloe": 1.0, "Peat": 1.0}, (30.0, 0.0, 0.0))
    sloe = Dye.objects.get(name="Sloe")
    found = dye_chips([charted.pk, unknown.pk, sloe.pk])
    assert found[charted.pk].hex_code == "#e0b02c"
    assert found[charted.pk].words == "Chart colour, a guess"
    assert found[unknown.pk] == DyeChip()
    assert found[sloe.pk].hex_code == "#ffffff"
    assert found[sloe.pk].words.replace("\u00a0", " ") == "Own swatch, 0.8 %"


def test_a_colour_that_was_taken_back_is_none() -> None:
    base = Base.objects.create(name="Fell DK")
    row = kept_swatch(base, {"Sloe": 1.0}, WHITE)
    undo(deed=row.readings.get().deed, stamp=stamp_now(by=None))
    sloe = Dye.objects.get(name="Sloe")
    assert dye_chips([sloe.pk]) == {sloe.pk: DyeChip()}
