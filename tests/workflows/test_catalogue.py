"""The catalogue: every edit keeps the version before it."""

from datetime import date
from decimal import Decimal

import pytest

from shadewright.records.models import Auxiliary, Base, Dye, MeasuringTool
from shadewright.workflows.catalogue import earlier_versions, keep_item
from shadewright.workflows.people import people
from shadewright.workflows.stamps import stamp_now
from tests.workflows.bench import founded, now

pytestmark = pytest.mark.django_db


@pytest.fixture
def tam() -> int:
    founded()
    return people()[1].id


def test_a_new_item_says_who_and_when_and_has_no_version(tam: int) -> None:
    dye = Dye(name="Slate")
    stamp = stamp_now(by=tam)
    keep_item(dye, stamp)
    dye.refresh_from_db()
    assert (dye.created_by_id, dye.created_at) == (tam, stamp.at)
    assert earlier_versions(dye) == ()


def test_each_edit_keeps_what_stood_before_newest_first(tam: int) -> None:
    dye = Dye(name="Slate", solubility_g_per_l=40.0)
    keep_item(dye, now())
    for solubility, by in ((30.0, tam), (20.0, None)):
        dye.solubility_g_per_l = solubility
        keep_item(dye, stamp_now(by=by))
    newer, older = earlier_versions(dye)
    assert (newer.number, newer.values["solubility_g_per_l"]) == (2, 30.0)
    assert (older.number, older.values["solubility_g_per_l"]) == (1, 40.0)
    assert (newer.replaced_by, older.replaced_by) == ("", "Tam")
    assert Dye.objects.get().solubility_g_per_l == 20.0


def test_an_edit_that_changes_nothing_keeps_nothing() -> None:
    acid = Auxiliary(name="Citric acid", price_per_kg=Decimal(5))
    keep_item(acid, now())
    for price in ("5", "5.0", "5.00"):
        acid.price_per_kg = Decimal(price)
        keep_item(acid, now())
    assert earlier_versions(acid) == ()
    acid.price_per_kg = Decimal(500)
    keep_item(acid, now())
    assert [one.values["price_per_kg"] for one in earlier_versions(acid)] == ["5"]


def test_versions_of_different_things_are_kept_apart() -> None:
    items = [
        Dye(name="Slate"),
        Base(name="Fell", fibres="wool"),
        MeasuringTool(name="Scale", kind="balance", checked_on=date(2026, 1, 2)),
    ]
    for item in items:
        keep_item(item, now())
        item.name += " 2"
        keep_item(item, now())
    assert [earlier_versions(one)[0].values["name"] for one in items] == [
        "Slate",
        "Fell",
        "Scale",
    ]
