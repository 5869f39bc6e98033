"""What a day took, in figures, each with what it rests on; and where waste may go."""

from collections.abc import Iterator, Sequence

from django.urls import reverse

from shadewright.core.baths.water_use import (
    RINSE_ML_PER_G,
    SOAK_ML_PER_G,
    USUAL_RINSES,
)
from shadewright.core.quantities import amount_text, counted
from shadewright.web.day_papers.pages import FigureRow, SpentRow
from shadewright.web.parts import Caution
from shadewright.workflows.days.day_ledger import DayLedger
from shadewright.workflows.days.used import DayUse

NOT_READ = "Read the meter before the first bath and after the last."
WHERE = Caution(
    title="Spent baths and rinse water",
    text="Where they may go is for your sewer authority and the safety data sheets to "
    "say: never into a storm drain, and ask first if a dye holds a metal. Follow your "
    "local rules.",
)


def figures(use: DayUse, ledger: DayLedger) -> tuple[FigureRow, ...]:
    """Return the water and the energy of a day, estimated and metered."""
    return (*_water(use, ledger), *_energy(use, ledger))


def spent_rows(use: DayUse) -> tuple[SpentRow, ...]:
    """Return the baths that are spent, with what was read of each."""
    return tuple(
        SpentRow(
            called=each.called,
            address=reverse("pour-away", args=[each.number]),
            litres=amount_text(each.spent_l, "l"),
            ph=each.ph or "not read",
            left=each.left or "not said",
        )
        for each in use.baths
    )


def cautions(use: DayUse) -> tuple[Caution, ...]:
    """Return where the waste may go, and which bath holds a metal."""
    metals = dict.fromkeys(each.metal for each in use.baths if each.metal)
    named = (Caution(title="Dye that holds a metal", text=text) for text in metals)
    return (WHERE, *named) if use.baths else ()


def _water(use: DayUse, ledger: DayLedger) -> Iterator[FigureRow]:
    parts = (("soaks", use.soak_l), ("baths", use.bath_l), ("rinses", use.rinse_l))
    said = ", ".join(f"{name} {amount_text(litres, 'l')}" for name, litres in parts)
    yield FigureRow(
        what="Water, an estimate",
        much=amount_text(use.water_l, "l") if use.baths else "–",
        rests_on=" ".join((f"{said[:1].upper()}{said[1:]}.", *_water_doubts(use)))
        if use.baths
        else "No bath was begun.",
    )
    metered = ledger.water_m3
    yield FigureRow(
        what="Water, metered",
        much="–" if metered is None else amount_text(metered, "m³"),
        rests_on=NOT_READ
        if metered is None
        else "All that ran through this meter between its first and last reading.",
    )


def _water_doubts(use: DayUse) -> Iterator[str]:
    soak, rinse = f"{SOAK_ML_PER_G:g}", f"{RINSE_ML_PER_G:g}"
    yield f"A soak is taken as {soak} and a rinse as {rinse} ml to a gram of yarn."
    if use.untold_rinses:
        baths = counted(use.untold_rinses, "bath")
        yield f"For {baths} nobody ticked a rinse: {USUAL_RINSES} are taken."
    planned = sum(not each.is_water_told for each in use.baths)
    if planned:
        yield f"For {counted(planned, 'bath')} the water of the plan is taken."


def _energy(use: DayUse, ledger: DayLedger) -> Iterator[FigureRow]:
    yield FigureRow(
        what="Energy to the top, an estimate",
        much=_kwh(use.rise_kwh),
        rests_on=" ".join(_rise_words(use)),
    )
    yield FigureRow(
        what="Energy, at most",
        much=_kwh(use.most_kwh),
        rests_on="Each burner at its full power from heat on to heat off, as ticked."
        + _missing(use.untimed),
    )
    metered = ledger.power_kwh
    yield FigureRow(
        what="Energy, metered",
        much=_kwh(metered),
        rests_on=NOT_READ
        if metered is None
        else "All that hung on this meter between its first and last reading.",
    )


def _rise_words(use: DayUse) -> Iterator[str]:
    yield "The heat model’s way to the top; what holding takes is not in it."
    if use.guessed:
        baths = counted(use.guessed, "bath")
        yield (
            f"A guess for {baths}: no heat-up of that pot on that burner is timed yet."
        )
    yield _missing(use.unheated).strip()


def _missing(names: Sequence[str]) -> str:
    return f" Not in it: {', '.join(names)}." if names else ""


def _kwh(value: float | None) -> str:
    return "–" if value is None else amount_text(value, "kWh")
