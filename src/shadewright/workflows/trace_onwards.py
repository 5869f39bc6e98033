"""Trace onwards: from a jar or a bottle to every bath and lot that its dye reached.

A jar can stand behind thousands of lots. All are counted; the baths themselves are
shown a page at a time, the newest first, each under its bottle.
"""

from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from shadewright.core.quantities import amount_text, counted
from shadewright.records import lot_reads, reads
from shadewright.records.lot_reads import DyeFrom, ReachedBath
from shadewright.records.models import BottleLine, StockBottle
from shadewright.workflows.trace import jar_node
from shadewright.workflows.trace_buyers import buyers_below
from shadewright.workflows.trace_nodes import Kind, Node, day, joined, missing

BATHS_A_PAGE = 100
_MOST_UNTOLD = 100
_CODES_NAMED = 12


@dataclass(frozen=True, kw_only=True)
class Onwards:
    """Where dye went: the tree of one page, how many baths there are, and pages."""

    tree: Node
    baths: int
    page: int
    pages: int


@dataclass(frozen=True, kw_only=True)
class _Reached:
    """The bottles that dye came into: the line from which on, and what then follows."""

    since: dict[int, int] = field(default_factory=dict)
    rows: dict[int, BottleLine] = field(default_factory=dict)
    poured_on: dict[int | None, list[int]] = field(
        default_factory=lambda: defaultdict(list)
    )


def onwards_from_jar(jar_id: int, *, page: int = 1) -> Onwards:
    """Return the bottles, baths and lots that a jar's powder went into."""
    jar = reads.jar_row(jar_id)
    reached = _reached(lot_reads.bottles_from_jar(jar_id))
    gaps = tuple(_gaps(jar.dye_id, jar.dye.name))
    root = jar_node(jar, more=jar.dye.name)
    return _onwards(root, reached, page, gaps)


def onwards_from_bottle(code: str, *, page: int = 1) -> Onwards:
    """Return the bottles, baths and lots that a bottle's stock went into."""
    bottle = reads.bottle_row(code)
    reached = _from_bottle(bottle)
    root = Node(
        kind=Kind.BOTTLE, name=f"{bottle.code} {bottle.dye.name}", key=bottle.code
    )
    found = _onwards(root, reached, page, ())
    own = found.tree.below[0].below if found.tree.below else ()
    tree = Node(kind=root.kind, name=root.name, key=root.key, below=own)
    return Onwards(tree=tree, baths=found.baths, page=found.page, pages=found.pages)


def dye_of_jar(jar_id: int) -> DyeFrom:
    """Return the bottles that a jar's powder came into, however it came."""
    return _dye(_reached(lot_reads.bottles_from_jar(jar_id)))


def dye_of_bottle(code: str) -> DyeFrom:
    """Return the bottles that a bottle’s stock came into, itself the first."""
    return _dye(_from_bottle(reads.bottle_row(code)))


def _from_bottle(bottle: StockBottle) -> _Reached:
    first = [line for line in bottle.lines.all() if line.act == "filled"]
    return _reached(first[:1])


def _dye(reached: _Reached) -> DyeFrom:
    return DyeFrom(since=reached.since, filled=_filled(reached))


def _reached(first: Iterable[BottleLine]) -> _Reached:
    """Follow the pourings, level by level; each bottle hangs under its first source."""
    reached = _Reached()
    level: list[tuple[int | None, BottleLine]] = [(None, line) for line in first]
    while level:
        fresh = []
        for above, line in level:
            if line.bottle_id not in reached.since:
                reached.since[line.bottle_id] = line.pk
                reached.rows[line.bottle_id] = line
                reached.poured_on[above].append(line.bottle_id)
                fresh.append(line.bottle_id)
        level = [
            (line.other_id, line)
            for line in (lot_reads.poured_on(fresh) if fresh else ())
            if line.other_id is not None and line.pk > reached.since[line.other_id]
        ]
    return reached


