"""The address of what to mix and what to pour away."""

from django.urls import path

from shadewright.web.turnover.views import turnover

urlpatterns = [path("shelf/turnover/", turnover, name="shelf-turnover")]
