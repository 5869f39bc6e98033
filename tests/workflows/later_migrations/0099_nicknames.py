"""A later change of the tables."""

from django.db import migrations, models

from tests.workflows.backups import NEWEST


class Migration(migrations.Migration):
    """People get a nickname."""

    dependencies = [("records", NEWEST)]
    operations = [
        migrations.AddField(
            "person", "nickname", models.CharField(null=True, max_length=9)
        )
    ]
