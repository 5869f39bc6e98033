"""The page of an item: its facts, what belongs to it, how it changed."""

from collections.abc import Iterator

from django import forms
from django.urls import reverse

from shadewright.core.quantities import amount_text
from shadewright.records.models import (
    Auxiliary,
    Base,
    Dye,
    MeasuringTool,
    MillLot,
    Water,
)
from shadewright.records.models.catalogue import AuxiliaryKind
from shadewright.web.catalogue.kinds import Item, Kind
from shadewright.web.catalogue.life_part import life_part
from shadewright.web.catalogue.lists import above
from shadewright.web.catalogue.pages import Fact, ItemPage, Related, UseWater
from shadewright.web.catalogue.saying import UNSAID, changes, said
from shadewright.web.catalogue.tool_check_form import WaterForm, WeightForm
from shadewright.web.catalogue.tool_part import ToolPart, tool_part
from shadewright.web.catalogue.words import ACID, CLASS_MEANINGS, METAL
from shadewright.web.parts import Caution
from shadewright.web.templatetags.house import day, moment
from shadewright.workflows.jars import jars
from shadewright.workflows.tools import tool_now, unit_of
from shadewright.workflows.waters import usual_water

_ONLY_ASKED = {"forget_sheet", "spot"}
"""What a form asks and no row holds."""

CheckForm = WeightForm | WaterForm | None

_HEADS = {"dyes": "Jars of it", "bases": "Mill lots"}
_KEYS = {"dyes": "Receive a jar", "bases": "Add a mill lot"}


def item_page(kind: Kind, item: Item, check: CheckForm = None) -> ItemPage:
    """Return the page of an item; ``check`` is a tool's that was refused."""
    fields = _fields(kind)
    facts = tuple(_facts(item, fields))
    fate = f"{kind.noun}-back" if item.is_retired else f"retire-{kind.noun}"
    return ItemPage(
        title=item.name,
        fact="Retired: no list offers it any more." if item.is_retired else "",
        crumbs=(above(kind),),
        facts=tuple(fact for fact in facts if fact.words != UNSAID),
        unsaid=", ".join(_inside(f.label) for f in facts if f.words == UNSAID),
        begun=_begun(item),
        cautions=tuple(_cautions(item)),
        related_title=_HEADS.get(kind.slug, ""),
        related=tuple(_related(item)),
        related_add=_related_add(item),
        related_key=_KEYS.get(kind.slug, ""),
        changes=changes(item, {**fields, "is_retired": _RETIRED}, _unit(item)),
        is_retired=item.is_retired,
        edit_address=reverse(f"edit-{kind.noun}", args=[item.pk]),
        fate_address=reverse(fate, args=[item.pk]),
        use_water=_use_water(item),
        tool=_tool(item, check),
        life=life_part(item.pk) if isinstance(item, Dye) else None,
    )


_RETIRED = forms.BooleanField(label="Retired", required=False)


def _fields(kind: Kind) -> dict[str, forms.Field]:
    form = kind.form()
    names = [name for line in form.rows for name in line if name != "name"]
    return {"name": form.fields["name"]} | {
        name: form.fields[name] for name in names if name not in _ONLY_ASKED
    }


def _inside(label: str) -> str:
    """Return a label as it stands inside a sentence; C.I. keeps its capitals."""
    return label if label[1:2] == "." else label[:1].lower() + label[1:]


def _begun(item: Item) -> str:
    by = "" if item.created_by is None else f" by {item.created_by.name}"
    return f"First written down {moment(item.created_at)}{by}."


def _unit(item: Item) -> str:
    return unit_of(item.kind) if isinstance(item, MeasuringTool) else ""


def _facts(item: Item, fields: dict[str, forms.Field]) -> Iterator[Fact]:
    for name, field in fields.items():
        if name == "name":
            continue
        is_row = isinstance(field, forms.ModelChoiceField)
        value = getattr(item, f"{name}_id" if is_row else name)
        yield Fact(
            label=str(field.label),
            words=said(field, value, _unit(item)),
            address=_address(item, name),
            is_colour=name == "chart_hex" and bool(value),
        )
        if name == "dye_class":
            yield Fact(label="That means", words=CLASS_MEANINGS[value])


def _address(item: Item, name: str) -> str:
    if name == "data_sheet_link":
        return str(item.data_sheet_link)
    if name == "data_sheet_file" and item.data_sheet_file:
        return reverse("data-sheet", args=[item.pk])
    return ""


def _cautions(item: Item) -> Iterator[Caution]:
    if isinstance(item, Dye) and item.is_metal_complex:
        yield METAL
    if isinstance(item, Auxiliary) and item.kind == AuxiliaryKind.ACID:
        yield ACID


def _tool(item: Item, check: CheckForm) -> ToolPart | None:
    if not isinstance(item, MeasuringTool):
        return None
    return tool_part(tool_now(item.pk), check)


def _related(item: Item) -> Iterator[Related]:
    if isinstance(item, Dye):
        for jar in jars(dye_id=item.pk):
            yield Related(
                name=jar.code,
                address=reverse("jar", args=[jar.id]),
                words=f"{amount_text(jar.left_g, 'g')} left, lot {jar.lot or UNSAID}",
            )
    if isinstance(item, Base):
        for lot in item.lots.all():
            yield _lot(lot)


def _lot(lot: MillLot) -> Related:
    when = f"Received {day(lot.received_on)}." if lot.received_on else ""
    weight = f"{amount_text(lot.received_g, 'g')}." if lot.received_g else ""
    return Related(
        name=lot.lot,
        address=reverse("mill-lot", args=[lot.base_id, lot.pk]),
        words=" ".join(filter(None, (when, weight, lot.notes))) or UNSAID,
    )


def _use_water(item: Item) -> UseWater | None:
    if not isinstance(item, Water) or item.is_retired:
        return None
    usual = usual_water()
    return UseWater(
        is_usual=usual is not None and usual.id == item.pk,
        address=reverse("use-water", args=[item.pk]),
    )


def _related_add(item: Item) -> str:
    if isinstance(item, Dye):
        return f"{reverse('receive-jar')}?dye={item.pk}"
    if isinstance(item, Base):
        return reverse("add-mill-lot", args=[item.pk])
    return ""
