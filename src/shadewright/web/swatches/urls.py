"""Addresses of the swatches."""

from django.urls import path

from shadewright.web.swatches.listing import swatches
from shadewright.web.swatches.reading_views import new, read, read_of_bath
from shadewright.web.swatches.showing import swatch
from shadewright.web.swatches.start_views import start

urlpatterns = [
    path("start/", start, name="swatch-start"),
    path("swatches/", swatches, name="swatches"),
    path("swatches/new/", new, name="swatch-new"),
    path("swatches/<int:swatch_id>/", swatch, name="swatch"),
    path("swatches/<int:swatch_id>/read/", read, name="swatch-read"),
    path("swatches/of/<slug:number>/read/", read_of_bath, name="read-bath"),
]
