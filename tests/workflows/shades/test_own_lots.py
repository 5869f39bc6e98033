"""What the studio's own lots differ by widens all that is foretold, in words too."""

import pytest

from shadewright.core.mixing import Mix, told_mixes
from shadewright.records.models import Bath
from shadewright.records.models.lots import ColourEvidence
from shadewright.workflows.bath_wishes import BathWish
from shadewright.workflows.baths import plan_bath
from shadewright.workflows.days.scale_check import scale_check
from shadewright.workflows.lots import note_colour
from shadewright.workflows.shades.own_lots import own_lots_differ, own_lots_words
from shadewright.workflows.shades.palettes import PaletteNow, palette_now
from shadewright.workflows.stamps import stamp_now, today
from tests.workflows.bench import founded
from tests.workflows.correcting.off_lots import note
from tests.workflows.judging.lots_in_a_row import (
    USUAL,
    LotsInARow,
    lots_in_a_row,
    palette_of_both,
)

pytestmark = [pytest.mark.store, pytest.mark.django_db]

MIX = (("Slate", 0.6), ("Gorse", 0.3))


@pytest.fixture
def row() -> LotsInARow:
    """Eight lots alike, and a palette."""
    founded()
    lots = lots_in_a_row(off=(0.0, 0.0, 0.0))
    palette_of_both(lots.pot)
    return lots


def scatter(numbers: tuple[str, ...], by: float) -> None:
    """Read the lots anew, lighter and darker by turns."""
    light, a, b = USUAL
    for place, number in enumerate(numbers):
        note(number, (light + (by if place % 2 else -by), a, b))


def off_90(holds: PaletteNow | None) -> float:
    """Return what nine in ten mixes stay under."""
    assert holds is not None
    mix = Mix(base="Fell DK", doses=MIX)
    return float(told_mixes([mix], palette=holds.palette).de_90[0])


def test_lots_that_scatter_widen_what_is_foretold(row: LotsInARow) -> None:
    near = off_90(palette_now())
    scatter(row.numbers, 2.0)
    own = own_lots_differ()
    assert own is not None
    holds = palette_now()
    assert holds is not None
    assert holds.own_lots == own
    assert holds.palette.repeats == own.sd
    assert off_90(holds) > near + 0.3
    assert f"differ by about {own.apart:.1f} (8 lots)" in own_lots_words(own)


def test_few_lots_are_not_counted(row: LotsInARow) -> None:
    assert own_lots_differ() is not None  # seven steps from lot to lot
    for number in row.numbers[:3]:
        by_eye = ColourEvidence.HEX
        note_colour(
            number=number, colour="#7f8a6b", evidence=by_eye, stamp=stamp_now(by=None)
        )
    assert own_lots_differ() is None
    holds = palette_now()
    assert holds is not None
    assert (holds.palette.repeats, own_lots_words(holds.own_lots)) == (0.0, "")


def test_the_scale_check_names_it(row: LotsInARow) -> None:
    bath = Bath.objects.get(lot__number=row.last)
    wish = BathWish(
        version_id=bath.version_id,
        base_id=bath.base_id,
        fibre_g=400.0,
        dyed_on=today(),
    )
    own = own_lots_differ()
    assert own is not None
    said = scale_check(plan_bath(wish)).not_at_all
    assert said[-1] == (
        f"how your own lots differ: by about {own.apart:.1f}, whatever the size"
    )


def test_one_palette_stands_until_a_colour_is_new(row: LotsInARow) -> None:
    scatter(row.numbers, 2.0)
    first, again = palette_now(), palette_now()
    assert first is not None
    assert again is not None
    assert again.palette is first.palette  # what is reckoned by palette is kept
    scatter(row.numbers, 4.0)
    after = palette_now()
    assert after is not None
    assert after.palette.repeats > first.palette.repeats + 0.5
