"""Recipes: versions that never change, old ones taken in, names used once."""

from dataclasses import replace
from typing import Any

import pytest

from shadewright.errors import (
    ConflictError,
    MissingError,
    NotFoundError,
    OutOfRangeError,
    StudioError,
)
from shadewright.records.models import (
    Auxiliary,
    Base,
    Lot,
    Recipe,
    RecipeVersion,
)
from shadewright.records.models import Bath as BathRow
from shadewright.records.models.recipes import AmountUnit, When
from shadewright.workflows.baths import BathWish, keep_bath
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText, Try
from shadewright.workflows.recipe_words import (
    changes,
    dose_words,
    heat_words,
    ratio_words,
)
from shadewright.workflows.recipes import (
    recipe,
    recipes,
    rename_recipe,
    retire_recipe,
    version,
    write_recipe,
    write_version,
)
from shadewright.workflows.stamps import today
from tests.workflows.bench import founded, new_dye, now
from tests.workflows.test_at_once import at_once

pytestmark = pytest.mark.django_db


TIDE = RecipeText(
    doses=(DoseLine(as_written="3 tsp of my blue"),),
    start_c=40.0,
    rise_c_per_min=1.0,
    top_c=90.0,
    hold_min=30.0,
    ties="four, loose",
)


def slate_text() -> RecipeText:
    dose = DoseLine(dye_id=new_dye(), dye_name="Slate", depth_percent=0.6)
    return replace(TIDE, doses=(dose,))


def test_a_recipe_is_read_back_as_it_was_written() -> None:
    acid = Auxiliary.objects.create(name="Vinegar", is_liquid=True)
    helper = HelperLine(
        auxiliary_id=acid.pk,
        name="Vinegar",
        amount=2.0,
        unit=AmountUnit.PER_LITRE,
        when=When.TWO_HALVES,
    )
    text = replace(slate_text(), helpers=(helper,), notes="Slow.")
    written = write_recipe(name="  Low   Tide ", text=text, stamp=now())
    assert written.text == text
    assert written.is_complete
    assert (written.recipe_name, written.number) == ("Low Tide", 1)
    assert version(written.id) == written
    assert [each.name for each in recipes()] == ["Low Tide"]


def test_a_change_is_a_new_version_and_the_old_one_stays() -> None:
    first = write_recipe(name="Low Tide", text=slate_text(), stamp=now())
    deeper = replace(
        first.text,
        doses=(replace(first.text.doses[0], depth_percent=0.8),),
        why_changed="too pale",
    )
    second = write_version(parent_id=first.id, text=deeper, stamp=now())
    aside = write_version(parent_id=first.id, text=first.text, stamp=now())
    page = recipe(first.recipe_id)
    assert [each.number for each in page.versions] == [3, 2, 1]
    assert page.newest == aside
    assert (second.parent_number, aside.parent_number) == (1, 1)
    assert version(first.id) == first
    row = RecipeVersion.objects.get(pk=first.id)
    with pytest.raises(ConflictError, match="never changed"):
        row.save()
    with pytest.raises(ConflictError, match="never deleted"):
        row.delete()


def test_an_old_recipe_is_taken_in_and_marked() -> None:
    text = RecipeText(
        doses=(DoseLine(as_written="3 tsp of my blue"),),
        liquor_ratio=None,
        as_written="3 tsp of my blue, a glug of vinegar",
    )
    old = write_recipe(name="Grandmother", text=text, stamp=now())
    assert not old.is_complete
    assert old.what_is_missing == (
        "no dye and depth in % for “3 tsp of my blue”; no liquor ratio"
    )
    only_text = RecipeText(doses=(), as_written="two spoons, one hour")
    bare = write_recipe(name="Spoons", text=only_text, stamp=now())
    assert bare.what_is_missing == "no dye is named"
    whole = replace(
        text, doses=(DoseLine(dye_id=new_dye(), depth_percent=1.0),), liquor_ratio=30.0
    )
    assert write_version(parent_id=old.id, text=whole, stamp=now()).is_complete


@pytest.mark.parametrize(
    ("change", "argument"),
    [
        ({"doses": ()}, "doses"),
        ({"doses": (DoseLine(dye_name="Slate", depth_percent=-1.0),)}, "doses"),
        ({"doses": (DoseLine(dye_name="Slate", depth_percent=51.0),)}, "doses"),
        ({"doses": (DoseLine(dye_id=1), DoseLine(dye_id=1))}, "doses"),
        ({"liquor_ratio": 0.0}, "liquor_ratio"),
        ({"liquor_ratio": float("nan")}, "liquor_ratio"),
        ({"top_c": 106.0}, "top_c"),
        ({"top_c": 30.0}, "top_c"),
        ({"start_c": -1.0}, "start_c"),
        ({"rise_c_per_min": 0.0}, "rise_c_per_min"),
        ({"hold_min": 601.0}, "hold_min"),
        ({"helpers": (HelperLine(auxiliary_id=1, amount=-2.0),)}, "helpers"),
    ],
)
def test_what_no_recipe_can_say_is_refused(
    change: dict[str, Any], argument: str
) -> None:
    with pytest.raises(StudioError) as refused:
        write_recipe(name="Low Tide", text=replace(TIDE, **change), stamp=now())
    assert refused.value.argument == argument
    assert not Recipe.objects.exists()


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("", MissingError),
        (" ", MissingError),
        ("x" * 61, OutOfRangeError),
        ("low  TIDE", ConflictError),
    ],
)
def test_a_name_is_there_short_and_used_once(
    name: str, kind: type[StudioError]
) -> None:
    write_recipe(name="Low Tide", text=TIDE, stamp=now())
    with pytest.raises(kind) as refused:
        write_recipe(name=name, text=TIDE, stamp=now())
    assert refused.value.argument == "name"


