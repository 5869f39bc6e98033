"""Addresses of labels."""

from django.urls import path

from shadewright.web.labels.views import bottle_label, find, labels, preview

urlpatterns = [
    path("labels/", labels, name="labels"),
    path("labels/preview.png", preview, name="labels-preview"),
    path("bottles/<str:code>/label.pdf", bottle_label, name="bottle-label"),
    path("find/", find, name="find-bottle"),
]
