"""Addresses of checks, standards and sharing."""

from django.urls import path

from shadewright.web.checks.check_views import check, decide
from shadewright.web.checks.own_views import tolerances, tone
from shadewright.web.checks.sharing_views import aside, sharing
from shadewright.web.checks.snip_views import snip
from shadewright.web.checks.standard_views import (
    again,
    lot_standard,
    standard,
    standards,
)

urlpatterns = [
    path("lots/<str:number>/check/", check, name="check-lot"),
    path("lots/<str:number>/decide/", decide, name="decide-lot"),
    path("lots/<str:number>/snip/", snip, name="snip-lot"),
    path("lots/<str:number>/standard/", lot_standard, name="lot-standard"),
    path("standards/", standards, name="standards"),
    path("standards/tolerances/", tolerances, name="tolerances"),
    path("standards/<int:recipe_id>/<int:base_id>/", standard, name="standard"),
    path("standards/<int:recipe_id>/<int:base_id>/tone/", tone, name="tone-band"),
    path("standards/again/<int:standard_id>/", again, name="standard-again"),
    path("sharing/", sharing, name="sharing"),
    path("sharing/<int:line_id>/aside/", aside, name="sharing-aside"),
]
