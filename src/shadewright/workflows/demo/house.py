"""What the chapters of the demo share: its diary, and what stands where."""

from dataclasses import dataclass, field

from shadewright.core.solutions.keeping import Purpose
from shadewright.records.models import (
    Auxiliary,
    Base,
    Dye,
    HeatSource,
    MeasuringTool,
    Pot,
    Water,
)
from shadewright.workflows.demo.calendar import Diary
from shadewright.workflows.people import people
from shadewright.workflows.shades.wanted import Wanted

NOTE = "Invented for the demo studio."


@dataclass(kw_only=True)
class House:
    """The studio while its story is told: numbers and codes by name."""

    diary: Diary
    people: dict[str, int] = field(default_factory=dict)
    dyes: dict[str, int] = field(default_factory=dict)
    bases: dict[str, int] = field(default_factory=dict)
    helpers: dict[str, int] = field(default_factory=dict)
    pots: dict[str, int] = field(default_factory=dict)
    tools: dict[str, int] = field(default_factory=dict)
    burners: dict[str, int] = field(default_factory=dict)
    waters: dict[str, int] = field(default_factory=dict)
    mill_lots: dict[int, int] = field(default_factory=dict)
    jars: dict[str, int] = field(default_factory=dict)
    bottles: dict[str, str] = field(default_factory=dict)
    versions: dict[str, int] = field(default_factory=dict)
    doses: dict[str, dict[str, float]] = field(default_factory=dict)
    purposes: dict[str, Purpose] = field(default_factory=dict)
    meters: dict[str, int] = field(default_factory=dict)
    swatches: dict[int, int] = field(default_factory=dict)
    wanted: dict[str, Wanted] = field(default_factory=dict)

    @property
    def ines(self) -> int:
        """The number of Ines, who founded the studio."""
        return self.people["Ines"]

    @property
    def tam(self) -> int:
        """The number of Tam, who helps."""
        return self.people["Tam"]

    def look_round(self) -> None:
        """Learn the numbers of what has been written down."""
        self.people = {person.name: person.id for person in people()}
        self.dyes = dict(Dye.objects.values_list("name", "id"))
        self.bases = dict(Base.objects.values_list("name", "id"))
        self.helpers = dict(Auxiliary.objects.values_list("name", "id"))
        self.pots = dict(Pot.objects.values_list("name", "id"))
        self.tools = dict(MeasuringTool.objects.values_list("name", "id"))
        self.burners = dict(HeatSource.objects.values_list("name", "id"))
        self.waters = dict(Water.objects.values_list("name", "id"))
