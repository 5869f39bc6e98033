"""What is known of how long a dye's stocks keep, on the dye's own page."""

from dataclasses import dataclass

from shadewright.core.solutions.keeping import DyeLife
from shadewright.workflows.dye_lives import life_of_dye


@dataclass(frozen=True, kw_only=True)
class LifePart:
    """A dye's life in words; ``life`` is drawn where the studio's looks are enough."""

    words: str
    days: str
    life: DyeLife | None


def life_part(dye_id: int) -> LifePart:
    """Return the part of a dye."""
    life = life_of_dye(dye_id)
    return LifePart(
        words=life.words,
        days=_days(life),
        life=life if life.is_from_checks else None,
    )


def _days(life: DyeLife) -> str:
    if life.look_by_days == life.discard_by_days == 1:
        return "Mixed fresh for the day: past its time the day after the next."
    grounds = "your own looks" if life.is_from_checks else "common practice"
    if not life.is_from_checks and life.settled:
        grounds += ", and the soonest that a bottle settled"
    return (
        f"Look at a bottle from day {life.look_by_days} on; test it or let it go after "
        f"day {life.discard_by_days}. That rests on {grounds}."
    )
