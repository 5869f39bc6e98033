# Written by Django’s makemigrations

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0004_hands_on_minutes"),
    ]

    operations = [
        migrations.AddIndex(
            model_name="bathdose",
            index=models.Index(
                condition=models.Q(("bottle", None)),
                fields=["dye"],
                name="dry_doses_by_dye",
            ),
        ),
    ]
