"""The pages of buyers."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.buyers.forms import CloseForm, ComplaintForm, NameLotForm, OutForm
from shadewright.web.pages import Link, Page
from shadewright.web.parts import Caution
from shadewright.workflows.buyers.complaints import ComplaintEntry, ComplaintNow
from shadewright.workflows.buyers.recall import Reach
from shadewright.workflows.lot_skeins import LotSkeins


@dataclass(frozen=True, kw_only=True)
class OutPage(Page):
    """Skeins of a lot: who has them, and who gets the next."""

    template: ClassVar[str] = "buyers/out.html"
    place: ClassVar[str] = "Lots"

    lot: LotSkeins
    left: str
    form: OutForm
    buyers: tuple[str, ...]
    own: str


@dataclass(frozen=True, kw_only=True)
class ReachRow:
    """A circle of lots, how far it reached, and the list of who has it."""

    reach: Reach
    words: str
    address: str


@dataclass(frozen=True, kw_only=True)
class RecallPage(Page):
    """Who has yarn of a lot, and of all that shares its dye."""

    template: ClassVar[str] = "buyers/recall.html"
    place: ClassVar[str] = "Lots"

    rows: tuple[ReachRow, ...]
    untold: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class ComplaintsPage(Page):
    """All complaints."""

    template: ClassVar[str] = "buyers/complaints.html"
    place: ClassVar[str] = "Lots"

    rows: tuple[ComplaintEntry, ...]


@dataclass(frozen=True, kw_only=True)
class NewComplaintPage(Page):
    """A complaint that came."""

    template: ClassVar[str] = "buyers/new.html"
    place: ClassVar[str] = "Lots"

    form: ComplaintForm


@dataclass(frozen=True, kw_only=True)
class ComplaintPage(Page):
    """One complaint, and everything that helps to answer it."""

    template: ClassVar[str] = "buyers/complaint.html"
    place: ClassVar[str] = "Lots"

    now: ComplaintNow
    facts: tuple[tuple[str, Link], ...]
    rows: tuple[ReachRow, ...]
    no_lot: Caution | None
    form: CloseForm
    lot_form: NameLotForm | None
