"""What was foretold of a bath is kept, and counted once its colour is read."""

from uuid import uuid4

import pytest

from shadewright.core.colour import Lab, ciede2000
from shadewright.core.mixing import Mix, told_mixes
from shadewright.core.mixing.swatches import DOSE_ERROR
from shadewright.core.uncertainty import Term, Value, usual_counts
from shadewright.records.models import (
    Base,
    Bath,
    ColourReading,
    PaletteFit,
    Prediction,
    Swatch,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.planned_baths import give_up
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.outcomes import Counts, Outcome, hit_rate, outcomes
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.predictions import foresight
from shadewright.workflows.stamps import stamp_now
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped
from tests.workflows.shades.swatch_rows import kept_swatch

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def pot() -> Ready:
    """Return a planned bath of Slate and Gorse on Fell DK, before any palette."""
    founded()
    return ready(bottle_ml=5000.0)


def learned(pot: Ready) -> None:
    """Fit swatches of both dyes on the yarn of the bath."""
    base = Base.objects.get(pk=pot.base)
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    kept_swatch(base, {"Slate": 1.0}, (40.0, -2.0, -10.0))
    kept_swatch(base, {"Gorse": 1.0}, (76.0, 6.0, 62.0))
    fit_now(why="first swatches")


def read(number: str, lab: Lab, *, read_by: ReadBy = ReadBy.METER) -> Swatch:
    """Read the colour of a bath."""
    bath = Bath.objects.get(number=number)
    row, _is_new = Swatch.objects.get_or_create(
        bath=bath, defaults={"deed": uuid4(), "label": number, "base": bath.base}
    )
    ColourReading.objects.create(
        deed=uuid4(), swatch=row, read_by=read_by, labs={"D65": list(lab)}
    )
    return row


def test_nothing_is_foretold_without_a_palette(pot: Ready) -> None:
    assert not Prediction.objects.exists()
    base = Base.objects.get(pk=pot.base)
    kept_swatch(base, {"Slate": 1.0}, (40.0, -2.0, -10.0))
    fit_now(why="one dye")
    pot.another()
    assert not Prediction.objects.exists()  # Gorse is not in the palette


def test_what_the_palette_says_is_kept_as_it_was(pot: Ready) -> None:
    learned(pot)
    number = pot.another()
    (row,) = Prediction.objects.all()
    fit = PaletteFit.objects.get()
    assert (row.bath.number, row.fit_id) == (number, fit.pk)
    assert dict(row.doses) == {"Slate": 0.6, "Gorse": 0.3}
    assert row.dose_error >= DOSE_ERROR
    palette = fit_now(why="again").palette
    mix = Mix(base="Fell DK", doses=(("Slate", 0.6), ("Gorse", 0.3)))
    told = told_mixes([mix], palette=palette, dose_error=row.dose_error)
    assert [row.colour_l, row.colour_a, row.colour_b] == pytest.approx(told.lab[0])
    # Each dose counts by its own error, here nearly the same.
    assert row.within_90 == pytest.approx(told.de_90[0], rel=0.03)


def test_a_little_of_a_dye_weighed_badly_is_part_of_the_bound(pot: Ready) -> None:
    learned(pot)
    poured = Term(name="pouring", source="a syringe", u=0.04)
    deep = ("Gorse", Value(value=2.0, terms=(poured,)))

    def bound(u_percent: float) -> float:
        slip = Term(name="weighing", source="a scale", u=u_percent)
        little = ("Slate", Value(value=0.04, terms=(slip,)))
        found = foresight(
            base_name="Fell DK", depths=[deep, little], holds=palette_now()
        )
        assert found is not None
        return float(found.told.de_90[0])

    # Seven tenths of 0.04 % of a dark dye show on any yellow; as one share of all the
    # dye in the pot they are 1.4 %, less than is usual.
    assert bound(0.028) > 1.1 * bound(0.0008)


def test_a_prediction_is_held_against_what_came_out(pot: Ready) -> None:
    learned(pot)
    near, far, waits = pot.another(), pot.another(), pot.another()
    foretold = next(x.foretold for x in outcomes() if x.bath_number == near)
    read(near, foretold._replace(L=foretold.L + 1.0))
    read(far, foretold._replace(L=foretold.L - 40.0), read_by=ReadBy.EYE)
    found = {each.bath_number: each for each in outcomes()}
    assert found[near].apart == ciede2000(
        foretold, foretold._replace(L=foretold.L + 1.0)
    )
    assert (found[near].is_held, found[far].is_held) == (True, False)
    assert found[waits].counts is Counts.WAITS
    rate = hit_rate(tuple(found.values()))
    assert rate is not None
    assert (rate.counted, rate.mixes, rate.held) == (2, 1, 1)
    # A rough reading is no measure of the bound: of the one other, 0 or 1 may hold.
    assert (rate.poor, rate.poor_held) == (1, 0)
    assert (rate.fewest, rate.most) == usual_counts(promises=1, chance=0.9)


def test_a_fit_that_knew_the_swatch_foretold_nothing(pot: Ready) -> None:
    learned(pot)
    number = pot.another()
    row = read(number, Lab(50.0, 0.0, 10.0))
    fit = PaletteFit.objects.get()
    fit.used = [*fit.used, {"swatch": row.pk}]
    fit.save()
    (found,) = outcomes()
    assert found.counts is Counts.KNEW
    assert hit_rate([found]) is None


def test_what_went_in_otherwise_is_named(pot: Ready) -> None:
    learned(pot)
    number = pot.another()
    for step, bottle, ml in (("dose-1", pot.slate, 90), ("dose-2", pot.gorse, 30)):
        tapped(number, BathAct.DOSED, step, value=ml, unit="ml", bottle=bottle)
    read(number, Lab(45.0, 0.0, 5.0))
    (found,) = outcomes()
    assert found.otherwise == ("Slate",)
    assert found.counts is Counts.OTHERWISE
    assert hit_rate([found]) is None


def test_a_dose_within_what_the_bound_is_for_counts(pot: Ready) -> None:
    learned(pot)
    number = pot.another()
    Prediction.objects.update(dose_error=0.1)
    for step, bottle, ml in (("dose-1", pot.slate, 66), ("dose-2", pot.gorse, 30)):
        tapped(number, BathAct.DOSED, step, value=ml, unit="ml", bottle=bottle)
    read(number, Lab(45.0, 0.0, 5.0))
    (found,) = outcomes()
    assert (found.otherwise, found.counts) == ((), Counts.YES)


def test_a_bath_that_was_given_up_is_no_prediction(pot: Ready) -> None:
    learned(pot)
    number = pot.another()
    give_up(number=number, why="no time", stamp=stamp_now(by=None))
    assert outcomes() == ()


def test_no_outcome_is_no_rate() -> None:
    nothing: tuple[Outcome, ...] = ()
    assert hit_rate(nothing) is None
