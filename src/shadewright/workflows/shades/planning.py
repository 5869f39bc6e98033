"""Plan a set of swatches: what is dyed, from which stocks, in how many jars."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shadewright.core.baths import dye_mass_g, liquor_ml
from shadewright.core.baths.choosing import LARGEST_SHARE_OF_BATH
from shadewright.core.quantities import amount_text, require_mass
from shadewright.errors import OutOfRangeError
from shadewright.workflows.bath_wishes import SWATCH_MOST_G
from shadewright.workflows.bottle_choice import Offer
from shadewright.workflows.promised import promised_ml
from shadewright.workflows.shades.plan_cautions import SetCaution, set_cautions
from shadewright.workflows.shades.plan_colours import ToldSwatch, told_swatches
from shadewright.workflows.shades.plan_jars import JarCount, jars_for
from shadewright.workflows.shades.plan_practice import SetPractice, set_practice
from shadewright.workflows.shades.plan_stocks import (
    Lined,
    PlannedDraw,
    StockFirst,
    WantedDose,
    lined_up,
)
from shadewright.workflows.shades.plan_wishes import (
    YARN_G,
    PlanWish,
    base_name,
    doses_wanted,
    dye_names,
)
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.shelf import shelf
from shadewright.workflows.tools_at_hand import AtHand, at_hand

_WORTH_SAYING = 2
"""Stocks fewer that make heavier swatches worth a word (our choice). [-]"""


@dataclass(frozen=True, kw_only=True)
class PlannedSwatch:
    """A swatch of a set: its number, its doses, and the colour that is foretold."""

    place: int
    draws: tuple[PlannedDraw, ...]
    told: ToldSwatch | None


@dataclass(frozen=True, kw_only=True)
class StockTaken:
    """What a set takes of one stock; ``code`` is empty for a new one."""

    dye_name: str
    stock: str
    code: str
    volume_ml: float
    doses: int


@dataclass(frozen=True, kw_only=True)
class SwatchSetPlan:
    """A set of swatches that could be dyed, and what stands in its way."""

    wish: PlanWish
    base_name: str
    liquor_ml: float
    swatches: tuple[PlannedSwatch, ...]
    first: tuple[StockFirst, ...]
    taken: tuple[StockTaken, ...]
    dye_g: tuple[tuple[str, float], ...]
    jars: JarCount
    practice: SetPractice
    is_by_weight: bool
    troubles: tuple[str, ...]
    advice: str
    cautions: tuple[SetCaution, ...]

    @property
    def yarn_g(self) -> float:
        """Yarn of all swatches together."""
        return self.wish.yarn_g * len(self.swatches)


def plan_swatches(wish: PlanWish) -> SwatchSetPlan:
    """Say what a set takes; refused where a swatch is too heavy or nothing is asked."""
    _check_yarn(wish.yarn_g)
    doses = doses_wanted(wish)
    names = dye_names({dye for each in doses for dye, _depth in each})
    base = base_name(wish)
    bath_ml = liquor_ml(fibre_mass_g=wish.yarn_g, liquor_ratio=wish.liquor_ratio)
    tools = at_hand(wish.dosing, fibre_g=wish.yarn_g)
    wanted = _wanted(doses, names, yarn_g=wish.yarn_g)
    offer = Offer(bottles=shelf(), taken_ml=promised_ml())
    lined = _lined(wanted, tools, offer, liquor_ml=bath_ml)
    told = told_swatches([_named(each, names) for each in doses], base=base)
    practice = set_practice(
        wish.like_id,
        liquor_ratio=wish.liquor_ratio,
        depths={dye: depth for each in doses for dye, depth in each},
    )
    return SwatchSetPlan(
        wish=wish,
        base_name=base,
        liquor_ml=bath_ml,
        swatches=tuple(_swatches(wanted, lined, told)),
        first=lined.first,
        taken=tuple(_taken(lined)),
        dye_g=tuple(_dye_g(wanted).items()),
        jars=jars_for(len(doses), liquor_ml=bath_ml),
        practice=practice,
        is_by_weight=tools.is_by_weight,
        troubles=tuple(_troubles(lined, bath_ml, practice)),
        advice=_advice(doses, names, wish, offer, to_make=len(lined.first)),
        cautions=set_cautions(
            dyes=names.values(),
            text=practice.text,
            is_powder_weighed=any(each.new.powder_g for each in lined.first),
        ),
    )


def _check_yarn(yarn_g: float) -> None:
    require_mass(yarn_g, name="The yarn of a swatch", argument="yarn_g")
    if yarn_g > SWATCH_MOST_G:
        raise OutOfRangeError(
            name="The yarn of a swatch",
            given=amount_text(yarn_g, "g"),
            allowed=f"at most {amount_text(SWATCH_MOST_G, 'g')}",
            argument="yarn_g",
        )


def _wanted(
    doses: Sequence[DyeDoses], names: dict[int, str], *, yarn_g: float
) -> tuple[WantedDose, ...]:
    return tuple(
        WantedDose(
            swatch=place,
            dye_id=dye,
            dye_name=names[dye],
            depth_percent=depth,
            dye_g=dye_mass_g(fibre_mass_g=yarn_g, depth_percent=depth),
        )
        for place, each in enumerate(doses, start=1)
        for dye, depth in each
    )


def _lined(
    wanted: Sequence[WantedDose], tools: AtHand, offer: Offer, *, liquor_ml: float
) -> Lined:
    bottles = {each.dye_id: offer.candidates(each.dye_id) for each in wanted}
    return lined_up(wanted, liquor_ml=liquor_ml, bottles=bottles, tools=tools)


def _named(doses: DyeDoses, names: dict[int, str]) -> tuple[tuple[str, float], ...]:
    return tuple((names[dye], depth) for dye, depth in doses)


def _swatches(
    wanted: Sequence[WantedDose], lined: Lined, told: Sequence[ToldSwatch | None]
) -> Iterator[PlannedSwatch]:
    pairs = list(zip(wanted, lined.draws, strict=True))
    for place, colour in enumerate(told, start=1):
        draws = tuple(draw for each, draw in pairs if each.swatch == place)
        yield PlannedSwatch(place=place, draws=draws, told=colour)


def _taken(lined: Lined) -> Iterator[StockTaken]:
    stocks: dict[tuple[str, str, str], list[float]] = {}
    for draw in lined.draws:
        key = (draw.dye_name, draw.stock, draw.code)
        stocks.setdefault(key, []).append(draw.volume_ml)
    for (dye_name, stock, code), volumes in stocks.items():
        yield StockTaken(
            dye_name=dye_name,
            stock=stock,
            code=code,
            volume_ml=sum(volumes),
            doses=len(volumes),
        )


def _dye_g(wanted: Sequence[WantedDose]) -> dict[str, float]:
    sums: dict[str, float] = {}
    for each in wanted:
        sums[each.dye_name] = sums.get(each.dye_name, 0.0) + each.dye_g
    return sums


def _advice(
    doses: Sequence[DyeDoses],
    names: dict[int, str],
    wish: PlanWish,
    offer: Offer,
    *,
    to_make: int,
) -> str:
    """Say by how much heavier swatches spare stocks that would be made first."""
    heavier_g = [each for each in YARN_G if to_make and each > wish.yarn_g]
    for yarn_g in heavier_g:
        bath_ml = liquor_ml(fibre_mass_g=yarn_g, liquor_ratio=wish.liquor_ratio)
        wanted = _wanted(doses, names, yarn_g=yarn_g)
        tools = at_hand(wish.dosing, fibre_g=yarn_g)
        then = len(_lined(wanted, tools, offer, liquor_ml=bath_ml).first)
        if then <= to_make - _WORTH_SAYING or not then:
            said = f"only {then} of {to_make} stocks are" if then else "no stock is"
            return f"With {amount_text(yarn_g, 'g')} a swatch {said} to be had first."
    return ""


def _troubles(lined: Lined, bath_ml: float, practice: SetPractice) -> Iterator[str]:
    for draw in lined.draws:
        if not draw.is_suiting:
            yield _unsuiting(draw, bath_ml)
    if practice.note:
        yield practice.note


def _unsuiting(draw: PlannedDraw, bath_ml: float) -> str:
    depth = amount_text(draw.depth_percent, "%")
    dose = amount_text(draw.volume_ml, "ml")
    said = f"{draw.dye_name} {depth} is {dose} of the nearest stock ({draw.stock})"
    if draw.volume_ml > LARGEST_SHARE_OF_BATH * bath_ml:
        return f"{said}: more than the jar has room for. Take more liquor."
    return f"{said}: too little to measure well. Take more yarn."
