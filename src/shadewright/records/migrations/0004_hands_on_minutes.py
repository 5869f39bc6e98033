# Written by Django’s makemigrations

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0003_recipes_baths_lots"),
    ]

    operations = [
        migrations.AlterField(
            model_name="lotline",
            name="act",
            field=models.CharField(
                choices=[
                    ("graded", "Graded"),
                    ("placed", "Put away"),
                    ("weighed", "Weighed dry"),
                    ("counted", "Skeins counted"),
                    ("coloured", "Colour noted"),
                    ("photo", "Photo"),
                    ("timed", "Minutes of the hands"),
                    ("note", "Note"),
                    ("undone", "Undone"),
                ],
                max_length=12,
            ),
        ),
    ]
