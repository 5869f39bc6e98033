"""The tables, in the order in which they lean on each other."""

from shadewright.records.models.catalogue import (
    Auxiliary,
    Base,
    CatalogueVersion,
    Dye,
    MeasuringTool,
    MillLot,
)
from shadewright.records.models.devices import Device, PairingCode, PairingTry
from shadewright.records.models.ledgers import BottleLine, JarLine
from shadewright.records.models.people import Person, Studio
from shadewright.records.models.shelf import PowderJar, StockBottle, StockMaking

__all__ = [
    "Auxiliary",
    "Base",
    "BottleLine",
    "CatalogueVersion",
    "Device",
    "Dye",
    "JarLine",
    "MeasuringTool",
    "MillLot",
    "PairingCode",
    "PairingTry",
    "Person",
    "PowderJar",
    "StockBottle",
    "StockMaking",
    "Studio",
]
