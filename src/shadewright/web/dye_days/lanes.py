"""A plan made into lanes: bars by source, the power line, and the same in words."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from shadewright.core.planning import Stage
from shadewright.core.quantities import amount_text, counted
from shadewright.drawing import Bar, BarKind, Lane, LaneBath, LanesShown, Power
from shadewright.web.dye_days.words import clock
from shadewright.workflows.days.day_clock import DayClock
from shadewright.workflows.days.day_now import DayNow
from shadewright.workflows.days.picture import BathShown, DayPicture, picture_of
from shadewright.workflows.days.schedules import Schedule
from shadewright.workflows.stamps import this_moment, today

_KINDS: Mapping[str, BarKind] = {
    Stage.FILL: "hands",
    Stage.HEAT: "heat",
    Stage.DOSE: "hands",
    Stage.RAMP: "heat",
    Stage.HOLD: "hold",
    Stage.CHECK: "hands",
    Stage.COOL: "cool",
    Stage.RINSE: "hands",
    "touch": "hands",
}


def lanes_of(day: DayNow, plan: Schedule) -> LanesShown:
    """Return the lanes of a plan, with the time that it is now if it is today."""
    picture = picture_of(plan)
    length = _length(picture)
    baths = _in_rows([bath for bath in _baths(day, picture, length) if bath.bars])
    now = DayClock(day=day.day, opens_at=day.opens_at).minutes_at(this_moment())
    is_today = day.day == today()
    return LanesShown(
        name=f"Lanes of {day.day.day} {day.day:%B}",
        more=_more(picture, plan),
        opens_min=picture.opens_min,
        length=length,
        lanes=tuple(
            Lane(
                name=each.name,
                power=amount_text(each.power_kw, "kW"),
                rows=1 + max((x.row for x in baths if x.lane == place), default=0),
            )
            for place, each in enumerate(picture.sources)
        ),
        baths=tuple(baths),
        hands=picture.hands,
        powers=tuple(
            Power(
                name=each.name,
                limit_kw=each.limit_kw,
                peak_kw=each.peak_kw,
                steps=each.steps,
            )
            for each in picture.loads
        ),
        now=float(now) if is_today else None,
        now_words=f"now {clock(this_moment())}" if is_today else "",
    )


def _length(picture: DayPicture) -> float:
    """Return how long the lanes are: to the full hour after the last of the hands."""
    ends = [end for _start, end in picture.hands]
    ends += [span.ends for bath in picture.baths for span in bath.spans]
    last = min(max([*ends, 60.0]), max(picture.length, 60.0))
    whole = -(-(picture.opens_min + last) // 60.0) * 60.0
    return whole - picture.opens_min


def _baths(day: DayNow, picture: DayPicture, length: float) -> Iterator[LaneBath]:
    names = {each.number: each.called for each in day.baths}
    places = {each.name: place for place, each in enumerate(picture.sources)}
    for bath in picture.baths:
        if bath.source in places:
            yield LaneBath(
                number=bath.number,
                name=names.get(bath.number, bath.number),
                short=_short(bath.number, is_of_day=bath.number in names),
                lane=places[bath.source],
                bars=tuple(_bars(bath, length)),
            )


def _short(number: str, *, is_of_day: bool) -> str:
    """Return what fits beside a bar: B1, or 25-B1 for what another day left."""
    day, _hyphen, short = number.rpartition("-")
    return short if is_of_day else f"{day[-2:]}-{short}"


def _bars(bath: BathShown, length: float) -> Iterator[Bar]:
    for span in bath.spans:
        starts, ends = max(0.0, span.starts), min(length, span.ends)
        if ends > starts:
            yield Bar(
                kind=_KINDS[span.name], starts=starts, ends=ends, is_thin=span.is_off
            )


def _in_rows(baths: Sequence[LaneBath]) -> list[LaneBath]:
    """Return the baths with thin bars of one lane in rows that do not meet.

    A pot that is filled while another still stands on its source is thin too.
    """
    free: dict[tuple[int, int], float] = {}
    busy: dict[int, float] = {}
    placed = []
    for bath in sorted(baths, key=lambda each: each.starts):
        until = busy.get(bath.lane, 0.0)
        bars = tuple(
            replace(bar, is_thin=bar.is_thin or bar.starts < until) for bar in bath.bars
        )
        row, thin = 0, [bar for bar in bars if bar.is_thin]
        while thin and free.get((bath.lane, row), 0.0) > thin[0].starts:
            row += 1
        if thin:
            free[bath.lane, row] = max(bar.ends for bar in thin)
        thick = [bar.ends for bar in bars if not bar.is_thin]
        busy[bath.lane] = max([until, *thick])
        placed.append(replace(bath, bars=bars, row=row))
    return placed


def _more(picture: DayPicture, plan: Schedule) -> str:
    sources = counted(len(picture.sources), "source of heat", "sources of heat")
    peaks = "".join(
        f" Power on {each.name} peaks at {each.peak_kw:.3g} of {each.limit_kw:.3g} kW."
        for each in picture.loads
    )
    return (
        f"{counted(len(picture.baths), 'bath')} on {sources} between "
        f"{clock(plan.opens_at)} and {clock(plan.ends_at)}. Hands are wanted at "
        f"{counted(len(picture.hands), 'moment')}.{peaks} The same stands below as "
        "a table."
    )
