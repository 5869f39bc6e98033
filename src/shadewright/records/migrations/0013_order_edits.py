"""An order keeps a ledger of its edits."""

import django.db.models.deletion
import django.utils.timezone
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0012_standards_taken_back"),
    ]

    operations = [
        migrations.CreateModel(
            name="OrderEdit",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True,
                        primary_key=True,
                        serialize=False,
                        verbose_name="ID",
                    ),
                ),
                ("deed", models.UUIDField(db_index=True)),
                ("at", models.DateTimeField(default=django.utils.timezone.now)),
                ("written_at", models.DateTimeField(default=django.utils.timezone.now)),
                ("note", models.CharField(blank=True, max_length=300)),
                ("before", models.JSONField(default=dict)),
                ("after", models.JSONField(default=dict)),
                (
                    "by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
                (
                    "order",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="edits",
                        to="records.order",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.orderedit",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
    ]
