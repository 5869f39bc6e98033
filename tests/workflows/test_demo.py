"""The demo studio: the same every time, nothing ahead of its time, all kinds there."""

from collections import Counter
from collections.abc import Iterator
from datetime import date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from django.apps import apps
from django.core import serializers
from django.core.management import call_command
from django.db.models import DateField, DateTimeField, Model
from django.utils import timezone
from pytest_django.fixtures import Settings

from shadewright.records.deeds import LEDGERS, is_deed_written
from shadewright.records.models import (
    Bath,
    BathDose,
    BathLine,
    BottleLine,
    CatalogueVersion,
    DayWish,
    DryCheck,
    Dye,
    Lot,
    LotLine,
    Order,
    PaletteFit,
    Recipe,
    Studio,
)
from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade, LotAct
from shadewright.workflows.bath_pages import BathStatus, open_baths
from shadewright.workflows.days.closed_days import closed_to_come
from shadewright.workflows.days.day_ledger import DayAct, day_ledger
from shadewright.workflows.days.rack import rack_now
from shadewright.workflows.days.schedules import schedule_of
from shadewright.workflows.days.stock_needs import stock_needs
from shadewright.workflows.demo import build_demo
from shadewright.workflows.demo.absorption import DYES, YARNS
from shadewright.workflows.demo.swatch_book import WRONG_DOSE
from shadewright.workflows.deviations import deviations
from shadewright.workflows.jars import jars
from shadewright.workflows.labels import bottles_to_label
from shadewright.workflows.makings import makings
from shadewright.workflows.recipes import recipes
from shadewright.workflows.shades.fits import is_stale
from shadewright.workflows.shades.outcomes import hit_rate, outcomes
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Standing, swatch_now, swatches_now
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.stamps import as_of, today

pytestmark = pytest.mark.slow

ONE_DAY = timedelta(days=1)
NOT_IN_A_DEMO = {"Device", "PairingCode", "PairingTry"}
TO_COME = {
    "Bath.dyed_on",
    "ClosedDays.first_on",
    "ClosedDays.last_on",
    "DyeDay.day",
    "Order.due_on",
    "Order.promised_on",
}
"""Dates that may lie ahead: what is planned or closed, and what was promised."""
MOMENTS = [
    pytest.param("UTC", (2024, 2, 29, 12, 0), id="leap day"),
    pytest.param(
        *("Pacific/Kiritimati", (2026, 1, 1, 0, 5)),
        id="five past midnight",
        marks=pytest.mark.one_store,
    ),
]


def models() -> Iterator[type[Model]]:
    yield from apps.get_app_config("records").get_models()


def moment(zone: str, parts: tuple[int, int, int, int, int]) -> datetime:
    return datetime(*parts, tzinfo=ZoneInfo(zone))


@pytest.mark.django_db
@pytest.mark.parametrize(("zone", "parts"), MOMENTS)
def test_it_builds_at_any_time_and_place(
    zone: str, parts: tuple[int, int, int, int, int], folder: Path
) -> None:
    del folder
    now = moment(zone, parts) + timedelta(seconds=40)
    with timezone.override(zone), as_of(now):
        build_demo(now)
        is_whole(now)
        build_demo(now)  # a demo that stands is left alone
        assert Studio.objects.count() == 1


def is_whole(now: datetime) -> None:
    nothing_lies_ahead(now)
    ledgers_are_in_order()
    every_kind_of_thing_is_there()
    the_shelf_is_as_a_studio_has_it()
    the_day_is_calm()
    baths_went_as_baths_go()
    the_palette_is_there_and_honest()
    the_days_are_planned(now.date())


def nothing_lies_ahead(now: datetime) -> None:
    for model in models():
        for field in model._meta.fields:
            if not isinstance(field, DateField):
                continue
            for value in model._default_manager.values_list(field.name, flat=True):
                where = f"{model.__name__}.{field.name}"
                if isinstance(field, DateTimeField):
                    assert value is None or value <= now, where
                elif where not in TO_COME:
                    assert value is None or value <= now.date(), where


def ledgers_are_in_order() -> None:
    for ledger in LEDGERS:
        rows = ledger._default_manager.order_by("id")
        times = list(rows.values_list("at", "written_at"))
        assert times == sorted(times)
        assert all(at == written_at for at, written_at in times)
        assert is_deed_written(rows[0].deed)


def every_kind_of_thing_is_there() -> None:
    empty = {
        model.__name__ for model in models() if not model._default_manager.exists()
    }
    assert empty == NOT_IN_A_DEMO
    acts = set(BathLine.objects.values_list("act", flat=True))
    assert acts == set(BathAct) - {BathAct.NOTE, BathAct.PHOTO}
    said = set(LotLine.objects.values_list("act", flat=True))
    assert said == set(LotAct) - {LotAct.PHOTO, LotAct.UNDO}
    graded = LotLine.objects.filter(act=LotAct.GRADED).values_list("words", flat=True)
    assert set(graded) == set(Grade)
    edited = CatalogueVersion.objects.values_list("kind", flat=True)
    assert sorted(edited) == ["dye", "measuringtool"]
    assert [each.why for each in closed_to_come()] == ["Visiting the mill"]


def the_shelf_is_as_a_studio_has_it() -> None:
    bottles = shelf()
    assert {"settled", "low", "test or pour", "look first"} <= troubles(bottles)
    assert len([bottle for bottle in bottles if bottle.is_settled]) == 1
    assert len({bottle.dye_name for bottle in bottles}) >= 11
    assert len({bottle.age.age_class for bottle in bottles}) == 4
    assert any(bottle.is_strength_guess for bottle in bottles)
    assert any(bottle.strength_percent == 0.1 for bottle in bottles)
    assert [jar.dye_name for jar in jars() if jar.is_low] == ["Heather"]


