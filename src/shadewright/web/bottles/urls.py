"""Addresses of a bottle."""

from django.urls import path

from shadewright.web.bottles.testing import strength_page
from shadewright.web.bottles.views import act, bottle

urlpatterns = [
    path("bottles/<str:code>/", bottle, name="bottle"),
    path("bottles/<str:code>/strength-test/", strength_page, name="strength-test"),
    path("bottles/<str:code>/<slug:key>/", act, name="bottle-act"),
]
