# Written by Django’s makemigrations

import django.db.models.deletion
import django.db.models.functions.text
import django.utils.timezone
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0002_devices"),
    ]

    operations = [
        migrations.CreateModel(
            name="RecipePart",
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
                ("position", models.PositiveIntegerField(default=1)),
                ("name", models.CharField(default="all of it", max_length=40)),
                (
                    "technique",
                    models.CharField(
                        choices=[("kettle", "Kettle")], default="kettle", max_length=20
                    ),
                ),
                ("share_percent", models.FloatField(default=100.0)),
            ],
            options={
                "ordering": ["version", "position"],
            },
        ),
        migrations.AddField(
            model_name="base",
            name="price_per_kg",
            field=models.DecimalField(
                blank=True, decimal_places=2, max_digits=9, null=True
            ),
        ),
        migrations.AddField(
            model_name="studio",
            name="rate_per_hour",
            field=models.DecimalField(
                blank=True, decimal_places=2, max_digits=9, null=True
            ),
        ),
        migrations.CreateModel(
            name="Bath",
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
                ("number", models.CharField(max_length=16, unique=True)),
                ("deed", models.UUIDField(unique=True)),
                ("is_swatch", models.BooleanField(default=False)),
                ("dyed_on", models.DateField()),
                ("fibre_g", models.FloatField()),
                ("wet_yarn_g", models.FloatField(null=True)),
                ("skeins", models.PositiveIntegerField(null=True)),
                ("liquor_ratio", models.FloatField()),
                ("notes", models.TextField(blank=True, max_length=2000)),
                ("method", models.CharField(max_length=40)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="baths",
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
                    "mill_lot",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="baths",
                        to="records.milllot",
                    ),
                ),
            ],
            options={
                "ordering": ["-dyed_on", "-id"],
            },
        ),
        migrations.CreateModel(
            name="BathDose",
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
                ("dye_g", models.FloatField()),
                ("volume_ml", models.FloatField(null=True)),
                ("strength_percent", models.FloatField(null=True)),
                (
                    "bath",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="doses",
                        to="records.bath",
                    ),
                ),
                (
                    "bottle",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="bath_doses",
                        to="records.stockbottle",
                    ),
                ),
                (
                    "dye",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="bath_doses",
                        to="records.dye",
                    ),
                ),
            ],
            options={
                "ordering": ["bath", "position", "id"],
            },
        ),
        migrations.CreateModel(
            name="BathLine",
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
                            ("started", "Started"),
                            ("dosed", "Dose in"),
                            ("missed", "Dose left out"),
                            ("added", "Acid or helper in"),
                            ("heat on", "Heat on"),
                            ("at top", "At temperature"),
                            ("temperature", "Temperature read"),
                            ("pH", "pH read"),
                            ("checked", "Bath looked at"),
                            ("note", "Note"),
                            ("problem", "Problem"),
                            ("heat off", "Heat off"),
                            ("finished", "Finished"),
                            ("given up", "Given up"),
                            ("undone", "Undone"),
                        ],
                        max_length=12,
                    ),
                ),
                ("step", models.CharField(blank=True, max_length=40)),
                ("value", models.FloatField(null=True)),
                ("unit", models.CharField(blank=True, max_length=8)),
                ("device", models.CharField(blank=True, max_length=40)),
                (
                    "bath",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lines",
                        to="records.bath",
                    ),
                ),
                (
                    "bottle",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="bath_lines",
                        to="records.stockbottle",
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
                    "drawn",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="bath_line",
                        to="records.bottleline",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.bathline",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="Lot",
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
                ("number", models.CharField(max_length=16, unique=True)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "bath",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lot",
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
                "ordering": ["-bath__dyed_on", "-id"],
            },
        ),
        migrations.CreateModel(
            name="LotLine",
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
                            ("graded", "Graded"),
                            ("placed", "Put away"),
                            ("weighed", "Weighed dry"),
                            ("counted", "Skeins counted"),
                            ("coloured", "Colour noted"),
                            ("photo", "Photo"),
                            ("note", "Note"),
                            ("undone", "Undone"),
                        ],
                        max_length=12,
                    ),
                ),
                ("value", models.FloatField(null=True)),
                ("words", models.CharField(blank=True, max_length=300)),
                ("colour_l", models.FloatField(null=True)),
                ("colour_a", models.FloatField(null=True)),
                ("colour_b", models.FloatField(null=True)),
                (
                    "evidence",
                    models.CharField(
                        blank=True,
                        choices=[
                            ("hex", "picked on a screen"),
                            ("photo", "taken from a photo"),
                            ("meter", "read by a meter"),
                        ],
                        max_length=8,
                    ),
                ),
                ("photo", models.FileField(blank=True, upload_to="lots/")),
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
                    "lot",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lines",
                        to="records.lot",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.lotline",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="Pot",
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
                ("volume_l", models.FloatField()),
                ("mass_kg", models.FloatField(blank=True, null=True)),
                (
                    "material",
                    models.CharField(
                        choices=[
                            ("stainless", "Stainless steel"),
                            ("enamel", "Enamel"),
                            (
                                "aluminium",
                                "Aluminium (reacts with acid; can shift a shade)",
                            ),
                            ("glass", "Glass jar"),
                        ],
                        default="stainless",
                        max_length=12,
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
        migrations.AddField(
            model_name="bath",
            name="pot",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="baths",
                to="records.pot",
            ),
        ),
        migrations.CreateModel(
            name="Recipe",
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
                ("was_named", models.CharField(blank=True, max_length=200)),
                ("is_retired", models.BooleanField(default=False)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
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
                "ordering": ["name"],
            },
        ),
        migrations.CreateModel(
            name="RecipeDose",
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
                ("depth_percent", models.FloatField(null=True)),
                ("as_written", models.CharField(blank=True, max_length=120)),
                (
                    "dye",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="recipe_doses",
                        to="records.dye",
                    ),
                ),
                (
                    "part",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="doses",
                        to="records.recipepart",
                    ),
                ),
            ],
            options={
                "ordering": ["part", "position"],
            },
        ),
        migrations.CreateModel(
            name="RecipeVersion",
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
                ("number", models.PositiveIntegerField()),
                ("deed", models.UUIDField(unique=True)),
                ("liquor_ratio", models.FloatField(null=True)),
                ("start_c", models.FloatField(null=True)),
                ("rise_c_per_min", models.FloatField(null=True)),
                ("top_c", models.FloatField(null=True)),
                ("hold_min", models.FloatField(null=True)),
                ("ties", models.CharField(blank=True, max_length=200)),
                ("stirring", models.CharField(blank=True, max_length=200)),
                ("look_at_15", models.CharField(blank=True, max_length=200)),
                ("notes", models.TextField(blank=True, max_length=4000)),
                ("as_written", models.TextField(blank=True, max_length=4000)),
                ("what_is_missing", models.CharField(blank=True, max_length=300)),
                ("why_changed", models.CharField(blank=True, max_length=300)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
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
                    "parent",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="children",
                        to="records.recipeversion",
                    ),
                ),
                (
                    "recipe",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="versions",
                        to="records.recipe",
                    ),
                ),
            ],
            options={
                "ordering": ["recipe__name", "-number"],
            },
        ),
        migrations.AddField(
            model_name="recipepart",
            name="version",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.PROTECT,
                related_name="parts",
                to="records.recipeversion",
            ),
        ),
        migrations.CreateModel(
            name="RecipeAuxiliary",
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
                ("amount", models.FloatField()),
                (
                    "unit",
                    models.CharField(
                        choices=[
                            ("% owf", "% on weight of fibre"),
                            ("g/l", "g per litre of bath"),
                        ],
                        max_length=8,
                    ),
                ),
                (
                    "when",
                    models.CharField(
                        choices=[
                            ("start", "at the start, before the yarn"),
                            ("after dye", "after the dye, before the heat"),
                            ("at top", "at the top temperature"),
                            ("two halves", "half before the heat, half at the top"),
                        ],
                        max_length=12,
                    ),
                ),
                (
                    "auxiliary",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="recipe_uses",
                        to="records.auxiliary",
                    ),
                ),
                (
                    "version",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="auxiliaries",
                        to="records.recipeversion",
                    ),
                ),
            ],
            options={
                "ordering": ["version", "position"],
            },
        ),
        migrations.AddField(
            model_name="bath",
            name="version",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.PROTECT,
                related_name="baths",
                to="records.recipeversion",
            ),
        ),
        migrations.AddConstraint(
            model_name="pot",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_pot_a_name"
            ),
        ),
        migrations.AddConstraint(
            model_name="recipe",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_recipe_a_name"
            ),
        ),
        migrations.AddConstraint(
            model_name="recipeversion",
            constraint=models.UniqueConstraint(
                fields=("recipe", "number"), name="one_version_number_a_recipe"
            ),
        ),
        migrations.AddIndex(
            model_name="bath",
            index=models.Index(fields=["dyed_on"], name="baths_by_day"),
        ),
    ]