def troubles(bottles: tuple[ShelfBottle, ...]) -> set[str]:
    return {bottle.trouble for bottle in bottles}


def the_day_is_calm() -> None:
    waiting = [bottle.trouble for bottle in shelf()]
    for trouble, count in (("settled", 1), ("low", 1), ("test or pour", 1)):
        assert waiting.count(trouble) == count, trouble
    assert "empty" not in waiting
    assert len(bottles_to_label()) == 2
    assert [stock.stock.dye_name for stock in makings()] == ["Sloe"]
    assert list(Dye.objects.filter(data_sheet_file="")) == [
        Dye.objects.get(name="Primrose")
    ]
    open_now = [bath for bath in open_baths() if bath.dyed_on <= today()]
    assert Counter(bath.status for bath in open_now) == {
        BathStatus.COOLING: 2 + len(rack_now().hung),
        BathStatus.GOING: 1,
        BathStatus.PLANNED: 1,
    }


def baths_went_as_baths_go() -> None:
    assert Bath.objects.count() > 90
    given_up = 1
    assert Lot.objects.count() == Bath.objects.count() - len(open_baths()) - given_up
    weighed_dry = BathDose.objects.filter(bottle=None)
    assert {dose.bath.dyed_on for dose in weighed_dry} <= {today() + ONE_DAY}
    split = BathDose.objects.values("bath", "position").order_by().distinct()
    assert split.count() < BathDose.objects.count()
    assert set(BathLine.objects.values_list("device", flat=True)) == {
        "",
        "Ines’s phone",
        "Tam’s phone",
    }
    going = next(bath for bath in open_baths() if bath.status is BathStatus.GOING)
    assert going.clocks
    assert deviations(going) == ()
    assert not BottleLine.objects.filter(note="kettle bath").exists()
    versions = {one.name: len(one.versions) for one in recipes()}
    assert max(versions.values()) == 3
    assert [one.name for one in recipes() if not one.newest.is_complete] == [
        "Harbour Blue"
    ]
    retired, a_set, a_correction = 1, 1, 1
    aside = retired + a_set + a_correction
    assert Recipe.objects.count() == aside + len(versions) == 14


def the_palette_is_there_and_honest() -> None:
    """It names the wrong dose; what it foretold held about as often as was said."""
    holds = palette_now()
    assert holds is not None
    assert not is_stale(holds)
    assert set(holds.palette.names.dyes) == set(DYES)
    assert set(holds.palette.names.bases) == set(YARNS)
    assert not holds.is_other_light
    (suspect,) = holds.suspects
    said = swatch_now(suspect.swatch_id)
    assert (said.base_name, said.doses) == WRONG_DOSE
    standing = Counter(each.standing for each in swatches_now())
    assert standing[Standing.WET] == 1
    assert standing[Standing.OFFERED] >= 8
    assert standing[Standing.SET_ASIDE] >= 1
    rate = hit_rate(outcomes())
    assert rate is not None
    assert rate.counted >= 20
    assert rate.fewest <= rate.held <= rate.counted


def the_days_are_planned(day: date) -> None:
    """Today is half under way; tomorrow is planned, and one dye is short for it."""
    now, next_day = schedule_of(day), schedule_of(day + ONE_DAY)
    assert now is not None
    assert next_day is not None
    assert now.baths
    for wish in DayWish.objects.exclude(starts_at=None):  # one clock on every page
        placed = now.bath(wish.bath.number)
        if placed is None:  # late at night a day has no hours left for some
            assert wish.bath.number in {each.number for each in now.left_out}
            continue
        begins = timezone.localtime(placed.stages[0].starts_at)
        assert f"{begins:%H:%M:%S}" == f"{wish.starts_at:%H:%M:%S}"
    assert next_day.left_out == ()
    assert len(next_day.baths) >= 5
    stages = [stage for bath in next_day.baths for stage in bath.stages]
    assert {"Ines"} < {stage.person for stage in stages} <= {"", "Ines", "Tam"}
    needs = stock_needs(day + ONE_DAY)
    assert [need.dye_name for need in needs.dyes if need.is_short] == ["Rosehip"]
    evening = {entry.act for entry in day_ledger(day - ONE_DAY).entries}
    assert DayAct.ALL_OFF in evening  # just after midnight a pot is hot since then
    rack = rack_now()
    assert 0 < rack.skeins <= rack.slots
    closed = Order.objects.order_by("number").values_list("is_closed", flat=True)
    assert list(closed) == [True, False, False]
    checks = DryCheck.objects.filter(undone_by=None)
    assert all(check.verdict for check in checks)


@pytest.mark.one_store
@pytest.mark.django_db(transaction=True)
def test_two_demos_of_one_moment_are_equal(settings: Settings, tmp_path: Path) -> None:
    """On the evening of the day on which the clocks went on."""
    zone = "America/St_Johns"
    now = moment(zone, (2026, 3, 8, 23, 55))
    with timezone.override(zone), as_of(now):
        settings.MEDIA_ROOT = tmp_path / "one"
        build_demo(now)
        is_whole(now)
        one = every_row()
        call_command("flush", interactive=False, verbosity=0)
        settings.MEDIA_ROOT = tmp_path / "two"
        build_demo(now)
        assert every_row() == one


def every_row() -> list[str]:
    PaletteFit.objects.update(seconds=None)  # how long a fit took is no part of it
    rows = [row for model in models() for row in model._default_manager.order_by("pk")]
    assert len(rows) > 2000
    written: str = serializers.serialize("jsonl", rows)
    return written.splitlines()
