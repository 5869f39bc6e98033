"""Measuring tools: what they are worth, their checks, their jobs."""

from datetime import UTC, datetime, timedelta
from math import sqrt

import pytest

from shadewright.core.quantities import Balance, MeasuringTool
from shadewright.errors import ConflictError, InputError, NotFoundError
from shadewright.records.models import MeasuringTool as ToolRow
from shadewright.records.models import ToolCheck
from shadewright.workflows.stamps import as_of, stamp_now, today
from shadewright.workflows.studio import found_studio
from shadewright.workflows.tool_checks import (
    check_entries,
    check_with_water,
    check_with_weight,
)
from shadewright.workflows.tools import tool_now, tools_now
from shadewright.workflows.tools_at_hand import at_hand
from shadewright.workflows.undo import undo
from shadewright.workflows.usual_tools import (
    Job,
    leave_job_open,
    set_usual_tools,
    usual_tools,
)
from tests.workflows.asked import asked_by
from tests.workflows.bench import now

pytestmark = pytest.mark.django_db


@pytest.fixture
def scale() -> int:
    return ToolRow.objects.create(
        name="Bench scale", kind="balance", size=2000, readability=0.1
    ).pk


@pytest.fixture
def jug() -> int:
    return ToolRow.objects.create(name="Jug", kind="jug", size=1000).pk


@pytest.mark.by_hand
def test_a_tool_begins_at_its_standards_word(scale: int, jug: int) -> None:
    kitchen, vessel = tool_now(scale), tool_now(jug)
    assert kitchen.core == Balance(step_g=0.1, error_g=0.2)  # two steps
    assert vessel.core == MeasuringTool(
        kind="jug", size_ml=1000, accuracy_class="", standard="ISO"
    )
    assert (kitchen.unit, vessel.unit) == ("g", "ml")
    assert not kitchen.is_checked
    assert [tool.name for tool in tools_now()] == ["Bench scale", "Jug"]
    powder = kitchen.read(5.0, role="powder")
    assert powder is not None
    # √(0.1²/6 + 0.2²/3)
    assert powder.u == pytest.approx(sqrt(0.015))
    assert {term.source for term in powder.terms} == {
        f"tool {scale} powder reading",
        f"tool {scale} powder",
    }
    filled = vessel.read(1000.0, role="stock")
    assert filled is not None
    assert filled.u == pytest.approx(100 / sqrt(3))


@pytest.mark.parametrize(
    ("row", "core"),
    [
        ({"kind": "balance"}, None),
        ({"kind": "cylinder"}, None),
        ({"kind": "thermometer", "size": 110, "readability": 1}, None),
        (
            {"kind": "balance", "readability": 1.0, "own_error": 0.5},
            Balance(step_g=1.0, error_g=0.5),
        ),
        (
            {"kind": "cylinder", "size": 100, "standard": "ASTM", "own_error": 0.3},
            MeasuringTool(
                kind="cylinder",
                size_ml=100,
                accuracy_class="B",
                standard="ASTM",
                error_ml=0.3,
            ),
        ),
        (
            {"kind": "cylinder", "size": 100, "standard": "ISO 4788"},
            MeasuringTool(
                kind="cylinder", size_ml=100, accuracy_class="B", standard="ISO"
            ),
        ),
    ],
)
def test_what_is_written_down_makes_the_tool(
    row: dict[str, object], core: object
) -> None:
    tool = tool_now(ToolRow.objects.create(name="It", **row).pk)
    assert tool.core == core
    assert (tool.read(10.0, role="any") is None) == (core is None)


