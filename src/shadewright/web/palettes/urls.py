"""Addresses of the palettes."""

from django.urls import path

from shadewright.web.palettes.views import palette, palette_home

urlpatterns = [
    path("", palette_home, name="palette-home"),
    path("palettes/<int:base_id>/", palette, name="palette"),
]
