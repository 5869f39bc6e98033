# Written by Django’s makemigrations

import django.core.validators
import django.db.models.deletion
import django.db.models.functions.text
import django.utils.timezone
import uuid
from django.db import migrations, models


class Migration(migrations.Migration):
    initial = True

    dependencies = []

    operations = [
        migrations.CreateModel(
            name="Studio",
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
                ("name", models.CharField(max_length=80)),
                ("is_demo", models.BooleanField(default=False)),
                ("water", models.CharField(blank=True, max_length=80)),
                ("dead_volume_ml", models.FloatField(default=10.0)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
            ],
        ),
        migrations.CreateModel(
            name="Person",
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
                ("is_away", models.BooleanField(default=False)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
            ],
            options={
                "ordering": ["name"],
                "constraints": [
                    models.UniqueConstraint(
                        django.db.models.functions.text.Lower("name"),
                        name="one_person_a_name",
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="Dye",
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
                    "ci_name",
                    models.CharField(
                        blank=True, max_length=60, verbose_name="C.I. name"
                    ),
                ),
                (
                    "dye_class",
                    models.CharField(
                        choices=[
                            ("levelling", "Levelling"),
                            ("half-milling", "Half-milling (fast acid)"),
                            ("milling", "Milling"),
                            ("super-milling", "Super-milling"),
                            ("metal-complex 1:2", "1:2 metal-complex (pre-metallised)"),
                            ("metal-complex 1:1", "1:1 metal-complex"),
                            ("reactive for wool", "Reactive for wool"),
                            ("unknown", "Not known, or a mixture"),
                        ],
                        default="unknown",
                        max_length=20,
                    ),
                ),
                (
                    "is_metal_complex",
                    models.BooleanField(default=False, verbose_name="Holds a metal"),
                ),
                ("solubility_g_per_l", models.FloatField(blank=True, null=True)),
                ("solubility_at_c", models.FloatField(blank=True, null=True)),
                ("solubility_source", models.CharField(blank=True, max_length=120)),
                (
                    "is_mix_fresh",
                    models.BooleanField(
                        default=False, verbose_name="Mix fresh for the day"
                    ),
                ),
                ("hazard_words", models.CharField(blank=True, max_length=160)),
                (
                    "data_sheet_link",
                    models.CharField(
                        blank=True,
                        max_length=300,
                        validators=[
                            django.core.validators.URLValidator(
                                schemes=["http", "https"]
                            )
                        ],
                    ),
                ),
                (
                    "data_sheet_file",
                    models.FileField(blank=True, upload_to="data-sheets/"),
                ),
                ("chart_hex", models.CharField(blank=True, max_length=7)),
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
            name="CatalogueVersion",
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
                ("kind", models.CharField(max_length=20)),
                ("item_id", models.PositiveBigIntegerField()),
                ("number", models.PositiveIntegerField()),
                ("values", models.JSONField()),
                (
                    "replaced_at",
                    models.DateTimeField(default=django.utils.timezone.now),
                ),
                (
                    "replaced_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
            ],
            options={
                "ordering": ["kind", "item_id", "-number"],
            },
        ),
        migrations.CreateModel(
            name="Base",
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
                ("fibres", models.CharField(max_length=120)),
                (
                    "is_superwash",
                    models.BooleanField(
                        default=False, verbose_name="Superwash treated"
                    ),
                ),
                ("undyeable_percent", models.FloatField(default=0.0)),
                ("skein_g", models.FloatField(blank=True, null=True)),
                ("metres_per_100_g", models.FloatField(blank=True, null=True)),
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
            name="Auxiliary",
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
                            ("acid", "Acid"),
                            ("acid donor", "Ammonium salt (turns acid when hot)"),
                            ("salt", "Glauber’s salt"),
                            ("levelling agent", "Levelling agent"),
                            ("wetting agent", "Wetting agent"),
                            ("other", "Something else"),
                        ],
                        default="acid",
                        max_length=20,
                    ),
                ),
                ("is_liquid", models.BooleanField(default=False)),
                ("strength_g_per_100_ml", models.FloatField(blank=True, null=True)),
                (
                    "price_per_kg",
                    models.DecimalField(
                        blank=True, decimal_places=2, max_digits=9, null=True
                    ),
                ),
                ("hazard_words", models.CharField(blank=True, max_length=160)),
                (
                    "data_sheet_link",
                    models.CharField(
                        blank=True,
                        max_length=300,
                        validators=[
                            django.core.validators.URLValidator(
                                schemes=["http", "https"]
                            )
                        ],
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
            name="PowderJar",
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
                ("code", models.CharField(max_length=12, unique=True)),
                ("lot", models.CharField(blank=True, max_length=40)),
                ("opened_on", models.DateField(blank=True, null=True)),
                (
                    "price",
                    models.DecimalField(
                        blank=True, decimal_places=2, max_digits=9, null=True
                    ),
                ),
                ("strength_percent", models.FloatField(default=100.0)),
                ("notes", models.TextField(blank=True, max_length=2000)),
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
                (
                    "dye",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="jars",
                        to="records.dye",
                    ),
                ),
            ],
            options={
                "ordering": ["dye__name", "code"],
            },
        ),
        migrations.CreateModel(
            name="JarLine",
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
                            ("filled", "Filled"),
                            ("weighed out", "Weighed out"),
                            ("counted", "Weighed anew"),
                            ("poured away", "Handed in or thrown away"),
                            ("undone", "Undone"),
                        ],
                        max_length=20,
                    ),
                ),
                ("amount_g", models.FloatField(default=0.0)),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.jarline",
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
                    "jar",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lines",
                        to="records.powderjar",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="StockBottle",
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
                ("code", models.CharField(max_length=4, unique=True)),
                ("wanted_percent", models.FloatField(null=True)),
                ("powder_g", models.FloatField(null=True)),
                ("powder_strength_percent", models.FloatField(null=True)),
                ("final_ml", models.FloatField()),
                ("strength_percent", models.FloatField()),
                (
                    "evidence",
                    models.CharField(
                        choices=[
                            ("weighed", "weighed"),
                            ("labelled", "as labelled: a guess"),
                            ("mixed", "mixed from other bottles"),
                        ],
                        max_length=10,
                    ),
                ),
                ("made_on", models.DateField(null=True)),
                ("is_date_about", models.BooleanField(default=False)),
                ("water", models.CharField(blank=True, max_length=80)),
                ("place", models.CharField(blank=True, max_length=40)),
                ("discard_by", models.DateField(null=True)),
                ("dead_volume_ml", models.FloatField(default=0.0)),
                ("labelled_percent", models.FloatField(null=True)),
                ("notes", models.TextField(blank=True, max_length=2000)),
                ("method", models.CharField(max_length=40)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "dye",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="bottles",
                        to="records.dye",
                    ),
                ),
                (
                    "jar",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="bottles",
                        to="records.powderjar",
                    ),
                ),
                (
                    "made_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
            ],
            options={
                "ordering": ["dye__name", "code"],
            },
        ),
        migrations.CreateModel(
            name="BottleLine",
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
                            ("checked clear", "checked clear"),
                            ("checked settled", "checked settled"),
                            ("poured away", "poured away"),
                            ("undone", "undone"),
                        ],
                        max_length=20,
                    ),
                ),
                ("volume_ml", models.FloatField(default=0.0)),
                ("strength_percent", models.FloatField(default=0.0)),
                ("powder_g", models.FloatField(default=0.0)),
                ("dye_g", models.FloatField(default=0.0)),
                ("is_guess", models.BooleanField(default=False)),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.bottleline",
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
                    "jar",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.powderjar",
                    ),
                ),
                (
                    "bottle",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lines",
                        to="records.stockbottle",
                    ),
                ),
                (
                    "other",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.stockbottle",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="StockMaking",
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
                ("deed", models.UUIDField(default=uuid.uuid4, unique=True)),
                ("wanted_percent", models.FloatField()),
                ("volume_ml", models.FloatField()),
                ("step", models.CharField(max_length=12)),
                ("powder_g", models.FloatField(null=True)),
                ("final_ml", models.FloatField(null=True)),
                ("water", models.CharField(blank=True, max_length=80)),
                ("place", models.CharField(blank=True, max_length=40)),
                ("discard_by", models.DateField(null=True)),
                ("notes", models.TextField(blank=True, max_length=2000)),
                ("started_at", models.DateTimeField(default=django.utils.timezone.now)),
                ("abandoned_at", models.DateTimeField(null=True)),
                (
                    "bottle",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="making",
                        to="records.stockbottle",
                    ),
                ),
                (
                    "dye",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.dye",
                    ),
                ),
                (
                    "jar",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.powderjar",
                    ),
                ),
                (
                    "started_by",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.person",
                    ),
                ),
            ],
            options={
                "ordering": ["-started_at"],
            },
        ),
        migrations.CreateModel(
            name="MillLot",
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
                ("lot", models.CharField(max_length=40)),
                ("received_on", models.DateField(blank=True, null=True)),
                ("received_g", models.FloatField(blank=True, null=True)),
                ("notes", models.TextField(blank=True, max_length=2000)),
                (
                    "created_at",
                    models.DateTimeField(
                        default=django.utils.timezone.now, editable=False
                    ),
                ),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lots",
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
                "ordering": ["-received_on", "lot"],
                "constraints": [
                    models.UniqueConstraint(
                        models.F("base"),
                        django.db.models.functions.text.Lower("lot"),
                        name="one_lot_a_base",
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="MeasuringTool",
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
                            ("balance", "Scale"),
                            ("cylinder", "Measuring cylinder"),
                            ("flask", "Volumetric flask"),
                            ("pipette", "Graduated pipette"),
                            ("syringe", "Syringe"),
                            ("beaker", "Beaker"),
                            ("jug", "Kitchen jug"),
                            ("bottle-mark", "Mark on a bottle"),
                            ("thermometer", "Thermometer"),
                        ],
                        max_length=20,
                    ),
                ),
                ("size", models.FloatField(blank=True, null=True)),
                ("readability", models.FloatField(blank=True, null=True)),
                (
                    "tool_class",
                    models.CharField(blank=True, max_length=4, verbose_name="Class"),
                ),
                ("standard", models.CharField(blank=True, max_length=40)),
                ("checked_on", models.DateField(blank=True, null=True)),
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
                "constraints": [
                    models.UniqueConstraint(
                        django.db.models.functions.text.Lower("name"),
                        name="one_measuringtool_a_name",
                    )
                ],
            },
        ),
        migrations.AddConstraint(
            model_name="dye",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_dye_a_name"
            ),
        ),
        migrations.AddConstraint(
            model_name="catalogueversion",
            constraint=models.UniqueConstraint(
                fields=("kind", "item_id", "number"), name="one_version_a_number"
            ),
        ),
        migrations.AddConstraint(
            model_name="base",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"), name="one_base_a_name"
            ),
        ),
        migrations.AddConstraint(
            model_name="auxiliary",
            constraint=models.UniqueConstraint(
                django.db.models.functions.text.Lower("name"),
                name="one_auxiliary_a_name",
            ),
        ),
    ]
