"""Charts as template tags; ``{% load charts %}``."""

from typing import Literal

from django import template
from django.utils.safestring import SafeString

from shadewright import drawing

register = template.Library()


@register.simple_tag
def drift_chart(
    shown: drawing.DriftShown, width: Literal["wide", "narrow"]
) -> SafeString:
    """Draw lots by how far off they are: ``{% drift_chart page.shown "wide" %}``."""
    return SafeString(drawing.drift_chart(shown, room=drawing.DRIFT_ROOMS[width]))
