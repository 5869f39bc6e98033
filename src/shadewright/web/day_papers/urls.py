"""Addresses of a dye day's papers, of how it went, of all off, and of the rack."""

from django.urls import path

from shadewright.web import iso_day
from shadewright.web.day_papers.after_views import after
from shadewright.web.day_papers.off_views import off
from shadewright.web.day_papers.printing import cards, pull, sheet, soak
from shadewright.web.day_papers.rack_views import off_the_rack, rack

__all__ = ["iso_day", "urlpatterns"]

urlpatterns = [
    path("days/<day:day>/sheet.pdf", sheet, name="day-sheet"),
    path("days/<day:day>/soak.pdf", soak, name="soak-list"),
    path("days/<day:day>/pull.pdf", pull, name="pull-list"),
    path("days/<day:day>/cards.pdf", cards, name="day-cards"),
    path("days/<day:day>/after/", after, name="day-after"),
    path("days/<day:day>/off/", off, name="day-off"),
    path("rack/", rack, name="rack"),
    path("rack/<str:number>/dry/", off_the_rack, name="rack-dry"),
]
