"""What a palette says of a base is counted from the swatches that teach it."""

import math

import pytest

from shadewright.errors import NotFoundError
from shadewright.records.models import Base, WantedColour
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades import palette_pages
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.palette_pages import (
    LEAST_LEFT_OUT,
    advised_on,
    base_most_used,
    missed_on,
    palette_on_base,
    reckon_ahead,
    wanted_for,
)
from shadewright.workflows.shades.wanted import wanted_colours
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def hollow() -> Base:
    """Wool with six dyes, and silk with one of them."""
    wool = Base.objects.create(name="Hollow 4-ply", fibres="wool")
    silk = Base.objects.create(name="Drift silk", fibres="silk")
    kept_singles(wool)
    kept_swatch(wool, {"Gorse": 0.3}, (82.0, 1.0, 46.0))
    kept_swatch(silk, {"Gorse": 1.0}, (74.0, 7.0, 64.0))
    fit_now(why="first swatches")
    return wool


def test_dyes_are_counted_where_they_were_dyed(hollow: Base) -> None:
    silk = Base.objects.get(name="Drift silk")
    assert base_most_used() == hollow.pk
    here = palette_on_base(hollow.pk)
    assert (here.base.taught, here.base.dyed) == (8, 7)
    gorse = next(each for each in here.dyes if each.name == "Gorse")
    assert [x.doses[0][1] for x in gorse.alone] == [0.3, 1.0]
    assert (gorse.mixes, gorse.elsewhere) == (0, 1)
    there = palette_on_base(silk.pk)
    assert [each.name for each in there.dyes if each.alone] == ["Gorse"]
    assert [each.lightness for each in there.reaches] == [70.0, 50.0, 30.0]
    assert [each.name for each in there.bases] == ["Hollow 4-ply", "Drift silk"]


def test_one_swatch_a_dye_says_nothing_of_how_well_it_foretells(hollow: Base) -> None:
    """Bare yarn and Gorse alone stand in swatches that others foretell."""
    here = palette_on_base(hollow.pk)
    assert (here.left_out.count, here.left_out.half) == (4, None)


def test_left_out_swatches_of_all_bases_count_where_one_has_few(hollow: Base) -> None:
    """Each dye twice on wool, and one swatch on silk: 8 and 9 at least."""
    for dye, lab in (
        ("Rosehip", (66.0, 36.0, 15.0)),
        ("Foxglove", (64.0, 38.0, -6.0)),
        ("Sloe", (58.0, 0.0, -26.0)),
        ("Kelp", (68.0, -20.0, 12.0)),
    ):
        kept_swatch(hollow, {dye: 0.3}, lab)
    fit_now(why="two of each")
    here = palette_on_base(hollow.pk)
    few = palette_on_base(Base.objects.get(name="Drift silk").pk)
    assert here.now is not None
    every = sorted(here.now.left_out.values())
    assert (here.left_out.count, few.left_out.count) == (len(every) - 1, len(every))
    assert len(every) > LEAST_LEFT_OUT
    assert few.left_out.half == every[(len(every) - 1) // 2]
    assert few.left_out.nine_in_ten == every[math.ceil(0.9 * len(every)) - 1]


def test_only_what_lies_out_of_reach_is_named(hollow: Base) -> None:
    for name, lab in (("Kingcup", (80, 0, 110)), ("Brick", (50, 25, 20))):
        WantedColour.objects.create(name=name, read_by=ReadBy.METER, labs={"D65": lab})
    silk = Base.objects.get(name="Drift silk")
    WantedColour.objects.create(
        name="For silk", read_by=ReadBy.METER, labs={"D65": (80, 0, 110)}, base=silk
    )
    wanted = wanted_for(hollow.pk, wanted_colours())
    (missed,) = missed_on(palette_on_base(hollow.pk), wanted)
    assert missed.wanted.name == "Kingcup"
    assert missed.distance > 5.0
    assert "duller" in missed.words
    assert [dye for dye, _depth in missed.doses] == ["Gorse"]


def test_what_is_reckoned_ahead_is_not_reckoned_again(hollow: Base) -> None:
    reckon_ahead()
    kept = (palette_pages._strips, palette_pages._reaches, palette_pages._advised)
    before = [each.cache_info().misses for each in kept]
    assert len(advised_on(palette_on_base(hollow.pk))) == palette_pages.ADVISED
    assert [each.cache_info().misses for each in kept] == before


def test_without_a_palette_there_is_nothing_to_say() -> None:
    base = Base.objects.create(name="Hollow 4-ply", fibres="wool")
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    reckon_ahead()
    assert base_most_used() is None
    found = palette_on_base(base.pk)
    assert found.now is None
    assert len(found.swatches) == 1
    assert advised_on(found) == ()
    assert missed_on(found, ()) == ()
    with pytest.raises(NotFoundError):
        palette_on_base(99)


def test_a_retired_base_is_shown_when_it_is_asked_for(hollow: Base) -> None:
    del hollow
    old = Base.objects.create(name="Old DK", fibres="wool", is_retired=True)
    assert "Old DK" not in {
        each.name for each in palette_on_base(Base.objects.earliest("id").pk).bases
    }
    assert palette_on_base(old.pk).base.name == "Old DK"
