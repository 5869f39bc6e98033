"""The doses of a bath as they really went in, each with its bottle and strength.

What was not ticked is not known: a dose that was only planned appears as planned,
never as given.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from shadewright.core.baths import depth_percent
from shadewright.core.uncertainty import Value
from shadewright.records import lot_reads
from shadewright.records.models import Bath, BathDose, BathLine
from shadewright.records.models.baths import BathAct
from shadewright.workflows.bath_shapes import PART
from shadewright.workflows.bottle_sources import Ledgers, ledgers_of
from shadewright.workflows.dosing import (
    HowSure,
    Portion,
    depth_known,
    dye_in_g,
    how_sure,
    stock_ml,
)
from shadewright.workflows.tools import ToolNow, tools_of

Tools = Mapping[int | None, ToolNow]


@dataclass(frozen=True, kw_only=True)
class Poured:
    """A dose, or a part of one; ``dye_g`` is None where it is not written down.

    ``weighed_g`` is stock as the scale showed it; its ``volume_ml`` follows from that.
    ``until`` numbers the line in the bottle's ledger by which it was drawn;
    ``is_told`` is False for a dose of the plan that nobody ticked.
    """

    dye_name: str
    bottle_id: int | None = None
    bottle: str = ""
    volume_ml: float | None = None
    weighed_g: float | None = None
    tool: ToolNow | None = None
    strength_percent: float | None = None
    dye_g: float | None = None
    made_on: date | None = None
    at: datetime | None = None
    until: int | None = None
    is_told: bool = True
    is_missed: bool = False

    @property
    def is_dry(self) -> bool:
        """Whether the powder was weighed straight into the bath."""
        return self.is_told and not self.is_missed and not self.bottle


@dataclass(frozen=True, kw_only=True)
class PouredBath:
    """All doses of a bath, and the ledgers of the bottles behind them."""

    fibre_g: float
    yarn_scale: ToolNow | None
    doses: tuple[Poured, ...]
    ledgers: Ledgers

    @property
    def dyes(self) -> tuple[str, ...]:
        """The dyes of the bath, in the order of the card."""
        return tuple(dict.fromkeys(dose.dye_name for dose in self.doses))

    def of(self, dye_name: str) -> tuple[Poured, ...]:
        """Return the doses of one dye."""
        return tuple(dose for dose in self.doses if dose.dye_name == dye_name)

    def depth_percent(self, dye_name: str) -> float | None:
        """Return the depth that was really given, None where it is not known."""
        doses = [dose for dose in self.of(dye_name) if not dose.is_missed]
        masses = [dose.dye_g for dose in doses]
        known = [mass for mass in masses if mass is not None]
        if len(known) < len(masses):
            return None
        return depth_percent(dye_mass_g=sum(known), fibre_mass_g=self.fibre_g)

    def depth_value(self, dye_name: str) -> Value | None:
        """Return the depth that was given with its terms, None where it is unknown."""
        if not self.depth_percent(dye_name):
            return None
        doses = [dose for dose in self.of(dye_name) if not dose.is_missed]
        return depth_known(
            [self._portion(dose) for dose in doses],
            dye=dye_name,
            fibre_g=self.fibre_g,
            yarn_scale=self.yarn_scale,
        )

    def how_sure(self, dye_name: str) -> HowSure | None:
        """Return how sure the depth that was given is, None where it is not known."""
        if not self.depth_percent(dye_name):
            return None
        doses = [dose for dose in self.of(dye_name) if not dose.is_missed]
        return how_sure(
            [self._portion(dose) for dose in doses],
            dye=dye_name,
            fibre_g=self.fibre_g,
            yarn_scale=self.yarn_scale,
        )

    def _portion(self, dose: Poured) -> Portion:
        """Return a dose as it was read, with what its bottle was then."""
        amount = dose.weighed_g if dose.weighed_g is not None else dose.volume_ml
        state = None
        if dose.bottle_id is not None:
            state = self.ledgers.state(dose.bottle_id, dose.until)
        if state is None or amount is None:
            return Portion(amount=dose.dye_g or 0.0, unit="g", tool=dose.tool)
        return Portion(
            amount=amount,
            unit="ml" if dose.weighed_g is None else "g",
            tool=dose.tool,
            code=dose.bottle,
            strength=state.strength,
            lacks=state.lacks,
        )


def poured_bath(bath: Bath) -> PouredBath:
    """Return what went into a bath, dose by dose."""
    return poured_baths([bath])[bath.pk]


def poured_baths(baths: Sequence[Bath]) -> dict[int, PouredBath]:
    """Return what went into some baths, by row number, in a few questions for all."""
    lines: dict[int, list[BathLine]] = {bath.pk: [] for bath in baths}
    for line in lot_reads.told_lines(list(lines)):
        lines[line.bath_id].append(line)
    told = [line for own in lines.values() for line in own]
    planned = [dose for bath in baths for dose in bath.doses.all()]
    used = {x.bottle_id for x in told} | {x.bottle_id for x in planned}
    ledgers = ledgers_of({bottle_id for bottle_id in used if bottle_id is not None})
    tools = tools_of({x.tool_id for x in told} | {x.yarn_scale_id for x in baths})
    return {
        bath.pk: PouredBath(
            fibre_g=bath.fibre_g,
            yarn_scale=tools.get(bath.yarn_scale_id),
            doses=tuple(_doses(bath.doses.all(), lines[bath.pk], ledgers, tools)),
            ledgers=ledgers,
        )
        for bath in baths
    }


def _doses(
    planned: Iterable[BathDose],
    lines: Sequence[BathLine],
    ledgers: Ledgers,
    tools: Tools,
) -> Iterator[Poured]:
    by_step = {f"dose-{n}": dose for n, dose in enumerate(planned, start=1)}
    for key, dose in by_step.items():
        own = [line for line in lines if line.step.removesuffix(PART) == key]
        yield from (_told(line, dose, ledgers, tools) for line in own)
        if not own:
            yield _untold(dose)
    strays = (x for x in lines if x.step.removesuffix(PART) not in by_step)
    yield from (_told(line, None, ledgers, tools) for line in strays)


def _told(
    line: BathLine, dose: BathDose | None, ledgers: Ledgers, tools: Tools
) -> Poured:
    bottle = line.bottle
    strength = None
    if bottle is not None:
        strength = ledgers.strength_percent(bottle.pk, line.drawn_id)
    name = dose.dye.name if dose is not None else "a dye not on the card"
    return Poured(
        dye_name=name if bottle is None else bottle.dye.name,
        bottle_id=line.bottle_id,
        bottle="" if bottle is None else bottle.code,
        volume_ml=_volume_ml(line, strength),
        weighed_g=line.value if bottle is not None and line.unit == "g" else None,
        tool=tools.get(line.tool_id),
        strength_percent=strength,
        dye_g=_dye_g(line, strength),
        made_on=None if bottle is None else bottle.made_on,
        at=line.at,
        until=line.drawn_id,
        is_missed=line.act == BathAct.MISSED,
    )


def _untold(dose: BathDose) -> Poured:
    bottle = dose.bottle
    return Poured(
        dye_name=dose.dye.name,
        bottle_id=dose.bottle_id,
        bottle="" if bottle is None else bottle.code,
        volume_ml=dose.volume_ml,
        strength_percent=dose.strength_percent,
        is_told=False,
    )


def _volume_ml(line: BathLine, strength_percent: float | None) -> float | None:
    if line.value is None or line.unit == "ml":
        return line.value
    if line.bottle is None or strength_percent is None:
        return None
    return stock_ml(line.value, line.unit, strength_percent)


def _dye_g(line: BathLine, strength_percent: float | None) -> float | None:
    if line.value is None or (line.unit == "g" and line.bottle is None):
        return line.value
    if strength_percent is None:
        return None
    return dye_in_g(line.value, line.unit, strength_percent)
