"""The palette that holds rests on what teaches, and on nothing else."""

from uuid import uuid4

import pytest

from shadewright.errors import MissingError
from shadewright.records.models import Base, EvidenceLine, PaletteFit
from shadewright.records.models.swatches import EvidenceAct
from shadewright.workflows.shades.evidence import evidence
from shadewright.workflows.shades.fits import (
    PALETTES_KEPT,
    fit_if_stale,
    fit_now,
    is_stale,
)
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Standing, swatch_now
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def base() -> Base:
    """Return a bare yarn."""
    return Base.objects.create(name="Hollow 4-ply", fibres="wool")


def test_what_was_entered_is_what_the_palette_rests_on(base: Base) -> None:
    """Bare yarn and six dyes; once fitted nothing is new."""
    rows = kept_singles(base)
    assert is_stale(palette_now())
    fitted = fit_now(why="first swatches")
    assert sorted(fitted.used) == [row.pk for row in rows]
    assert list(fitted.left_out) == [rows[0].pk]
    assert len(fitted.palette.names.dyes) == 6
    assert not is_stale(palette_now())


def test_a_palette_that_cannot_be_read_is_fitted_anew(base: Base) -> None:
    """Nothing else is held up by it."""
    kept_singles(base)
    fit_now(why="first swatches")
    strange = '{"format": "shadewright-palette", "version": 99}'
    PaletteFit.objects.update(palette=strange)
    assert palette_now() is None
    fit_if_stale(why="begun again")
    assert palette_now() is not None


def test_a_swatch_set_aside_teaches_no_longer(base: Base) -> None:
    """It stays in the store, and the palette knows that it is out of date."""
    rows = kept_singles(base)
    fit_now(why="first swatches")
    EvidenceLine.objects.create(deed=uuid4(), swatch=rows[1], act=EvidenceAct.SET_ASIDE)
    assert swatch_now(rows[1].pk).standing is Standing.SET_ASIDE
    assert rows[1].pk not in {each.number for each in evidence()}
    assert is_stale(palette_now())


def test_a_wet_reading_teaches_nothing(base: Base) -> None:
    """It is kept, and said to be wet."""
    row = kept_swatch(base, {"Gorse": 1.0}, (70.0, 4.0, 60.0), is_wet=True)
    assert swatch_now(row.pk).standing is Standing.WET
    assert evidence() == ()


def test_without_a_dyed_swatch_there_is_no_palette(base: Base) -> None:
    """Bare yarn alone is no palette, and nothing is kept of the try."""
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    with pytest.raises(MissingError):
        fit_now(why="too early")
    assert not PaletteFit.objects.exists()


def test_old_fits_keep_what_they_rest_on(base: Base) -> None:
    """Of the newest the whole palette is kept."""
    kept_singles(base)
    for _time in range(PALETTES_KEPT + 1):
        fit_now(why="again")
    whole = PaletteFit.objects.exclude(palette="")
    assert whole.count() == PALETTES_KEPT
    assert all(row.used for row in PaletteFit.objects.all())
