"""A day made into its page: keys, lanes, baths, what is in the way."""

from collections.abc import Collection, Iterator

from django.urls import NoReverseMatch, reverse

from shadewright.core.quantities import amount_text, counted
from shadewright.web.baths.words import status_chip
from shadewright.web.dye_days import patience
from shadewright.web.dye_days.crumbs import days_crumb
from shadewright.web.dye_days.pages import BathRow, DayPage, SearchShown
from shadewright.web.dye_days.plan_part import shown_plan, unplanned
from shadewright.web.dye_days.ways_on import not_planned, ways_on
from shadewright.web.dye_days.words import clock, load, span
from shadewright.web.named_days import named_day
from shadewright.web.pages import Link
from shadewright.web.parts import Chip, Key
from shadewright.workflows.bath_shapes import BathStatus
from shadewright.workflows.days.closed_days import closed_on
from shadewright.workflows.days.day_now import DayBath, DayNow, WishNow
from shadewright.workflows.days.day_order import DayInOrder, day_in_order
from shadewright.workflows.days.next_things import next_things
from shadewright.workflows.stamps import stamp_now, this_moment, today

_OF_WAITING = {"soak-list", "pull-list"}
"""Papers of baths that have not begun."""


def day_page(now: DayNow, *, refused: str = "") -> DayPage:
    """Return the page of a day; ``refused`` is why it was not planned just now."""
    missing = ways_on(now)
    is_today = now.day == today()
    order = _in_order(now)
    late = _late(order) if is_today else set[str]()
    return DayPage(
        title=named_day(now.day),
        fact=_fact(now),
        crumbs=days_crumb(),
        day=now.day,
        is_past=now.is_past,
        is_today=is_today,
        can_plan=bool(now.open_baths) and not now.is_past and not missing,
        deed=stamp_now(by=None).deed,
        held=held_words(now),
        keys=tuple(_keys(now)),
        ways_on=(*not_planned(refused), *missing),
        rows=tuple(_row(each, now, late) for each in now.baths),
        plan=None if now.schedule is None else shown_plan(now, now.schedule, order),
        unplanned=() if now.is_past else unplanned(now),
        search=_search(now),
        facts=tuple(_facts(now)),
        links=tuple(_links(now)),
    )


def held_words(now: DayNow) -> str:
    """Return which plan of a day holds, as its forms send it back."""
    return "0" if now.schedule is None else str(now.schedule.id)


def _fact(now: DayNow) -> str:
    found = closed_on(now.day)
    why = f": {found.why}" if found and found.why else ""
    return f"{f'The studio is closed{why}. ' if found else ''}{_load_words(now)}"


def _load_words(now: DayNow) -> str:
    if not now.baths:
        return "No bath is planned."
    skeins = sum(each.skeins or 0 for each in now.baths)
    yarn = load(sum(each.fibre_g for each in now.baths), skeins)
    said = f"{counted(len(now.baths), 'bath')}, {yarn}"
    if now.schedule is None:
        return f"{said}."
    still = "hands still" if now.day == today() else "hands"
    return f"{said}, {still} {span(now.schedule.hands_min)}."


def _keys(now: DayNow) -> Iterator[Key]:
    # To plan is the key of a form, not one of these.
    if now.is_past:
        yield from _key("How it went", "day-after", now, css="first")
        return
    if now.schedule is not None and now.day == today():
        bench = reverse("bench-list")
        yield Key(words="Open the bench", address=bench, icon="drop", css="first")
        yield Key(
            words="Replan from now", address=reverse("day-replan", args=[now.day])
        )
    if now.baths:
        yield from _key("Cards", "day-cards", now, icon="print")


def _links(now: DayNow) -> Iterator[Link]:
    for words, name in (
        ("Put yarn on this day", "day-add"),
        ("Hours and people", "day-hours"),
        ("What is out", "day-replan"),
        ("Stock for the day", "day-stock"),
        ("Day sheet", "day-sheet"),
        ("Soak list", "soak-list"),
        ("Pull list", "pull-list"),
        ("All off", "day-off"),
        ("How it went", "day-after"),
    ):
        is_to_come = name in {"day-add", "day-hours", "day-replan", "day-stock"}
        if not (now.is_past and is_to_come) and _has_what_it_prints(name, now):
            yield from (
                Link(words=key.words, address=key.address)
                for key in _key(words, name, now)
            )


