"""A dose went over: the depth, the colour, and the rest rescaled or left so."""

from uuid import UUID

import pytest
from django.test import Client

from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.deviations import deviations
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.web.pages_read import Answer, read
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready, tapped

pytestmark = pytest.mark.django_db


@pytest.fixture
def pot() -> Ready:
    """66 ml of Slate went in for 60; Gorse, 30 ml, is still to come."""
    founded()
    pot = ready()
    tapped(pot.number, BathAct.STARTED, "fill")
    tapped(pot.number, BathAct.DOSED, "dose-1", value=66.0, unit="ml", bottle=pot.slate)
    return pot


def shown(client: Client, pot: Ready, query: str = "?view=main") -> Answer:
    return read(client.get(f"/bench/{pot.number}/{query}"))


def rescale(pot: Ready, percent: float = 110.0) -> UUID:
    return tapped(pot.number, BathAct.NOTE, "more/dose-1", value=percent, unit="%")


def asked_ml(pot: Ready) -> float | None:
    (gorse,) = (x.step for x in bath_now(pot.number).steps if x.step.key == "dose-2")
    return gorse.amount


def test_it_offers_the_rest_rescaled_and_to_leave_it_so(
    client: Client, pot: Ready
) -> None:
    said = shown(client, pot)
    assert "0.66 % instead of 0.6 %, 10 % deeper" in said.text
    assert "Rest 10 % more" in said.text
    assert "Leave it so" in said.text
    assert 'value="110"' in said.source
    assert "by your palette" not in said.text  # none is fitted


@pytest.mark.by_hand
def test_one_tap_rescales_what_is_still_to_come(client: Client, pot: Ready) -> None:
    rescale(pot)
    assert asked_ml(pot) == pytest.approx(33.0)  # 30 x 1.1
    said = shown(client, pot).text
    assert "Done, 33 ml" in said
    assert "Depth 0.33 %: 10 % more than on the card, for the hue" in said
    assert "Rest 10 % more" not in said
    tapped(pot.number, BathAct.DOSED, "dose-2", value=33.0, unit="ml", bottle=pot.gorse)
    assert [x.step for x in deviations(bath_now(pot.number))] == ["dose-1"]


def test_after_the_last_dose_nothing_is_said_of_doses_to_come(pot: Ready) -> None:
    (before,) = deviations(bath_now(pot.number))
    tapped(pot.number, BathAct.DOSED, "dose-2", value=30.0, unit="ml", bottle=pot.gorse)
    (after,) = deviations(bath_now(pot.number))
    assert "if the doses still to come grow" in before.advice
    assert "the other doses are in" in after.advice
    assert after.factor is None


def test_two_phones_rescale_once_and_undo_brings_the_card_back(pot: Ready) -> None:
    first, second = rescale(pot), rescale(pot)
    assert asked_ml(pot) == pytest.approx(33.0)
    for deed in (second, first):
        undo(deed=deed, stamp=stamp_now(by=None))
    assert asked_ml(pot) == 30.0


def test_what_was_poured_before_is_not_rescaled(pot: Ready) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-2", value=30.0, unit="ml", bottle=pot.gorse)
    rescale(pot)
    assert asked_ml(pot) == 30.0


def test_with_nothing_to_come_there_is_nothing_to_rescale(
    client: Client, pot: Ready
) -> None:
    tapped(pot.number, BathAct.DOSED, "dose-2", value=36.0, unit="ml", bottle=pot.gorse)
    said = shown(client, pot).text
    assert "Leave it so" in said
    assert "Rest " not in said


def test_left_so_it_is_not_asked_again(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.NOTE, "so/dose-1")
    said = shown(client, pot).text
    assert "10 % deeper" not in said
    assert "Done, 30 ml" in said
