"""The heat of a bath: how long its pot takes on its source, as far as is known."""

from dataclasses import dataclass, replace
from functools import cached_property

from shadewright.core.baths import minutes_to_top
from shadewright.core.baths.heating import (
    MinutesRange,
    RisePace,
    boiling_caution,
    boiling_point_c,
    fastest_rise_c_per_min,
    guessed_minutes,
    heat_kwh,
    learned_share,
    predicted_minutes,
    rise_pace,
)
from shadewright.core.baths.programme import Programme
from shadewright.core.tables.heat import Source
from shadewright.errors import InputError
from shadewright.records import heat_reads, recipe_reads
from shadewright.records.models import Bath, HeatSource, Pot, RecipeVersion
from shadewright.records.models.catalogue import SourceKind
from shadewright.workflows.heat_ups import HeatBook, HeatUps, load_of
from shadewright.workflows.recipe_curves import programme_of, stops_of
from shadewright.workflows.studio import studio

TAP_WATER_C = 20.0
"""Where the recipe does not say how warm a bath begins: a guess."""


@dataclass(frozen=True, kw_only=True)
class HeatAsked:
    """A bath to be heated: what is in which pot, on what, by which programme.

    ``book`` spares looking things up again, where many are asked at once.
    """

    pot: Pot
    source: HeatSource
    programme: Programme
    fibre_g: float
    liquor_ml: float
    but_for: str = ""
    book: "StudioHeat | None" = None


class StudioHeat(HeatBook):
    """What the studio knows of heat: its timed heat-ups, and how high it lies."""

    @cached_property
    def altitude_m(self) -> float:
        """How high the studio lies, in metres."""
        here = studio()
        return 0.0 if here is None else here.altitude_m


@dataclass(frozen=True, kw_only=True)
class BathHeat:
    """How a bath is heated on its source.

    ``full`` are the minutes at full power, ``way`` those to the top with the
    recipe's pace kept where it can be; ``kept`` counts the heat-ups in which
    somebody kept it by hand. ``rise`` is None where the recipe says no pace.
    """

    source_name: str
    start_c: float
    top_c: float
    is_start_guessed: bool
    has_pot_weight: bool
    input_kwh: float
    full: MinutesRange
    way: MinutesRange
    fastest_c_per_min: float
    wanted_c_per_min: float | None
    rise: RisePace | None
    kept: int


@dataclass(frozen=True, kw_only=True)
class PlannedHeat:
    """The heat of a bath that is planned: its source, what that takes, its boil."""

    source_id: int | None
    heat: BathHeat | None
    caution: str


def heat_of(asked: HeatAsked) -> BathHeat | None:
    """Return what the way to the top takes; None where it cannot be reckoned.

    That of a steamer never is: no pot stands on it.
    """
    if asked.source.kind == SourceKind.STEAMER:
        return None
    book = asked.book or StudioHeat()
    start_c, top_c = _span(asked.programme, book.altitude_m)
    if top_c is None or not start_c < top_c:
        return None
    load = load_of(asked.pot, fibre_g=asked.fibre_g, liquor_ml=asked.liquor_ml)
    try:
        energy = heat_kwh(load=load, start_c=start_c, top_c=top_c)
    except InputError:
        return None
    known = book.of(asked.pot, asked.source, but_for=asked.but_for)
    full = _full(asked.source, energy, known)
    wanted = _steepest(asked.programme)
    fastest = _fastest(start_c, top_c, full.minutes)
    return BathHeat(
        source_name=asked.source.name,
        start_c=start_c,
        top_c=top_c,
        is_start_guessed=asked.programme.start_c is None,
        has_pot_weight=asked.pot.mass_kg is not None,
        input_kwh=asked.source.power_kw * full.minutes / 60,
        full=full,
        way=_way(asked.programme, full, start_c, top_c),
        fastest_c_per_min=fastest,
        wanted_c_per_min=wanted,
        rise=None
        if wanted is None
        else rise_pace(wanted_c_per_min=wanted, fastest_c_per_min=fastest),
        kept=known.kept,
    )


