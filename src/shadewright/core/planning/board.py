"""The board: what is taken so far, by person, pot, source, circuit and sink."""

from dataclasses import dataclass, field, replace

from shadewright.core.planning.day import Day, WantedBath
from shadewright.core.planning.fitting import room_of
from shadewright.core.planning.minutes import Minutes, first, last, span, starts
from shadewright.core.planning.ways import Way

_SPARE_KW = 1e-9


@dataclass(frozen=True, kw_only=True)
class Taken:
    """A span of somebody’s time, or of nobody’s where there is no one, in minutes."""

    person: int | None
    start: int
    length: int


@dataclass(kw_only=True)
class Stay:
    """A bath in a pot: from the filling to the rinse, which may not be fixed yet.

    ``washout`` is that of the pot before it; ``heat`` is when the heat starts. [min]
    """

    bath: int
    way: Way
    pot: int
    fill: Taken
    heat: int
    hands: tuple[Taken, ...]
    washout: Taken | None = None
    rinse: Taken | None = None
    sink: int | None = None

    def copied(self) -> "Stay":
        """Return the same stay, to be washed out and rinsed apart from this one."""
        return Stay(
            bath=self.bath,
            way=self.way,
            pot=self.pot,
            fill=self.fill,
            heat=self.heat,
            hands=self.hands,
            washout=self.washout,
            rinse=self.rinse,
            sink=self.sink,
        )

    @property
    def cooled(self) -> int:
        """When it may be rinsed, or was cool, in minutes."""
        return self.heat + self.way.cooled

    @property
    def checked(self) -> int:
        """When it was checked, in minutes."""
        return self.heat + self.way.block


