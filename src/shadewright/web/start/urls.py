"""Addresses of the beginning."""

from django.urls import path

from shadewright.web.start.views import altitude, rate, start, who_works_here

urlpatterns = [
    path("start/", start, name="start"),
    path("people/", who_works_here, name="people"),
    path("people/altitude/", altitude, name="set-altitude"),
    path("people/rate/", rate, name="set-rate"),
]
