"""Addresses of acidity."""

from django.urls import path

from shadewright.web.acidity.views import acid_for_acid, pour_away

urlpatterns = [
    path("acid-for-acid/", acid_for_acid, name="acid-for-acid"),
    path("baths/<slug:number>/pour-away/", pour_away, name="pour-away"),
]