def heat_of_bath(bath: Bath, book: StudioHeat) -> BathHeat | None:
    """Return what a planned bath takes, if its pot and its source are chosen."""
    if bath.pot is None or bath.source is None:
        return None
    return heat_of(
        HeatAsked(
            pot=bath.pot,
            source=bath.source,
            programme=programme_of(bath.version, stops_of(bath.version.curve)),
            fibre_g=bath.fibre_g,
            liquor_ml=bath.liquor_ml,
            but_for=bath.number,
            book=book,
        )
    )


def heat_of_plan(
    version: RecipeVersion,
    *,
    pot_id: int | None,
    source_id: int | None,
    fibre_g: float,
    liquor_ml: float,
) -> PlannedHeat:
    """Return what a bath would take, on what was chosen or on the pot's last."""
    source, book = source_of(source_id=source_id, pot_id=pot_id), StudioHeat()
    caution = top_caution(version.top_c, book)
    if source is None or pot_id is None:
        source_id = None if source is None else source.pk
        return PlannedHeat(source_id=source_id, heat=None, caution=caution)
    asked = HeatAsked(
        pot=recipe_reads.pot_row(pot_id),
        source=source,
        programme=programme_of(version, stops_of(version.curve)),
        fibre_g=fibre_g,
        liquor_ml=liquor_ml,
        book=book,
    )
    return PlannedHeat(source_id=source.pk, heat=heat_of(asked), caution=caution)


def source_of(*, source_id: int | None, pot_id: int | None) -> HeatSource | None:
    """Return what was chosen, or else what the pot stood on the last time."""
    if source_id is not None:
        return heat_reads.source_row(source_id)
    return None if pot_id is None else heat_reads.last_source_of(pot_id)


def top_caution(top_c: float | None, book: StudioHeat | None = None) -> str:
    """Return a sentence where water boils below a top in this studio."""
    if top_c is None:
        return ""
    altitude_m = (book or StudioHeat()).altitude_m
    return boiling_caution(top_c=top_c, altitude_m=altitude_m) or ""


def _span(programme: Programme, altitude_m: float) -> tuple[float, float | None]:
    """Return start and top; no bath grows hotter than its boil."""
    start_c = TAP_WATER_C if programme.start_c is None else programme.start_c
    if programme.top_c is None:
        return start_c, None
    boils_c = boiling_point_c(altitude_m=altitude_m)
    return start_c, min(programme.top_c, boils_c, 100.0)


def _full(source: HeatSource, energy_kwh: float, known: HeatUps) -> MinutesRange:
    if known.at_full:
        return predicted_minutes(
            energy_kwh=energy_kwh,
            power_kw=source.power_kw,
            learned=learned_share(known.at_full),
        )
    return guessed_minutes(
        energy_kwh=energy_kwh, power_kw=source.power_kw, source=Source(source.kind)
    )


def _steepest(programme: Programme) -> float | None:
    """Return the fastest rise that the recipe asks for, if it says any."""
    curve = programme.curve
    return None if curve is None else max(leg.rise_c_per_min for leg in curve.legs)


def _fastest(start_c: float, top_c: float, minutes: float) -> float:
    return fastest_rise_c_per_min(start_c=start_c, top_c=top_c, minutes=minutes)


def _way(
    programme: Programme, full: MinutesRange, start_c: float, top_c: float
) -> MinutesRange:
    """Return the minutes to the top with the recipe's pace where it can be kept."""
    curve = programme.curve
    if curve is None:
        return full
    minutes, least, most = (
        minutes_to_top(curve=curve, fastest_c_per_min=_fastest(start_c, top_c, each))
        for each in (full.minutes, full.least, full.most)
    )
    return replace(full, minutes=minutes, least=least, most=most)
