"""What the ledger of one bath tells of its heat, its acid, its load and its hands.

What nobody ticked is None, never a guess out of the recipe; only the yarn in a litre
is taken as it was planned where the water that was filled in was not read.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from shadewright.records.models import Bath, BathLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.heat_ups import timed_way
from shadewright.workflows.poured import PouredBath
from shadewright.workflows.rounds import ACIDS

_BEGINS = (BathAct.STARTED, BathAct.DOSED)


@dataclass(frozen=True, kw_only=True)
class PotFacts:
    """What a bath's ledger tells; None is what nobody wrote down."""

    load_g_per_l: float | None
    ramp_c_per_min: float | None
    hold_min: float | None
    acid_after_min: float | None
    person: str | None


def pot_facts(bath: Bath, lines: Sequence[BathLine], poured: PouredBath) -> PotFacts:
    """Return what the standing lines of a bath tell, the oldest first."""
    return PotFacts(
        load_g_per_l=_load(bath, lines, poured),
        ramp_c_per_min=_ramp(bath, lines),
        hold_min=_minutes(
            _first(lines, BathAct.AT_TOP), _first(lines, BathAct.HEAT_OFF)
        ),
        acid_after_min=_acid_after(bath, lines),
        person=_person(lines),
    )


def _load(bath: Bath, lines: Sequence[BathLine], poured: PouredBath) -> float | None:
    """Return the yarn in a litre: of the water that was read and the stock."""
    filled = [x.value for x in lines if x.step == "fill" and x.unit == "l" and x.value]
    stock = [dose.volume_ml for dose in poured.doses if not dose.is_missed]
    if filled and filled[-1] and None not in stock:
        litres = filled[-1] + sum(ml for ml in stock if ml is not None) / 1000
        return round(bath.fibre_g / litres, 1)
    return round(1000 / bath.liquor_ratio, 1) if bath.liquor_ratio else None


def _ramp(bath: Bath, lines: Sequence[BathLine]) -> float | None:
    timed = timed_way(bath, lines)
    if timed is None:
        return None
    return round((timed.top_c - timed.start_c) / timed.minutes, 2)


def _acid_after(bath: Bath, lines: Sequence[BathLine]) -> float | None:
    """Return the minutes from the first tick to the first acid."""
    helpers = bath.version.auxiliaries.all()
    acids = {
        f"add-{number}"
        for number, helper in enumerate(helpers, start=1)
        if helper.auxiliary.kind in ACIDS
    }
    begun = min((x.at for x in lines if x.act in _BEGINS), default=None)
    added = (x for x in lines if x.act == BathAct.ADDED)
    of_acid = (x.at for x in added if x.step.rstrip("ab") in acids)
    return _minutes(begun, min(of_acid, default=None))


def _person(lines: Sequence[BathLine]) -> str | None:
    """Return who ticked most at the pot; of two alike the first by name."""
    names = sorted(x.by.name for x in lines if x.by is not None)
    return max(dict.fromkeys(names), key=names.count, default=None)


def _first(lines: Sequence[BathLine], act: BathAct) -> datetime | None:
    return next((line.at for line in lines if line.act == act), None)


def _minutes(begun: datetime | None, ended: datetime | None) -> float | None:
    if begun is None or ended is None or ended < begun:
        return None
    return round((ended - begun).total_seconds() / 60, 1)