def _onwards(
    root: Node, reached: _Reached, page: int, gaps: tuple[Node, ...]
) -> Onwards:
    dye = _dye(reached)
    pairs = lot_reads.bath_pairs(dye)
    baths = sorted({bath for _bottle, bath in pairs}, reverse=True)
    pages = max(1, -(-len(baths) // BATHS_A_PAGE))
    page = min(max(page, 1), pages)
    shown = baths[(page - 1) * BATHS_A_PAGE : page * BATHS_A_PAGE]
    untold = lot_reads.untold_pairs(dye, most=_MOST_UNTOLD) if page == 1 else []
    hung = _baths(pairs, shown, untold)
    counts = Counter(bottle for bottle, _bath in pairs)
    below = _bottles(None, reached, hung, counts)
    tree = Node(
        kind=root.kind,
        name=root.name,
        more=joined(root.more, _baths_text(len(baths))),
        key=root.key,
        below=(*below, *gaps),
    )
    return Onwards(tree=tree, baths=len(baths), page=page, pages=pages)


def _filled(reached: _Reached) -> frozenset[int]:
    """Return the bottles that hold the dye from their first drop on."""
    return frozenset(k for k, line in reached.rows.items() if line.act == "filled")


def _bottles(
    above: int | None,
    reached: _Reached,
    hung: Mapping[int, Sequence[Node]],
    counts: Mapping[int, int],
) -> tuple[Node, ...]:
    return tuple(
        Node(
            kind=Kind.BOTTLE,
            name=_bottle_name(reached.rows[bottle_id]),
            more=joined(
                _how(reached.rows[bottle_id]), _baths_text(counts.get(bottle_id, 0))
            ),
            key=reached.rows[bottle_id].bottle.code,
            below=(
                *hung.get(bottle_id, ()),
                *_bottles(bottle_id, reached, hung, counts),
            ),
        )
        for bottle_id in reached.poured_on.get(above, ())
    )


def _bottle_name(line: BottleLine) -> str:
    return f"{line.bottle.code} {line.bottle.dye.name}"


def _how(line: BottleLine) -> str:
    on = day(line.at)
    if line.act == "filled":
        return f"filled {on}"
    if line.act == "powder added":
        return f"{amount_text(line.powder_g, 'g')} added {on}"
    return f"{amount_text(line.volume_ml, 'ml')} poured in {on}"


def _baths_text(count: int) -> str:
    return counted(count, "bath") if count else "no bath yet"


def _baths(
    pairs: Iterable[tuple[int, int]],
    shown: Collection[int],
    untold: Sequence[tuple[int, int]],
) -> dict[int, list[Node]]:
    """Return a node for each bath of the page under each bottle that it took from."""
    wanted = set(shown)
    told = sorted((pair for pair in pairs if pair[1] in wanted), key=lambda x: -x[1])
    rows = lot_reads.reached_baths(wanted | {bath for _bottle, bath in untold})
    buyers = buyers_below(row.number for row in rows.values() if row.has_lot)
    hung: dict[int, list[Node]] = defaultdict(list)
    for bottle, bath in told:
        hung[bottle].append(_bath(rows[bath], buyers))
    for bottle, bath in untold:
        hung[bottle].append(_bath(rows[bath], buyers, is_told=False))
    return hung


def _bath(
    bath: ReachedBath, buyers: Mapping[str, tuple[Node, ...]], *, is_told: bool = True
) -> Node:
    doubt = "" if is_told else "planned from it; not written down whether it went in"
    if not bath.has_lot:
        more = joined(bath.recipe_name, doubt, "no lot")
        return Node(kind=Kind.BATH, name=bath.number, more=more, key=bath.number)
    return Node(
        kind=Kind.LOT,
        name=bath.number,
        more=joined(bath.recipe_name, doubt),
        key=bath.number,
        is_missing=not is_told,
        below=buyers.get(bath.number, ()),
    )


def _gaps(dye_id: int, dye_name: str) -> Iterable[Node]:
    # What may be of this jar, and nobody can say.
    bottles = lot_reads.bottles_without_jar(dye_id)
    if bottles:
        more = joined(*bottles[:_CODES_NAMED], "…" if bottles[_CODES_NAMED:] else "")
        bottles_text = counted(len(bottles), "bottle")
        name = f"{bottles_text} of {dye_name} without a jar: perhaps of this one"
        yield missing(Kind.BOTTLE, name, more)
    dry = lot_reads.dry_dose_count(dye_id)
    if dry:
        doses = counted(dry, "dose")
        name = f"{doses} of {dye_name} weighed dry: jar not written down"
        yield missing(Kind.DOSE, name)
