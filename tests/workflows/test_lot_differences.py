"""Two lots side by side: what differs, what cannot be told, what is the same."""

from dataclasses import replace

import pytest

from shadewright.records.models.baths import BathAct
from shadewright.workflows.lot_differences import Compared, compare_lots
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.stamps import stamp_now
from tests.workflows.bench import founded, made, new_jar
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready(bottle_ml=1000.0)


def by_name(rows: tuple[Compared, ...]) -> dict[str, tuple[str, str]]:
    return {
        row.name: (
            row.first.replace("\u00a0", " "),
            row.second.replace("\u00a0", " "),
        )
        for row in rows
    }


def test_only_what_differs_is_a_difference(pot: Ready) -> None:
    first = finished(dyed(pot))
    other = dyed(pot, pot.another(), volumes_ml={pot.slate: 66.0}, hold_min=40.0)
    finished(other)
    found = compare_lots(first, other)
    assert by_name(found.differ) == {
        "Slate, depth given": ("0.6 %", "0.66 %"),
        "Held, the top to heat off": ("30 min", "40 min"),
    }
    same = by_name(found.same)
    assert same["Recipe"] == ("Low Tide", "Low Tide")
    assert same["Yarn in a litre"] == ("33.3 g/l", "33.3 g/l")
    assert same["Citric acid, after the start"] == ("10 min", "10 min")
    assert same["Rise, heat on to the top"] == ("50 min", "50 min")


def test_what_was_left_in_the_bath_and_the_rinses_are_told(pot: Ready) -> None:
    first, other = dyed(pot), dyed(pot, pot.another())
    tapped(first, BathAct.LEFTOVER, "hold", value=25.0, unit="%")
    for number, rinses in ((first, 2), (other, 3)):
        for _ in range(rinses):
            tapped(number, BathAct.RINSED, "rinse")
    found = compare_lots(finished(first), finished(other))
    assert by_name(found.differ)["Rinses"] == ("2", "3")
    assert by_name(found.untold)["Dye left in the bath"] == ("25 %", "")


def test_two_unknowns_are_not_the_same(pot: Ready) -> None:
    first = finished(dyed(pot))
    other = finished(dyed(pot, pot.another()))
    found = compare_lots(first, other)
    assert {"Mill lot", "Slate, jar", "Problems"} <= set(found.neither)
    assert "Mill lot" not in by_name(found.same)


def test_another_bottle_from_another_jar_shows_with_its_age(pot: Ready) -> None:
    first = finished(dyed(pot))
    jar = new_jar(pot.slate_dye)
    bottle = made(pot.slate_dye, jar, powder_g=5.5)
    other = pot.another()
    tapped(other, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=bottle.code)
    tapped(other, BathAct.PROBLEM, "hold")
    finished(other)
    found = compare_lots(first, other)
    differ, untold = by_name(found.differ), by_name(found.untold)
    assert differ["Slate, bottle"] == (pot.slate, bottle.code)
    assert differ["Slate, strength used"] == ("1 %", "1.1 %")
    assert not untold["Slate, jar"][0]
    assert untold["Slate, jar"][1].startswith("J")
    assert untold["Gorse, depth given"] == ("0.3 %", "")
    assert untold["Problems"] == ("", "not said which")


def test_a_dye_of_the_other_recipe_was_not_in_this_bath(pot: Ready) -> None:
    first = finished(dyed(pot))
    slate = DoseLine(dye_id=pot.slate_dye, dye_name="Slate", depth_percent=0.6)
    text = RecipeText(doses=(slate,))
    paler = write_recipe(name="Ebb", text=text, stamp=stamp_now(by=None))
    other = replace(pot, version=paler.id).another()
    tapped(other, BathAct.DOSED, "dose-1", value=60.0, unit="ml", bottle=pot.slate)
    differ = by_name(compare_lots(first, finished(other)).differ)
    assert differ["Gorse, depth given"] == ("0.3 %", "not in this bath")
    assert differ["Citric acid, amount"] == ("2 g", "not in this bath")
    assert differ["Recipe"] == ("Low Tide", "Ebb")


def test_a_dose_left_out_is_known_to_be(pot: Ready) -> None:
    first = finished(dyed(pot))
    other = pot.another()
    tapped(other, BathAct.MISSED, "dose-2")
    finished(other)
    differ = by_name(compare_lots(first, other).differ)
    assert differ["Gorse, depth given"] == ("0.3 %", "left out")


def test_a_lot_compared_with_itself_differs_in_nothing(pot: Ready) -> None:
    number = finished(dyed(pot))
    assert compare_lots(number, number).differ == ()