def _has_what_it_prints(name: str, now: DayNow) -> bool:
    """Whether a paper of the day would hold anything; what is no paper has a page."""
    if name in _OF_WAITING:
        return _waits(now)
    return name != "day-sheet" or bool(now.baths or now.schedule)


def _waits(now: DayNow) -> bool:
    """Whether a bath of the day has not begun, so that there is yarn to soak for."""
    return any(bath.status is BathStatus.PLANNED for bath in now.baths)


def _key(
    words: str, name: str, now: DayNow, *, icon: str = "", css: str = ""
) -> Iterator[Key]:
    try:
        address = reverse(name, args=[now.day])
    except NoReverseMatch:
        return
    yield Key(words=words, address=address, icon=icon, css=css)


def _row(bath: DayBath, now: DayNow, late: Collection[str]) -> BathRow:
    planned = None if now.schedule is None else now.schedule.bath(bath.number)
    place = " on ".join(each for each in (bath.pot_name, bath.source_name) if each)
    if planned is not None and place:
        place = f"{clock(planned.stages[0].starts_at)} {place}"
    return BathRow(
        number=bath.number,
        address=reverse("bath", args=[bath.number]),
        wish_address=reverse("day-bath", args=[now.day, bath.number])
        if bath.is_open and not now.is_past
        else "",
        called=f"{bath.called} on {bath.base_name}",
        yarn=load(bath.fibre_g, bath.skeins or 0),
        liquor=amount_text(bath.liquor_l, "l"),
        place=place,
        pins=_pins(bath.wish),
        state=status_chip(bath.status),
        late=Chip(words="late", kind="problem") if bath.number in late else None,
    )


def _in_order(now: DayNow) -> DayInOrder:
    """Return the baths by the clock, where there is a plan or a clock to go by."""
    if now.schedule is None and now.day != today():
        return DayInOrder(day=now.day, schedule=None, baths=())
    return day_in_order(now.day)


def _late(order: DayInOrder) -> set[str]:
    """Return the open baths of today for which something is late."""
    over = {BathStatus.FINISHED, BathStatus.GIVEN_UP}
    known = [each.bath for each in order.baths if each.bath.status not in over]
    return {x.number for x in next_things(this_moment(), known) if x.is_late}


def _pins(wish: WishNow) -> str:
    """Return what is wished of a bath, in few words."""
    said = [
        f"in {wish.pot_name}" if wish.pot_name else "",
        f"on {wish.source_name}" if wish.source_name else "",
        f"from {clock(wish.starts_at)}" if wish.starts_at else "",
        f"rinsed by {clock(wish.due_at)}" if wish.due_at else "",
        {True: "overnight", False: "rinsed the same day", None: ""}[wish.is_overnight],
        "steamed" if wish.is_steamed else "",
    ]
    return ", ".join(part for part in said if part)


def _search(now: DayNow) -> SearchShown | None:
    search = patience.search_of(now.day)
    if search is None:
        return None
    if search.is_over:
        return SearchShown(is_over=True, said=search.said)
    left = (
        span(search.left_seconds / 60)
        if search.left_seconds >= 60
        else (f"{search.left_seconds}\u00a0s")
    )
    said = f"A better plan is looked for: about {left} more. The plan below holds."
    return SearchShown(is_over=False, said=said)


def _facts(now: DayNow) -> Iterator[tuple[str, str]]:
    yield "Open", f"{clock(now.opens_at)} to {clock(now.closes_at)}"
    people = [
        f"{each.name} {clock(each.starts_at)} to {clock(each.ends_at)}"
        for each in now.people
    ]
    yield "In", ", ".join(people) or "nobody"
    out = [
        f"{each.name}{f' from {clock(each.starts_at)}' if each.starts_at else ''}"
        for each in now.outages
    ]
    if out:
        yield "Out", ", ".join(out)
    yield "Rack", counted(now.rack_slots, "place")
