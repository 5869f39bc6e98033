"""Orders as pages show them: one with its baths and lots, and all as a list."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from shadewright.records import order_reads, selling_reads
from shadewright.records.models import Order, OrderLine
from shadewright.workflows.days.demand import Demand, demand_now, wanted_by
from shadewright.workflows.days.order_edits import EditNow, order_edits
from shadewright.workflows.days.orders import fingerprint
from shadewright.workflows.days.pace import pace_now
from shadewright.workflows.days.promises import Promise, promise_for
from shadewright.workflows.days.yields import BathYield, yield_of
from shadewright.workflows.stamps import today

MOST = 200
"""More orders than this are only searched for."""


@dataclass(frozen=True, kw_only=True)
class ShareNow:
    """A bath or a lot that is for a line, or could be, with its skeins.

    ``kept`` is what it really has for the line; nothing where ``given`` says why.
    """

    skeins: int
    kept: int
    given: BathYield


@dataclass(frozen=True, kw_only=True)
class LineNow:
    """A line with the baths and lots that are for it, and what it still lacks.

    ``offers`` are free skeins that nobody promised to it yet; ``gone`` went out for it.
    """

    id: int
    position: int
    recipe_id: int
    recipe_name: str
    base_id: int
    base_name: str
    skeins: int
    skein_g: float
    as_said: str
    is_dropped: bool
    shares: tuple[ShareNow, ...]
    offers: tuple[ShareNow, ...]
    to_dye: int
    trouble: str
    mend: str
    gone: int

    @property
    def on_shelf(self) -> int:
        """Skeins of it that are there, promised to it or free."""
        return sum(each.kept for each in self._all if each.given.is_on_shelf)

    @property
    def taken(self) -> int:
        """Skeins of it that are there and promised to it."""
        return sum(each.kept for each in self.shares if each.given.is_on_shelf)

    @property
    def coming(self) -> int:
        """Skeins of it that are planned, in a pot, or on the rack."""
        return sum(each.kept for each in self._all if not each.given.is_on_shelf)

    @property
    def _all(self) -> tuple[ShareNow, ...]:
        return self.shares + self.offers


@dataclass(frozen=True, kw_only=True)
class OrderNow:
    """An order with everything that is known of it; no promise once it is closed.

    In a list it comes without its promise and its edits.
    """

    number: int
    for_whom: str
    due_on: date | None
    promised_on: date | None
    wanted_by: date | None
    notes: str
    is_closed: bool
    why_closed: str
    created_at: datetime
    created_by: str
    lines: tuple[LineNow, ...]
    promise: Promise | None
    seen: str
    edits: tuple[EditNow, ...]

    @property
    def wanted(self) -> tuple[LineNow, ...]:
        """The lines that were not dropped."""
        return tuple(line for line in self.lines if not line.is_dropped)

    @property
    def is_late(self) -> bool:
        """Whether its day is over."""
        by = self.wanted_by
        return not self.is_closed and by is not None and by < today()

    @property
    def is_all_there(self) -> bool:
        """Whether every skein of it went out, or lies there and is taken for it."""
        lines = self.wanted
        return bool(lines) and all(x.gone + x.taken >= x.skeins for x in lines)

    @property
    def is_to_take(self) -> bool:
        """Whether every skein of it went out or is there, but not all is taken."""
        is_there = 0 < self.skeins <= self.gone + self.on_shelf
        return is_there and not self.is_all_there

    @property
    def skeins(self) -> int:
        """All that is wanted."""
        return sum(each.skeins for each in self.wanted)

    @property
    def on_shelf(self) -> int:
        """Skeins of it that are there."""
        return sum(each.on_shelf for each in self.wanted)

    @property
    def gone(self) -> int:
        """Skeins of it that went out already."""
        return sum(each.gone for each in self.wanted)

    @property
    def untaken(self) -> int:
        """Skeins that lie on the shelf for it, but that nobody took for it."""
        return self.on_shelf - sum(each.taken for each in self.wanted)

    @property
    def coming(self) -> int:
        """Skeins of it that are planned or under way."""
        return sum(each.coming for each in self.wanted)

    @property
    def to_dye(self) -> int:
        """Skeins of it that no bath is planned for."""
        return sum(each.to_dye for each in self.wanted)


def order_now(number: int) -> OrderNow:
    """Return one order."""
    row = order_reads.order_row(number)
    return _shaped([row], demand_now(), is_promised=True)[0]


def orders(*, query: str = "", is_closed: bool = False) -> tuple[OrderNow, ...]:
    """Return orders, open ones by the day they are wanted, closed ones newest first."""
    rows = list(order_reads.listed_orders(query.split(), is_closed=is_closed)[:MOST])
    found = _shaped(rows, demand_now(), is_promised=False)
    if is_closed:
        return found
    return tuple(sorted(found, key=lambda one: (one.wanted_by or date.max, one.number)))


def customers() -> tuple[str, ...]:
    """Return for whom orders were, the newest first."""
    return tuple(order_reads.customers())


def _shaped(
    rows: Sequence[Order], demand: Demand, *, is_promised: bool
) -> tuple[OrderNow, ...]:
    shares, gone = _shares(rows, demand), _gone(rows)
    pace = pace_now() if is_promised else None
    return tuple(
        OrderNow(
            number=row.number,
            for_whom=row.for_whom,
            due_on=row.due_on,
            promised_on=row.promised_on,
            wanted_by=wanted_by(row),
            notes=row.notes,
            is_closed=row.is_closed,
            why_closed=row.why_closed,
            created_at=row.created_at,
            created_by="" if row.created_by is None else row.created_by.name,
            lines=tuple(_line(each, shares, gone, demand) for each in row.lines.all()),
            promise=None
            if row.is_closed or pace is None
            else promise_for(row, demand=demand, pace=pace),
            seen=fingerprint(row),
            edits=order_edits(row) if is_promised else (),
        )
        for row in rows
    )


def _shares(
    rows: Sequence[Order], demand: Demand
) -> Mapping[int, tuple[ShareNow, ...]]:
    """Return the baths and lots that are for each line."""
    known = {each.number: each for each in demand.yields}
    found: defaultdict[int, tuple[ShareNow, ...]] = defaultdict(tuple)
    lines = [line.pk for row in rows for line in row.lines.all()]
    for share in order_reads.shares_of(lines):
        number = share.bath.number
        given = known.get(number) or yield_of(number)
        found[share.line_id] += (
            ShareNow(
                skeins=share.skeins,
                kept=given.kept.get(share.line_id, 0),
                given=given,
            ),
        )
    return found


def _gone(rows: Sequence[Order]) -> Mapping[int, int]:
    """Return how many skeins went out for each line."""
    lines = [line.pk for row in rows for line in row.lines.all()]
    out = selling_reads.standing_skeins_out().filter(order_line__in=lines)
    found: Counter[int] = Counter()
    for line_id, skeins in out.values_list("order_line", "skeins"):
        found[line_id] += skeins
    return found


def _line(
    row: OrderLine,
    shares: Mapping[int, tuple[ShareNow, ...]],
    gone: Mapping[int, int],
    demand: Demand,
) -> LineNow:
    known = {each.number: each for each in demand.yields}
    lacks = [each for each in demand.to_dye if row.pk in dict(each.for_lines)]
    return LineNow(
        id=row.pk,
        position=row.position,
        recipe_id=row.recipe_id,
        recipe_name=row.recipe.name,
        base_id=row.base_id,
        base_name=row.base.name,
        skeins=row.skeins,
        skein_g=row.skein_g,
        as_said=row.as_said,
        is_dropped=row.is_dropped,
        shares=shares.get(row.pk, ()),
        offers=tuple(
            ShareNow(skeins=skeins, kept=skeins, given=known[number])
            for number, skeins in demand.allotted.get(row.pk, {}).items()
        ),
        to_dye=sum(dict(each.for_lines)[row.pk] for each in lacks),
        trouble="".join(each.trouble for each in lacks),
        mend="".join(each.mend for each in lacks),
        gone=gone.get(row.pk, 0),
    )


def order_numbers() -> dict[int, int]:
    """Return the order of each line that is open, by the line."""
    return {line.pk: line.order.number for line in order_reads.open_lines()}


def orders_of_bath(number: str) -> tuple[tuple[int, str], ...]:
    """Return the orders that a bath or its lot is for, open or sent, with for whom."""
    rows = order_reads.orders_of_bath(number)
    return tuple((row.number, row.for_whom) for row in rows)
