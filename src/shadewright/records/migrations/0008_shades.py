# Written by Django’s makemigrations

import django.db.models.deletion
import django.db.models.functions.text
import django.utils.timezone
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0007_weighed_bottles"),
    ]

    operations = [
        migrations.CreateModel(
            name="PaletteFit",
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
                ("started_at", models.DateTimeField(default=django.utils.timezone.now)),
                ("finished_at", models.DateTimeField(null=True)),
                (
                    "state",
                    models.CharField(
                        choices=[
                            ("running", "Running"),
                            ("done", "Done"),
                            ("failed", "Failed"),
                        ],
                        default="running",
                        max_length=8,
                    ),
                ),
                ("why", models.CharField(blank=True, max_length=120)),
                ("stage", models.CharField(blank=True, max_length=60)),
                ("share", models.FloatField(default=0.0)),
                ("fault", models.CharField(blank=True, max_length=300)),
                ("method", models.CharField(blank=True, max_length=60)),
                ("used", models.JSONField(default=list)),
                ("suspects", models.JSONField(default=list)),
                ("left_out", models.JSONField(default=dict)),
                ("is_other_light", models.BooleanField(default=False)),
                ("seconds", models.FloatField(null=True)),
                ("palette", models.TextField(blank=True)),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.CreateModel(
            name="Meter",
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
                    "light",
                    models.CharField(
                        choices=[("D65", "D65"), ("D50", "D50")],
                        default="D65",
                        max_length=4,
                    ),
                ),
                (
                    "observer",
                    models.CharField(
                        choices=[("10", "10°"), ("2", "2°")], default="10", max_length=4
                    ),
                ),
                ("geometry", models.CharField(blank=True, max_length=40)),
                ("spread", models.FloatField(blank=True, null=True)),
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
        migrations.CreateModel(
            name="FoundFor",
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
                ("name", models.CharField(blank=True, max_length=60)),
                ("base_name", models.CharField(max_length=60)),
                (
                    "read_by",
                    models.CharField(
                        choices=[
                            ("chart", "off a maker’s chart"),
                            ("eye", "picked on a screen beside the yarn"),
                            ("photo", "off a photo"),
                            ("photo with card", "off a photo with a grey card in it"),
                            ("meter", "read by a meter"),
                            ("lights", "read by a meter under three lights"),
                            ("spectrum", "a spectrum"),
                        ],
                        max_length=16,
                    ),
                ),
                ("labs", models.JSONField(default=dict)),
                ("spectrum", models.JSONField(default=list)),
                ("foretold", models.JSONField(default=list)),
                ("difference", models.FloatField()),
                ("expected", models.FloatField()),
                ("within_90", models.FloatField()),
                ("tolerance", models.FloatField()),
                ("chance", models.FloatField()),
                (
                    "version",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="found_for",
                        to="records.recipeversion",
                    ),
                ),
                (
                    "fit",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="recipes",
                        to="records.palettefit",
                    ),
                ),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.CreateModel(
            name="Prediction",
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
                ("doses", models.JSONField(default=list)),
                ("colour_l", models.FloatField()),
                ("colour_a", models.FloatField()),
                ("colour_b", models.FloatField()),
                ("covariance", models.JSONField(default=list)),
                ("expected", models.FloatField()),
                ("within_90", models.FloatField()),
                ("evidence", models.CharField(max_length=16)),
                ("dose_error", models.FloatField()),
                ("made_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "bath",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="prediction",
                        to="records.bath",
                    ),
                ),
                (
                    "fit",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="predictions",
                        to="records.palettefit",
                    ),
                ),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.CreateModel(
            name="Swatch",
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
                ("label", models.CharField(max_length=60)),
                ("dyed_on", models.DateField(null=True)),
                ("note", models.CharField(blank=True, max_length=300)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="swatches",
                        to="records.base",
                    ),
                ),
                (
                    "bath",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="swatch",
                        to="records.bath",
                    ),
                ),
                (
                    "created_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.CreateModel(
            name="EvidenceLine",
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
                (
                    "act",
                    models.CharField(
                        choices=[
                            ("counts", "Teaches"),
                            ("trusted", "Teaches, for it was looked at again"),
                            ("set aside", "Set aside"),
                            ("undone", "Undone"),
                        ],
                        max_length=12,
                    ),
                ),
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
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.evidenceline",
                    ),
                ),
                (
                    "swatch",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="evidence_lines",
                        to="records.swatch",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="ColourReading",
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
                (
                    "read_by",
                    models.CharField(
                        choices=[
                            ("chart", "off a maker’s chart"),
                            ("eye", "picked on a screen beside the yarn"),
                            ("photo", "off a photo"),
                            ("photo with card", "off a photo with a grey card in it"),
                            ("meter", "read by a meter"),
                            ("lights", "read by a meter under three lights"),
                            ("spectrum", "a spectrum"),
                        ],
                        max_length=16,
                    ),
                ),
                ("labs", models.JSONField(default=dict)),
                ("spectrum", models.JSONField(default=list)),
                ("each", models.JSONField(default=list)),
                ("repeat", models.PositiveIntegerField(default=1)),
                ("sd", models.FloatField(null=True)),
                ("is_wet", models.BooleanField(default=False)),
                ("as_typed", models.CharField(blank=True, max_length=200)),
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
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.colourreading",
                    ),
                ),
                (
                    "meter",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="readings",
                        to="records.meter",
                    ),
                ),
                (
                    "swatch",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="readings",
                        to="records.swatch",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="SwatchDose",
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
                ("position", models.PositiveIntegerField()),
                ("depth_percent", models.FloatField()),
                (
                    "dye",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="swatch_doses",
                        to="records.dye",
                    ),
                ),
                (
                    "swatch",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="doses",
                        to="records.swatch",
                    ),
                ),
            ],
            options={
                "ordering": ["swatch", "position"],
            },
        ),
        migrations.CreateModel(
            name="WantedColour",
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
                    "read_by",
                    models.CharField(
                        choices=[
                            ("chart", "off a maker’s chart"),
                            ("eye", "picked on a screen beside the yarn"),
                            ("photo", "off a photo"),
                            ("photo with card", "off a photo with a grey card in it"),
                            ("meter", "read by a meter"),
                            ("lights", "read by a meter under three lights"),
                            ("spectrum", "a spectrum"),
                        ],
                        max_length=16,
                    ),
                ),
                ("labs", models.JSONField(default=dict)),
                ("spectrum", models.JSONField(blank=True, default=list)),
                ("as_typed", models.CharField(blank=True, max_length=200)),
                (
                    "base",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.base",
                    ),
                ),
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
        migrations.CreateModel(
            name="SwatchPlan",
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
                ("deed", models.UUIDField(unique=True)),
                (
                    "kind",
                    models.CharField(
                        choices=[
                            ("ladder", "Depths of single dyes"),
                            ("mixes", "Mixes"),
                            ("next", "What would help most"),
                            ("bracket", "Trials around a colour"),
                        ],
                        max_length=12,
                    ),
                ),
                ("yarn_g", models.FloatField()),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.base",
                    ),
                ),
                (
                    "created_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
                (
                    "recipe",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="swatch_plan",
                        to="records.recipe",
                    ),
                ),
                (
                    "wanted",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="plans",
                        to="records.wantedcolour",
                    ),
                ),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.AddConstraint(
            model_name="meter",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_meter_a_name"
            ),
        ),
        migrations.AddConstraint(
            model_name="wantedcolour",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"),
                name="one_wantedcolour_a_name",
            ),
        ),
    ]
