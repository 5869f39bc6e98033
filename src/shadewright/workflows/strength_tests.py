"""The strength test: an old stock dyed beside a ladder of fresh stock."""

from dataclasses import dataclass
from operator import attrgetter

from django.db import transaction

from shadewright.core.baths.ladder import (
    SKEIN_G,
    Ladder,
    ladder,
    ladder_reading,
    ladder_strength_percent,
)
from shadewright.core.quantities import amount_text
from shadewright.core.solutions.keeping import Purpose
from shadewright.core.solutions.ledger import BottleAct
from shadewright.core.uncertainty import Value
from shadewright.errors import ConflictError, OutOfRangeError
from shadewright.records import reads
from shadewright.records.models import BottleLine, StockBottle
from shadewright.records.shapes import line_spread, state_of
from shadewright.records.writes import keep_line
from shadewright.workflows.bottle_choice import first_to_expire, refused_for
from shadewright.workflows.bottles import on_shelf
from shadewright.workflows.readings import read_mass, read_volume
from shadewright.workflows.shelf import ShelfBottle, shelf, shelf_bottle
from shadewright.workflows.stamps import Stamp, is_written
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.usual_tools import UsualTools, usual_tools

_NO_POUR = "what the test’s doses were measured with"
_NO_YARN = "what the test’s skeins were weighed on"


@dataclass(frozen=True, kw_only=True)
class StrengthTest:
    """A test as it is measured out: the old bottle, the fresh one, the doses."""

    old: ShelfBottle
    fresh: ShelfBottle
    plan: Ladder


def fresh_bottles(code: str) -> tuple[ShelfBottle, ...]:
    """Return the bottles that another can be tested beside, the newest first."""
    old = shelf_bottle(code)
    fit = (
        each
        for each in shelf()
        if each.dye_id == old.dye_id
        and each.code != old.code
        and not each.is_empty
        and not refused_for(each, Purpose.MUST_REPEAT)
    )
    return tuple(sorted(fit, key=first_to_expire, reverse=True))


def strength_test(*, code: str, fresh_code: str) -> StrengthTest:
    """Return what is measured out to test one bottle beside another."""
    old = shelf_bottle(code)
    fresh = next((x for x in fresh_bottles(code) if x.code == fresh_code), None)
    if old.is_settled:
        raise ConflictError(
            why=f"Bottle {code} has settled, so a test would be too pale.",
            advice="Re-warm it, stir, let it cool, and look at it first.",
        )
    if fresh is None:
        raise OutOfRangeError(
            name="The fresh bottle",
            given=fresh_code,
            allowed=f"a fresh or tested bottle of {old.dye_name}, with stock in it",
            advice="Make a fresh stock, if there is none.",
            argument="fresh",
        )
    plan = ladder(
        fresh_percent=fresh.strength_percent, old_percent=old.strength_percent
    )
    return StrengthTest(old=old, fresh=fresh, plan=plan)


@transaction.atomic
def draw_for_test(*, code: str, fresh_code: str, stamp: Stamp) -> StrengthTest:
    """Write down the stock that a test takes out of both bottles."""
    reads.lock_bottles([code, fresh_code])
    test = strength_test(code=code, fresh_code=fresh_code)
    if is_written(stamp.deed):
        return test
    for drawn, volume_ml in (
        (code, test.plan.old_ml),
        (fresh_code, test.plan.fresh_ml),
    ):
        line = BottleLine(
            bottle=on_shelf(drawn),
            act=BottleAct.DRAWN.value,
            volume_ml=volume_ml,
            note=_drawn_for(code, fresh_code),
        )
        keep_line(line, stamp)
    return test


@transaction.atomic
def record_ladder(
    *,
    code: str,
    fresh_code: str,
    low_percent: float,
    high_percent: float,
    stamp: Stamp,
    note: str = "",
) -> ShelfBottle:
    """Write down what the old stock looked like: its strength, with its spread."""
    reads.lock_bottles([code, fresh_code])
    bottle = on_shelf(code)
    if is_written(stamp.deed):
        return shelf_bottle(code)
    test = strength_test(code=code, fresh_code=fresh_code)
    strength, lacks = _strength(
        test,
        reads.bottle_row(fresh_code),
        ladder_reading(low_percent=low_percent, high_percent=high_percent),
        str(stamp.deed),
    )
    line = BottleLine(
        bottle=bottle,
        act=BottleAct.TESTED.value,
        strength_percent=strength.value,
        spread=line_spread(strength=strength.terms, lacks=lacks),
        note="; ".join(filter(None, (_seen(test, low_percent, high_percent), note))),
    )
    keep_line(line, stamp)
    return shelf_bottle(code)


def _strength(
    test: StrengthTest, fresh: StockBottle, reading: Value, deed: str
) -> tuple[Value, tuple[str, ...]]:
    """Return the strength found, and what no term is known for.

    The pours are of stock as it stands or thinned tenfold, whichever is measured.
    """
    tools, state = usual_tools(), state_of(fresh)
    pour, scale = tools.dose_tool, _finer(tools)
    whole_ml = next(x.volume_ml for x in test.plan.rungs if x.share_percent == 100)
    strength = ladder_strength_percent(
        reading=reading,
        fresh_percent=state.strength,
        fresh_ml=read_volume(pour, whole_ml, role="fresh stock", deed=deed),
        old_ml=read_volume(pour, test.plan.tested_ml, role="old stock", deed=deed),
        fresh_yarn_g=read_mass(scale, SKEIN_G, role="the fresh skein", deed=deed),
        old_yarn_g=read_mass(scale, SKEIN_G, role="the old skein", deed=deed),
    )
    missing = ((pour, _NO_POUR), (scale, _NO_YARN))
    lacks = (words for tool, words in missing if tool is None)
    return strength, (*state.lacks, *lacks)


def _finer(tools: UsualTools) -> ToolNow | None:
    """Return the finer of the usual scales: the skeins weigh a few grams."""
    scales = (x for x in (tools.yarn_scale, tools.powder_scale) if x and x.balance)
    return min(scales, key=attrgetter("step_g"), default=None)


def _seen(test: StrengthTest, low_percent: float, high_percent: float) -> str:
    low, high = (amount_text(share, "%") for share in (low_percent, high_percent))
    like = low if low == high else f"between {low} and {high}"
    return f"looked like {like} of {test.fresh.code}"


def is_drawn(test: StrengthTest) -> bool:
    """Whether stock was drawn for this very test and nothing was found yet."""
    words = _drawn_for(test.old.code, test.fresh.code)
    lines = BottleLine.objects.filter(bottle__code=test.old.code, undone_by=None)
    last = lines.filter(act=BottleAct.DRAWN.value, note=words).order_by("id").last()
    if last is None:
        return False
    found = lines.filter(act=BottleAct.TESTED.value, pk__gt=last.pk)
    return not found.exists()


def _drawn_for(code: str, fresh_code: str) -> str:
    return f"strength test of {code} beside {fresh_code}"