def test_a_check_weight_narrows_the_scale_and_undo_widens_it(scale: int) -> None:
    stamp = now()
    check_with_weight(
        tool_id=scale,
        nominal_g=100.0,
        tolerance_g=0.01,
        readings_g=[100.0, 100.0],
        stamp=stamp,
    )
    found = tool_now(scale)
    assert found.balance is not None
    assert found.balance.error_g is not None
    assert 0.05 < found.balance.error_g < 0.1
    assert (found.is_checked, found.checked_on) == (True, today())
    (entry,) = check_entries(scale)
    assert entry.may_undo
    undo(deed=stamp.deed, stamp=now())
    assert tool_now(scale).core == Balance(step_g=0.1, error_g=0.2)
    assert tool_now(scale).checked_on is None
    assert [(e.is_undone, e.may_undo) for e in check_entries(scale)] == [(True, False)]


def test_the_newest_check_of_a_weight_counts(scale: int) -> None:
    long_ago = datetime(2026, 3, 1, 12, tzinfo=UTC)
    with as_of(long_ago):
        for grams in (100.6, 50.0):
            check_with_weight(
                tool_id=scale,
                nominal_g=round(grams, -1),
                readings_g=[grams],
                stamp=stamp_now(by=None),
            )
    poor = tool_now(scale)
    assert poor.balance is not None
    assert poor.balance.slope_most_g == pytest.approx(0.6)
    assert poor.checked_on == long_ago.date()
    check_with_weight(tool_id=scale, nominal_g=100.0, readings_g=[100.0], stamp=now())
    mended = tool_now(scale)
    assert mended.balance is not None
    assert mended.balance.error_g == pytest.approx(0.078, abs=0.001)
    assert mended.balance.slope_most_g == 0.0
    assert [entry.nominal for entry in check_entries(scale)] == [100.0, 50.0, 100.0]


def test_weighed_water_narrows_a_jug(scale: int, jug: int) -> None:
    check_with_water(
        tool_id=jug,
        nominal_ml=1000.0,
        readings_g=[990.0, 991.0],
        scale_id=scale,
        temperature_c=20.0,
        stamp=now(),
    )
    found = tool_now(jug)
    assert found.ware is not None
    assert found.ware.error_ml is not None
    # 990.5 g are 993.4 ml: 6.6 ml short, and the readings scatter by 0.7 g
    assert 6.6 < found.ware.error_ml < 10.0
    (entry,) = check_entries(jug)
    assert (entry.scale, entry.readings_g) == ("Bench scale", (990.0, 991.0))
    assert entry.finding.correction == pytest.approx(-6.6, abs=0.1)


def test_a_check_sent_twice_is_written_once(scale: int, jug: int) -> None:
    weight, water = now(), now()
    for _ in range(2):
        check_with_weight(
            tool_id=scale, nominal_g=100.0, readings_g=[100.0], stamp=weight
        )
        check_with_water(
            tool_id=jug,
            nominal_ml=500.0,
            readings_g=[500.0],
            scale_id=scale,
            stamp=water,
        )
    assert ToolCheck.objects.count() == 2


@pytest.mark.parametrize(
    ("wrong", "argument"),
    [
        ({"nominal_g": 0.0}, "nominal_g"),
        ({"nominal_g": 2001.0}, "nominal_g"),
        ({"readings_g": []}, "readings_g"),
        ({"readings_g": [100.0, 10.0]}, "readings_g.1"),
        ({"readings_g": [151.0]}, "readings_g.0"),
        ({"tolerance_g": -1.0}, "tolerance_g"),
    ],
)
def test_a_check_that_cannot_be_is_refused(
    scale: int, wrong: dict[str, object], argument: str
) -> None:
    with pytest.raises(InputError) as refused:
        check_with_weight(
            tool_id=scale,
            stamp=now(),
            **{"nominal_g": 100.0, "readings_g": [100.0], **wrong},  # type: ignore[arg-type]
        )
    assert refused.value.argument == argument
    assert not ToolCheck.objects.exists()


