"""The fit on a page: what holds, what runs, what went wrong."""

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.records.models import Base, PaletteFit
from shadewright.records.models.palettes import FitState
from shadewright.records.models.swatches import ReadBy
from shadewright.web.evidence.parts import (
    fit_shown,
)
from shadewright.workflows.people import Person
from shadewright.workflows.shades.fits import fail_left_behind, fit_now
from shadewright.workflows.stamps import this_moment
from tests.web.pages_read import read
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = pytest.mark.django_db


def test_a_studio_without_a_palette_is_told_how_one_comes(
    client: Client, ines: Person
) -> None:
    del ines
    page = read(client.get(reverse("fits")))
    assert "There is no palette yet." in page.text
    assert "None yet." in page.text


@pytest.mark.usefixtures("at_once")
def test_a_palette_that_is_out_of_date_says_so_until_it_is_fitted(
    client: Client, base: Base
) -> None:
    kept_singles(base)
    fit_now(why="first swatches")
    assert not fit_shown().is_stale
    kept_swatch(base, {"Gorse": 0.3}, (80.0, 4.0, 44.0), read_by=ReadBy.EYE)
    assert "has changed since" in read(client.get(reverse("fits"))).text
    client.post(reverse("fit-now"))
    page = read(client.get(reverse("fits")))
    assert "has changed since" not in page.text
    assert "It rests on 8 swatches of all yarns" in page.text
    assert "New: Gorse 0.3 %" in page.text


def test_a_fit_that_runs_shows_how_far_it_is(client: Client, base: Base) -> None:
    row = PaletteFit.objects.create(stage="Fitting the swatches", share=0.4)
    first = f'hx-get="{reverse("fit-status")}?first=1"'
    assert first in read(client.get(reverse("fits"))).source
    answer = client.get(reverse("fit-status"), {"first": "1"})
    assert 'value="40"' in read(answer).source
    assert first in read(answer).source
    assert first not in read(client.get(reverse("fit-status"))).source
    PaletteFit.objects.filter(pk=row.pk).update(state=FitState.FAILED, fault="No.")
    assert "The last fit failed. No." in read(client.get(reverse("fit-status"))).text
    kept_singles(base)
    fit_now(why="first swatches")
    here = {"HX-Current-URL": "http://testserver/shades/fits/?a=1"}
    answer = client.get(reverse("fit-status"), headers=here)
    assert "HX-Refresh" not in answer.headers
    assert "/shades/fits/?a=1" in read(answer).links
    answer = client.get(reverse("fit-status"), {"first": "1"})
    assert answer.headers["HX-Refresh"] == "true"


def test_a_fit_that_a_closed_program_left_is_ended(base: Base) -> None:
    del base
    row = PaletteFit.objects.create(why="Gorse 1 % was read")
    assert not fail_left_behind(before=row.started_at)
    assert fail_left_behind(before=this_moment()) == "Gorse 1 % was read"
    row.refresh_from_db()
    assert row.fault == "Shadewright was closed before this fit was done."


def test_a_fit_of_nothing_dyed_is_refused_in_a_sentence(
    client: Client, base: Base
) -> None:
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    answer = client.post(reverse("fit-now"))
    assert answer.status_code == 422
    assert "Enter one swatch of each dye first." in read(answer).text
