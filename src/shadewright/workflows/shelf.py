"""What stands on the shelf: every bottle with what its ledger leaves in it."""

from dataclasses import dataclass
from datetime import date
from math import isclose

from shadewright.core.solutions.age import StockAge, stock_age
from shadewright.core.solutions.carrying import as_known
from shadewright.core.solutions.keeping import DyeLife, Fate
from shadewright.core.solutions.ledger import BottleState
from shadewright.core.uncertainty import Term, Value
from shadewright.records import reads
from shadewright.records.models import StockBottle
from shadewright.records.models.shelf import Evidence
from shadewright.records.shapes import state_of
from shadewright.workflows.dye_lives import COMMON, dye_lives
from shadewright.workflows.stamps import today
from shadewright.workflows.standings import Keeping, keeping_of

LOW_SHARE = 0.2
"""A bottle with less than this share of its first volume is low."""

LABEL_HOLDS = 0.005
"""A label holds while its strength is within half a percent of the true one."""


@dataclass(frozen=True, kw_only=True)
class ShelfBottle:
    """A bottle as it stands on the shelf now."""

    code: str
    dye_id: int
    dye_name: str
    chart_hex: str
    is_metal_complex: bool
    is_mix_fresh: bool
    strength_percent: float
    is_strength_guess: bool
    evidence: str
    volume_ml: float
    final_ml: float
    dead_volume_ml: float
    made_on: date | None
    is_date_about: bool
    discard_by: date | None
    age: StockAge
    is_settled: bool | None
    is_on_shelf: bool
    is_void: bool
    place: str
    labelled_percent: float | None
    keeping: Keeping
    terms: tuple[Term, ...]
    lacks: tuple[str, ...]

    @property
    def strength(self) -> Value:
        """Strength with its spread; ``lacks`` says what no term is known for. [%]."""
        whole = Value(value=self.strength_percent, terms=self.terms)
        return as_known(whole, lacks=self.lacks)

    @property
    def u_strength_rel(self) -> float | None:
        """Relative standard uncertainty of the strength; None while none is known."""
        return self.strength.u_rel if self.strength.terms else None

    @property
    def wants_label(self) -> bool:
        """Whether no label was printed, or the stock is no longer what it says."""
        said = self.labelled_percent
        if self.is_empty:
            return False
        return said is None or not isclose(
            said, self.strength_percent, rel_tol=LABEL_HOLDS
        )

    @property
    def usable_ml(self) -> float:
        """What can be drawn: what is left less the last drops."""
        return max(self.volume_ml - self.dead_volume_ml, 0.0)

    @property
    def is_empty(self) -> bool:
        """Whether nothing more can be drawn."""
        return self.usable_ml <= 0

    @property
    def is_low(self) -> bool:
        """Whether less than a fifth is left."""
        return not self.is_empty and self.volume_ml < LOW_SHARE * self.final_ml

    @property
    def is_past(self) -> bool:
        """Whether it is past its time by its age."""
        return self.keeping.standing.is_past

    @property
    def trouble(self) -> str:
        """What is the matter with it, in one or two words; empty when nothing is."""
        troubles = (
            (self.is_void, "taken back"),
            (not self.is_on_shelf, "poured away"),
            (self.is_settled is True, "settled"),
            (self.is_empty, "empty"),
            (self.keeping.fate is Fate.TEST, "test or pour"),
            (self.is_low, "low"),
            (self.keeping.fate is Fate.LOOK, "look first"),
        )
        return next((words for is_so, words in troubles if is_so), "")


def shelf() -> tuple[ShelfBottle, ...]:
    """Return the bottles that stand on the shelf, by dye and code."""
    lives = dye_lives()
    rows = reads.standing_bottle_rows()
    standing = (shaped_bottle(row, life=lives.get(row.dye_id)) for row in rows)
    return tuple(bottle for bottle in standing if bottle.is_on_shelf)


def bottles_gone() -> tuple[ShelfBottle, ...]:
    """Return the bottles that were poured away or taken back."""
    every = (shaped_bottle(row, life=COMMON) for row in reads.bottle_rows())
    return tuple(bottle for bottle in every if not bottle.is_on_shelf)


def shelf_bottle(code: str) -> ShelfBottle:
    """Return one bottle, wherever it is now."""
    return shaped_bottle(reads.bottle_row(code))


def shaped_bottle(row: StockBottle, *, life: DyeLife | None = None) -> ShelfBottle:
    """Return a row as it stands on the shelf; its dye's life is asked for."""
    left = state_of(row)
    known = life or dye_lives([row.dye_id])[row.dye_id]
    age = _age(row, known)
    return ShelfBottle(
        code=row.code,
        dye_id=row.dye_id,
        dye_name=row.dye.name,
        chart_hex=row.dye.chart_hex,
        is_metal_complex=row.dye.is_metal_complex,
        is_mix_fresh=row.dye.is_mix_fresh,
        strength_percent=left.strength_percent,
        is_strength_guess=left.is_guess,
        evidence=_evidence(row, left),
        volume_ml=left.volume_ml,
        final_ml=max(row.final_ml, left.volume_ml),
        dead_volume_ml=row.dead_volume_ml,
        made_on=row.made_on,
        is_date_about=row.is_date_about,
        discard_by=row.discard_by,
        age=age,
        is_settled=left.is_settled,
        is_on_shelf=left.is_filled and not left.is_poured,
        is_void=not left.is_filled,
        place=row.place,
        labelled_percent=row.labelled_percent,
        terms=left.terms,
        lacks=left.lacks,
        keeping=keeping_of(
            row,
            left,
            age,
            life=known,
            today=today(),
            is_empty=left.volume_ml <= row.dead_volume_ml,
        ),
    )


def _age(row: StockBottle, life: DyeLife) -> StockAge:
    return stock_age(
        made_on=row.made_on,
        today=today(),
        discard_by=row.discard_by,
        is_mix_fresh=row.dye.is_mix_fresh,
        look_by_days=life.look_by_days,
        discard_by_days=life.discard_by_days,
    )


def _evidence(row: StockBottle, left: BottleState) -> str:
    if left.is_tested:
        return "tested"
    return (Evidence.MIXED if left.is_mixed else Evidence(row.evidence)).label
