"""Every ledger is known to undo, and each line knows its counter-entry."""

from uuid import uuid4

import pytest
from django.apps import apps
from django.db import connection
from django.test.utils import CaptureQueriesContext

from shadewright.records.deeds import LEDGERS, is_deed_written
from shadewright.records.models import BottleLine, JarLine
from shadewright.records.models.ledgers import LedgerRow, LedgerRows
from tests.workflows.bench import entered, new_dye, new_jar


def test_every_ledger_can_be_taken_back() -> None:
    models = apps.get_app_config("records").get_models()
    assert set(LEDGERS) == {model for model in models if issubclass(model, LedgerRow)}


def test_no_ledger_can_be_changed_in_bulk() -> None:
    for ledger in LEDGERS:
        assert isinstance(ledger.objects.all(), LedgerRows), ledger  # type: ignore[attr-defined]


def test_a_counter_entry_has_every_column_that_must_be_said() -> None:
    for ledger in LEDGERS:
        said = set(ledger.counter_keeps) | {"id", "deed", "act", "undoes"}
        must = {
            field.name
            for field in ledger._meta.concrete_fields
            if not field.null and not field.has_default() and not field.blank
        }
        assert must <= said, ledger
        assert ("act" in must) == bool(ledger.counter_act), ledger


@pytest.mark.django_db
def test_all_ledgers_are_asked_at_once_whether_a_deed_is_written() -> None:
    dye_id = new_dye()
    new_jar(dye_id)
    entered(dye_id)
    for line in (BottleLine.objects.get(), JarLine.objects.get()):
        with CaptureQueriesContext(connection) as asked:
            assert is_deed_written(line.deed)
        assert len(asked) == 1
    assert not is_deed_written(uuid4())
