"""The tables, in the order in which they lean on each other."""

from shadewright.records.models.baths import Bath, BathDose, BathLine, Pot
from shadewright.records.models.catalogue import (
    Auxiliary,
    Base,
    CatalogueVersion,
    Circuit,
    Dye,
    HeatSource,
    MeasuringTool,
    MillLot,
    Water,
)
from shadewright.records.models.days import (
    DayLine,
    DayOutage,
    DayPresence,
    DaySchedule,
    DayWish,
    DyeDay,
    DyeRoom,
)
from shadewright.records.models.devices import Device, PairingCode, PairingTry
from shadewright.records.models.judging import (
    DryCheck,
    FastnessTest,
    Standard,
    Tolerances,
    ToneBand,
)
from shadewright.records.models.ledgers import BottleLine, JarLine, ToolCheck
from shadewright.records.models.lots import Lot, LotLine
from shadewright.records.models.orders import BathFor, Order, OrderLine, ParLevel
from shadewright.records.models.palettes import FoundFor, PaletteFit, Prediction
from shadewright.records.models.people import Person, Studio
from shadewright.records.models.recipes import (
    Recipe,
    RecipeAuxiliary,
    RecipeDose,
    RecipePart,
    RecipeVersion,
)
from shadewright.records.models.selling import (
    Complaint,
    Correction,
    Maker,
    SkeinsOut,
    TagRegion,
    TagText,
)
from shadewright.records.models.shelf import PowderJar, StockBottle, StockMaking
from shadewright.records.models.swatches import (
    ColourReading,
    EvidenceLine,
    Meter,
    Swatch,
    SwatchDose,
    SwatchPlan,
    WantedColour,
)

__all__ = [
    "Auxiliary",
    "Base",
    "Bath",
    "BathDose",
    "BathFor",
    "BathLine",
    "BottleLine",
    "CatalogueVersion",
    "Circuit",
    "ColourReading",
    "Complaint",
    "Correction",
    "DayLine",
    "DayOutage",
    "DayPresence",
    "DaySchedule",
    "DayWish",
    "Device",
    "DryCheck",
    "Dye",
    "DyeDay",
    "DyeRoom",
    "EvidenceLine",
    "FastnessTest",
    "FoundFor",
    "HeatSource",
    "JarLine",
    "Lot",
    "LotLine",
    "Maker",
    "MeasuringTool",
    "Meter",
    "MillLot",
    "Order",
    "OrderLine",
    "PairingCode",
    "PairingTry",
    "PaletteFit",
    "ParLevel",
    "Person",
    "Pot",
    "PowderJar",
    "Prediction",
    "Recipe",
    "RecipeAuxiliary",
    "RecipeDose",
    "RecipePart",
    "RecipeVersion",
    "SkeinsOut",
    "Standard",
    "StockBottle",
    "StockMaking",
    "Studio",
    "Swatch",
    "SwatchDose",
    "SwatchPlan",
    "TagRegion",
    "TagText",
    "Tolerances",
    "ToneBand",
    "ToolCheck",
    "WantedColour",
    "Water",
]
