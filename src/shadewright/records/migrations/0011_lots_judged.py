# Written by Django’s makemigrations

import django.db.models.deletion
import django.utils.timezone
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("records", "0010_dye_days"),
    ]

    operations = [
        migrations.CreateModel(
            name="TagRegion",
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
                ("name", models.CharField(max_length=60, unique=True)),
                ("asks", models.JSONField(default=list)),
                ("fibre_names", models.JSONField(default=dict)),
                ("source", models.CharField(blank=True, max_length=200)),
                ("checked_on", models.DateField(null=True)),
                ("is_used", models.BooleanField(default=False)),
            ],
            options={
                "ordering": ["name"],
            },
        ),
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
                    ("snipped", "A snip is drying"),
                    ("decided", "Decided"),
                    ("note", "Note"),
                    ("undone", "Undone"),
                ],
                max_length=12,
            ),
        ),
        migrations.CreateModel(
            name="Complaint",
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
                ("from_whom", models.CharField(max_length=80)),
                (
                    "about",
                    models.CharField(
                        choices=[
                            ("bleeds", "It bleeds"),
                            ("rubs", "It rubs off"),
                            ("no match", "It does not match"),
                            ("uneven", "It is uneven"),
                            ("short", "It is short"),
                            ("other", "Something else"),
                        ],
                        max_length=12,
                    ),
                ),
                ("said", models.TextField(blank=True, max_length=4000)),
                ("came_on", models.DateField()),
                ("photo", models.FileField(blank=True, upload_to="complaints/")),
                ("is_closed", models.BooleanField(default=False)),
                ("outcome", models.CharField(blank=True, max_length=300)),
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
                    "lot",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="complaints",
                        to="records.lot",
                    ),
                ),
            ],
            options={
                "ordering": ["is_closed", "-number"],
            },
        ),
        migrations.CreateModel(
            name="Correction",
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
                            ("correct", "To come to shade"),
                            ("overdye", "Overdyed"),
                        ],
                        max_length=12,
                    ),
                ),
                ("foretold", models.JSONField(default=dict)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "becomes",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="overdyed_from",
                        to="records.recipe",
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
                    "lot",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="corrections",
                        to="records.lot",
                    ),
                ),
                (
                    "recipe",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="correction",
                        to="records.recipe",
                    ),
                ),
            ],
            options={
                "ordering": ["-id"],
            },
        ),
        migrations.CreateModel(
            name="FastnessTest",
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
                    "kind",
                    models.CharField(
                        choices=[
                            ("bleed", "Bleed, wet on white"),
                            ("wash", "Washed with white cloths"),
                            ("rub dry", "Rubbed dry"),
                            ("rub wet", "Rubbed wet"),
                        ],
                        max_length=12,
                    ),
                ),
                ("cloths", models.JSONField(default=list)),
                ("change", models.FloatField(null=True)),
                ("photo", models.FileField(blank=True, upload_to="cloths/")),
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
                        related_name="fastness_tests",
                        to="records.lot",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.fastnesstest",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="Maker",
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
                ("name", models.CharField(blank=True, max_length=80)),
                ("address", models.CharField(blank=True, max_length=200)),
                ("origin", models.CharField(blank=True, max_length=160)),
                ("care", models.CharField(blank=True, max_length=300)),
                (
                    "studio",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="maker",
                        to="records.studio",
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="SkeinsOut",
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
                ("skeins", models.PositiveIntegerField()),
                ("to_whom", models.CharField(max_length=80)),
                ("reach", models.CharField(blank=True, max_length=120)),
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
                        related_name="skeins_out",
                        to="records.lot",
                    ),
                ),
                (
                    "order_line",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="skeins_out",
                        to="records.orderline",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.skeinsout",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="Standard",
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
                ("where", models.CharField(blank=True, max_length=120)),
                ("made_on", models.DateField(null=True)),
                ("colour_l", models.FloatField(null=True)),
                ("colour_a", models.FloatField(null=True)),
                ("colour_b", models.FloatField(null=True)),
                ("sd", models.FloatField(null=True)),
                (
                    "read_by",
                    models.CharField(
                        blank=True,
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
                ("why", models.CharField(blank=True, max_length=200)),
                ("created_at", models.DateTimeField(default=django.utils.timezone.now)),
                (
                    "base",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="standards",
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
                    "lot",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="standards",
                        to="records.lot",
                    ),
                ),
                (
                    "reading",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="standards",
                        to="records.colourreading",
                    ),
                ),
                (
                    "recipe",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="standards",
                        to="records.recipe",
                    ),
                ),
                (
                    "replaces",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="replaced_by",
                        to="records.standard",
                    ),
                ),
            ],
            options={
                "ordering": ["recipe", "base", "-id"],
            },
        ),
        migrations.CreateModel(
            name="DryCheck",
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
                ("seen_under", models.CharField(blank=True, max_length=60)),
                ("spots", models.JSONField(default=list)),
                ("colour_l", models.FloatField()),
                ("colour_a", models.FloatField()),
                ("colour_b", models.FloatField()),
                ("inside_de", models.FloatField(null=True)),
                (
                    "formula",
                    models.CharField(
                        choices=[("CIEDE2000", "CIEDE2000"), ("CMC(2:1)", "CMC(2:1)")],
                        max_length=12,
                    ),
                ),
                ("de", models.FloatField(null=True)),
                ("de_u", models.FloatField(null=True)),
                ("words", models.CharField(blank=True, max_length=160)),
                ("verdict", models.CharField(blank=True, max_length=24)),
                ("method", models.CharField(blank=True, max_length=60)),
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
                        related_name="dry_checks",
                        to="records.lot",
                    ),
                ),
                (
                    "meter",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="records.meter",
                    ),
                ),
                (
                    "reading",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="dry_checks",
                        to="records.colourreading",
                    ),
                ),
                (
                    "undoes",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="records.drycheck",
                    ),
                ),
                (
                    "standard",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="dry_checks",
                        to="records.standard",
                    ),
                ),
            ],
            options={
                "ordering": ["id"],
            },
        ),
        migrations.CreateModel(
            name="TagText",
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
                ("fibre_content", models.CharField(blank=True, max_length=200)),
                ("care", models.CharField(blank=True, max_length=300)),
                (
                    "base",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="tag_text",
                        to="records.base",
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="Tolerances",
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
                (
                    "formula",
                    models.CharField(
                        choices=[("CIEDE2000", "CIEDE2000"), ("CMC(2:1)", "CMC(2:1)")],
                        default="CIEDE2000",
                        max_length=12,
                    ),
                ),
                ("match_de", models.FloatField(default=1.0)),
                ("alternate_de", models.FloatField(default=2.0)),
                ("mend_de", models.FloatField(default=3.0)),
                (
                    "studio",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="tolerances",
                        to="records.studio",
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="ToneBand",
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
                ("least_de", models.FloatField()),
                ("most_de", models.FloatField()),
                (
                    "recipe",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="tone_band",
                        to="records.recipe",
                    ),
                ),
            ],
        ),
    ]
