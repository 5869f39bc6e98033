"""A standard becomes a ledger’s line, so that a mistake is taken back like any other."""

import django.db.models.deletion
import django.utils.timezone
from django.apps.registry import Apps
from django.db import migrations, models
from django.db.backends.base.schema import BaseDatabaseSchemaEditor


def written_when_made(apps: Apps, _editor: BaseDatabaseSchemaEditor) -> None:
    """Say of every standard that it was written when it was made."""
    standards = apps.get_model("records", "Standard").objects
    standards.update(written_at=models.F("at"))


class Migration(migrations.Migration):
    """Name the columns as every ledger does, and add the counter-entry."""

    dependencies = [("records", "0011_lots_judged")]

    operations = [
        migrations.RenameField("standard", "created_at", "at"),
        migrations.RenameField("standard", "created_by", "by"),
        migrations.RenameField("standard", "why", "note"),
        migrations.AlterField(
            "standard", "note", models.CharField(blank=True, max_length=300)
        ),
        migrations.AlterField("standard", "deed", models.UUIDField(db_index=True)),
        migrations.RemoveField("standard", "replaces"),
        migrations.AddField(
            "standard",
            "undoes",
            models.OneToOneField(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="undone_by",
                to="records.standard",
            ),
        ),
        migrations.AddField(
            "standard",
            "written_at",
            models.DateTimeField(default=django.utils.timezone.now),
        ),
        migrations.RunPython(written_when_made, migrations.RunPython.noop),
    ]
