# Written by Django’s makemigrations

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0006_how_sure"),
    ]

    operations = [
        migrations.AlterField(
            model_name="bottleline",
            name="act",
            field=models.CharField(
                choices=[
                    ("filled", "filled"),
                    ("drawn", "drawn"),
                    ("given", "given"),
                    ("evaporated", "evaporated"),
                    ("counted", "counted"),
                    ("water added", "water added"),
                    ("powder added", "powder added"),
                    ("stock added", "stock added"),
                    ("strength tested", "strength tested"),
                    ("stirred", "stirred"),
                    ("re-warmed", "re-warmed"),
                    ("weighed", "weighed"),
                    ("checked clear", "checked clear"),
                    ("checked settled", "checked settled"),
                    ("poured away", "poured away"),
                    ("undone", "undone"),
                ],
                max_length=20,
            ),
        ),
    ]
