"""The studio may say on which days it is closed."""

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0013_order_edits"),
    ]

    operations = [
        migrations.CreateModel(
            name="ClosedDays",
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
                ("first_on", models.DateField()),
                ("last_on", models.DateField()),
                ("why", models.CharField(blank=True, max_length=80)),
            ],
            options={
                "ordering": ["first_on", "id"],
            },
        ),
    ]
