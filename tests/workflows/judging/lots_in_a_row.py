"""Lots of one recipe on one base, a week apart, each read by a meter."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from django.utils import timezone

from shadewright.records.models import Base
from shadewright.records.models.baths import BathAct
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.stamps import as_of
from tests.workflows.bench import made, new_jar
from tests.workflows.correcting.off_lots import note
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ready, tapped
from tests.workflows.shades.swatch_rows import kept_swatch

Triple = tuple[float, float, float]

USUAL: Triple = (56.0, -3.0, 16.0)
SCATTER: Sequence[Triple] = (
    *((0.2, -0.1, 0.1), (-0.1, 0.2, -0.2), (0.0, -0.2, 0.2), (0.2, 0.1, 0.0)),
    *((-0.2, 0.0, -0.1), (0.1, 0.2, 0.2), (-0.1, -0.2, 0.0)),
)


@dataclass(frozen=True)
class LotsInARow:
    """The pot and the lots, the oldest first."""

    pot: Ready
    numbers: tuple[str, ...]

    @property
    def last(self) -> str:
        """The newest lot."""
        return self.numbers[-1]


def lots_in_a_row(
    *, off: Triple, hold_min: float | None = 30.0, is_new_jar: bool = False
) -> LotsInARow:
    """Dye seven lots alike and one that is off, with what was different in it.

    Without a hold nobody ticks when the heat went off.
    """
    now = timezone.now()
    with as_of(now - timedelta(days=90)):
        pot = _stocked()
    numbers = []
    for place, scatter in enumerate([*SCATTER, off]):
        at = now - timedelta(days=7 * (len(SCATTER) - place), hours=3)
        is_last = place == len(SCATTER)
        with as_of(at):
            slate = _new_slate(pot) if is_last and is_new_jar else pot.slate
            lot = replace(pot, slate=slate)
            numbers.append(_lot(lot, at, hold_min=hold_min if is_last else 30.0))
            note(numbers[-1], _moved(scatter))
    return LotsInARow(pot=pot, numbers=tuple(numbers))


def palette_of_both(pot: Ready) -> None:
    """Fit swatches of both dyes and of their mix on the yarn of the lots."""
    base = Base.objects.get(pk=pot.base)
    kept_swatch(base, {}, (91.0, -0.5, 9.0))
    for depth, lab in ((0.3, (60.0, -2.5, -9.0)), (1.0, (40.0, -2.0, -10.0))):
        kept_swatch(base, {"Slate": depth}, lab)
    for depth, lab in ((0.3, (83.0, 2.0, 45.0)), (1.0, (76.0, 6.0, 62.0))):
        kept_swatch(base, {"Gorse": depth}, lab)
    kept_swatch(base, {"Slate": 0.6, "Gorse": 0.3}, USUAL)
    fit_now(why="first swatches")


def _stocked() -> Ready:
    pot = ready(bottle_ml=5000.0)
    return replace(pot, slate=_new_slate(pot))


def _new_slate(pot: Ready) -> str:
    jar = new_jar(pot.slate_dye, powder_g=500.0)
    return made(pot.slate_dye, jar, powder_g=20.0, final_ml=2000.0).code


def _lot(pot: Ready, at: datetime, *, hold_min: float | None) -> str:
    number = pot.another()

    def tap(act: BathAct, step: str, minute: float, **said: object) -> None:
        moment = at + timedelta(minutes=minute - 150)
        tapped(number, act, step, at=moment, **said)  # type: ignore[arg-type]

    tap(BathAct.STARTED, "fill", 0, value=2.9, unit="l")
    tap(BathAct.DOSED, "dose-1", 5, value=60.0, unit="ml", bottle=pot.slate)
    tap(BathAct.DOSED, "dose-2", 6, value=30.0, unit="ml", bottle=pot.gorse)
    tap(BathAct.ADDED, "add-1", 10, value=2.0, unit="g")
    tap(BathAct.HEAT_ON, "heat", 20)
    tap(BathAct.AT_TOP, "top", 70)
    if hold_min is not None:
        tap(BathAct.HEAT_OFF, "off", 70 + hold_min)
    return finished(number, skeins=4)


def _moved(by: Triple) -> Triple:
    light, a, b = (x + y for x, y in zip(USUAL, by, strict=True))
    return light, a, b
