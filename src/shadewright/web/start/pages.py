"""The first page, and the page of the people."""

from dataclasses import dataclass
from typing import ClassVar

from shadewright.web.pages import Page
from shadewright.web.start.forms import (
    AltitudeForm,
    FoundForm,
    PersonForm,
    RateForm,
)
from shadewright.workflows.people import Person


@dataclass(frozen=True, kw_only=True)
class StartPage(Page):
    """Where a new studio is founded."""

    template: ClassVar[str] = "start/start.html"

    form: FoundForm


@dataclass(frozen=True, kw_only=True)
class PeoplePage(Page):
    """Who works here."""

    template: ClassVar[str] = "start/people.html"

    people: tuple[Person, ...]
    form: PersonForm
    rate_form: RateForm
    altitude_form: AltitudeForm
    boils_at: str
