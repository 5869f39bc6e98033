"""One fit at a time, and one more for all wishes that came meanwhile."""

import pytest
from django.conf import settings
from django.db import transaction

from shadewright.web.evidence import background
from shadewright.web.evidence.background import Desk, refit_soon


def test_wishes_that_come_while_a_fit_runs_make_one_more() -> None:
    desk = Desk()
    assert desk.put("Gorse was read")  # somebody is called to work
    assert desk.take() == "Gorse was read"
    assert not desk.put("Peat was read")
    assert not desk.put("Sloe was set aside")
    assert not desk.put("Peat was read")
    assert desk.take() == "Peat was read; Sloe was set aside"
    assert desk.is_busy
    assert not desk.take()
    assert not desk.is_busy
    assert desk.put("Kelp was read")


@pytest.mark.django_db
def test_a_wish_waits_until_the_change_is_kept(
    monkeypatch: pytest.MonkeyPatch,
    django_capture_on_commit_callbacks: object,
) -> None:
    wished: list[str] = []
    monkeypatch.setattr(settings, "REFITS", "thread")
    monkeypatch.setattr(background, "_wish", wished.append)
    with django_capture_on_commit_callbacks(execute=True):  # type: ignore[operator]
        with transaction.atomic():
            refit_soon(why="Gorse was read")
        assert not wished
    assert wished == ["Gorse was read"]


def test_in_tests_no_palette_is_fitted_unasked() -> None:
    assert settings.REFITS == "never"