def test_a_tool_is_checked_in_its_own_way(scale: int, jug: int) -> None:
    with pytest.raises(ConflictError, match="is no scale"):
        check_with_weight(tool_id=jug, nominal_g=1.0, readings_g=[1.0], stamp=now())
    with pytest.raises(ConflictError, match="is no vessel"):
        check_with_water(
            tool_id=scale,
            nominal_ml=1.0,
            readings_g=[1.0],
            scale_id=scale,
            stamp=now(),
        )
    with pytest.raises(InputError, match="A scale with its step is missing"):
        check_with_water(
            tool_id=jug, nominal_ml=1.0, readings_g=[1.0], scale_id=jug, stamp=now()
        )
    with pytest.raises(NotFoundError):
        tool_now(999)


def test_a_check_cannot_be_changed(scale: int) -> None:
    check_with_weight(tool_id=scale, nominal_g=100.0, readings_g=[100.0], stamp=now())
    with pytest.raises(ConflictError):
        ToolCheck.objects.get().save()


def test_tools_have_their_jobs(scale: int, jug: int) -> None:
    assert usual_tools().powder_scale is None  # before the studio is founded
    found_studio(name="Reach", person="Ines")
    set_usual_tools(powder_scale=scale, yarn_scale=scale, fill_tool=jug, dose_tool=jug)
    usual = usual_tools()
    assert [usual.of(job).id for job in Job] == [scale, scale, jug, jug]  # type: ignore[union-attr]
    assert not usual.doses_by_weight
    assert usual.dose_scale == usual.powder_scale
    leave_job_open(Job.YARN)
    assert usual_tools().yarn_scale is None
    assert usual_tools().fill_tool == usual.fill_tool


def test_a_dose_scale_means_doses_by_weight(scale: int, jug: int) -> None:
    found_studio(name="Reach", person="Ines")
    set_usual_tools(dose_tool=scale)
    assert usual_tools().doses_by_weight
    assert usual_tools().dose_scale == tool_now(scale)
    set_usual_tools(dose_tool=jug)
    assert not usual_tools().doses_by_weight
    set_usual_tools(doses_by_weight=True)
    assert usual_tools().doses_by_weight
    leave_job_open(Job.DOSE)
    assert not usual_tools().doses_by_weight


def test_the_usual_tools_are_found_among_those_at_hand(scale: int, jug: int) -> None:
    found_studio(name="Reach", person="Ines")
    set_usual_tools(yarn_scale=scale, fill_tool=jug)
    tools = asked_by(tools_now)
    assert len(asked_by(at_hand)) == len(tools) + 1  # which of them are the usual ones
    assert at_hand().usual == usual_tools()


def test_a_retired_tool_does_no_job(scale: int) -> None:
    found_studio(name="Reach", person="Ines")
    set_usual_tools(powder_scale=scale)
    ToolRow.objects.update(is_retired=True)
    assert usual_tools().powder_scale is None
    assert tools_now() == ()


def test_powder_is_not_measured_in_ware_and_the_reason_is_said(jug: int) -> None:
    found_studio(name="Reach", person="Ines")
    with pytest.raises(InputError, match="weigh powder on a scale"):
        set_usual_tools(powder_scale=jug)
    with pytest.raises(InputError, match="must be a scale; got a kitchen jug"):
        set_usual_tools(yarn_scale=jug)


def test_stock_is_not_filled_up_in_a_scale(scale: int) -> None:
    found_studio(name="Reach", person="Ines")
    with pytest.raises(InputError, match="must be a vessel with marks; got a scale"):
        set_usual_tools(fill_tool=scale)


def test_a_check_of_yesterday_stays(scale: int) -> None:
    stamp = now()
    with as_of(stamp.at - timedelta(days=1)):
        old = stamp_now(by=None)
        check_with_weight(tool_id=scale, nominal_g=100.0, readings_g=[100.0], stamp=old)
    assert [entry.may_undo for entry in check_entries(scale)] == [False]
    with pytest.raises(ConflictError, match="earlier day"):
        undo(deed=old.deed, stamp=now())
