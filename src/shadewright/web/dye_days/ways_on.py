"""What a day lacks, each with the one thing to do about it."""

from collections.abc import Iterator

from django.urls import reverse

from shadewright.web.dye_days.pages import WayOn
from shadewright.web.parts import Caution
from shadewright.web.ways import way_round
from shadewright.workflows.days.day_now import DayNow


def ways_on(day: DayNow) -> tuple[WayOn, ...]:
    """Return what must be there before the day can be planned."""
    return () if day.is_past else tuple(_missing(day))


def not_planned(why: str) -> tuple[WayOn, ...]:
    """Return why a day was not planned just now, if anything spoke against it."""
    if not why:
        return ()
    note = Caution(title="Not planned", text=why, kind="problem")
    return (WayOn(note=note, key="", address=""),)


def _missing(day: DayNow) -> Iterator[WayOn]:
    own = reverse("day", args=[day.day])
    if not day.has_pots:
        yield _way(
            "No pot is written down",
            "A plan puts each bath into a pot. Say what yours hold.",
            "Add a pot",
            way_round("add-pot", back=own),
        )
    if not day.has_sources:
        yield _way(
            "No burner is written down",
            "A plan needs to know what a pot stands on, and how strong it is.",
            "Add a burner",
            way_round("add-burner", back=own),
        )
    if not day.people:
        yield _way(
            "Nobody is in",
            "Every bath wants hands: say who is in and when.",
            "People",
            reverse("people"),
        )


def _way(title: str, text: str, key: str, address: str) -> WayOn:
    return WayOn(note=Caution(title=title, text=text), key=key, address=address)
