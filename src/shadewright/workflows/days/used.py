"""Water, energy and waste of a day: estimates, each with what it rests on.

A meter, where one was read twice, is told beside them and never mixed in.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from shadewright.core.baths import liquor_ml
from shadewright.core.baths.rounds import StepKind
from shadewright.core.baths.water_use import USUAL_RINSES, WaterUse, water_use
from shadewright.core.quantities import NO_BREAK, amount_text, number_text
from shadewright.records.models import Bath
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_cautions import metal_caution
from shadewright.workflows.bath_shapes import BathNow, BathStatus

_NOT_BEGUN = {BathStatus.PLANNED, BathStatus.GIVEN_UP}


@dataclass(frozen=True, kw_only=True)
class BathUse:
    """What one bath took and left.

    ``rise_kwh`` is the heat model's way to the top, None where pot or burner is not
    known; ``most_kwh`` its burner at full power for as long as it was on, None where
    the heat was not ticked on and off. ``is_guessed`` says that no heat-up of that pot
    on that burner was timed. ``left`` and ``ph`` are what was written of the bath.
    """

    number: str
    called: str
    water: WaterUse
    are_rinses_told: bool
    is_water_told: bool
    rise_kwh: float | None
    most_kwh: float | None
    is_guessed: bool
    spent_l: float
    ph: str
    left: str
    metal: str


@dataclass(frozen=True, kw_only=True)
class DayUse:
    """What the baths that were begun took together, in l and kWh.

    The energies are None where no bath tells; ``unheated`` and ``untimed`` name the
    baths that are missing in them.
    """

    day: date
    baths: tuple[BathUse, ...]
    soak_l: float
    bath_l: float
    rinse_l: float
    rise_kwh: float | None
    most_kwh: float | None
    guessed: int
    unheated: tuple[str, ...]
    untimed: tuple[str, ...]

    @property
    def water_l(self) -> float:
        """All of the water."""
        return self.soak_l + self.bath_l + self.rinse_l

    @property
    def untold_rinses(self) -> int:
        """How many baths have their rinses from habit alone."""
        return sum(not each.are_rinses_told for each in self.baths)


def day_use(day: date, baths: Sequence[tuple[Bath, BathNow]]) -> DayUse:
    """Return what the baths of a day took, of those that were begun."""
    used = tuple(
        _used(row, bath) for row, bath in baths if bath.status not in _NOT_BEGUN
    )
    return DayUse(
        day=day,
        baths=used,
        soak_l=sum(each.water.soak_ml for each in used) / 1000,
        bath_l=sum(each.water.bath_ml for each in used) / 1000,
        rinse_l=sum(each.water.rinse_ml for each in used) / 1000,
        rise_kwh=_sum([each.rise_kwh for each in used]),
        most_kwh=_sum([each.most_kwh for each in used]),
        guessed=sum(x.is_guessed for x in used if x.rise_kwh is not None),
        unheated=tuple(x.called for x in used if x.rise_kwh is None),
        untimed=tuple(x.called for x in used if x.most_kwh is None),
    )


def _used(row: Bath, bath: BathNow) -> BathUse:
    filled_l = _filled_l(bath)
    rinses = sum(line.act == BathAct.RINSED for line in bath.standing)
    spent_ml = liquor_ml(fibre_mass_g=bath.fibre_g, liquor_ratio=bath.liquor_ratio)
    planned_l = next(_planned_l(bath), 0.0)
    return BathUse(
        number=bath.number,
        called=bath.called,
        water=water_use(
            fibre_mass_g=bath.fibre_g,
            fresh_water_ml=1000 * (planned_l if filled_l is None else filled_l),
            rinses=min(rinses or USUAL_RINSES, 100),
        ),
        are_rinses_told=rinses > 0,
        is_water_told=filled_l is not None,
        rise_kwh=None if bath.heat is None else bath.heat.input_kwh,
        most_kwh=_most_kwh(row, bath),
        is_guessed=bath.heat is not None and not bath.heat.full.count,
        spent_l=spent_ml / 1000,
        ph=_ph(bath),
        left=_left(bath),
        metal=metal_caution(dose.dye for dose in row.doses.all()),
    )


def _planned_l(bath: BathNow) -> Iterator[float]:
    for each in bath.steps:
        if each.step.kind is StepKind.FILL and each.step.amount is not None:
            yield each.step.amount


def _filled_l(bath: BathNow) -> float | None:
    """Return the water that was ticked, in litres, at most what a pot can hold."""
    for each in bath.steps:
        for tick in each.ticks if each.step.kind is StepKind.FILL else ():
            if tick.value is not None and tick.unit == "l" and 0 <= tick.value <= 1e4:
                return tick.value
    return None


def _most_kwh(row: Bath, bath: BathNow) -> float | None:
    """Return what a burner at full power gives from the first on to the last off."""
    lit = [line.at for line in bath.standing if line.act == BathAct.HEAT_ON]
    offs = [line.at for line in bath.standing if line.act == BathAct.HEAT_OFF]
    if row.source is None or not lit or not offs or max(offs) < min(lit):
        return None
    hours = (max(offs) - min(lit)).total_seconds() / 3600
    return row.source.power_kw * hours


def _ph(bath: BathNow) -> str:
    read = (x.value for x in bath.standing if x.act == BathAct.PH)
    found = next((value for value in read if value is not None), None)
    return "" if found is None else f"pH{NO_BREAK}{number_text(found, digits=2)}"


def _left(bath: BathNow) -> str:
    said = (x for x in bath.standing if x.act == BathAct.LEFTOVER)
    found = next((x for x in said if x.value is not None), None)
    if found is None or found.value is None:
        return ""
    return f"about {amount_text(found.value, found.unit)}"


def _sum(parts: Sequence[float | None]) -> float | None:
    known = [part for part in parts if part is not None]
    return sum(known) if known else None
