"""The demo's colourways: invented names, why each changed, and one old recipe."""

from dataclasses import dataclass, field
from functools import partial
from typing import TypedDict

from shadewright.core.baths import Leg
from shadewright.core.solutions.keeping import Purpose
from shadewright.records.models.recipes import AmountUnit, When
from shadewright.records.writes import Stamp
from shadewright.workflows.demo.calendar import Happening
from shadewright.workflows.demo.house import House
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText
from shadewright.workflows.recipes import (
    retire_recipe,
    version,
    write_recipe,
    write_version,
)

Helper = tuple[str, float, When]

_FOR_LEVELLING: tuple[Helper, ...] = (
    ("Glauber’s salt, anhydrous", 10.0, When.START),
    ("Citric acid, anhydrous", 3.0, When.AFTER_DYE),
)
_FOR_HALF_MILLING: tuple[Helper, ...] = (
    ("Citric acid, anhydrous", 1.0, When.AFTER_DYE),
)
_FOR_MILLING: tuple[Helper, ...] = (
    ("Levelling agent", 1.0, When.START),
    ("Ammonium sulphate", 4.0, When.AFTER_DYE),
)
_FOR_METAL_COMPLEX: tuple[Helper, ...] = (("Ammonium sulphate", 3.0, When.AFTER_DYE),)


class Notes(TypedDict, total=False):
    """What a version says in words beside its numbers."""

    ties: str
    stirring: str
    look_at_15: str
    notes: str


@dataclass(frozen=True, kw_only=True)
class Written:
    """A version of a colourway and the day on which it was written."""

    name: str
    days_ago: int
    doses: dict[str, float]
    helpers: tuple[Helper, ...]
    why_changed: str = ""
    top_c: float = 95.0
    hold_min: float = 40.0
    rise_c_per_min: float = 1.0
    liquor_ratio: float = 30.0
    stops: tuple[Leg, ...] = ()
    purpose: Purpose = Purpose.USUAL
    notes: Notes = field(default_factory=Notes)


_LOOSE: Notes = {
    "ties": "four loose figures of eight",
    "stirring": "Turn the yarn gently.",
}
_STOP_AT_70 = (Leg(to_c=70.0, rise_c_per_min=0.8, hold_min=15.0),)

COLOURWAYS = (
    Written(
        name="Low Tide",
        days_ago=112,
        doses={"Lagoon": 0.5, "Kelp": 0.25},
        helpers=_FOR_HALF_MILLING,
        notes=_LOOSE | {"look_at_15": "The bath is still green-blue, the yarn even?"},
    ),
    Written(
        name="Low Tide",
        days_ago=72,
        doses={"Lagoon": 0.42, "Kelp": 0.36},
        helpers=_FOR_HALF_MILLING,
        why_changed="Read too blue beside the sample: less Lagoon, more Kelp.",
        notes=_LOOSE | {"look_at_15": "The bath is still green-blue, the yarn even?"},
    ),
    Written(
        name="Low Tide",
        days_ago=30,
        doses={"Lagoon": 0.42, "Kelp": 0.36},
        helpers=(("Citric acid, anhydrous", 1.0, When.TWO_HALVES),),
        why_changed="Patchy twice: the acid now goes in in two halves.",
        notes=_LOOSE | {"look_at_15": "Even? If not, turn the heat down and wait."},
    ),
    Written(
        name="Rosehip Lane",
        days_ago=111,
        doses={"Rosehip": 0.9, "Marigold": 0.3},
        helpers=_FOR_LEVELLING,
        hold_min=45.0,
        notes=_LOOSE | {"look_at_15": "The bath looks orange: red goes on first."},
    ),
    Written(
        name="Rosehip Lane",
        days_ago=51,
        doses={"Rosehip": 1.05, "Marigold": 0.3},
        helpers=_FOR_LEVELLING,
        hold_min=45.0,
        purpose=Purpose.MUST_REPEAT,
        why_changed="A new jar of Rosehip dyes paler on Byre DK; the shop reorders it.",
        notes=_LOOSE | {"look_at_15": "The bath looks orange: red goes on first."},
    ),
    Written(
        name="Kingcup",
        days_ago=110,
        doses={"Gorse": 1.1, "Marigold": 0.15},
        helpers=_FOR_LEVELLING,
        notes=_LOOSE | {"look_at_15": "Yellow hides patches: hold it to the window."},
    ),
    Written(
        name="Kingcup",
        days_ago=44,
        doses={"Gorse": 1.1, "Marigold": 0.15},
        helpers=_FOR_LEVELLING,
        rise_c_per_min=0.8,
        why_changed="Streaks at the ties: heat it more slowly.",
        notes=_LOOSE | {"look_at_15": "Yellow hides patches: hold it to the window."},
    ),
    Written(
        name="Bramble Grey",
        days_ago=109,
        doses={"Bramble": 0.2, "Sloe": 0.12},
        helpers=_FOR_MILLING,
        rise_c_per_min=0.8,
        notes={"stirring": "Every five minutes until it simmers."},
    ),
    Written(
        name="Bramble Grey",
        days_ago=65,
        doses={"Bramble": 0.16, "Sloe": 0.12},
        helpers=_FOR_MILLING,
        rise_c_per_min=0.8,
        why_changed="Too purple in daylight.",
        notes={"stirring": "Every five minutes until it simmers."},
    ),
    Written(
        name="Bramble Grey",
        days_ago=23,
        doses={"Bramble": 0.14, "Sloe": 0.12, "Heather": 0.05},
        helpers=_FOR_MILLING,
        rise_c_per_min=0.7,
        stops=_STOP_AT_70,
        why_changed="A little Heather warms it; a stop at 70 °C, greys show all.",
        notes={"stirring": "Every five minutes until it simmers."},
    ),
    Written(
        name="Night Hedge",
        days_ago=100,
        doses={"Bramble": 0.9, "Sloe": 0.6},
        helpers=_FOR_MILLING,
        hold_min=50.0,
        rise_c_per_min=0.8,
        notes={"notes": "Deep: three rinses at the least, and a bleed test."},
    ),
    Written(
        name="Millrace",
        days_ago=104,
        doses={"Slate": 0.6, "Gorse": 0.1},
        helpers=_FOR_LEVELLING,
        notes=_LOOSE,
    ),
    Written(
        name="Millrace",
        days_ago=37,
        doses={"Slate": 0.6, "Gorse": 0.07},
        helpers=_FOR_LEVELLING,
        why_changed="Gorse from the new jar is stronger; the yarn read green.",
        notes=_LOOSE,
    ),
    Written(
        name="Foxglove Bank",
        days_ago=103,
        doses={"Foxglove": 0.7},
        helpers=(("White vinegar", 1.5, When.AFTER_DYE),),
        top_c=90.0,
        notes={"notes": "On Drift lace no hotter than 85 °C, for the silk."},
    ),
    Written(
        name="Peat Smoke",
        days_ago=102,
        doses={"Peat": 0.5, "Coal": 0.15},
        helpers=_FOR_METAL_COMPLEX,
        rise_c_per_min=0.8,
        notes={"look_at_15": "Clear already? Then it went on too fast."},
    ),
    Written(
        name="Peat Smoke",
        days_ago=58,
        doses={"Peat": 0.45, "Coal": 0.22},
        helpers=_FOR_METAL_COMPLEX,
        rise_c_per_min=0.8,
        stops=_STOP_AT_70,
        why_changed="The shop asked for it smokier; held at 70 °C on the way.",
        notes={"look_at_15": "Clear already? Then it went on too fast."},
    ),
    Written(
        name="Seaglass",
        days_ago=90,
        doses={"Kelp": 0.08},
        helpers=(("White vinegar", 0.5, When.AT_TOP),),
        rise_c_per_min=0.6,
        purpose=Purpose.PLAY,
        notes={"notes": "Very pale: warm the pot before the yarn goes in."},
    ),
    Written(
        name="Primrose Path",
        days_ago=53,
        doses={"Primrose": 0.4},
        helpers=(("Ammonium sulphate", 3.0, When.AFTER_DYE),),
        notes={"notes": "Primrose settles when it cools: make it for the day."},
    ),
)

