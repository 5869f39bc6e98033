"""Addresses of the lots."""

from django.urls import path

from shadewright.web.lots.finishing import finish
from shadewright.web.lots.tracing import bottle_trace, compare, jar_trace, lot_trace
from shadewright.web.lots.views import change, colour, lot, lots, photo, picture

urlpatterns = [
    path("lots/", lots, name="lots"),
    path("lots/compare/", compare, name="compare-lots"),
    path("lots/<str:number>/", lot, name="lot"),
    path("lots/<str:number>/change/", change, name="change-lot"),
    path("lots/<str:number>/colour/", colour, name="note-colour"),
    path("lots/<str:number>/photo/", photo, name="add-photo"),
    path("lots/<str:number>/photos/<int:line_id>.jpg", picture, name="lot-photo"),
    path("lots/<str:number>/trace/", lot_trace, name="trace-lot"),
    path("jars/<int:jar_id>/trace/", jar_trace, name="trace-jar"),
    path("bottles/<str:code>/trace/", bottle_trace, name="trace-bottle"),
    path("baths/<str:number>/finish/", finish, name="finish-bath"),
]
