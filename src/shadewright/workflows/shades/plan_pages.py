"""Sets of swatches as they stand: what is dyed, what was read of it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from django.db.models import Count, Min, Q, QuerySet

from shadewright.core.baths import liquor_ml, weighed_mass_g
from shadewright.core.colour import Lab
from shadewright.core.mixing import Evidence
from shadewright.errors import NotFoundError
from shadewright.records import shade_reads
from shadewright.records.models import Bath, Prediction, SwatchPlan
from shadewright.records.models.baths import BathAct
from shadewright.records.models.swatches import PlanKind
from shadewright.records.shapes import standing_lines
from shadewright.workflows.bath_pages import BathStatus, status_of
from shadewright.workflows.recipe_shapes import RecipeText
from shadewright.workflows.recipes import version
from shadewright.workflows.shades.plan_colours import ToldSwatch, told_swatches
from shadewright.workflows.shades.plan_jars import JarCount, jars_for
from shadewright.workflows.shades.swatches import ReadColour, swatches_of_plan


@dataclass(frozen=True, kw_only=True)
class SetDose:
    """A dose as it is planned; ``code`` is empty where the dye is weighed dry."""

    dye_name: str
    depth_percent: float
    dye_g: float
    code: str
    strength_percent: float | None
    volume_ml: float | None

    @property
    def mass_g(self) -> float:
        """What its stock weighs; the dye itself where it is weighed dry. [g]."""
        if self.volume_ml is None or self.strength_percent is None:
            return self.dye_g
        return weighed_mass_g(
            volume_ml=self.volume_ml, strength_percent=self.strength_percent
        )


@dataclass(frozen=True, kw_only=True)
class SetSwatch:
    """A swatch of a set: its bath, what was foretold, what was read of it."""

    place: int
    bath_number: str
    doses: tuple[SetDose, ...]
    status: BathStatus
    told: ToldSwatch | None
    swatch_id: int | None
    reading: ReadColour | None

    @property
    def is_dyed(self) -> bool:
        """Whether it came out of its bath."""
        return self.status in {BathStatus.COOLING, BathStatus.FINISHED}


@dataclass(frozen=True, kw_only=True)
class SetNow:
    """A set as it stands; ``text`` is that of its first swatch, for acid and heat."""

    id: int
    recipe_id: int
    name: str
    kind: PlanKind
    base_id: int
    base_name: str
    wanted: str
    wanted_id: int | None
    wanted_lab: Lab | None
    yarn_g: float
    liquor_ratio: float
    dyed_on: date
    is_by_weight: bool
    swatches: tuple[SetSwatch, ...]
    jars: JarCount
    text: RecipeText

    @property
    def numbers(self) -> tuple[str, ...]:
        """The numbers of the baths that are still meant to be dyed, or were."""
        return tuple(
            each.bath_number
            for each in self.swatches
            if each.status is not BathStatus.GIVEN_UP
        )


@dataclass(frozen=True, kw_only=True)
class SetEntry:
    """A set in one line; ``read`` counts the swatches whose colour is known."""

    id: int
    name: str
    kind: PlanKind
    base_name: str
    dyed_on: date | None
    swatches: int
    dyed: int
    read: int


def swatch_sets() -> tuple[SetEntry, ...]:
    """Return every set, the newest first."""
    dyed = Q(recipe__versions__baths__lines__act=BathAct.FINISHED)
    rows = shade_reads.swatch_plan_rows().annotate(
        swatches=Count("recipe__versions__baths", distinct=True),
        dyed=Count("recipe__versions__baths", filter=dyed, distinct=True),
        first_day=Min("recipe__versions__baths__dyed_on"),
        read=Count("recipe__versions__baths__swatch__readings__swatch", distinct=True),
    )
    return tuple(_entry(row) for row in rows)


def swatch_set(plan_id: int) -> SetNow:
    """Return one set as it stands."""
    plan = plan_row(plan_id)
    baths = list(set_baths(plan))
    first = baths[0]
    bath_ml = liquor_ml(fibre_mass_g=plan.yarn_g, liquor_ratio=first.liquor_ratio)
    return SetNow(
        id=plan.pk,
        recipe_id=plan.recipe_id,
        name=plan.recipe.name,
        kind=PlanKind(plan.kind),
        base_id=plan.base_id,
        base_name=plan.base.name,
        wanted="" if plan.wanted is None else plan.wanted.name,
        wanted_id=plan.wanted_id,
        wanted_lab=None if plan.wanted is None else Lab(*plan.wanted.labs["D65"]),
        yarn_g=plan.yarn_g,
        liquor_ratio=first.liquor_ratio,
        dyed_on=first.dyed_on,
        is_by_weight=first.is_by_weight,
        swatches=_swatches(plan, baths),
        jars=jars_for(len(baths), liquor_ml=bath_ml),
        text=version(first.version_id).text,
    )


def plan_of_recipe(recipe_id: int) -> int | None:
    """Return the set whose recipe this is; None where it is a colourway."""
    row = SwatchPlan.objects.filter(recipe_id=recipe_id).first()
    return None if row is None else row.pk


def swatches_waiting(base_id: int) -> int:
    """Return how many planned swatches of a base have no colour yet."""
    planned = Bath.objects.filter(version__recipe__swatch_plan__base=base_id)
    unread = planned.filter(swatch__readings=None)
    return unread.exclude(lines__act=BathAct.GIVEN_UP).distinct().count()


def plan_row(plan_id: int) -> SwatchPlan:
    """Return the row of a set."""
    row = shade_reads.swatch_plan_rows().filter(pk=plan_id).first()
    if row is None:
        raise NotFoundError(kind="set of swatches", key=str(plan_id), argument="plan")
    return row


def set_baths(plan: SwatchPlan) -> QuerySet[Bath]:
    """Return the baths of a set with their doses and ledgers, in its own order."""
    rows = Bath.objects.filter(version__recipe=plan.recipe_id)
    rows = rows.select_related("version", "prediction", "base")
    return rows.prefetch_related("lines", "doses__dye", "doses__bottle").order_by(
        "version__number", "id"
    )


def status_of_bath(bath: Bath) -> BathStatus:
    """Return where a bath is by its ledger."""
    return status_of(BathAct(line.act) for line in standing_lines(bath.lines.all()))


def _swatches(plan: SwatchPlan, baths: Sequence[Bath]) -> tuple[SetSwatch, ...]:
    read = {each.bath_number: each for each in swatches_of_plan(plan.recipe_id)}
    doses = [_doses(bath) for bath in baths]
    named = [tuple((x.dye_name, x.depth_percent) for x in each) for each in doses]
    told = told_swatches(named, base=plan.base.name)
    return tuple(
        SetSwatch(
            place=bath.version.number,
            bath_number=bath.number,
            doses=each,
            status=status_of_bath(bath),
            told=_foretold(bath) or colour,
            swatch_id=read[bath.number].id if bath.number in read else None,
            reading=read[bath.number].reading if bath.number in read else None,
        )
        for bath, each, colour in zip(baths, doses, told, strict=True)
    )


def _doses(bath: Bath) -> tuple[SetDose, ...]:
    return tuple(
        SetDose(
            dye_name=row.dye.name,
            depth_percent=row.depth_percent,
            dye_g=row.dye_g,
            code="" if row.bottle is None else row.bottle.code,
            strength_percent=row.strength_percent,
            volume_ml=row.volume_ml,
        )
        for row in bath.doses.all()
    )


def _foretold(bath: Bath) -> ToldSwatch | None:
    """Return what was foretold when the bath was planned, if that was kept."""
    row: Prediction | None = getattr(bath, "prediction", None)
    if row is None:
        return None
    return ToldSwatch(
        lab=Lab(row.colour_l, row.colour_a, row.colour_b),
        expected=row.expected,
        within_90=row.within_90,
        evidence=Evidence(row.evidence),
    )


def _entry(row: SwatchPlan) -> SetEntry:
    counted: Iterable[int] = (
        getattr(row, name) for name in ("swatches", "dyed", "read")
    )
    swatches, dyed, read = counted
    day: date | None = getattr(row, "first_day", None)
    return SetEntry(
        id=row.pk,
        name=row.recipe.name,
        kind=PlanKind(row.kind),
        base_name=row.base.name,
        dyed_on=day,
        swatches=swatches,
        dyed=dyed,
        read=read,
    )