@dataclass(kw_only=True)
class Board:
    """Everything that is taken; ``stays`` by pot in order of time.

    ``held`` are pots that were filled before the day was planned, with the bath whose
    heat is not on yet, and ``fillings`` what is left of their filling.
    """

    day: Day
    people: list[Minutes] = field(default_factory=list)
    sinks: list[Minutes] = field(default_factory=list)
    sources: list[Minutes] = field(default_factory=list)
    stays: list[list[Stay]] = field(default_factory=list)
    circuits: tuple[str, ...] = ()
    rooms: tuple[tuple[bool, float], ...] = ()
    pinned_sources: frozenset[str] = frozenset()
    rack: int = 0
    presence: Minutes = 0
    spots: int = 0
    held: dict[int, int] = field(default_factory=dict)
    fillings: dict[int, Taken] = field(default_factory=dict)
    _loads: dict[str, list[tuple[int, int, float]]] = field(default_factory=dict)
    _allowed: dict[tuple[str, float], Minutes] = field(default_factory=dict)
    _hands: dict[int, Minutes] = field(default_factory=dict)
    _unheated: dict[tuple[int, int | None], Minutes] = field(default_factory=dict)
    _manned: dict[int, Minutes] = field(default_factory=dict)

    @classmethod
    def empty(cls, day: Day) -> "Board":
        """Return the board of a day on which nothing is planned."""
        now = max(0, day.now)
        whole = span(now, end=day.length)
        people = [
            span(max(now, each.starts), end=min(each.ends, day.length))
            for each in day.people
        ]
        places = len(day.pots)
        places += len(day.baths) if any(x.is_steamed for x in day.baths) else 0
        presence = 0
        for each in people:
            presence |= each
        return cls(
            day=day,
            people=people,
            sinks=[whole] * day.sinks,
            sources=[
                whole if x.out_from is None else whole & span(0, end=x.out_from)
                for x in day.sources
            ],
            stays=[[] for _place in range(places)],
            circuits=tuple(each.circuit for each in day.sources),
            rooms=tuple(room_of(day, pot) for pot in range(places)),
            pinned_sources=frozenset(x.pin.source for x in day.baths if x.pin),
            rack=day.rack_slots - day.rack_used,
            presence=presence,
            _loads={each.name: [] for each in day.circuits},
        )

    def copied(self) -> "Board":
        """Return a board with the same on it, to be filled apart from this one."""
        return replace(
            self,
            people=list(self.people),
            sinks=list(self.sinks),
            sources=list(self.sources),
            stays=[[stay.copied() for stay in stays] for stays in self.stays],
            held=dict(self.held),
            fillings=dict(self.fillings),
            _loads={name: list(loads) for name, loads in self._loads.items()},
            _allowed=dict(self._allowed),
            _hands=dict(self._hands),
            _unheated=dict(self._unheated),
            _manned=dict(self._manned),
        )

    def hear_of_hands(self) -> None:
        """Forget when hands were free: somebody came, or left."""
        self._hands.clear()
        self._manned.clear()

    def manned(self, length: int) -> Minutes:
        """Return when somebody is in for a length of time, free or not."""
        found = self._manned.get(length)
        if found is None:
            found = self._manned[length] = starts(self.presence, length)
        return found

    def hear_of_circuits(self) -> None:
        """Forget when circuits and sources had room: there is more of it."""
        self._allowed.clear()
        self._unheated.clear()

    def hand_starts(self, length: int) -> Minutes:
        """Return when somebody is free for a length of time; any time for none."""
        if not length:
            return span(max(0, self.day.now), end=self.day.length + 1)
        found = self._hands.get(length)
        if found is None:
            found = 0
            for free in self.people:
                found |= starts(free, length)
            self._hands[length] = found
        return found

    def unheated(self, source: int, taken: int | None) -> Minutes:
        """Return from when on a source is free so long; None is to the day's end."""
        key = source, taken
        found = self._unheated.get(key)
        if found is None:
            free, end = self.sources[source], self.day.length
            if taken is None:
                found = span((~free & span(0, end=end)).bit_length(), end=end)
            else:
                found = starts(free, max(taken, 1))
            self._unheated[key] = found
        return found

    def allowed(self, circuit: str, power_kw: float, length: int) -> Minutes:
        """Return from when on a circuit carries a further power so long."""
        key = circuit, power_kw
        free = self._allowed.get(key)
        if free is None:
            free = self._allowed[key] = self._carries(circuit, power_kw)
        return starts(free, length)

    def _carries(self, circuit: str, power_kw: float) -> Minutes:
        limits = {each.name: each.limit_kw for each in self.day.circuits}
        room_kw = limits.get(circuit, float("inf")) - power_kw + _SPARE_KW
        whole = span(0, end=self.day.length)
        if room_kw < 0.0:
            return 0
        changes: dict[int, float] = {}
        for start, end, kw in self._loads.get(circuit, ()):
            changes[start] = changes.get(start, 0.0) + kw
            changes[end] = changes.get(end, 0.0) - kw
        load_kw, since = 0.0, 0
        for at in sorted(changes):
            if load_kw > room_kw:
                whole &= ~span(since, end=at)
            load_kw, since = load_kw + changes[at], at
        return whole

    def somebody(self, start: int, length: int) -> Taken | None:
        """Return the first person who is free for a span; nobody for no time."""
        wanted = span(start, end=start + length)
        for person, free in enumerate(self.people):
            if free & wanted == wanted:
                return Taken(person=person, start=start, length=length)
        return None

    def take(self, taken: Taken) -> None:
        """Write a span of somebody’s time down."""
        if taken.person is None:
            return
        self.people[taken.person] &= ~span(taken.start, end=taken.start + taken.length)
        self._hands.clear()

    def give_back(self, taken: Taken) -> None:
        """Free a span of somebody’s time."""
        if taken.person is None:
            return
        self.people[taken.person] |= span(taken.start, end=taken.start + taken.length)
        self._hands.clear()

    def heat(self, stay: Stay) -> None:
        """Write a source and its circuit down."""
        way, start = stay.way, max(0, stay.heat)
        end = self.day.length if way.taken is None else stay.heat + way.taken
        self.sources[way.source] &= ~span(start, end=end)
        for like in [like for like in self._unheated if like[0] == way.source]:
            del self._unheated[like]
        circuit, off = self.circuits[way.source], stay.heat + way.power
        if circuit and off > start:
            self._loads[circuit].append((start, off, way.power_kw))
            for key in [key for key in self._allowed if key[0] == circuit]:
                del self._allowed[key]

    def first_rinse(self, stay: Stay, length: int) -> tuple[int, int] | None:
        """Return when a bath can first be rinsed, and in which sink."""
        cooled = max(stay.cooled, self.day.now)
        if not length:
            return cooled, 0
        best: tuple[int, int] | None = None
        hands = self.hand_starts(length)
        for sink, free in enumerate(self.sinks):
            at = first(hands & starts(free, length), least=cooled)
            if at is not None and (best is None or at < best[0]):
                best = at, sink
        return best

    def last_fill(self, length: int, *, least: int, most: int) -> int | None:
        """Return when a filling may start at the latest, within bounds."""
        at = last(self.hand_starts(length), most=most)
        return at if at is not None and at >= least else None


def is_washed_between(before: WantedBath, after: WantedBath) -> bool:
    """Return whether a pot is washed out between two baths.

    Parameters
    ----------
    before, after : WantedBath
        Two baths, one after the other in one pot. [%]

    Returns
    -------
    bool
        True where the family changes or the next is paler. [-]
    """
    is_paler = after.depth_percent < before.depth_percent
    return after.family != before.family or is_paler
