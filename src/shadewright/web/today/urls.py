"""Addresses of today."""

from django.urls import path

from shadewright.web.today.views import own_studio, today

urlpatterns = [
    path("", today, name="today"),
    path("own-studio/", own_studio, name="own-studio"),
]
