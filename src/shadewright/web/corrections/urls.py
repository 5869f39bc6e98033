"""Addresses of corrections."""

from django.urls import path

from shadewright.web.corrections.correcting import correct
from shadewright.web.corrections.overdyeing import overdye
from shadewright.web.corrections.restocking import restock

urlpatterns = [
    path("lots/<str:number>/correct/", correct, name="correct-lot"),
    path("lots/<str:number>/overdye/", overdye, name="overdye-lot"),
    path("restock/", restock, name="restock"),
]
