"""Advice from the whole shelf: which tool or habit would narrow the recipes most."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from operator import attrgetter, itemgetter

from shadewright.core.baths.levers.habits import Change, Effect, effects
from shadewright.core.baths.levers.practice import (
    Job,
    Practice,
    job_reaches,
    mean_reach,
)
from shadewright.core.baths.levers.proposals import found_right
from shadewright.core.baths.levers.strengths import KeptStrengths, strengths_to_keep
from shadewright.core.baths.levers.ways import DOSING_WARE, Scale
from shadewright.core.quantities import amount_text
from shadewright.workflows.levers_at_hand import devices_of, scale_of
from shadewright.workflows.studio_practice import StudioNow, studio_now
from shadewright.workflows.tool_ideas import ToolIdea, ideas_for

_MORE_STOCK = 2.0
_LARGEST_MAKING_ML = 1000.0


@dataclass(frozen=True, kw_only=True)
class Habit:
    """A habit that costs nothing: what it is, and the tool to go to, if any."""

    key: str
    tool_id: int | None = None


@dataclass(frozen=True, kw_only=True)
class Advised:
    """A change with what it does; ``idea`` is a tool, ``habit`` what is free."""

    effect: Effect
    idea: ToolIdea | None
    habit: Habit | None


@dataclass(frozen=True, kw_only=True)
class WholeShelf:
    """The studio's recipes as they are, what would narrow them, and what to keep."""

    studio: StudioNow
    mean: float
    worst: tuple[Job, float] | None
    advised: tuple[Advised, ...]
    strengths: tuple[KeptStrengths, ...]


def whole_shelf(prices: Mapping[str, Decimal] | None = None) -> WholeShelf | None:
    """Return the advice; None where no dose of a recipe can be measured yet."""
    now = studio_now()
    reaches = job_reaches(jobs=now.jobs, practice=now.practice)
    known = [(j, r) for j, r in zip(now.jobs, reaches, strict=True) if r is not None]
    if not known:
        return None
    keep = strengths_to_keep(jobs=now.jobs, practice=now.practice)
    named = {
        change.name: (change, idea, habit)
        for change, idea, habit in _changes(now, keep, prices or {})
    }
    found = effects(
        jobs=now.jobs,
        practice=now.practice,
        changes=[change for change, _, _ in named.values()],
    )
    return WholeShelf(
        studio=now,
        mean=mean_reach(jobs=[j for j, _ in known], reaches=[r for _, r in known]),
        worst=max(known, key=itemgetter(1)),
        advised=tuple(
            Advised(
                effect=effect,
                idea=named[effect.change.name][1],
                habit=named[effect.change.name][2],
            )
            for effect in found
        ),
        strengths=keep,
    )


_Row = tuple[Change, ToolIdea | None, Habit | None]


def _changes(
    now: StudioNow, keep: tuple[KeptStrengths, ...], prices: Mapping[str, Decimal]
) -> Iterator[_Row]:
    yield from _habits(now, keep)
    for idea in ideas_for(now.tools.every):
        price = prices.get(idea.slug)
        yield _bought(now, idea, None if price is None else float(price))


def _habits(now: StudioNow, keep: tuple[KeptStrengths, ...]) -> Iterator[_Row]:
    practice = now.practice
    yield from _by_weight(now)
    yield from _yarn_elsewhere(now)
    every = devices_of(now.tools.ware)
    if len(practice.devices) == 1 and len(every) > 1:
        better = replace(practice, devices=(*practice.devices, *every))
        yield _habit(now, "Choose the tool by the dose", better, Habit(key="choose"))
    yield from _checks(now)
    weaker = {each.dye: each.keep_percent for each in keep if each.is_change}
    if weaker:
        kept = {
            dye: tuple({*practice.strengths_percent.get(dye, ()), *weaker.get(dye, ())})
            for dye in {*practice.strengths_percent, *weaker}
        }
        better = replace(practice, strengths_percent=kept)
        name = "Keep the stock strengths below"
        yield _habit(now, name, better, Habit(key="strengths"))
    more_ml = min(_MORE_STOCK * practice.making.volume_ml, _LARGEST_MAKING_ML)
    making = replace(practice.making, volume_ml=more_ml)
    name = f"Make {amount_text(more_ml, 'ml')} of a stock at a time"
    yield _habit(now, name, replace(practice, making=making), Habit(key="more"))


def _by_weight(now: StudioNow) -> Iterator[_Row]:
    dose_scale = now.tools.usual.dose_scale
    tool = dose_scale or min(now.tools.scales, key=attrgetter("step_g"), default=None)
    scale = scale_of(tool)
    if scale is None or tool is None or now.tools.is_by_weight:
        return
    better = replace(now.practice, devices=(*now.practice.devices, scale))
    yield _habit(
        now,
        f"Weigh doses on the {tool.name} where that is surer",
        better,
        Habit(key="weigh", tool_id=tool.id),
    )


def _yarn_elsewhere(now: StudioNow) -> Iterator[_Row]:
    tool = min(now.tools.scales, key=attrgetter("step_g"), default=None)
    scale = scale_of(tool)
    if scale is None or tool is None:
        return
    jobs = tuple(
        _weighed_on(job, scale) if scale.carries(job.wanted.yarn_g) else job
        for job in now.jobs
    )
    if jobs != now.jobs:
        name = f"Weigh yarn that the {tool.name} can carry on it"
        change = Change(name=name, practice=now.practice, jobs=jobs)
        yield change, None, Habit(key="yarn", tool_id=tool.id)


def _checks(now: StudioNow) -> Iterator[_Row]:
    for tool in now.tools.scales:
        scale = scale_of(tool)
        right = None if scale is None else found_right(scale)
        if scale is None or right is None or right == scale:
            continue
        practice = replace(
            now.practice,
            devices=tuple(right if x == scale else x for x in now.practice.devices),
            making=replace(
                now.practice.making,
                powder_scale=_swapped(now.practice.making.powder_scale, scale, right),
            ),
        )
        jobs = tuple(
            _weighed_on(job, _swapped(job.wanted.yarn_scale, scale, right))
            for job in now.jobs
        )
        if practice != now.practice or jobs != now.jobs:
            name = f"Check the {tool.name} with a check weight, if it is right"
            change = Change(name=name, practice=practice, jobs=jobs)
            yield change, None, Habit(key="check", tool_id=tool.id)


def _swapped(used: Scale | None, old: Scale, new: Scale) -> Scale | None:
    return new if used == old else used


def _weighed_on(job: Job, scale: Scale | None) -> Job:
    return replace(job, wanted=replace(job.wanted, yarn_scale=scale))


def _habit(now: StudioNow, name: str, practice: Practice, habit: Habit) -> _Row:
    return Change(name=name, practice=practice, jobs=now.jobs), None, habit


def _bought(now: StudioNow, idea: ToolIdea, price: float | None) -> _Row:
    """Return the studio with a tool more."""
    practice, jobs, device = now.practice, now.jobs, idea.device
    if isinstance(device, Scale) and idea.is_for_yarn:
        jobs = tuple(_weighed_on(job, device) for job in jobs)
    elif isinstance(device, Scale):
        making = replace(practice.making, powder_scale=device)
        devices = (*practice.devices, device)
        practice = replace(practice, making=making, devices=devices)
    elif device.tool.kind in DOSING_WARE:
        practice = replace(practice, devices=(*practice.devices, device))
    else:
        making = replace(practice.making, vessel=device)
        practice = replace(practice, making=making)
    change = Change(name=idea.name, practice=practice, jobs=jobs, price=price)
    return change, idea, None