OLD_RECIPE = RecipeText(
    doses=(
        DoseLine(as_written="3 tsp of my blue"),
        DoseLine(as_written="1 tsp of the green, heaped"),
    ),
    liquor_ratio=None,
    as_written=(
        "Harbour. 4 skeins. 3 tsp of my blue, 1 of the green, heaped. "
        "A glug of vinegar. Simmer till it is clear."
    ),
    notes="From the old notebook. Nobody knows how strong that blue was.",
)


def write_recipes(house: House) -> None:
    """Write every version on its day, and take the old recipe in as it is."""
    for written in COLOURWAYS:
        at = house.diary.at(written.days_ago, "20:15")
        house.diary.note(at, house.ines, _writing(house, written))
    at = house.diary.at(85, "20:40")
    house.diary.note(at, house.tam, _take_in_the_old_one)
    at = house.diary.at(13, "20:30")
    house.diary.note(at, house.ines, partial(_retire, house, "Primrose Path"))


def _retire(house: House, name: str, stamp: Stamp) -> None:
    del stamp
    version_id = house.versions[name]
    retire_recipe(recipe_id=version(version_id).recipe_id)


def _take_in_the_old_one(stamp: Stamp) -> None:
    write_recipe(name="Harbour Blue", text=OLD_RECIPE, stamp=stamp)


def _writing(house: House, written: Written) -> Happening:
    def write(stamp: Stamp) -> None:
        text = _text(house, written)
        parent_id = house.versions.get(written.name)
        if parent_id is None:
            made = write_recipe(name=written.name, text=text, stamp=stamp)
        else:
            made = write_version(parent_id=parent_id, text=text, stamp=stamp)
        house.versions[written.name] = made.id
        house.doses[written.name] = written.doses
        house.purposes[written.name] = written.purpose

    return write


def _text(house: House, written: Written) -> RecipeText:
    return RecipeText(
        doses=tuple(
            DoseLine(dye_id=house.dyes[dye], dye_name=dye, depth_percent=depth)
            for dye, depth in written.doses.items()
        ),
        helpers=tuple(
            HelperLine(
                auxiliary_id=house.helpers[name],
                amount=amount,
                unit=AmountUnit.ON_FIBRE,
                when=when,
            )
            for name, amount, when in written.helpers
        ),
        liquor_ratio=written.liquor_ratio,
        start_c=35.0,
        rise_c_per_min=written.rise_c_per_min,
        top_c=written.top_c,
        hold_min=written.hold_min,
        stops=written.stops,
        purpose=written.purpose,
        why_changed=written.why_changed,
        **written.notes,
    )
