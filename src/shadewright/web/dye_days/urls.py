"""Addresses of the dye days."""

from django.urls import path

from shadewright.web import iso_day
from shadewright.web.dye_days.views import day, days

__all__ = ["iso_day", "urlpatterns"]

urlpatterns = [
    path("", days, name="days"),
    path("<day:day>/", day, name="day"),
]
