"""Baths that were dyed and finished, ticked as at the pot."""

from collections.abc import Mapping

from shadewright.records.models.baths import BathAct
from shadewright.records.models.lots import Grade
from shadewright.workflows.lots import LotWords, finish_bath
from shadewright.workflows.stamps import stamp_now
from tests.workflows.pots import Ready, ago, tapped


def dyed(
    pot: Ready,
    number: str = "",
    *,
    volumes_ml: Mapping[str, float] | None = None,
    hold_min: float = 30.0,
) -> str:
    """Tick a bath through as planned, but for the volumes of some bottles."""
    bath = number or pot.number
    asked = {pot.slate: 60.0, pot.gorse: 30.0} | dict(volumes_ml or {})
    tapped(bath, BathAct.STARTED, "fill", value=2.9, unit="l", at=ago(minutes=120))
    for step, bottle in (("dose-1", pot.slate), ("dose-2", pot.gorse)):
        value = asked[bottle]
        at = ago(minutes=115)
        tapped(bath, BathAct.DOSED, step, value=value, unit="ml", bottle=bottle, at=at)
    acid_at = ago(minutes=110)
    tapped(bath, BathAct.ADDED, "add-1", value=2.0, unit="g", at=acid_at)
    tapped(bath, BathAct.HEAT_ON, "heat", at=ago(minutes=100))
    tapped(bath, BathAct.AT_TOP, "top", at=ago(minutes=50))
    tapped(bath, BathAct.HEAT_OFF, "off", at=ago(minutes=50 - hold_min))
    return bath


def finished(
    number: str, *, grade: Grade = Grade.FIRST, is_sure: bool = False, **said: object
) -> str:
    """Write the lot of a bath."""
    words = LotWords(grade=grade, **said)  # type: ignore[arg-type]
    stamp = stamp_now(by=None)
    return finish_bath(number=number, said=words, stamp=stamp, is_sure=is_sure)
