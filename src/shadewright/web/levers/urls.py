"""The address of what would help most."""

from django.urls import path

from shadewright.web.levers.views import whole_shelf

urlpatterns = [path("shelf/help/", whole_shelf, name="whole-shelf")]
