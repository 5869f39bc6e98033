# Written by Django’s makemigrations

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0008_shades"),
    ]

    operations = [
        migrations.AddField(
            model_name="swatch",
            name="session",
            field=models.CharField(blank=True, max_length=60),
        ),
    ]
