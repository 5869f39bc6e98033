"""A dye or a base under a new name: the palette that names it follows."""

import pytest
from django.test import Client
from pytest_django.fixtures import Settings

from shadewright.records.models import Base, Dye
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.palettes import palette_now
from tests.workflows.shades.swatch_rows import kept_singles

pytestmark = pytest.mark.usefixtures("ines")


def test_the_palette_follows_a_new_name(client: Client, settings: Settings) -> None:
    base = Base.objects.create(name="Hollow", fibres="wool")
    kept_singles(base)
    fit_now(why="first swatches")
    settings.REFITS = "at once"
    for address, name in ((f"/bases/{base.pk}/edit/", "Sock"), (_gorse(), "Furze")):
        sent = {
            "name": name,
            "fibres": "wool",
            "undyeable_percent": "0",
            "dye_class": "unknown",
        }
        assert client.post(address, sent).status_code == 302
    holds = palette_now()
    assert holds is not None
    assert holds.palette.names.bases == ("Sock",)
    assert "Furze" in holds.palette.names.dyes


def _gorse() -> str:
    return f"/dyes/{Dye.objects.get(name='Gorse').pk}/edit/"
