"""The pages as a Django application."""

from django.apps import AppConfig


class WebConfig(AppConfig):
    """Templates, static files and template tags of the pages."""

    name = "shadewright.web"
    label = "web"
