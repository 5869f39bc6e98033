"""What was found becomes a recipe that says what it was found for."""

from dataclasses import replace

import pytest

from shadewright.errors import MissingError
from shadewright.records.models import (
    Auxiliary,
    Base,
    Dye,
    FoundFor,
    RecipeVersion,
)
from shadewright.workflows.recipes import recipe
from shadewright.workflows.shades.find_wishes import FindWish
from shadewright.workflows.shades.finding import find
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.saving import ToSave, found_for, save_found
from shadewright.workflows.shades.wanted import wanted_of_text
from shadewright.workflows.stamps import stamp_now
from tests.workflows.shades.studios import Fitted, fitted
from tests.workflows.shades.swatch_rows import kept_singles

FERN = wanted_of_text("52, -10, 20", name="Wet Fern")


def to_save(studio: Fitted) -> ToSave:
    return ToSave(
        doses=studio.mix(Kelp=0.62, Gorse=0.31), base_id=studio.base.pk, wanted=FERN
    )


@pytest.mark.django_db
def test_new_recipe_bears_the_name_and_the_usual_way_of_dyeing() -> None:
    """Acid and heat are those of what was dyed last on that base."""
    studio = fitted()
    made = save_found(to_save(studio), stamp=stamp_now(by=None))
    assert (made.recipe_name, made.number, made.is_complete) == ("Wet Fern", 1, True)
    depths = {dose.dye_name: dose.depth_percent for dose in made.text.doses}
    assert depths == {"Kelp": 0.62, "Gorse": 0.31}
    assert [helper.name for helper in made.text.helpers] == ["Citric acid"]
    assert (made.text.top_c, made.text.hold_min) == (90.0, 30.0)
    assert made.text.why_changed == "Found for Wet Fern on Fell DK"


@pytest.mark.django_db
def test_it_keeps_for_what_it_was_found() -> None:
    """The numbers are those that the search showed, for the doses as saved."""
    studio = fitted()
    first = find(FindWish(wanted=FERN, base_id=studio.base.pk)).answers[0]
    found = replace(to_save(studio), doses=first.depths)
    made = save_found(found, stamp=stamp_now(by=None))
    told = found_for(made.id)
    assert told is not None
    assert (told.wanted.name, told.base_name) == ("Wet Fern", "Fell DK")
    assert told.wanted.lab == FERN.lab
    assert told.wanted.base_id == studio.base.pk
    assert told.difference == pytest.approx(first.difference, abs=1e-6)
    assert told.within_90 == pytest.approx(first.within_90)
    assert told.chance == first.chance


@pytest.mark.django_db
def test_second_try_for_the_same_colour_is_the_next_version() -> None:
    """A found recipe of that name goes on; a deed sent twice is written once."""
    studio, stamp = fitted(), stamp_now(by=None)
    first = save_found(to_save(studio), stamp=stamp)
    again = save_found(to_save(studio), stamp=stamp)
    assert again == first
    assert save_found(to_save(studio), stamp=stamp_now(by=None)) == first
    other = replace(to_save(studio), doses=studio.mix(Kelp=0.6, Gorse=0.31))
    second = save_found(other, stamp=stamp_now(by=None))
    assert (second.recipe_id, second.number) == (first.recipe_id, 2)
    assert FoundFor.objects.count() == 2


@pytest.mark.django_db
def test_name_of_another_recipe_is_left_alone() -> None:
    """A colourway that was not found keeps its name; the new one gets a number."""
    studio = fitted()
    found = replace(to_save(studio), name="Low Tide")
    made = save_found(found, stamp=stamp_now(by=None))
    assert made.recipe_name == "Low Tide 2"


@pytest.mark.django_db
def test_parent_gets_its_next_version() -> None:
    """Looked for from a recipe, it becomes that recipe's next version."""
    studio = fitted()
    found = replace(to_save(studio), parent_id=studio.pot.version)
    made = save_found(found, stamp=stamp_now(by=None))
    parent = RecipeVersion.objects.get(pk=studio.pot.version)
    assert (made.recipe_id, made.parent_number) == (parent.recipe_id, parent.number)
    assert recipe(made.recipe_id).newest == made


@pytest.mark.django_db
def test_mix_without_a_colour_is_found_for_nothing() -> None:
    """A mix made by eye is a recipe as well."""
    studio = fitted()
    found = replace(to_save(studio), wanted=None, name="By Eye")
    made = save_found(found, stamp=stamp_now(by=None))
    assert (made.recipe_name, found_for(made.id)) == ("By Eye", None)


@pytest.mark.django_db
def test_dye_that_the_palette_lacks_is_refused() -> None:
    """Slate has a bottle but no swatch."""
    studio = fitted()
    found = replace(to_save(studio), doses=studio.mix(Slate=0.5))
    with pytest.raises(MissingError, match="dye of the palette"):
        save_found(found, stamp=stamp_now(by=None))


@pytest.mark.django_db
def test_studio_without_a_recipe_begins_with_a_programme() -> None:
    """From nothing: the heat of a usual programme, and acid if there is one."""
    base = Base.objects.create(name="Fell DK", fibres="wool 100 %")
    kept_singles(base)
    fit_now(why="six swatches")
    Auxiliary.objects.create(name="Citric acid")
    kelp = Dye.objects.get(name="Kelp")
    found = ToSave(doses=((kelp.pk, 0.6),), base_id=base.pk, wanted=FERN)
    made = save_found(found, stamp=stamp_now(by=None))
    assert made.is_complete
    assert made.text.top_c is not None
    assert made.text.hold_min is not None


@pytest.mark.django_db
def test_colour_of_a_screen_is_looked_for_again_as_such() -> None:
    """What an eye picked is not read by a meter the second time."""
    studio = fitted()
    picked = replace(to_save(studio), wanted=wanted_of_text("#556f4a", name="Fern"))
    told = found_for(save_found(picked, stamp=stamp_now(by=None)).id)
    assert told is not None
    assert wanted_of_text(told.wanted.key).read_by is told.wanted.read_by
    assert told.wanted.key == "#556f4a"
