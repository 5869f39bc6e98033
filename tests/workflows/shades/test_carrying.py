"""One recipe on every base, and carried to another."""

from uuid import uuid4

import pytest

from shadewright.core.colour import ciede2000
from shadewright.errors import MissingError, NotFoundError
from shadewright.records.models import Bath, ColourReading, Dye, Lot, Swatch
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.baths import BathWish, keep_bath
from shadewright.workflows.recipe_shapes import Version
from shadewright.workflows.shades.carry_keeping import keep_carried
from shadewright.workflows.shades.carrying import (
    carried_now,
    carry_now,
)
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.shades.two_yarns import two_yarns

pytestmark = [pytest.mark.store, pytest.mark.django_db]

SEEN = (55.0, -2.0, 12.0)


def lot_of(version: Version, base_id: int) -> str:
    """Finish a bath of a version to a lot, without its round."""
    wish = BathWish(
        version_id=version.id, base_id=base_id, fibre_g=100.0, dyed_on=today()
    )
    number = keep_bath(wish=wish, stamp=stamp_now(by=None))
    bath = Bath.objects.get(number=number)
    Lot.objects.create(bath=bath, number=number)
    return number


def test_a_recipe_stands_on_every_base() -> None:
    """Made for wool, guessed in part on silk, not possible on nylon."""
    yarns = two_yarns()
    version = yarns.recipe(Sloe=0.6, Peat=0.2)
    shown = carry_now(yarns.now, version_id=version.id)
    wool, silk, nylon = shown.rows
    assert (wool.base.words, wool.is_made_for) == ("Hollow 4-ply", True)
    assert wool.guessed == ()
    assert silk.guessed == ("Peat",)
    assert nylon.told is None
    assert not any(row.is_tested for row in shown.rows)
    assert [base.words for base in shown.open_to] == ["Drift silk"]


def test_a_lot_makes_it_tested_and_its_colour_is_shown() -> None:
    """It was made for the base that most lots came out on."""
    yarns = two_yarns()
    version = yarns.recipe(Sloe=0.6)
    number = lot_of(version, yarns.silk)
    swatch = Swatch.objects.create(
        deed=uuid4(),
        label="end",
        base_id=yarns.silk,
        bath=Bath.objects.get(number=number),
    )
    ColourReading.objects.create(
        deed=uuid4(), swatch=swatch, read_by=ReadBy.METER, labs={"D65": SEEN}
    )
    shown = carry_now(yarns.now, version_id=version.id)
    assert shown.made_for.base.words == "Drift silk"
    assert (shown.made_for.lots, shown.made_for.is_tested) == (1, True)
    assert shown.made_for.read is not None
    assert shown.made_for.read.lab == SEEN
    other = carry_now(yarns.now, version_id=version.id, made_for_id=yarns.wool)
    assert other.made_for.base.words == "Hollow 4-ply"


def test_carried_it_comes_nearer_and_is_kept_as_the_next_version() -> None:
    yarns = two_yarns()
    version = yarns.recipe(Sloe=0.6, Kelp=0.3)
    shown = carry_now(yarns.now, version_id=version.id)
    found = carried_now(yarns.now, shown, to_id=yarns.silk)
    assert shown.made_for.told is not None
    assert found.after < found.before
    assert found.after == pytest.approx(
        ciede2000(shown.made_for.told.lab, found.told.lab)
    )
    stamp = stamp_now(by=None)
    kept = keep_carried(yarns.now, to_id=yarns.silk, shown=shown, stamp=stamp)
    again = keep_carried(yarns.now, to_id=yarns.silk, shown=shown, stamp=stamp)
    assert (kept.number, kept.parent_number, again.id) == (2, 1, kept.id)
    assert kept.text.why_changed == "carried to Drift silk from Hollow 4-ply"
    depths = tuple((x.dye_name, x.depth_percent) for x in kept.text.doses)
    assert depths == tuple((dye.name, dye.depth_percent) for dye in found.doses)


def test_it_is_not_carried_to_where_nothing_is_known() -> None:
    yarns = two_yarns()
    shown = carry_now(yarns.now, version_id=yarns.recipe(Sloe=0.6).id)
    with pytest.raises(MissingError, match="A swatch on Moss nylon"):
        carried_now(yarns.now, shown, to_id=yarns.nylon)
    with pytest.raises(NotFoundError, match="no base"):
        carried_now(yarns.now, shown, to_id=9999)


def test_a_dye_without_a_swatch_is_named() -> None:
    yarns = two_yarns()
    Dye.objects.create(name="Madrone")
    shown = carry_now(yarns.now, version_id=yarns.recipe(Sloe=0.6, Madrone=0.1).id)
    assert shown.why_not.startswith("No swatch of Madrone")
    assert shown.open_to == ()
    assert not any(row.told for row in shown.rows)
