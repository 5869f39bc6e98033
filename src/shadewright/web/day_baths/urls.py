"""Addresses of the baths of a dye day."""

from django.urls import path

from shadewright.web import iso_day
from shadewright.web.day_baths.add_views import add, take_back
from shadewright.web.day_baths.stock_views import stock

__all__ = ["iso_day", "urlpatterns"]

urlpatterns = [
    path("<day:day>/add/", add, name="day-add"),
    path("<day:day>/add/<uuid:deed>/undo/", take_back, name="day-add-undo"),
    path("<day:day>/stock/", stock, name="day-stock"),
]
