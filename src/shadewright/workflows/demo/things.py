"""What the demo studio owns. Every name is invented for this project."""

from collections.abc import Iterator
from dataclasses import dataclass

from shadewright.records.models import (
    Auxiliary,
    Base,
    Dye,
    MeasuringTool,
    MillLot,
    Studio,
)
from shadewright.records.models.catalogue import AuxiliaryKind, DyeClass, ToolKind
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.calendar import Calendar
from shadewright.workflows.people import add_person, people
from shadewright.workflows.studio import found_studio

NOTE = "Invented for the demo studio."


@dataclass(frozen=True, kw_only=True)
class DemoDye:
    """A dye of the demo: what its jar and its data sheet would say."""

    name: str
    dye_class: DyeClass
    chart_hex: str
    solubility_g_per_l: float
    is_mix_fresh: bool = False
    hazard_words: str = ""


DYES = (
    DemoDye(
        name="Bramble",
        dye_class=DyeClass.MILLING,
        chart_hex="#57456f",
        solubility_g_per_l=40,
    ),
    DemoDye(
        name="Coal",
        dye_class=DyeClass.METAL_COMPLEX_1_2,
        chart_hex="#2f3034",
        solubility_g_per_l=30,
        hazard_words="Harmful to water life",
    ),
    DemoDye(
        name="Foxglove",
        dye_class=DyeClass.HALF_MILLING,
        chart_hex="#b2487e",
        solubility_g_per_l=60,
    ),
    DemoDye(
        name="Gorse",
        dye_class=DyeClass.LEVELLING,
        chart_hex="#e0b02c",
        solubility_g_per_l=100,
    ),
    DemoDye(
        name="Heather",
        dye_class=DyeClass.MILLING,
        chart_hex="#8a6aa8",
        solubility_g_per_l=35,
    ),
    DemoDye(
        name="Kelp",
        dye_class=DyeClass.HALF_MILLING,
        chart_hex="#4e7f66",
        solubility_g_per_l=50,
    ),
    DemoDye(
        name="Lagoon",
        dye_class=DyeClass.HALF_MILLING,
        chart_hex="#2a93a6",
        solubility_g_per_l=45,
        hazard_words="Irritates eyes",
    ),
    DemoDye(
        name="Marigold",
        dye_class=DyeClass.LEVELLING,
        chart_hex="#d97a2b",
        solubility_g_per_l=80,
    ),
    DemoDye(
        name="Peat",
        dye_class=DyeClass.METAL_COMPLEX_1_2,
        chart_hex="#6a4f3c",
        solubility_g_per_l=30,
        hazard_words="May cause an allergic skin reaction",
    ),
    DemoDye(
        name="Primrose",
        dye_class=DyeClass.SUPER_MILLING,
        chart_hex="#e9dd6e",
        solubility_g_per_l=20,
        is_mix_fresh=True,
    ),
    DemoDye(
        name="Rosehip",
        dye_class=DyeClass.LEVELLING,
        chart_hex="#b3342f",
        solubility_g_per_l=70,
    ),
    DemoDye(
        name="Slate",
        dye_class=DyeClass.LEVELLING,
        chart_hex="#617485",
        solubility_g_per_l=90,
    ),
    DemoDye(
        name="Sloe",
        dye_class=DyeClass.MILLING,
        chart_hex="#37496d",
        solubility_g_per_l=35,
    ),
)


def _bases() -> tuple[Base, ...]:
    return (
        Base(
            name="Byre DK",
            fibres="100 % wool",
            skein_g=100,
            metres_per_100_g=220,
        ),
        Base(
            name="Drift lace",
            fibres="70 % wool, 30 % silk",
            skein_g=50,
            metres_per_100_g=800,
        ),
        Base(
            name="Hollow 4-ply",
            fibres="75 % wool, 25 % nylon",
            is_superwash=True,
            skein_g=100,
            metres_per_100_g=420,
        ),
        Base(
            name="Stile tweed",
            fibres="85 % wool, 15 % viscose",
            undyeable_percent=15,
            skein_g=50,
            metres_per_100_g=250,
        ),
    )


def _auxiliaries() -> tuple[Auxiliary, ...]:
    return (
        Auxiliary(name="Citric acid, anhydrous", kind=AuxiliaryKind.ACID),
        Auxiliary(
            name="White vinegar",
            kind=AuxiliaryKind.ACID,
            is_liquid=True,
            strength_g_per_100_ml=5,
        ),
        Auxiliary(name="Ammonium sulphate", kind=AuxiliaryKind.ACID_SALT),
        Auxiliary(name="Glauber’s salt, anhydrous", kind=AuxiliaryKind.SALT),
        Auxiliary(name="Levelling agent", kind=AuxiliaryKind.LEVELLER, is_liquid=True),
        Auxiliary(name="Wetting soap", kind=AuxiliaryKind.WETTER, is_liquid=True),
    )


def _tools() -> tuple[MeasuringTool, ...]:
    return (
        MeasuringTool(name="Bench scale", kind=ToolKind.BALANCE, readability=0.1),
        MeasuringTool(name="Yarn scale", kind=ToolKind.BALANCE, readability=1),
        MeasuringTool(
            name="Tall cylinder",
            kind=ToolKind.CYLINDER,
            size=500,
            tool_class="B",
            standard="ISO 4788",
        ),
        MeasuringTool(
            name="Small cylinder",
            kind=ToolKind.CYLINDER,
            size=100,
            tool_class="B",
            standard="ISO 4788",
        ),
        MeasuringTool(name="Big syringe", kind=ToolKind.SYRINGE, size=20),
        MeasuringTool(name="Small syringe", kind=ToolKind.SYRINGE, size=5),
        MeasuringTool(name="Heat-proof beaker", kind=ToolKind.BEAKER, size=1000),
    )


def found(calendar: Calendar) -> dict[str, int]:
    """Found the studio with its people; return their numbers by name."""
    found_studio(
        name="Thornbank Dye Room",
        person="Ines",
        water="Tap, 180 mg/l hard",
        is_demo=True,
    )
    Studio.objects.update(created_at=calendar.stamp(1, days_ago=300).at)
    add_person("Tam")
    return {person.name: person.id for person in people()}


def fill_catalogue(calendar: Calendar, by: int) -> dict[str, int]:
    """Write down all that the studio owns; return the dyes' numbers by name."""
    stamp = calendar.stamp(by, days_ago=260, clock="09:00")
    items = (*_dyes(), *_bases(), *_auxiliaries(), *_tools())
    for item in items:
        item.notes = NOTE
        keep_item(item, stamp)
    _receive_yarn(calendar, by)
    return dict(Dye.objects.values_list("name", "id"))


def _dyes() -> Iterator[Dye]:
    for dye in DYES:
        yield Dye(
            name=dye.name,
            dye_class=dye.dye_class,
            is_metal_complex=dye.dye_class == DyeClass.METAL_COMPLEX_1_2,
            solubility_g_per_l=dye.solubility_g_per_l,
            solubility_at_c=25,
            solubility_source="invented, as if from the seller’s data sheet",
            is_mix_fresh=dye.is_mix_fresh,
            hazard_words=dye.hazard_words,
            chart_hex=dye.chart_hex,
        )


def _receive_yarn(calendar: Calendar, by: int) -> None:
    for number, base in enumerate(Base.objects.order_by("name")):
        MillLot.objects.create(
            base=base,
            lot=f"ML-{4120 + 37 * number}",
            received_on=calendar.day(120 - 20 * number),
            received_g=5000 - 1000 * number,
            notes=NOTE,
            created_by_id=by,
        )
