# Written by Django’s makemigrations

import datetime
import django.db.models.deletion
import django.db.models.functions.text
import django.utils.timezone
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0009_swatch_sessions"),
    ]

    operations = [
        migrations.AddField(
            model_name="bathline",
            name="photo",
            field=models.FileField(blank=True, upload_to="baths/"),
        ),
        migrations.AddField(
            model_name="heatsource",
            name="room_g",
            field=models.FloatField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name="recipeauxiliary",
            name="at_c",
            field=models.FloatField(null=True),
        ),
        migrations.AlterField(
            model_name="bathline",
            name="act",
            field=models.CharField(
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
                    ("leftover", "Dye left in the bath"),
                    ("rinsed", "Rinsed"),
                    ("hung", "On the rack"),
                    ("dry", "Dry"),
                    ("note", "Note"),
                    ("photo", "Photo"),
                    ("problem", "Problem"),
                    ("heat off", "Heat off"),
                    ("finished", "Finished"),
                    ("given up", "Given up"),
                    ("undone", "Undone"),
                ],
                max_length=12,
            ),
        ),
        migrations.AlterField(
            model_name="heatsource",
            name="kind",
            field=models.CharField(
                choices=[
                    ("gas", "Gas"),
                    ("coil", "Electric ring or hot plate"),
                    ("induction", "Induction"),
                    ("steamer", "Steamer"),
                ],
                max_length=12,
            ),
        ),
        migrations.AlterField(
            model_name="recipeauxiliary",
            name="when",
            field=models.CharField(
                choices=[
                    ("start", "at the start, before the yarn"),
                    ("after dye", "after the dye, before the heat"),
                    ("on the way", "on the way up, at a temperature"),
                    ("at top", "at the top temperature"),
                    ("two halves", "half before the heat, half at the top"),
                ],
                max_length=12,
            ),
        ),
        migrations.CreateModel(
            name="Circuit",
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
                ("limit_kw", models.FloatField()),
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
            model_name="heatsource",
            name="circuit",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="sources",
                to="records.circuit",
            ),
        ),
        migrations.CreateModel(
            name="DayWish",
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
                ("batch", models.UUIDField(db_index=True, null=True)),
                ("is_overnight", models.BooleanField(null=True)),
                ("cools_on_source", models.BooleanField(null=True)),
                ("is_steamed", models.BooleanField(default=False)),
                ("due_at", models.TimeField(null=True)),
                ("family", models.CharField(blank=True, max_length=20)),
                ("starts_at", models.TimeField(null=True)),
                (
                    "bath",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="day_wish",
                        to="records.bath",
                    ),
                ),
                (
                    "pot",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.pot",
                    ),
                ),
                (
                    "source",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.heatsource",
                    ),
                ),
            ],
            options={
                "ordering": ["bath"],
            },
        ),
        migrations.CreateModel(
            name="DyeDay",
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
                ("day", models.DateField(unique=True)),
                ("opens_at", models.TimeField(null=True)),
                ("closes_at", models.TimeField(null=True)),
                ("sinks", models.PositiveIntegerField(null=True)),
                ("rack_slots", models.PositiveIntegerField(null=True)),
                ("rack_used", models.PositiveIntegerField(null=True)),
                ("notes", models.TextField(blank=True, max_length=2000)),
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
                "ordering": ["-day"],
            },
        ),
        migrations.CreateModel(
            name="DaySchedule",
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
                ("why", models.CharField(blank=True, max_length=200)),
                ("asked", models.JSONField()),
                ("plan", models.JSONField()),
                ("method", models.CharField(max_length=60)),
                ("made_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "made_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
                (
                    "dye_day",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="schedules",
                        to="records.dyeday",
                    ),
                ),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.CreateModel(
            name="DayPresence",
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
                ("name", models.CharField(max_length=40)),
                ("starts_at", models.TimeField()),
                ("ends_at", models.TimeField()),
                (
                    "person",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
                (
                    "dye_day",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="presences",
                        to="records.dyeday",
                    ),
                ),
            ],
            options={
                "ordering": ["starts_at", "id"],
            },
        ),
        migrations.CreateModel(
            name="DayOutage",
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
                ("starts_at", models.TimeField(null=True)),
                ("why", models.CharField(blank=True, max_length=120)),
                (
                    "pot",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="outages",
                        to="records.pot",
                    ),
                ),
                (
                    "source",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="outages",
                        to="records.heatsource",
                    ),
                ),
                (
                    "dye_day",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="outages",
                        to="records.dyeday",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="DayLine",
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
                            ("all off", "All off"),
                            ("water", "Water read"),
                            ("power", "Power read"),
                            ("note", "Note"),
                            ("undone", "Undone"),
                        ],
                        max_length=12,
                    ),
                ),
                ("value", models.FloatField(null=True)),
                ("unit", models.CharField(blank=True, max_length=8)),
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
                        to="records.dayline",
                    ),
                ),
                (
                    "dye_day",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lines",
                        to="records.dyeday",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="DyeRoom",
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
                ("opens_at", models.TimeField(default=datetime.time(8, 0))),
                ("closes_at", models.TimeField(default=datetime.time(18, 0))),
                ("sinks", models.PositiveIntegerField(default=1)),
                ("rack_slots", models.PositiveIntegerField(default=40)),
                ("washout_min", models.FloatField(default=10.0)),
                ("dry_hours", models.FloatField(default=36.0)),
                ("pack_days", models.FloatField(default=2.0)),
                ("seconds_percent", models.FloatField(default=5.0)),
                ("spare_percent", models.FloatField(default=10.0)),
                ("look_every_min", models.FloatField(default=20.0)),
                ("cools_overnight", models.BooleanField(default=True)),
                (
                    "studio",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="dye_room",
                        to="records.studio",
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="Order",
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
                ("number", models.PositiveIntegerField(unique=True)),
                ("deed", models.UUIDField(unique=True)),
                ("for_whom", models.CharField(max_length=80)),
                ("due_on", models.DateField(null=True)),
                ("promised_on", models.DateField(null=True)),
                ("notes", models.TextField(blank=True, max_length=2000)),
                ("is_closed", models.BooleanField(default=False)),
                ("why_closed", models.CharField(blank=True, max_length=120)),
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
                "ordering": ["is_closed", "due_on", "number"],
            },
        ),
        migrations.CreateModel(
            name="OrderLine",
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
                ("skeins", models.PositiveIntegerField()),
                ("skein_g", models.FloatField()),
                ("as_said", models.CharField(blank=True, max_length=300)),
                ("is_dropped", models.BooleanField(default=False)),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="order_lines",
                        to="records.base",
                    ),
                ),
                (
                    "order",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lines",
                        to="records.order",
                    ),
                ),
                (
                    "recipe",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="order_lines",
                        to="records.recipe",
                    ),
                ),
            ],
            options={
                "ordering": ["order", "position"],
            },
        ),
        migrations.CreateModel(
            name="BathFor",
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
                ("skeins", models.PositiveIntegerField()),
                (
                    "bath",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="for_lines",
                        to="records.bath",
                    ),
                ),
                (
                    "line",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="baths",
                        to="records.orderline",
                    ),
                ),
            ],
            options={
                "ordering": ["bath", "id"],
            },
        ),
        migrations.CreateModel(
            name="ParLevel",
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
                ("skeins", models.PositiveIntegerField()),
                ("skein_g", models.FloatField()),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="par_levels",
                        to="records.base",
                    ),
                ),
                (
                    "recipe",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="par_levels",
                        to="records.recipe",
                    ),
                ),
            ],
            options={
                "ordering": ["recipe", "base"],
            },
        ),
        migrations.AddConstraint(
            model_name="circuit",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_circuit_a_name"
            ),
        ),
        migrations.AddConstraint(
            model_name="bathfor",
            constraint=models.UniqueConstraint(
                fields=("bath", "line"), name="one_share_a_bath_and_line"
            ),
        ),
        migrations.AddConstraint(
            model_name="parlevel",
            constraint=models.UniqueConstraint(
                fields=("recipe", "base"), name="one_par_a_recipe_and_base"
            ),
        ),
    ]
