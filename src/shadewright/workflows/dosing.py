"""What a bath's doses are measured with, and how sure their depths then are."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from random import Random

from shadewright.core.baths import (
    BottleShare,
    Drawn,
    SureDepth,
    depth_value,
    either_side,
    stock_density,
    sure_depth,
    weighed_mass_g,
    weighed_volume_ml,
)
from shadewright.core.solutions.carrying import as_known
from shadewright.core.solutions.ledger import BottleState
from shadewright.core.uncertainty import Value, exact
from shadewright.records.models import Bath, BathDose
from shadewright.records.shapes import lacks_of, line_spread, state_of, terms_from_json
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.tools import ToolNow, shaped_tool
from shadewright.workflows.tools_at_hand import AtHand, DosingWish, at_hand

SPREAD_METHOD = "first order, tools as known, 1"
_SEED = 1


@dataclass(frozen=True, kw_only=True)
class Portion:
    """A dose, or a part of one, as it is read: so many ml or g of a bottle, or dry.

    ``strength`` is None for dry dye; ``lacks`` says what is not known of it.
    """

    amount: float
    unit: str
    tool: ToolNow | None
    code: str = ""
    strength: Value | None = None
    lacks: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class HowSure:
    """How sure a depth is, and what that leaves out because nobody knows it."""

    sure: SureDepth | None
    lacks: tuple[str, ...] = ()


NOT_REMEMBERED = HowSure(sure=None, lacks=("planned before spreads were kept",))


@dataclass(frozen=True, kw_only=True)
class Dosed:
    """What one dye is measured with, each share in grams, and how sure its depth is.

    ``dry_tool`` is the scale for what no bottle covers.
    """

    tool: ToolNow | None
    dry_tool: ToolNow | None
    shares_g: tuple[float, ...]
    how_sure: HowSure


def dosed(
    *,
    dye: str,
    place: int,
    shares: Sequence[BottleShare],
    bottles: Mapping[str, ShelfBottle],
    dry_g: float,
    fibre_g: float,
    tools: AtHand,
    is_shown: bool = True,
) -> Dosed:
    """Return what a planned dose is measured with, and how sure that makes it."""
    tool = tools.dose_tool(place, max((s.volume_ml for s in shares), default=0.0))
    portions = [
        _planned(share, bottles[share.code], tool, is_by_weight=tools.is_by_weight)
        for share in shares
    ]
    if dry_g:
        portions.append(Portion(amount=dry_g, unit="g", tool=tools.dry_scale))
    return Dosed(
        tool=tool,
        dry_tool=tools.dry_scale,
        shares_g=tuple(share_g(share) for share in shares),
        how_sure=how_sure(
            portions,
            dye=dye,
            fibre_g=fibre_g,
            yarn_scale=tools.yarn_scale,
            is_shown=is_shown,
        ),
    )


def share_g(share: BottleShare) -> float:
    """Return what a share weighs."""
    return weighed_mass_g(
        volume_ml=share.volume_ml, strength_percent=share.strength_percent
    )


def how_sure(
    portions: Sequence[Portion],
    *,
    dye: str,
    fibre_g: float,
    yarn_scale: ToolNow | None,
    is_shown: bool = True,
) -> HowSure:
    """Return how sure the depth of one dye is, and what is not known of it.

    Lots are drawn only for what is shown: of what is kept, the terms are enough.
    """
    lots = Random(_SEED)  # ruff: ignore[suspicious-non-cryptographic-random-usage]
    yarn = _yarn(fibre_g, yarn_scale)
    sure = sure_depth(
        yarn=exact(fibre_g) if yarn is None else yarn,
        stock=_stock(portions, dye),
        dry=_dry(portions, dye),
        generator=lots if is_shown else None,
    )
    lacks = [*_lacking(portions, dye)]
    if yarn is None:
        lacks.append("what the yarn is weighed on")
    return HowSure(
        sure=sure if sure.depth.terms else None, lacks=tuple(dict.fromkeys(lacks))
    )


def depth_known(
    portions: Sequence[Portion], *, dye: str, fibre_g: float, yarn_scale: ToolNow | None
) -> Value:
    """Return the depth of one dye with its terms alone, which is soon reckoned."""
    return depth_value(
        yarn=_yarn(fibre_g, yarn_scale) or exact(fibre_g),
        stock=_stock(portions, dye),
        dry=_dry(portions, dye),
    )


def stock_ml(amount: float, unit: str, strength_percent: float) -> float:
    """Return stock in ml, from what was measured or weighed of it."""
    if unit != "g" or not strength_percent:
        return amount
    return weighed_volume_ml(mass_g=amount, strength_percent=strength_percent)


def dye_in_g(amount: float, unit: str, strength_percent: float) -> float:
    """Return the dye in so many ml or g of a stock."""
    return stock_ml(amount, unit, strength_percent) * strength_percent / 100


def kept_spread(how: HowSure) -> list[Mapping[str, object]]:
    """Return how sure a depth is, as it is kept beside a dose."""
    terms = () if how.sure is None else how.sure.depth.terms
    return list(line_spread(strength=terms, lacks=how.lacks))


def remembered(dose: BathDose) -> HowSure:
    """Return how sure a planned depth is, as it was kept."""
    if not dose.spread_method:
        return NOT_REMEMBERED
    depth = planned_depth(dose)
    sure = SureDepth(depth=depth, interval=either_side(depth=depth), is_drawn=False)
    return HowSure(sure=sure if depth.terms else None, lacks=lacks_of(dose.spread))


def planned_depth(dose: BathDose) -> Value:
    """Return a planned depth with its terms, as they were kept."""
    return Value(value=dose.depth_percent, terms=terms_from_json(dose.spread))


def measure_anew(bath: Bath, changed: BathDose) -> None:
    """Keep what a dose with another bottle is measured with, and how sure it is."""
    tools = at_hand(DosingWish(is_by_weight=bath.is_by_weight))
    if changed.tool is None or shaped_tool(changed.tool).balance:
        tool = tools.dose_tool(0, changed.volume_ml or 0.0)
        changed.tool_id = None if tool is None else tool.id
        changed.save(update_fields=["tool"])
    rows = list(bath.doses.filter(position=changed.position))
    how = how_sure(
        [_kept_portion(row, is_by_weight=bath.is_by_weight) for row in rows],
        dye=changed.dye.name,
        fibre_g=bath.fibre_g,
        yarn_scale=None if bath.yarn_scale is None else shaped_tool(bath.yarn_scale),
        is_shown=False,
    )
    for row in rows:
        row.spread, row.spread_method = kept_spread(how), SPREAD_METHOD
        row.save(update_fields=["spread", "spread_method"])


def _kept_portion(row: BathDose, *, is_by_weight: bool) -> Portion:
    tool = None if row.tool is None else shaped_tool(row.tool)
    if row.bottle is None or row.volume_ml is None or row.strength_percent is None:
        return Portion(amount=row.dye_g, unit="g", tool=tool)
    share = BottleShare(
        code=row.bottle.code,
        volume_ml=row.volume_ml,
        dye_g=row.dye_g,
        strength_percent=row.strength_percent,
    )
    state = state_of(row.bottle)
    return _planned(share, state, tool, is_by_weight=is_by_weight)


def _planned(
    share: BottleShare,
    stock: ShelfBottle | BottleState,
    tool: ToolNow | None,
    *,
    is_by_weight: bool,
) -> Portion:
    return Portion(
        amount=share_g(share) if is_by_weight else share.volume_ml,
        unit="g" if is_by_weight else "ml",
        tool=tool,
        code=share.code,
        strength=as_known(stock.strength, lacks=stock.lacks),
        lacks=stock.lacks,
    )


def _yarn(fibre_g: float, scale: ToolNow | None) -> Value | None:
    return None if scale is None else scale.read(fibre_g, role="yarn")


def _stock(portions: Sequence[Portion], dye: str) -> list[Drawn]:
    return [_drawn(x, x.strength, dye) for x in portions if x.strength is not None]


def _dry(portions: Sequence[Portion], dye: str) -> list[Value]:
    return [_read(x, dye) for x in portions if x.strength is None]


def _drawn(portion: Portion, strength: Value, dye: str) -> Drawn:
    density = None
    if portion.unit == "g":
        density = stock_density(strength=strength, key=portion.code)
    return Drawn(strength=strength, amount=_read(portion, dye), density=density)


def _read(portion: Portion, dye: str) -> Value:
    """Return the amount with what reading it is worth, as far as that is known."""
    tool = portion.tool
    if tool is None or tool.unit != portion.unit:
        return exact(portion.amount)
    return tool.read(portion.amount, role=dye) or exact(portion.amount)


def _lacking(portions: Sequence[Portion], dye: str) -> Iterator[str]:
    for portion in portions:
        yield from (f"{portion.code}: {words}" for words in portion.lacks)
        is_known = portion.tool is not None and portion.tool.unit == portion.unit
        if not is_known or portion.tool is None or portion.tool.core is None:
            done = "weighed on" if portion.unit == "g" else "measured with"
            yield f"what {dye} is {done}"
