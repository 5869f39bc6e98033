"""What an over-poured dose does to the colour, and what rescaling the rest does."""

import pytest

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.mixing import Mix, told_mixes
from shadewright.records.models import Base
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.shades.colour_shifts import ColourShift, colour_shift
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.palettes import palette_or_refuse
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped
from tests.workflows.shades.swatch_rows import kept_swatch

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    """A bath of 0.6 % Slate and 0.3 % Gorse; 78 ml of Slate went in for 60."""
    founded()
    pot = ready()
    tapped(pot.number, BathAct.DOSED, "dose-1", value=78.0, unit="ml", bottle=pot.slate)
    return pot


def learned(pot: Ready) -> None:
    base = Base.objects.get(pk=pot.base)
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    kept_swatch(base, {"Slate": 1.0}, (40.0, -2.0, -10.0))
    kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0))
    fit_now(why="first swatches")


def shift_of(pot: Ready, factor: float = 1.3) -> ColourShift:
    found = colour_shift(bath_now(pot.number), factor=factor)
    assert found is not None
    return found


def test_without_a_palette_nothing_is_said(pot: Ready) -> None:
    assert colour_shift(bath_now(pot.number), factor=1.3) is None


def test_it_is_the_palettes_own_colour_of_planned_and_poured(pot: Ready) -> None:
    learned(pot)
    palette = palette_or_refuse().palette
    mixes = [
        Mix(base="Fell DK", doses=(("Slate", slate), ("Gorse", gorse)))
        for slate, gorse in ((0.6, 0.3), (0.78, 0.3), (0.78, 0.39))  # x 1.3
    ]
    told = told_mixes(mixes, palette=palette)
    planned, poured, more = (Lab(*map(float, lab)) for lab in told.lab)
    shift = shift_of(pot)
    assert shift.difference == pytest.approx(ciede2000(planned, poured))
    assert "darker" in shift.words
    assert shift.rest is not None
    assert shift.rest.difference == pytest.approx(ciede2000(planned, more))


def test_the_rest_rescaled_turns_the_hue_less(pot: Ready) -> None:
    learned(pot)
    shift = shift_of(pot)
    assert "bluer" in shift.words
    assert shift.rest is not None
    assert "bluer" not in shift.rest.words


def test_after_rescaling_the_colour_is_that_of_the_whole(pot: Ready) -> None:
    learned(pot)
    before = shift_of(pot).rest
    tapped(pot.number, BathAct.NOTE, "more/dose-1", value=130.0, unit="%")
    after = shift_of(pot, factor=1.0)
    assert before is not None
    assert after.difference == pytest.approx(before.difference)
    assert after.rest is None
