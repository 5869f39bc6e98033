"""A few things on the shelf, put there as the dyer does."""

from shadewright.records.models import Dye
from shadewright.workflows.bottles import enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import receive_jar
from shadewright.workflows.people import add_person
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.stamps import Stamp, stamp_now
from shadewright.workflows.stocks import make_stock
from shadewright.workflows.studio import found_studio


def now() -> Stamp:
    """Return a stamp of nobody, now, with a key of its own."""
    return stamp_now(by=None)


def founded() -> None:
    """Found a studio with two people in it."""
    found_studio(name="Low Tide", person="Ines", water="Tap")
    add_person("Tam")


def new_dye(name: str = "Slate") -> int:
    """Return a dye's number."""
    return Dye.objects.create(name=name).pk


def new_jar(
    dye_id: int, *, powder_g: float = 100.0, strength_percent: float = 100.0
) -> int:
    """Return a jar's number."""
    return receive_jar(
        dye_id=dye_id, powder_g=powder_g, strength_percent=strength_percent, stamp=now()
    ).id


def entered(
    dye_id: int, *, volume_ml: float = 500.0, strength_percent: float = 1.0
) -> ShelfBottle:
    """Return a bottle that stood on the shelf already."""
    return enter_bottle(
        dye_id=dye_id,
        strength_percent=strength_percent,
        volume_ml=volume_ml,
        stamp=now(),
        about=Particulars(),
    )


def made(
    dye_id: int,
    jar_id: int | None = None,
    *,
    powder_g: float = 5.0,
    final_ml: float = 500.0,
    stamp: Stamp | None = None,
) -> ShelfBottle:
    """Return a bottle made from powder."""
    return make_stock(
        dye_id=dye_id,
        jar_id=jar_id,
        wanted_percent=1.0,
        powder_g=powder_g,
        final_ml=final_ml,
        stamp=stamp or now(),
    )


def dye_g(bottle: ShelfBottle) -> float:
    """Return the dye in a bottle, in grams."""
    return bottle.volume_ml * bottle.strength_percent / 100
