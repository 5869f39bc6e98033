"""The demo's dyes, their data sheets and their jars. Every name is invented."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from django.core.files.base import ContentFile
from django.utils.text import slugify

from shadewright.paper.invented_sheet import invented_sheet_pdf
from shadewright.records.models import Dye
from shadewright.records.models.catalogue import DyeClass
from shadewright.records.writes import Stamp
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.calendar import Happening
from shadewright.workflows.demo.house import NOTE, House
from shadewright.workflows.jars import receive_jar
from shadewright.workflows.stamps import today


@dataclass(frozen=True, kw_only=True)
class DemoDye:
    """A dye of the demo: what its jar and its data sheet would say."""

    name: str
    dye_class: DyeClass
    chart_hex: str
    solubility_g_per_l: float
    jar_g: float = 100
    is_mix_fresh: bool = False
    hazard_words: str = ""
    has_sheet: bool = True


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
        jar_g=250,
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
        jar_g=6,
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
        jar_g=50,
        is_mix_fresh=True,
        has_sheet=False,
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
        jar_g=50,
    ),
    DemoDye(
        name="Sloe",
        dye_class=DyeClass.MILLING,
        chart_hex="#37496d",
        solubility_g_per_l=35,
    ),
)
STRONGER = {"Rosehip": 110.0}
"""Powders that are not of 100 % strength."""


def write_down_dyes(stamp: Stamp) -> None:
    """Write down the dyes, each with its data sheet but one."""
    for dye in _rows():
        keep_item(dye, stamp)


def receive_jars(house: House) -> None:
    """Receive a jar of each dye, some days apart."""
    for number, dye in enumerate(DYES):
        at = house.diary.at(258 - number, "16:10")
        house.diary.note(at, house.ines, _receiving(house, number, dye))


def _receiving(house: House, number: int, dye: DemoDye) -> Happening:
    def receive(stamp: Stamp) -> None:
        jar = receive_jar(
            dye_id=house.dyes[dye.name],
            powder_g=dye.jar_g,
            lot=f"{chr(65 + number)}{3070 + 113 * number}",
            opened_on=today(),
            price=Decimal(dye.jar_g) * Decimal("0.24"),
            strength_percent=STRONGER.get(dye.name, 100.0),
            stamp=stamp,
        )
        house.jars[dye.name] = jar.id

    return receive


def _rows() -> Iterator[Dye]:
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
            data_sheet_file=_sheet(dye) if dye.has_sheet else "",
            chart_hex=dye.chart_hex,
            notes=NOTE,
        )


def _sheet(dye: DemoDye) -> "ContentFile[bytes]":
    content = invented_sheet_pdf(
        dye_name=dye.name, hazard_words=dye.hazard_words, printed_on=today()
    )
    return ContentFile(content, name=f"invented-{slugify(dye.name)}.pdf")
