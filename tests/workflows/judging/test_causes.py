"""A lot's history out of the ledgers, its causes, and what it teaches."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from shadewright.cli.entry import shadewright
from shadewright.errors import ConflictError, NotFoundError
from shadewright.exchange.lot_history import causes_answer, read_history
from shadewright.workflows.judging.causes import why
from shadewright.workflows.judging.drift import drift
from shadewright.workflows.judging.histories import history_of, history_up_to
from shadewright.workflows.judging.lessons import strength_lesson, take_strength
from shadewright.workflows.shades.own_lots import studio_repeatability
from shadewright.workflows.shelf import shelf_bottle
from shadewright.workflows.undo import undo
from tests.workflows.bench import founded, now
from tests.workflows.judging.lots_in_a_row import (
    LotsInARow,
    lots_in_a_row,
    palette_of_both,
)

pytestmark = pytest.mark.store


@pytest.fixture
def short_hold(db: None) -> LotsInARow:
    """Return lots in a row of which the last was held 10 minutes, not 30."""
    del db
    founded()
    return lots_in_a_row(off=(2.6, -0.4, 0.6), hold_min=10.0)


def test_a_history_tells_what_the_ledgers_hold(short_hold: LotsInARow) -> None:
    history = history_up_to(short_hold.last)
    first, last = history.past[0], history.past[-1]
    assert [lot.number for lot in history.past] == list(short_hold.numbers)
    assert (first.hold_min, last.hold_min) == (30.0, 10.0)
    assert (last.acid_after_min, last.ramp_c_per_min) == (10.0, 1.0)
    # 100 g in 2.9 l of water and 0.09 l of stock
    assert last.load_g_per_l == pytest.approx(33.4)
    pot = short_hold.pot
    assert last.bottle == f"{pot.slate} + {pot.gorse}"
    # The bottle of Gorse stood there already: nobody ever wrote down its jar.
    assert last.jar == first.jar == history.lots[-1].dyes[0].jar is not None
    assert (last.pot, last.person) == (None, None)
    assert [dye.name for dye in history.lots[-1].dyes] == ["Slate", "Gorse"]
    with pytest.raises(NotFoundError):
        history_up_to("260101-B9")


def test_the_short_hold_is_named_first_here_and_in_the_terminal(
    short_hold: LotsInARow, tmp_path: Path
) -> None:
    told = why(short_hold.last)
    assert told.is_off
    assert (told.causes[0].name, told.causes[0].now) == ("Hold", "10\u00a0min")
    assert "paler" in told.found.words or "lighter" in told.found.words
    assert "10 min" in told.test.replace("\u00a0", " ")
    assert not why(short_hold.numbers[-2]).is_off
    pot, last = short_hold.pot, short_hold.last
    recipe_id = history_up_to(last).what.recipe_id
    history = history_of(recipe_id=recipe_id, base_id=pot.base)
    assert read_history(history.text, number=last) == history.past
    file = tmp_path / "history.csv"
    file.write_text(history.text, encoding="utf-8")
    ran = CliRunner().invoke(
        shadewright, ["lot", "causes", str(file), "--lot", last, "--json"]
    )
    assert json.loads(ran.stdout) == causes_answer(why(last).found)
    found = drift(recipe_id=recipe_id, base_id=short_hold.pot.base)
    assert [mark.lot for mark in found.marks] == [short_hold.last]
    assert "hold 10" in found.marks[0].words
    assert found.lots[-1].lighter > 2.0
    repeats = studio_repeatability()
    assert repeats is not None
    assert (repeats.lots, repeats.recipes) == (8, 1)
    assert 0.1 < repeats.sd < 0.6


def test_a_weak_bottle_is_learned_and_taken_back(db: None) -> None:
    del db
    founded()
    row = lots_in_a_row(off=(2.2, 0.0, 1.9), is_new_jar=True)
    assert strength_lesson(why(row.last)) is None  # no palette yet
    palette_of_both(row.pot)
    told = why(row.last)
    assert {cause.name for cause in told.causes} >= {"Jar", "Bottle"}
    (bottle,) = (cause for cause in told.causes if cause.name == "Bottle")
    newest = told.lot.dyes[0].bottle
    assert (bottle.which, bottle.was, bottle.now) == ("Slate", row.pot.slate, newest)
    lesson = strength_lesson(told)
    assert lesson is not None
    assert lesson.dye == "Slate"
    assert lesson.is_weaker
    stamp = now()
    for _twice in range(2):
        take_strength(number=row.last, stamp=stamp)
    counts = shelf_bottle(lesson.bottle)
    assert counts.strength_percent == pytest.approx(lesson.strength.value)
    assert counts.strength.u == pytest.approx(lesson.strength.u)
    with pytest.raises(ConflictError):
        take_strength(number=row.last, stamp=now())
    undo(deed=stamp.deed, stamp=now())
    assert shelf_bottle(lesson.bottle).strength_percent == pytest.approx(1.0)
