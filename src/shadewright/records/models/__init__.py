"""The tables, in the order in which they lean on each other."""

from shadewright.records.models.baths import Bath, BathDose, BathLine, Pot
from shadewright.records.models.catalogue import (
    Auxiliary,
    Base,
    CatalogueVersion,
    Dye,
    HeatSource,
    MeasuringTool,
    MillLot,
    Water,
)
from shadewright.records.models.devices import Device, PairingCode, PairingTry
from shadewright.records.models.ledgers import BottleLine, JarLine, ToolCheck
from shadewright.records.models.lots import Lot, LotLine
from shadewright.records.models.people import Person, Studio
from shadewright.records.models.recipes import (
    Recipe,
    RecipeAuxiliary,
    RecipeDose,
    RecipePart,
    RecipeVersion,
)
from shadewright.records.models.shelf import PowderJar, StockBottle, StockMaking

__all__ = [
    "Auxiliary",
    "Base",
    "Bath",
    "BathDose",
    "BathLine",
    "BottleLine",
    "CatalogueVersion",
    "Device",
    "Dye",
    "HeatSource",
    "JarLine",
    "Lot",
    "LotLine",
    "MeasuringTool",
    "MillLot",
    "PairingCode",
    "PairingTry",
    "Person",
    "Pot",
    "PowderJar",
    "Recipe",
    "RecipeAuxiliary",
    "RecipeDose",
    "RecipePart",
    "RecipeVersion",
    "StockBottle",
    "StockMaking",
    "Studio",
    "ToolCheck",
    "Water",
]
