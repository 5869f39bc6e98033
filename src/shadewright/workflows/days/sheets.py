"""A dye day on paper: its sheet for the wall, and the cards for the pots, in order."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from typing import Any

from shadewright.core.baths.programme import HEAVY_KG
from shadewright.core.planning import Stage
from shadewright.core.quantities import amount_text
from shadewright.paper.day_sheet import (
    DaySheet,
    Lane,
    LaneBlock,
    SheetBath,
    day_sheet_pdf,
)
from shadewright.workflows.cards import Planned, bath_cards
from shadewright.workflows.days.bath_yarn import yarn_of_bath
from shadewright.workflows.days.day_jobs import day_jobs, lasts
from shadewright.workflows.days.day_now import DayNow, day_now
from shadewright.workflows.days.day_order import (
    DayInOrder,
    OrderedBath,
    clock,
    day_in_order,
)
from shadewright.workflows.days.schedules import BathAt, Schedule
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio

_NO_PLAN = (
    "No plan was made for this day: the baths stand in the order of their numbers, "
    "and no time is given."
)


def day_sheet(day: date, *, paper: str = "a4") -> bytes:
    """Return the sheet of a day as a PDF."""
    order, now, here = day_in_order(day), day_now(day), studio()
    plan = order.schedule
    sheet = DaySheet(
        day=day,
        opens=_minutes_of(None if plan is None else plan.opens_at),
        length=0.0 if plan is None else _length(plan),
        facts=tuple(_facts(now, plan)),
        notes=tuple(_notes(order)),
        lanes=() if plan is None else tuple(_lanes(order, plan)),
        jobs=() if plan is None else day_jobs(order, plan),
        baths=tuple(_row(each, day) for each in (*order.left, *order.baths)),
        is_demo=here is not None and here.is_demo,
    )
    return day_sheet_pdf(sheet, paper=paper, printed_on=today())


def day_cards(day: date, *, paper: str = "a4") -> bytes:
    """Return the cards of a day, in its order, with the times that are planned."""
    baths = day_in_order(day).baths
    planned = {
        each.bath.number: Planned(
            place=place,
            of=len(baths),
            times={key: clock(at) for key, at in each.times.items()},
        )
        for place, each in enumerate(baths, start=1)
    }
    return bath_cards(list(planned), paper=paper, planned=planned)


def _minutes_of(at: datetime | None) -> int:
    hours, _, minutes = clock(at).partition(":")
    return 60 * int(hours or 0) + int(minutes or 0)


def _length(plan: Schedule) -> float:
    ends = max(plan.closes_at, plan.ends_at)
    return (ends - plan.opens_at).total_seconds() / 60


def _facts(now: DayNow, plan: Schedule | None) -> Iterator[tuple[str, str]]:
    people = [
        f"{each.name} {each.starts_at:%H:%M} to {each.ends_at:%H:%M}"
        for each in now.people
    ]
    yield "In", ", ".join(people) or "nobody is said to be in"
    if plan is None:
        return
    yield "Last rinse or look", clock(plan.ends_at)
    limits = {each["name"]: each["limit_kw"] for each in plan.asked["circuits"]}
    for name, peak in plan.peak_kw.items():
        most = amount_text(limits[name], "kW") if name in limits else ""
        yield name, f"{amount_text(peak, 'kW')} at most{most and f', of {most}'}"


def _notes(order: DayInOrder) -> Iterator[str]:
    if order.schedule is None:
        yield _NO_PLAN
        return
    names = {each.bath.number: each.bath.called for each in order.baths}
    for each in order.schedule.left_out:
        yield f"Not in the plan: {names.get(each.number, each.number)}. {each.why}"


def _lanes(order: DayInOrder, plan: Schedule) -> Iterator[Lane]:
    for source in plan.asked["sources"]:
        said = amount_text(source["power_kw"], "kW")
        circuit = source.get("circuit", "")
        yield Lane(
            name=source["name"],
            said=f"{said}, {circuit}" if circuit else said,
            blocks=tuple(_blocks(source["name"], order, plan)),
        )


def _blocks(source: str, order: DayInOrder, plan: Schedule) -> Iterator[LaneBlock]:
    for each in order.baths:
        planned = each.planned
        if planned is None or planned.source != source:
            continue
        heat, check = _first_heat(planned), planned.stage(Stage.CHECK)
        if heat is None or check is None:
            continue
        yield LaneBlock(
            starts=_since(plan, heat),
            ends=_since(plan, check.ends_at),
            title=each.bath.called,
            lines=tuple(_block_lines(planned)),
            cools_to=_cools_to(planned, plan),
        )


def _block_lines(planned: BathAt) -> Iterator[str]:
    yield planned.pot or "in the steamer"
    said = (
        (Stage.HEAT, "heat on"),
        (Stage.DOSE, "doses"),
        (Stage.RAMP, "rise" if lasts(planned.stage(Stage.HEAT)) else "heat on"),
        (Stage.HOLD, "at the top"),
        (Stage.CHECK, "look, heat off"),
    )
    for which, words in said:
        stage = planned.stage(which)
        if stage is not None and lasts(stage):
            yield f"{clock(stage.starts_at)} {words}"


def _first_heat(planned: BathAt) -> datetime | None:
    heat = planned.stage(Stage.HEAT) or planned.stage(Stage.DOSE)
    return None if heat is None else heat.starts_at


def _cools_to(planned: BathAt, plan: Schedule) -> float | None:
    """Return until when a pot cools where it stands; None where it is carried off."""
    if not _cools_on_source(planned, plan):
        return None
    cool = planned.stage(Stage.COOL)
    is_rinsed = planned.stage(Stage.RINSE) is not None
    ends = cool.ends_at if is_rinsed and cool is not None else plan.closes_at
    return _since(plan, ends)


def _cools_on_source(planned: BathAt, plan: Schedule) -> bool:
    bath = _asked(plan, "baths", planned.number)
    said = bath.get("cools_on_source")
    if said is not None or bath.get("steamed"):
        return bool(said)
    pot_kg = float(_asked(plan, "pots", planned.pot).get("mass_kg", 0.0))
    fibre_kg = float(bath.get("fibre_g", 0.0)) / 1000
    return pot_kg + fibre_kg * (1 + float(bath.get("liquor_ratio", 0.0))) > HEAVY_KG


def _asked(plan: Schedule, kind: str, name: str) -> Mapping[str, Any]:
    """Return what the planner was given of a bath or a pot."""
    given: Sequence[Mapping[str, Any]] = plan.asked[kind]
    return next((each for each in given if each["name"] == name), {})


def _since(plan: Schedule, at: datetime) -> float:
    return (at - plan.opens_at).total_seconds() / 60


def _row(each: OrderedBath, day: date) -> SheetBath:
    bath, planned = each.bath, each.planned
    check = None if planned is None else planned.stage(Stage.CHECK)
    rinse = None if planned is None else planned.stage(Stage.RINSE)
    overnight = "" if planned is None else "next day"
    is_left = not each.of_day(day)
    return SheetBath(
        number=bath.number,
        name=bath.recipe_name,
        yarn=yarn_of_bath(bath),
        pot=bath.pot_name if planned is None else planned.pot,
        source=bath.source_name if planned is None else planned.source,
        begins="before" if is_left else clock(each.begins),
        off="" if check is None or is_left else clock(check.ends_at),
        rinse=overnight if rinse is None else clock(rinse.starts_at),
    )
