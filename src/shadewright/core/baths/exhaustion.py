"""Exhaustion: what to do about the dye that is left in a bath.

Heat comes first, then what the class of the dyes wants: acid, or time before acid.
What stays after that is written down.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from shadewright.core.baths.acidity.late import SLACK_PH, late_acid, wanted_ph_text
from shadewright.core.baths.depth import DEEP_TOTAL_PERCENT
from shadewright.core.quantities import (
    NO_BREAK,
    amount_text,
    number_text,
    require_between,
)
from shadewright.core.tables.acid_doses import (
    DEEP_ABOVE_PERCENT,
    HABITS,
    AcidHabit,
)

CLEAR_PERCENT: Final = 5.0  # common practice: paler than this nobody tells by eye
HOT_C: Final = 85.0  # common practice: below it acid dyes go on slowly on wool
SLACK_C: Final = 2.0  # common practice: what a kitchen thermometer may be off
LONGER_MIN: Final = 15.0  # common practice: a longer hold before anything is added


class NextAct(StrEnum):
    """What the dye that is left asks for."""

    DONE = "done"
    READ = "read"
    HEAT = "heat"
    TIME = "time"
    ACID = "acid"
    LEFTOVER = "leftover"


@dataclass(frozen=True, kw_only=True)
class CupLook:
    """A look at the bath, with what is known of it; what nobody read is None.

    ``longer_min`` is how much longer than planned it has been held already,
    ``habit`` the group of its dyes that wants acid most carefully. [%, °C, min]
    """

    left_percent: float
    depth_percent: float
    bath_c: float | None = None
    top_c: float | None = None
    ph: float | None = None
    habit: AcidHabit | None = None
    longer_min: float = 0.0


@dataclass(frozen=True, kw_only=True)
class CupAdvice:
    """The next act in a sentence, and how it is done; ``minutes`` of a longer hold."""

    act: NextAct
    words: str
    steps: tuple[str, ...] = ()
    minutes: float | None = None


def cup_advice(*, look: CupLook) -> CupAdvice:
    """Return what to do about the dye that is left in a bath.

    Parameters
    ----------
    look : CupLook
        The share left [%], temperature [°C], pH and what is known of the dyes. [-]

    Returns
    -------
    CupAdvice
        One act: done, read, heat, time, acid or leftover. [-]

    Raises
    ------
    OutOfRangeError
        If the share is not between 0 and 100 %, or a pH not between 0 and 14.

    Notes
    -----
    In this order: clear at 5 % or less; hot enough (85 °C, or the recipe's top where
    that is lower); sour enough for the class ([broadbent2001]_, Table 13.1, p. 242;
    1:2 dyes from memory), where milling, super-milling and 1:2 dyes are given time
    before acid; a hold 15 min longer; then what is left is written down as it is. The
    order and all limits but the pH are common practice.

    Examples
    --------
    >>> cool = CupLook(left_percent=30.0, depth_percent=1.0, bath_c=72.0, top_c=95.0)
    >>> cup_advice(look=cool).act
    <NextAct.HEAT: 'heat'>
    """
    require_between(
        look.left_percent,
        least=0.0,
        most=100.0,
        unit="%",
        name="The share that is left",
        argument="left_percent",
    )
    asked = (_clear, _heat, _acid, _time)
    return next((x for each in asked if (x := each(look))), _leftover(look))


def _clear(look: CupLook) -> CupAdvice | None:
    if look.left_percent > CLEAR_PERCENT:
        return None
    return CupAdvice(
        act=NextAct.DONE, words="As good as clear: the dye is on the yarn."
    )


def _heat(look: CupLook) -> CupAdvice | None:
    wanted_c = HOT_C if look.top_c is None else min(HOT_C, look.top_c)
    wanted = amount_text(wanted_c, "°C")
    if look.bath_c is None:
        return CupAdvice(
            act=NextAct.READ,
            words=f"Read the temperature: below {wanted} heat comes first.",
        )
    if look.bath_c >= wanted_c - SLACK_C:
        return None
    return CupAdvice(
        act=NextAct.HEAT,
        words=f"Heat: the bath is at {amount_text(look.bath_c, '°C')}, and dye goes "
        f"on slowly below {wanted}.",
        steps=(f"Bring it slowly to {wanted} or the recipe’s top.", _LOOK_AGAIN),
        minutes=LONGER_MIN,
    )


def _acid(look: CupLook) -> CupAdvice | None:
    if look.habit is None:
        return None
    facts = HABITS[look.habit]
    if facts.takes_time_first and look.longer_min < LONGER_MIN:
        return None
    if look.ph is None:
        wants = f"{look.habit} dyes want {wanted_ph_text(habit=look.habit)}"
        return CupAdvice(
            act=NextAct.READ,
            words=f"Read the pH if you can: {wants}.",
            minutes=None if look.longer_min else LONGER_MIN,
        )
    if look.ph <= facts.ph_to + SLACK_PH:
        return None
    first, *steps = late_acid(habit=look.habit, measured_ph=look.ph)
    how = steps[2:] if facts.takes_time_first else steps
    return CupAdvice(
        act=NextAct.ACID, words=f"Acid: {first[:1].lower()}{first[1:]}", steps=(*how,)
    )


def _time(look: CupLook) -> CupAdvice | None:
    if look.longer_min >= LONGER_MIN:
        return None
    return CupAdvice(
        act=NextAct.TIME,
        words=f"Time: hold it {amount_text(LONGER_MIN, 'min')} longer.",
        steps=(_LOOK_AGAIN,),
        minutes=LONGER_MIN,
    )


def _leftover(look: CupLook) -> CupAdvice:
    left = number_text(look.left_percent, digits=2)
    return CupAdvice(
        act=NextAct.LEFTOVER,
        words=f"It has had heat and time: about {left}{NO_BREAK}% stays in "
        "the bath. It is written down.",
        steps=(_why_left(look), *_WITH_LEFTOVER),
    )


def _why_left(look: CupLook) -> str:
    if look.depth_percent > DEEP_TOTAL_PERCENT:
        return "This is more dye than yarn usually takes: expect it to bleed."
    if look.depth_percent > DEEP_ABOVE_PERCENT:
        return "A deep shade often leaves some dye in the bath."
    return "Turquoise and cyan are slow, and often stay in part."


_LOOK_AGAIN: Final = "Then take another spoonful and look again."
_WITH_LEFTOVER: Final = (
    "Let it cool in the bath, rinse until the water is clear, and test for bleeding.",
    (
        "The bath is still coloured: where it may go is for your sewer authority and "
        "the dye’s safety data sheet to say, never a storm drain."
    ),
)
