"""A split made into what its page shows."""

from collections.abc import Iterable, Iterator
from math import floor

from shadewright.core.baths.levers.saying import share_words
from shadewright.core.quantities import NO_BREAK, amount_text, counted, number_text
from shadewright.web.day_baths.pages import (
    BathShown,
    DyeShown,
    Listed,
    ScaleShown,
    SplitShown,
)
from shadewright.web.dye_days.words import load
from shadewright.web.pages import Link
from shadewright.web.parts import Caution, Chip
from shadewright.web.templatetags.house import day as day_words
from shadewright.web.ways import way_to
from shadewright.workflows.bath_wishes import SWATCH_MOST_G
from shadewright.workflows.days.room import room_now
from shadewright.workflows.days.scale_check import DyeAtScale, ScaleCheck
from shadewright.workflows.days.splitting import DyeOfSplit, SplitPlan, skeins_words
from shadewright.workflows.days.waiting import LineWaiting

BATCH = (
    "One batch, separate lots: each bath is a lot of its own, and no two come out "
    "quite alike. Keep what belongs together in one lot."
)
NEVER = "Never dyed on this base: take one step after the other, and judge each dry."
_TURNS = {2: "second filling", 3: "third filling"}


def shown_split(plan: SplitPlan, waiting: Iterable[LineWaiting]) -> SplitShown:
    """Return a split as the page shows it."""
    orders = {each.line_id: each.order_number for each in waiting}
    return SplitShown(
        head=_head(plan),
        batch=BATCH if len(plan.baths) > 1 else "",
        turns=_turns(plan),
        room=_room(plan),
        baths=tuple(_bath(plan, place, orders) for place in range(len(plan.baths))),
        has_orders=any(plan.shares),
        dyes=tuple(_dye(each, len(plan.baths)) for each in plan.dyes),
        scale=_scale(plan),
        notes=plan.heaviest.notes,
        cautions=tuple(
            Caution(title="Before it is dyed", text=text)
            for text in plan.heaviest.cautions
        ),
    )


def _head(plan: SplitPlan) -> str:
    skeins = sum(len(x.skeins_g) for x in plan.baths) if plan.is_counted else 0
    words = f"{counted(len(plan.baths), 'bath')}, {load(plan.fibre_g, skeins)}"
    more = f", {plan.more} of them for the shelf" if plan.more else ""
    return f"{words}{more}."


def _turns(plan: SplitPlan) -> str:
    """Say what a second filling asks, where pots cool overnight."""
    again = dict.fromkeys(bath.pot for bath in plan.baths if bath.turn > 1)
    if not again or not room_now().cools_overnight:
        return ""
    pots = " and ".join(again)
    return (
        f"{pots} would be filled more than once, and pots cool overnight here: cool "
        "the first bath by day, or put a part on another day."
    )


def _room(plan: SplitPlan) -> str:
    if not plan.room_for:
        return ""
    return (
        f"The pots have room for {counted(plan.room_for, 'more skein')}: tick “Fill "
        "whole pots” to dye them for the shelf."
    )


def _bath(plan: SplitPlan, place: int, orders: dict[int, int]) -> BathShown:
    bath = plan.baths[place]
    shares = plan.shares[place]
    liquor_l = bath.fibre_g * plan.liquor_ratio / 1000
    return BathShown(
        place=place + 1,
        pot=bath.pot,
        turn=_turn(bath.turn),
        yarn=load(bath.fibre_g, len(bath.skeins_g) if plan.is_counted else 0),
        skeins=skeins_words(bath) if plan.is_counted else "",
        liquor=amount_text(liquor_l, "l"),
        for_whom=", ".join(
            f"{skeins} for order {orders.get(line_id, line_id)}"
            for line_id, skeins in shares
        ),
    )


def _turn(turn: int) -> str:
    return "" if turn == 1 else _TURNS.get(turn, f"filling {turn}")


def _dye(each: DyeOfSplit, baths: int) -> DyeShown:
    is_enough = each.enough_for >= baths
    return DyeShown(
        dye=each.dye_name,
        wanted=amount_text(each.wanted_g, "g"),
        state=enough_chip(each.enough_for, baths),
        short="" if is_enough else f"{short_text(each.short_g)} short",
    )


def short_text(dye_g: float) -> str:
    """Return dye that is lacking, in as few digits as say something."""
    return f"{number_text(dye_g, digits=2)}{NO_BREAK}g"


def enough_chip(enough_for: int, baths: int) -> Chip:
    """Return for how many baths the bottles do, with its sign."""
    if enough_for >= baths:
        return Chip(words="enough", kind="good")
    if not enough_for:
        return Chip(words="not enough" if baths == 1 else "for none", kind="caution")
    return Chip(words=f"for {enough_for} of {baths}", kind="caution")


def _scale(plan: SplitPlan) -> ScaleShown:
    scale = plan.scale
    return ScaleShown(
        trial=_trial(scale),
        unsure=_unsure(scale, is_batch=len(plan.baths) > 1),
        dyes=tuple(filter(None, map(_dye_at_scale, scale.dyes))),
        steps=tuple(_steps(plan)),
        lists=(
            Listed(term="Scales with the yarn", words=", ".join(scale.straight)),
            Listed(term="Goes with the water", words="; ".join(scale.with_water)),
            Listed(term="Does not scale", words="; ".join(scale.not_at_all)),
        ),
    )


def _trial(scale: ScaleCheck) -> str:
    trial = scale.trial
    if trial is None:
        return NEVER if scale.steps_g else ""
    size = amount_text(trial.fibre_g, "g")
    ratio = number_text(trial.liquor_ratio, digits=3)
    said = (
        f"The largest so far was {size} at 1:{ratio}, {trial.number} on "
        f"{day_words(trial.dyed_on)}."
    )
    if not scale.steps_g:
        return said
    times = floor(scale.bath_g / trial.fibre_g)
    return f"{said} This is more than {times} times that: go up by steps of five."


def _unsure(scale: ScaleCheck, *, is_batch: bool) -> str:
    if not scale.unsure:
        return ""
    dyes = " and ".join(scale.unsure)
    what_to_do = (
        "Dye one bath first and judge it dry before the others."
        if is_batch
        else "Judge it dry before you dye more of it."
    )
    return f"What the trial got of {dyes} is not known well. {what_to_do}"


def _dye_at_scale(dye: DyeAtScale) -> str:
    """Return how far a dye may be off in the trial and here; empty if nobody knows."""
    if dye.in_bath is None:
        return ""
    said = f"{dye.dye_name}: {share_words(dye.in_bath)} in this bath"
    if dye.in_trial is None or dye.apart is None:
        return f"{said}."
    return (
        f"{said}, {share_words(dye.in_trial)} in the trial; against the trial "
        f"{share_words(dye.apart)}."
    )


def _steps(plan: SplitPlan) -> Iterator[Link]:
    for step_g in plan.scale.steps_g:
        asked = {
            "version": plan.version.id,
            "base": plan.wish.base_id,
            "fibre_g": number_text(step_g, digits=4),
            "dyed_on": plan.wish.dyed_on.isoformat(),
            **({"is_swatch": "on"} if step_g <= SWATCH_MOST_G else {}),
        }
        words = f"Plan {amount_text(step_g, 'g')} first"
        yield Link(words=words, address=way_to("plan-bath", **asked))
