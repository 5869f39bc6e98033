"""Django's handle on the records."""

from django.apps import AppConfig
from django.db.models.signals import pre_save


class RecordsConfig(AppConfig):
    """The records, under the label that migrations know."""

    name = "shadewright.records"
    label = "records"

    def ready(self) -> None:
        """Look at every text before it is kept."""
        from shadewright.records.lengths import refuse_text_that_does_not_fit

        pre_save.connect(refuse_text_that_does_not_fit)
