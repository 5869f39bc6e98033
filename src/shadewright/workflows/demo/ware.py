"""What the demo measures and heats with: tools and their checks, burners, waters."""

from decimal import Decimal

from shadewright.core.baths.heating import heat_kwh
from shadewright.records.models import Bath, Circuit, HeatSource, MeasuringTool, Water
from shadewright.records.models.catalogue import CatalogueItem, SourceKind, ToolKind
from shadewright.records.writes import Stamp
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.house import NOTE, House
from shadewright.workflows.heat_ups import load_of
from shadewright.workflows.stamps import today
from shadewright.workflows.tool_checks import check_with_water, check_with_weight
from shadewright.workflows.usual_tools import set_usual_tools
from shadewright.workflows.waters import make_usual

TAP, RAIN = "Tap", "Rain butt"
STANDS_ON = {
    "Big kettle": "Gas ring",
    "Middle kettle": "Induction plate",
    "Small kettle": "Old hot plate",
    "Swatch jars": "Old hot plate",
}
"""Which pot stands on which burner."""

ARRIVES = {"Gas ring": 0.31, "Induction plate": 0.86, "Old hot plate": 0.71}
"""What really reaches the pots; the studio can only find it out by the clock."""

_BY_ISO = {"kind": ToolKind.CYLINDER, "standard": "ISO"}


def write_down_ware(stamp: Stamp) -> None:
    """Write down the waters, the burners and the tools."""
    wall, window = _circuits()
    for item in (wall, window, *_waters(), *_burners(wall, window), *_tools()):
        item.notes = item.notes or NOTE
        keep_item(item, stamp)


def put_tools_in_order(house: House) -> None:
    """Write down when the tools got their jobs, and when two were checked."""
    at, note = house.diary.at, house.diary.note
    note(at(98, "18:10"), house.ines, lambda _: _set_usual(house))
    note(at(98, "18:20"), house.ines, lambda stamp: _check_scale(house, stamp))
    note(at(98, "18:40"), house.tam, lambda stamp: _check_cylinder(house, stamp))


def full_power_min(number: str) -> float:
    """Return what the way to the top takes a bath at full power, in truth."""
    bath = Bath.objects.select_related("pot", "source", "version").get(number=number)
    start_c, top_c = bath.version.start_c, bath.version.top_c
    if bath.pot is None or bath.source is None or start_c is None or top_c is None:
        return 0.0
    load = load_of(bath.pot, fibre_g=bath.fibre_g, liquor_ml=bath.liquor_ml)
    energy_kwh = heat_kwh(load=load, start_c=start_c, top_c=top_c)
    return 60 * energy_kwh / (bath.source.power_kw * ARRIVES[bath.source.name])


def _set_usual(house: House) -> None:
    set_usual_tools(
        powder_scale=house.tools["Bench scale"],
        yarn_scale=house.tools["Yarn scale"],
        fill_tool=house.tools["Tall cylinder"],
        dose_tool=house.tools["Small cylinder"],
    )
    make_usual(house.waters[TAP])


def _check_scale(house: House, stamp: Stamp) -> None:
    check_with_weight(
        tool_id=house.tools["Bench scale"],
        nominal_g=100.0,
        tolerance_g=0.005,
        readings_g=[100.1, 100.0, 100.1],
        note="the 100 g weight of the set",
        stamp=stamp,
    )


def _check_cylinder(house: House, stamp: Stamp) -> None:
    check_with_water(
        tool_id=house.tools["Tall cylinder"],
        nominal_ml=500.0,
        readings_g=[497.6, 498.1, 497.8],
        scale_id=house.tools["Bench scale"],
        temperature_c=19.0,
        note="filled and emptied three times",
        stamp=stamp,
    )


def _waters() -> tuple[CatalogueItem, ...]:
    return (
        Water(
            name=TAP,
            alkalinity_mg_per_l=65,
            hardness_mg_per_l=80,
            ph=7.4,
            tested_on=today(),
        ),
        Water(name=RAIN, alkalinity_mg_per_l=6, hardness_mg_per_l=5),
    )


def _circuits() -> tuple[Circuit, Circuit]:
    return (
        Circuit(name="Long wall", limit_kw=5.5),
        Circuit(name="By the window", limit_kw=3.6),
    )


def _burners(wall: Circuit, window: Circuit) -> tuple[CatalogueItem, ...]:
    return (
        HeatSource(name="Gas ring", kind=SourceKind.GAS, power_kw=2.2),
        HeatSource(
            name="Induction plate",
            kind=SourceKind.INDUCTION,
            power_kw=3.5,
            circuit=wall,
        ),
        HeatSource(
            name="Old hot plate", kind=SourceKind.COIL, power_kw=1.5, circuit=wall
        ),
        HeatSource(
            name="Small plate",
            kind=SourceKind.INDUCTION,
            power_kw=1.8,
            circuit=window,
        ),
        HeatSource(
            name="Tray steamer",
            kind=SourceKind.STEAMER,
            power_kw=2.4,
            circuit=window,
            room_g=600,
        ),
    )


def _tools() -> tuple[CatalogueItem, ...]:
    return (
        MeasuringTool(
            name="Bench scale",
            kind=ToolKind.BALANCE,
            size=2000,
            readability=0.1,
            price=Decimal("26.00"),
        ),
        MeasuringTool(
            name="Yarn scale", kind=ToolKind.BALANCE, size=5000, readability=1
        ),
        MeasuringTool(name="Tall cylinder", size=500, tool_class="B", **_BY_ISO),
        MeasuringTool(name="Small cylinder", size=50, tool_class="A", **_BY_ISO),
        MeasuringTool(name="Big syringe", kind=ToolKind.SYRINGE, size=20),
        MeasuringTool(name="Small syringe", kind=ToolKind.SYRINGE, size=5),
        MeasuringTool(name="Heat-proof beaker", kind=ToolKind.BEAKER, size=1000),
        MeasuringTool(
            name="Pot thermometer",
            kind=ToolKind.THERMOMETER,
            size=110,
            readability=1,
        ),
    )
