"""A plan that nobody waits for."""

from types import ModuleType

import pytest

from shadewright.workflows.days.scheduling import make_plan

A_MOMENT_S = 0.02


def plan_quickly(monkeypatch: pytest.MonkeyPatch, *views: ModuleType) -> None:
    """Let no view look for a plan longer than a moment."""

    def quick(**said: object) -> object:
        return make_plan(**{**said, "seconds": A_MOMENT_S})  # type: ignore[arg-type]

    for each in views:
        monkeypatch.setattr(each, "make_plan", quick)
