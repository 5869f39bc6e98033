"""Addresses of the shelf."""

from django.urls import path

from shadewright.web.shelf.entering import enter
from shadewright.web.shelf.views import gone, shelf

urlpatterns = [
    path("shelf/", shelf, name="shelf"),
    path("shelf/enter/", enter, name="enter-bottle"),
    path("shelf/gone/", gone, name="shelf-gone"),
]
