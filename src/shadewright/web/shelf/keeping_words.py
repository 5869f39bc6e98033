"""How long a bottle keeps, in words beside its picture."""

from shadewright.web.templatetags.house import age, day
from shadewright.workflows.shelf import ShelfBottle

_LIFE_WORDS = {True: "by your own looks at this dye", False: "by common practice"}


def time_left(bottle: ShelfBottle) -> str:
    """Return how much of a bottle's time is left, in a few words."""
    days_left = bottle.keeping.days_left
    if days_left is None:
        return "time left not known"
    if days_left < 0:
        return f"past its time by {age(-days_left)}"
    return f"{age(days_left)} left" if days_left else "last day"


def days_of(bottle: ShelfBottle) -> str:
    """Return the days to look by and to discard by, and where they come from."""
    keeping = bottle.keeping
    if keeping.expires_on is None:
        return "the day made is not known: look before every draw"
    if bottle.discard_by is not None:
        return f"discard by {day(keeping.expires_on)}, as written on it"
    look_by = "" if keeping.look_by is None else f"look by {day(keeping.look_by)}, "
    grounds = _LIFE_WORDS[keeping.is_own_life]
    return f"{look_by}discard by {day(keeping.expires_on)}, {grounds}"
