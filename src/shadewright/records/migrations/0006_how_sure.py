# Written by Django’s makemigrations

import django.db.models.deletion
import django.db.models.functions.text
import django.utils.timezone
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0005_dry_doses"),
    ]

    operations = [
        migrations.AddField(
            model_name="bath",
            name="is_by_weight",
            field=models.BooleanField(default=False),
        ),
        migrations.AddField(
            model_name="bath",
            name="purpose",
            field=models.CharField(
                choices=[
                    ("must repeat", "Must repeat"),
                    ("usual", "As usual"),
                    ("play", "Play"),
                ],
                default="usual",
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="bath",
            name="yarn_scale",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="bathdose",
            name="spread",
            field=models.JSONField(default=list),
        ),
        migrations.AddField(
            model_name="bathdose",
            name="spread_method",
            field=models.CharField(blank=True, max_length=40),
        ),
        migrations.AddField(
            model_name="bathdose",
            name="tool",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="bathline",
            name="tool",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="bottleline",
            name="gross_g",
            field=models.FloatField(null=True),
        ),
        migrations.AddField(
            model_name="bottleline",
            name="spread",
            field=models.JSONField(default=list),
        ),
        migrations.AddField(
            model_name="bottleline",
            name="tool",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="measuringtool",
            name="own_error",
            field=models.FloatField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name="measuringtool",
            name="price",
            field=models.DecimalField(
                blank=True, decimal_places=2, max_digits=9, null=True
            ),
        ),
        migrations.AddField(
            model_name="recipeversion",
            name="curve",
            field=models.JSONField(default=list),
        ),
        migrations.AddField(
            model_name="recipeversion",
            name="purpose",
            field=models.CharField(
                choices=[
                    ("must repeat", "Must repeat"),
                    ("usual", "As usual"),
                    ("play", "Play"),
                ],
                default="usual",
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="stockbottle",
            name="gross_g",
            field=models.FloatField(null=True),
        ),
        migrations.AddField(
            model_name="stockbottle",
            name="is_by_weight",
            field=models.BooleanField(default=False),
        ),
        migrations.AddField(
            model_name="stockbottle",
            name="scale",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="stockbottle",
            name="spread",
            field=models.JSONField(default=list),
        ),
        migrations.AddField(
            model_name="stockbottle",
            name="spread_method",
            field=models.CharField(blank=True, max_length=40),
        ),
        migrations.AddField(
            model_name="stockbottle",
            name="ware",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="stockmaking",
            name="filled_g",
            field=models.FloatField(null=True),
        ),
        migrations.AddField(
            model_name="stockmaking",
            name="is_by_weight",
            field=models.BooleanField(default=False),
        ),
        migrations.AddField(
            model_name="stockmaking",
            name="scale",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="stockmaking",
            name="ware",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="studio",
            name="altitude_m",
            field=models.FloatField(default=0.0),
        ),
        migrations.AddField(
            model_name="studio",
            name="dose_tool",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="studio",
            name="doses_by_weight",
            field=models.BooleanField(default=False),
        ),
        migrations.AddField(
            model_name="studio",
            name="fill_tool",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="studio",
            name="powder_scale",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.AddField(
            model_name="studio",
            name="yarn_scale",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.measuringtool",
            ),
        ),
        migrations.CreateModel(
            name="HeatSource",
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
                ("name", models.CharField(max_length=60)),
                ("notes", models.TextField(blank=True, max_length=2000)),
                ("is_retired", models.BooleanField(default=False)),
                (
                    "created_at",
                    models.DateTimeField(
                        default=django.utils.timezone.now, editable=False
                    ),
                ),
                (
                    "kind",
                    models.CharField(
                        choices=[
                            ("gas", "Gas"),
                            ("coil", "Electric ring or hot plate"),
                            ("induction", "Induction"),
                        ],
                        max_length=12,
                    ),
                ),
                ("power_kw", models.FloatField()),
                (
                    "created_by",
                    models.ForeignKey(
                        editable=False,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
            ],
            options={
                "ordering": ["name"],
                "abstract": False,
            },
        ),
        migrations.AddField(
            model_name="bath",
            name="source",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="baths",
                to="records.heatsource",
            ),
        ),
        migrations.CreateModel(
            name="ToolCheck",
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
                ("nominal", models.FloatField(default=0.0)),
                ("tolerance", models.FloatField(default=0.0)),
                ("readings", models.JSONField(default=list)),
                ("temperature_c", models.FloatField(null=True)),
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
                    "scale",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.measuringtool",
                    ),
                ),
                (
                    "tool",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="checks",
                        to="records.measuringtool",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.toolcheck",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="Water",
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
                ("name", models.CharField(max_length=60)),
                ("notes", models.TextField(blank=True, max_length=2000)),
                ("is_retired", models.BooleanField(default=False)),
                (
                    "created_at",
                    models.DateTimeField(
                        default=django.utils.timezone.now, editable=False
                    ),
                ),
                (
                    "alkalinity_mg_per_l",
                    models.FloatField(blank=True, null=True, verbose_name="Alkalinity"),
                ),
                (
                    "hardness_mg_per_l",
                    models.FloatField(blank=True, null=True, verbose_name="Hardness"),
                ),
                ("ph", models.FloatField(blank=True, null=True, verbose_name="pH")),
                ("tested_on", models.DateField(blank=True, null=True)),
                (
                    "created_by",
                    models.ForeignKey(
                        editable=False,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
            ],
            options={
                "ordering": ["name"],
                "abstract": False,
            },
        ),
        migrations.AddField(
            model_name="bath",
            name="water",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="baths",
                to="records.water",
            ),
        ),
        migrations.AddField(
            model_name="studio",
            name="usual_water",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="records.water",
            ),
        ),
        migrations.AddConstraint(
            model_name="heatsource",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"),
                name="one_heatsource_a_name",
            ),
        ),
        migrations.AddConstraint(
            model_name="water",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_water_a_name"
            ),
        ),
    ]
