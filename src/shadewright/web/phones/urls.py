"""Addresses of phones; all but the door are the desk's alone."""

from django.urls import path

from shadewright.web.phones.door import pair
from shadewright.web.phones.views import open_pairing, phones, remove_phone

urlpatterns = [
    path("pair/", pair, name="pair"),
    path("phones/", phones, name="phones"),
    path("phones/open/", open_pairing, name="open-pairing"),
    path("phones/<int:device_id>/remove/", remove_phone, name="remove-phone"),
]
