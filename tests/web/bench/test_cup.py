"""The look in the cup: what is left, what comes next, rinse and rack."""

import pytest
from django.test import Client

from shadewright.records.models import BathLine, Dye
from shadewright.records.models.baths import BathAct
from shadewright.records.models.catalogue import DyeClass
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.undo import undo
from tests.web.pages_read import Answer, read
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db


def held(*, minutes: float) -> Ready:
    """Return a bath that is at the top since then; its hold is 30 minutes."""
    founded()
    pot = ready()
    for step in bath_now(pot.number).steps[:-4]:
        tapped(pot.number, BathAct.CHECKED, step.step.key, at=ago(minutes=90))
    at = ago(minutes=minutes)
    tapped(pot.number, BathAct.AT_TOP, "top", value=90.0, unit="°C", at=at)
    return pot


@pytest.fixture
def pot() -> Ready:
    """A bath whose hold is just over."""
    return held(minutes=30)


def shown(client: Client, pot: Ready, query: str = "") -> Answer:
    return read(client.get(f"/bench/{pot.number}/{query}"))


def left(pot: Ready, percent: float = 25.0) -> None:
    tapped(pot.number, BathAct.LEFTOVER, "hold", value=percent, unit="%")


def test_the_hold_asks_for_the_cup_and_a_share_is_one_tap_more(
    client: Client, pot: Ready
) -> None:
    assert "Colour is left in the cup" in shown(client, pot).text
    view = shown(client, pot, "?step=hold&view=left").text
    assert "A quarter, 1 in 4" in view
    assert "one spoon made up to four is a quarter" in view
    assert (
        "Colour is left" not in shown(client, pot, "?step=look").text.split("Hold")[0]
    )


def test_time_first_then_what_is_left_is_written(client: Client, pot: Ready) -> None:
    left(pot)
    said = shown(client, pot).text
    assert "Time: hold it 15 min longer." in said
    assert "On the yarn: about 0.675 % of 0.9 %." in said
    assert "Hold 15 min longer" in said
    tapped(pot.number, BathAct.NOTE, "hold/more", value=15.0, unit="min")
    assert "Hold 15 min longer" not in shown(client, pot).text
    left(pot, 10.0)
    said = shown(client, pot).text
    assert "about 10 % stays in the bath" in said
    assert "sewer authority" in said
    assert "About 10 % left in the bath" in said
    tapped(pot.number, BathAct.HEAT_OFF, "off")
    assert "stays in the bath" not in shown(client, pot).text


def test_what_is_on_the_yarn_is_of_what_went_in(client: Client, pot: Ready) -> None:
    """0.6 % of Slate and 0.3 % of Gorse were planned; 10 ml more is 0.1 % more."""
    ticked = BathLine.objects.get(step="dose-1")
    undo(deed=ticked.deed, stamp=stamp_now(by=None))
    tapped(
        pot.number,
        BathAct.DOSED,
        "dose-1",
        value=70.0,
        unit="ml",
        bottle=pot.slate,
        at=ago(minutes=89),
    )
    left(pot)
    assert "On the yarn: about 0.75 % of 1 %." in shown(client, pot).text


def test_a_cool_bath_is_heated_before_anything_else(client: Client, pot: Ready) -> None:
    tapped(pot.number, BathAct.TEMPERATURE, "hold", value=70.0, unit="°C")
    left(pot)
    assert "Heat: the bath is at 70 °C" in shown(client, pot).text


def test_acid_is_asked_for_once_and_not_twice(client: Client, pot: Ready) -> None:
    Dye.objects.update(dye_class=DyeClass.HALF_MILLING)
    tapped(pot.number, BathAct.PH, "hold", value=7.5, unit="pH")
    assert shown(client, pot).text.count("half-milling dyes want pH 4 to 6") == 1
    left(pot)
    said = shown(client, pot).text
    assert said.count("half-milling dyes want pH 4 to 6") == 1
    assert "Acid: the bath is at pH 7.5" in said


def test_a_longer_hold_rings_so_long_from_now(client: Client) -> None:
    pot = held(minutes=39.5)
    left(pot)
    page = shown(client, pot)
    assert 'name="value" value="25"' in page.source  # 9.5 late, and 15 from now


def test_a_clear_cup_says_so(client: Client, pot: Ready) -> None:
    left(pot, 5.0)
    assert "As good as clear" in shown(client, pot).text


@pytest.mark.parametrize(("percent", "ph"), [(1e5, 20.0), (-3.0, -1.0)])
def test_what_cannot_be_is_written_and_reckoned_with_as_far_as_it_goes(
    client: Client, pot: Ready, percent: float, ph: float
) -> None:
    tapped(pot.number, BathAct.PH, "hold", value=ph, unit="pH")
    left(pot, percent)
    assert shown(client, pot).status == 200


def test_rinses_are_counted_and_the_rack_has_its_skeins(
    client: Client, pot: Ready
) -> None:
    tapped(pot.number, BathAct.CHECKED, "hold")
    tapped(pot.number, BathAct.HEAT_OFF, "off")
    assert "Rinsed" in shown(client, pot).text
    for _ in "12":
        tapped(pot.number, BathAct.RINSED, "rinse")
    assert "Rinsed again, 2 so far" in shown(client, pot).text
    tapped(pot.number, BathAct.HUNG, "rack", value=4.0, unit="skeins")
    said = shown(client, pot).text
    assert "On the rack, 4 skeins" in said
    assert "Dry" in said
    assert "Write the lot" in said
