"""What stands behind a prediction, the nearest first."""

import pytest

from shadewright.records.models import Base
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.standing_behind import behind
from shadewright.workflows.shades.swatches import Doses
from tests.workflows.shades.swatch_rows import kept_swatch

pytestmark = [pytest.mark.store, pytest.mark.django_db]

MIX: Doses = (("Gorse", 0.6), ("Sloe", 0.2))


@pytest.mark.by_hand
def test_the_nearest_come_first_and_strangers_not_at_all() -> None:
    wool, silk = (Base.objects.create(name=name) for name in ("Fell DK", "Drift"))
    assert behind(MIX, "Fell DK") == ()
    swatches = {
        "bare": kept_swatch(wool, {}, (91.0, -0.5, 9.0)),
        "bare silk": kept_swatch(silk, {}, (93.0, 0.0, 4.0)),
        # Σ min / Σ max: 0.6 / (1.0 + 0.2) = 0.5
        "Gorse": kept_swatch(wool, {"Gorse": 1.0}, (76.0, 6.0, 62.0)),
        # 0.2 / (0.6 + 1.0) = 0.125
        "Sloe": kept_swatch(wool, {"Sloe": 1.0}, (38.0, 4.0, -32.0)),
        # the very mix, on another yarn: 1 / 2 less a hair, for 0.59
        "mix on silk": kept_swatch(
            silk, {"Gorse": 0.59, "Sloe": 0.2}, (58.0, -14.0, 16.0)
        ),
        "Peat": kept_swatch(wool, {"Peat": 1.0}, (32.0, 6.0, 12.0)),
    }
    fit_now(why="first swatches")
    names = {row.pk: name for name, row in swatches.items()}
    found = [names[each.id] for each in behind(MIX, "Fell DK")]
    assert found == ["Gorse", "mix on silk", "Sloe", "bare"]
