"""Addresses of the dye days."""

from django.urls import path

from shadewright.web import iso_day
from shadewright.web.dye_days.closed_views import closed, open_again
from shadewright.web.dye_days.hours_views import hours, room
from shadewright.web.dye_days.plan_views import plan, replan
from shadewright.web.dye_days.views import day, days
from shadewright.web.dye_days.wish_views import bath_of_day

__all__ = ["iso_day", "urlpatterns"]

urlpatterns = [
    path("", days, name="days"),
    path("room/", room, name="day-room"),
    path("closed/", closed, name="day-closed"),
    path("closed/<int:number>/open/", open_again, name="day-open-again"),
    path("<day:day>/", day, name="day"),
    path("<day:day>/plan/", plan, name="day-plan"),
    path("<day:day>/replan/", replan, name="day-replan"),
    path("<day:day>/hours/", hours, name="day-hours"),
    path("<day:day>/baths/<str:number>/", bath_of_day, name="day-bath"),
]