def test_a_recipe_keeps_the_names_that_it_had() -> None:
    tide = write_recipe(name="Low Tide", text=TIDE, stamp=now())
    write_recipe(name="Moss", text=TIDE, stamp=now())
    with pytest.raises(ConflictError):
        rename_recipe(recipe_id=tide.recipe_id, name="MOSS")
    assert not rename_recipe(recipe_id=tide.recipe_id, name="LOW tide").was_named
    rename_recipe(recipe_id=tide.recipe_id, name="Ebb")
    page = rename_recipe(recipe_id=tide.recipe_id, name="Neap")
    assert (page.name, page.was_named) == ("Neap", "LOW tide, Ebb")
    for turn in range(8):
        page = rename_recipe(recipe_id=tide.recipe_id, name=f"{turn}" * 60)
    assert len(page.was_named) <= 200
    assert page.was_named.endswith("6" * 60)


def test_a_retired_recipe_leaves_the_list_and_keeps_its_name() -> None:
    tide = write_recipe(name="Low Tide", text=TIDE, stamp=now())
    retire_recipe(recipe_id=tide.recipe_id)
    assert recipes() == ()
    assert [each.name for each in recipes(is_retired=True)] == ["Low Tide"]
    with pytest.raises(ConflictError, match="among the retired"):
        write_recipe(name="Low Tide", text=TIDE, stamp=now())
    retire_recipe(recipe_id=tide.recipe_id, is_retired=False)
    assert [each.name for each in recipes()] == ["Low Tide"]


def test_a_base_counts_as_tried_once_a_lot_came_out() -> None:
    tide = write_recipe(name="Low Tide", text=slate_text(), stamp=now())
    fell, moor = (Base.objects.create(name=name) for name in ("Fell", "Moor"))
    for base in (fell, moor, moor):
        wish = BathWish(
            version_id=tide.id, base_id=base.pk, fibre_g=100.0, dyed_on=today()
        )
        number = keep_bath(wish=wish, stamp=now())
        if base is moor:
            row = BathRow.objects.get(number=number)
            Lot.objects.create(bath=row, number=number)
    page = recipe(tide.recipe_id)
    assert page.tries == (Try(base_name="Moor", versions=(1,)),)
    assert recipes()[0].tried_on == ("Moor",)


def test_what_is_not_there_is_said() -> None:
    with pytest.raises(NotFoundError):
        recipe(77)
    with pytest.raises(NotFoundError):
        version(77)
    with pytest.raises(NotFoundError):
        write_version(parent_id=77, text=TIDE, stamp=now())


def test_what_changed_is_said_in_words() -> None:
    vinegar = HelperLine(auxiliary_id=1, name="Vinegar", amount=2.0)
    before = RecipeText(
        doses=(
            DoseLine(dye_id=1, dye_name="Slate", depth_percent=0.5),
            DoseLine(dye_id=2, dye_name="Peat", depth_percent=0.1),
        ),
        helpers=(vinegar,),
        top_c=90.0,
    )
    after = replace(
        before,
        doses=(
            DoseLine(dye_id=1, dye_name="Slate", depth_percent=0.6),
            DoseLine(dye_id=3, dye_name="Gorse", depth_percent=0.2),
        ),
        helpers=(replace(vinegar, when=When.AT_TOP),),
        liquor_ratio=20.0,
        top_c=None,
        ties="four, loose",
    )
    said = [
        each.words.replace("\N{NO-BREAK SPACE}", " ") for each in changes(before, after)
    ]
    assert said == [
        "Slate: 0.6 %, was 0.5 %",
        "Peat: left out, was 0.1 %",
        "Gorse: 0.2 %, new",
        "Liquor ratio: 1:20, was 1:30",
        (
            "Vinegar: 2 % on fibre, at the top temperature, "
            "was 2 % on fibre, after the dye, before the heat"
        ),
        "Top: left out, was 90 °C",
        "Ties: “four, loose”, new",
    ]
    assert changes(after, after) == ()


def test_a_recipe_is_told_in_short_words() -> None:
    plain = "\N{NO-BREAK SPACE}"
    known = DoseLine(dye_id=1, dye_name="Slate", depth_percent=0.6)
    assert dose_words(known).replace(plain, " ") == "Slate 0.6 %"
    assert dose_words(DoseLine(as_written="a glug")) == "“a glug”"
    assert ratio_words(30.0) == "1:30"
    assert not ratio_words(None)
    assert heat_words(TIDE).replace(plain, " ") == (
        "from 40 °C to 90 °C, by 1 °C a minute, hold 30 min"
    )
    assert heat_words(RecipeText(doses=(), hold_min=30.0)).startswith("hold")


@pytest.mark.django_db(transaction=True)
def test_a_recipe_sent_twice_at_once_is_written_once() -> None:
    founded()
    stamp, other = now(), now()
    raised = at_once(
        *[lambda: write_recipe(name="Low Tide", text=TIDE, stamp=stamp)] * 3
    )
    assert raised == []
    first = recipes()[0].newest
    again = [lambda: write_version(parent_id=first.id, text=TIDE, stamp=other)] * 2
    more = [lambda: write_version(parent_id=first.id, text=TIDE, stamp=now())] * 3
    assert at_once(*again, *more) == []
    numbers = [each.number for each in recipes()[0].versions]
    assert numbers == [5, 4, 3, 2, 1]


@pytest.mark.django_db(transaction=True)
def test_two_people_cannot_take_one_name() -> None:
    founded()
    raised = at_once(
        *[lambda: write_recipe(name="Low Tide", text=TIDE, stamp=now())] * 4
    )
    assert [type(error) for error in raised] == [ConflictError] * 3
