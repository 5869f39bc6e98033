"""Django's handle on the records."""

from django.apps import AppConfig


class RecordsConfig(AppConfig):
    """The records, under the label that migrations know."""

    name = "shadewright.records"
    label = "records"
