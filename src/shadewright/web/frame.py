"""What stands around every page: the menu of places and who is at the bench."""

from dataclasses import dataclass

from django.conf import settings
from django.http import HttpRequest

from shadewright.workflows.people import Person, people

_SESSION_KEY = "person"


@dataclass(frozen=True, kw_only=True)
class Place:
    """An entry of the one menu."""

    name: str
    address: str
    icon: str


PLACES = (
    Place(name="Today", address="/", icon="today"),
    Place(name="Shelf", address="/shelf/", icon="shelf"),
    Place(name="Shades", address="/shades/", icon="shades"),
    Place(name="Recipes", address="/recipes/", icon="recipe"),
    Place(name="Dye days", address="/days/", icon="days"),
    Place(name="Lots", address="/lots/", icon="yarn"),
)


@dataclass(frozen=True, kw_only=True)
class Frame:
    """Everything that the base template may use beside its page."""

    is_demo: bool
    address: str
    places: tuple[Place, ...] = PLACES
    people: tuple[Person, ...] = ()
    person: Person | None = None


def frame(request: HttpRequest) -> dict[str, Frame]:
    """Give every template its frame (a context processor)."""
    everybody = people()
    return {
        "frame": Frame(
            is_demo=settings.IS_DEMO,
            address=request.path,
            people=everybody,
            person=_chosen(request, everybody),
        )
    }


def bare_frame() -> Frame:
    """Return a frame that asks nothing of the database."""
    return Frame(is_demo=settings.IS_DEMO, address="")


def person_at_bench(request: HttpRequest) -> Person | None:
    """Return who works here now: as chosen, or the only one there is."""
    return _chosen(request, people())


def person_id(request: HttpRequest) -> int | None:
    """Return the number of whoever is at the bench, as a stamp wants it."""
    person = person_at_bench(request)
    return None if person is None else person.id


def seat(request: HttpRequest, person: Person) -> None:
    """Remember in this browser who is at the bench."""
    request.session[_SESSION_KEY] = str(person.id)


def _chosen(request: HttpRequest, everybody: tuple[Person, ...]) -> Person | None:
    if len(everybody) == 1:
        return everybody[0]
    chosen = request.session.get(_SESSION_KEY)
    return next((one for one in everybody if str(one.id) == chosen), None)
