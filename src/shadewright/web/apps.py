"""The pages as a Django application."""

from django.apps import AppConfig


class WebConfig(AppConfig):
    """Templates, static files and template tags of the pages."""

    name = "shadewright.web"
    label = "web"

    def ready(self) -> None:
        """Let what the palette foretells of a bath be kept when it is planned."""
        from shadewright.workflows.baths import bath_planned
        from shadewright.workflows.shades.predictions import keep_prediction

        bath_planned.connect(keep_prediction)
