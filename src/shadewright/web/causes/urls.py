"""Addresses of causes and drift."""

from django.urls import path

from shadewright.web.causes.drift_views import drift, history
from shadewright.web.causes.why_views import take, why

urlpatterns = [
    path("lots/<str:number>/why/", why, name="lot-why"),
    path("lots/<str:number>/why/strength/", take, name="take-strength"),
    path("drift/<int:recipe_id>/<int:base_id>/", drift, name="drift"),
    path("drift/<int:recipe_id>/<int:base_id>/history.csv", history, name="history"),
]
