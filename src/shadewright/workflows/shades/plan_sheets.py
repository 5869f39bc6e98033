"""A set of swatches on paper: its sheet, line for line as the bench asks for it."""

from collections.abc import Iterator, Mapping
from itertools import starmap

from shadewright.core.baths import liquor_ml
from shadewright.core.baths.rounds import RoundStep, StepKind
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.writing import beside_text
from shadewright.paper import SwatchPlanSheet, swatch_plan_pdf
from shadewright.paper.swatch_plan import SheetDose, SheetSwatch
from shadewright.workflows.bath_pages import BathNow, StepNow, bath_now
from shadewright.workflows.recipe_words import heat_words
from shadewright.workflows.recipes import version
from shadewright.workflows.shades.plan_bottles import SetStocks, set_stocks
from shadewright.workflows.shades.plan_cautions import (
    SetCaution,
    no_acid_caution,
    set_cautions,
)
from shadewright.workflows.shades.plan_jars import JarCount
from shadewright.workflows.shades.plan_pages import SetNow, swatch_set
from shadewright.workflows.shades.plan_stocks import PlannedDraw
from shadewright.workflows.stamps import today
from shadewright.workflows.studio import studio

NEW = "new"
"""What stands for a bottle that is still to be made."""

Waiting = Mapping[tuple[str, str], PlannedDraw]


def plan_sheet(plan_id: int, *, paper: str = "a4") -> bytes:
    """Return the sheet of a set as a PDF."""
    now = swatch_set(plan_id)
    stocks = set_stocks(plan_id)
    baths = [bath_now(number) for number in now.numbers]
    places = {each.bath_number: each.place for each in now.swatches}
    here = studio()
    sheet = SwatchPlanSheet(
        name=now.name,
        facts=tuple(_facts(now)),
        first=tuple(f"{each.dye_name}: {each.words}" for each in stocks.first),
        heat=_heat(baths),
        swatches=tuple(
            _row(bath, places[bath.number], stocks.waiting) for bath in baths
        ),
        dyed_on=now.dyed_on,
        cautions=tuple(each.text for each in cautions_now(now, stocks)),
        is_demo=here is not None and here.is_demo,
    )
    return swatch_plan_pdf(sheet, paper=paper, printed_on=today())


def cautions_now(now: SetNow, stocks: SetStocks) -> tuple[SetCaution, ...]:
    """Return what to mind before a kept set is dyed."""
    doses = [dose for swatch in now.swatches for dose in swatch.doses]
    return no_acid_caution(now.text) + set_cautions(
        dyes={dose.dye_name for dose in doses},
        text=now.text,
        is_powder_weighed=any(each.new.powder_g for each in stocks.first)
        or (not stocks.waiting and any(not dose.code for dose in doses)),
    )


def jar_words(jars: JarCount) -> str:
    """Return how many jars, of what size, and how often the pot is filled."""
    size = amount_text(jars.jar_ml, "ml")
    said = f"{jars.jars} of {size} or more"
    if not jars.per_pot:
        return said
    loads = "one load" if jars.loads == 1 else f"{jars.loads} loads"
    return f"{said}; about {jars.per_pot} at once in {jars.pot_name}: {loads}"


def _facts(now: SetNow) -> Iterator[tuple[str, str]]:
    bath_ml = liquor_ml(fibre_mass_g=now.yarn_g, liquor_ratio=now.liquor_ratio)
    day = now.dyed_on
    yarn = amount_text(now.yarn_g, "g")
    yield "Base", now.base_name[:60]
    yield "Dry yarn", f"{yarn} each, {len(now.numbers)} in all"
    yield "Bath", f"{amount_text(bath_ml, 'ml')} each"
    yield "Jars", jar_words(now.jars)
    yield "Day", f"{day.day} {day:%b} {day.year}"


def _heat(baths: list[BathNow]) -> str:
    if not baths:
        return ""
    text = version(baths[0].version_id).text
    return heat_words(text)


def _row(bath: BathNow, place: int, waiting: Waiting) -> SheetSwatch:
    doses = [
        (each, waiting.get((bath.number, each.step.key)))
        for each in bath.steps
        if each.dose is not None
    ]
    more_ml = sum(starmap(_more_ml, doses))
    fill = next(x.step for x in bath.steps if x.step.kind is StepKind.FILL)
    water_ml = 1000 * (fill.amount or 0.0) - more_ml
    return SheetSwatch(
        place=place,
        number=bath.number,
        doses=tuple(
            _dose(step, draw, is_by_weight=bath.is_by_weight) for step, draw in doses
        ),
        water=f"{amount_text(water_ml, 'ml')} water",
        helpers=tuple(
            f"{_amount(each.step)} {each.step.title}"
            for each in bath.steps
            if each.step.kind is StepKind.ADD
        ),
    )


def _more_ml(each: StepNow, draw: PlannedDraw | None) -> float:
    """Return how much more stock goes in once it is drawn from the other bottle."""
    if draw is None:
        return 0.0
    step = each.step
    is_volume = step.unit == "ml"
    return draw.volume_ml - ((step.amount if is_volume else step.volume_ml) or 0.0)


def _dose(each: StepNow, draw: PlannedDraw | None, *, is_by_weight: bool) -> SheetDose:
    step, dose = each.step, each.dose
    strength = None if dose is None else dose.strength_percent
    code, said = step.code, (_amount(step), _beside(step))
    if draw is not None:
        code, strength = draw.code or NEW, draw.strength_percent
        said = (amount_text(draw.volume_ml, "ml"), beside_text(draw.mass_g))
        said = (said[1], said[0]) if is_by_weight else said
    return SheetDose(
        dye=step.title,
        depth="" if dose is None else amount_text(dose.depth_percent, "%"),
        bottle=code,
        strength="" if strength is None else amount_text(strength, "%"),
        amount=said[0],
        beside=said[1],
    )


def _beside(step: RoundStep) -> str:
    if step.scale_g is not None:
        return beside_text(step.scale_g)
    return "" if step.volume_ml is None else amount_text(step.volume_ml, "ml")


def _amount(step: RoundStep) -> str:
    return "" if step.amount is None else amount_text(step.amount, step.unit)
