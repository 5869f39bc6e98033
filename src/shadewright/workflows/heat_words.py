"""The heat of a bath in words: the minutes, what they rest on, how to set the knob."""

from shadewright.core.baths.heating import MinutesRange, Pace, RisePace
from shadewright.core.quantities import NO_BREAK, amount_text, counted, number_text
from shadewright.workflows.heating import BathHeat

_GUESS = "a guess: no heat-up of this pot on this burner is timed yet"


def way_words(heat: BathHeat) -> str:
    """Return the minutes to the top that are to be expected, and what they rest on."""
    top = amount_text(heat.top_c, "°C")
    if _keeps_pace(heat):
        return f"{_span(heat.way)} to {top}, as the recipe says."
    return f"{_span(heat.way)} to {top}, {evidence_words(heat)}."


def full_words(heat: BathHeat) -> str:
    """Return the minutes at full power, where the recipe asks for fewer degrees."""
    if not _keeps_pace(heat):
        return ""
    return f"{_span(heat.full)}, {evidence_words(heat)}."


def pace_words(heat: BathHeat) -> str:
    """Return whether the recipe's rise is kept, and how far to turn the source down."""
    if heat.rise is None or heat.wanted_c_per_min is None:
        return ""
    wanted = _pace(heat.wanted_c_per_min)
    fastest = _pace(heat.fastest_c_per_min)
    match heat.rise.pace:
        case Pace.TOO_SLOW:
            return (
                f"The recipe’s {wanted} cannot be kept: this pot rises by about "
                f"{fastest} here. Less liquor or a stronger burner is faster."
            )
        case Pace.KEPT:
            return f"Near full power keeps the recipe’s {wanted}."
        case Pace.RUNS_AHEAD:
            return f"{_turned_down(heat.rise)} Full power rises by {fastest}."


def step_words(heat: BathHeat) -> str:
    """Return what the step of the heat says at the pot and on the card."""
    if not _keeps_pace(heat):
        return f"{way_words(heat)} {pace_words(heat)}".rstrip()
    way = f"{_span(heat.way)}, as the recipe says; at full power {full_words(heat)}"
    return f"{way} {_knob(heat)}"


def evidence_words(heat: BathHeat) -> str:
    """Return what the minutes rest on: heat-ups of this pot here, or a guess."""
    count = heat.full.count
    if count:
        return f"from {counted(count, 'heat-up')} of this pot here"
    if heat.kept:
        return f"a guess: {counted(heat.kept, 'heat-up')} here kept a recipe’s pace"
    return _GUESS


def notes_of(heat: BathHeat) -> tuple[str, ...]:
    """Return what was not known, and so guessed or left out."""
    start = amount_text(heat.start_c, "°C")
    said = (
        (heat.is_start_guessed, f"Reckoned from {start}: the recipe says no start."),
        (not heat.has_pot_weight, "The pot’s own weight is not known and left out."),
    )
    return tuple(words for is_so, words in said if is_so)


def _keeps_pace(heat: BathHeat) -> bool:
    """Whether the recipe's pace, not the source, sets the minutes to the top."""
    return heat.rise is not None and heat.rise.pace is not Pace.TOO_SLOW


def _span(found: MinutesRange) -> str:
    least, most = _whole(found.least), _whole(found.most)
    if least == most:
        return amount_text(least, "min")
    return f"{number_text(least, digits=4)} to {amount_text(most, 'min')}"


def _whole(minutes: float) -> float:
    return float(max(round(minutes), 1))


def _pace(value: float) -> str:
    return f"{number_text(value, digits=2)}{NO_BREAK}°C a minute"


def _knob(heat: BathHeat) -> str:
    """Return how to set the source, in as few words as a card has room for."""
    if heat.rise is not None and heat.rise.pace is Pace.RUNS_AHEAD:
        return _turned_down(heat.rise)
    return pace_words(heat)


def _turned_down(rise: RisePace) -> str:
    """Return a share of the power to the nearest twentieth, as a knob is set."""
    power = amount_text(max(5 * round(20 * rise.power_share), 5), "%")
    return f"Turn it down to about {power}."
