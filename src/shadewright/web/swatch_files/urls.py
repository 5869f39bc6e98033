"""Addresses of the files of swatches."""

from django.urls import path

from shadewright.web.swatch_files.views import files, take_away

urlpatterns = [
    path("swatches/files/", files, name="swatch-files"),
    path("swatches/all.csv", take_away, name="swatches-csv"),
]
