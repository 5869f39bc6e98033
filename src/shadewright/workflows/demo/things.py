"""What the demo studio dyes, with and in. Every name is invented."""

from decimal import Decimal

from shadewright.records.models import Auxiliary, Base, MillLot, Pot
from shadewright.records.models.baths import PotMaterial
from shadewright.records.models.catalogue import AuxiliaryKind
from shadewright.records.writes import Stamp
from shadewright.workflows.catalogue import keep_item
from shadewright.workflows.demo.calendar import Happening
from shadewright.workflows.demo.house import NOTE, House
from shadewright.workflows.stamps import today


def write_down_things(stamp: Stamp) -> None:
    """Write down yarns, acids and helpers, and pots."""
    for item in (*_bases(), *_auxiliaries(), *_pots()):
        item.notes = item.notes or NOTE
        keep_item(item, stamp)


def receive_yarn(house: House) -> None:
    """Receive two deliveries of each yarn, months apart."""
    for number, name in enumerate(sorted(house.bases)):
        for later in (0, 1):
            at = house.diary.at(150 - 7 * number - 80 * later, "11:30")
            lot = f"ML-{4120 + 37 * number + 9 * later}"
            house.diary.note(at, house.ines, _receiving(house, name, lot))


def _receiving(house: House, name: str, lot: str) -> Happening:
    def receive(stamp: Stamp) -> None:
        base_id = house.bases[name]
        row = MillLot(
            base_id=base_id, lot=lot, received_on=today(), received_g=12000, notes=NOTE
        )
        keep_item(row, stamp)
        house.mill_lots[base_id] = row.pk

    return receive


def _bases() -> tuple[Base, ...]:
    return (
        Base(
            name="Byre DK",
            fibres="100 % wool",
            skein_g=100,
            metres_per_100_g=220,
            price_per_kg=Decimal("38.00"),
        ),
        Base(
            name="Drift lace",
            fibres="70 % wool, 30 % silk",
            skein_g=50,
            metres_per_100_g=800,
            price_per_kg=Decimal("96.00"),
        ),
        Base(
            name="Hollow 4-ply",
            fibres="75 % wool, 25 % nylon",
            is_superwash=True,
            skein_g=100,
            metres_per_100_g=420,
            price_per_kg=Decimal("44.50"),
        ),
        Base(
            name="Stile tweed",
            fibres="85 % wool, 15 % viscose",
            undyeable_percent=15,
            skein_g=50,
            metres_per_100_g=250,
            price_per_kg=Decimal("41.00"),
        ),
    )


def _auxiliaries() -> tuple[Auxiliary, ...]:
    return (
        Auxiliary(
            name="Citric acid, anhydrous",
            kind=AuxiliaryKind.ACID,
            price_per_kg=Decimal("6.80"),
            hazard_words="Irritates eyes",
        ),
        Auxiliary(
            name="White vinegar",
            kind=AuxiliaryKind.ACID,
            is_liquid=True,
            strength_g_per_100_ml=5,
            price_per_kg=Decimal("1.20"),
        ),
        Auxiliary(
            name="Ammonium sulphate",
            kind=AuxiliaryKind.ACID_SALT,
            price_per_kg=Decimal("7.50"),
        ),
        Auxiliary(
            name="Glauber’s salt, anhydrous",
            kind=AuxiliaryKind.SALT,
            price_per_kg=Decimal("4.10"),
        ),
        Auxiliary(
            name="Levelling agent",
            kind=AuxiliaryKind.LEVELLER,
            is_liquid=True,
            price_per_kg=Decimal("14.00"),
        ),
        Auxiliary(
            name="Wetting soap",
            kind=AuxiliaryKind.WETTER,
            is_liquid=True,
            price_per_kg=Decimal("9.00"),
        ),
    )


def _pots() -> tuple[Pot, ...]:
    return (
        Pot(name="Big kettle", volume_l=30, mass_kg=4.5),
        Pot(name="Middle kettle", volume_l=20, mass_kg=3.2),
        Pot(name="Tall kettle", volume_l=20, mass_kg=3.4),
        Pot(
            name="Small kettle",
            volume_l=12,
            mass_kg=2.4,
            material=PotMaterial.ENAMEL,
            notes=f"{NOTE} A chip in the rim.",
        ),
        Pot(
            name="Swatch jars",
            volume_l=1,
            mass_kg=0.4,
            material=PotMaterial.GLASS,
            notes=f"{NOTE} Six of them, in a water bath.",
        ),
    )
