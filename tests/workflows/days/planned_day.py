"""A day of two baths with a plan that was made by hand, as the planner keeps it."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any
from uuid import uuid4

from django.utils import timezone

from shadewright.records.models import Bath, DaySchedule, DyeDay, HeatSource, Pot
from shadewright.workflows.stamps import today
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready

LENGTHS = (
    ("fill", 0, 5),
    ("heat", 5, 15),
    ("dose", 15, 21),
    ("ramp", 21, 71),
    ("hold", 71, 101),
    ("check", 101, 103),
    ("cool", 103, 223),
    ("rinse", 223, 231),
)
HANDS = {"fill", "dose", "check", "rinse"}


@dataclass(frozen=True)
class PlannedDay:
    """Two baths: the first from 8, the second, overnight, from 10 o'clock."""

    pot: Ready
    first: str
    second: str


def at(hour: int, minute: int = 0) -> datetime:
    """Return a clock time of today."""
    midnight = timezone.localtime().replace(hour=0, minute=0, second=0, microsecond=0)
    return midnight + timedelta(hours=hour, minutes=minute)


def planned_day(*, is_planned: bool = True) -> PlannedDay:
    """Found a studio with a day of two baths today; the second is named first."""
    founded()
    pot = ready()
    other = pot.another(fibre_g=200.0)
    for name in ("Pot 8 l", "Pot 12 l"):
        Pot.objects.create(name=name, volume_l=12.0, mass_kg=2.0)
    HeatSource.objects.create(name="Burner 1", power_kw=1.8, kind="induction")
    rows = Bath.objects.all()
    rows.update(source=HeatSource.objects.get(), skeins=2)
    rows.filter(number=pot.number).update(pot=Pot.objects.get(name="Pot 8 l"))
    rows.filter(number=other).update(pot=Pot.objects.get(name="Pot 12 l"))
    if is_planned:
        _plan(first=other, second=pot.number)
    return PlannedDay(pot=pot, first=other, second=pot.number)


def _plan(*, first: str, second: str) -> None:
    row, _is_new = DyeDay.objects.get_or_create(day=today())
    DaySchedule.objects.create(
        dye_day=row,
        deed=uuid4(),
        asked={
            "start": "08:00",
            "end": "18:00",
            "people": [{"name": "Ines", "from": "08:00", "to": "17:00"}],
            "pots": [
                {"name": "Pot 8 l", "volume_l": 12, "mass_kg": 2},
                {"name": "Pot 12 l", "volume_l": 12, "mass_kg": 2},
            ],
            "circuits": [{"name": "Circuit A", "limit_kw": 3.5}],
            "sources": [{"name": "Burner 1", "power_kw": 1.8, "circuit": "Circuit A"}],
            "baths": [
                {"name": first, "fibre_g": 200.0, "liquor_ratio": 30},
                {"name": second, "fibre_g": 100.0, "liquor_ratio": 30},
            ],
        },
        plan={
            "baths": [
                _bath(first, "Pot 12 l", 0),
                _bath(second, "Pot 8 l", 120, is_overnight=True),
            ],
            "washouts": [],
            "left_out": [],
            "end_min": 231,
            "bound_min": 231,
            "proved": True,
            "hands_min": 40,
            "peak_kw_by_circuit": {"Circuit A": 1.8},
        },
        method="by hand",
    )


def _bath(
    number: str, pot: str, begins: int, *, is_overnight: bool = False
) -> dict[str, Any]:
    lengths = LENGTHS[:6] if is_overnight else LENGTHS
    return {
        "name": number,
        "pot": pot,
        "source": "Burner 1",
        "stages": [
            {
                "stage": stage,
                "start_min": begins + starts,
                "end_min": begins + ends,
                "person": "Ines" if stage in HANDS else None,
            }
            for stage, starts, ends in lengths
        ],
        "touches": [
            {"start_min": begins + 36, "end_min": begins + 39, "person": "Ines"}
        ],
    }
