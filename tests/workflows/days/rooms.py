"""A room to dye in: pots, burners behind a fuse, and baths on a day."""

from dataclasses import dataclass
from datetime import date

from shadewright.records.models import Bath, Circuit, DayWish, HeatSource, Pot
from shadewright.workflows.baths import BathWish, keep_bath
from shadewright.workflows.stamps import stamp_now
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ready


@dataclass(frozen=True)
class Dyehouse:
    """A studio with a recipe, two pots and two burners behind one fuse."""

    ready: Ready
    pots: tuple[Pot, ...]
    sources: tuple[HeatSource, ...]

    def bath(self, day: date, *, fibre_g: float = 100.0, **wish: object) -> str:
        """Plan a bath for a day; what is said more is wished of it."""
        asked = BathWish(
            version_id=self.ready.version,
            base_id=self.ready.base,
            fibre_g=fibre_g,
            dyed_on=day,
            skeins=1,
        )
        number = keep_bath(wish=asked, stamp=stamp_now(by=None))
        if wish:
            DayWish.objects.create(bath=Bath.objects.get(number=number), **wish)
        return number


def dyehouse(*, limit_kw: float = 3.6, pots: int = 2) -> Dyehouse:
    """Found a studio, and put its first bath out of the way."""
    founded()
    known = ready(bottle_ml=5000.0)
    Bath.objects.update(number="260105-B1", dyed_on=date(2026, 1, 5))
    circuit = Circuit.objects.create(name="Kitchen", limit_kw=limit_kw)
    return Dyehouse(
        ready=known,
        pots=tuple(
            Pot.objects.create(name=f"Pot {n + 1}", volume_l=8.0, mass_kg=1.0)
            for n in range(pots)
        ),
        sources=tuple(
            HeatSource.objects.create(
                name=name, kind="induction", power_kw=1.8, circuit=circuit
            )
            for name in ("Plate A", "Plate B")
        ),
    )
