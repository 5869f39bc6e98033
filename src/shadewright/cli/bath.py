"""``shadewright bath``: doses, water, acid and salt for one bath."""

import click

from shadewright.cli import words
from shadewright.cli.answers import as_json, say
from shadewright.cli.auxiliary_words import (
    acid_from_words,
    class_from_words,
    salt_from_words,
)
from shadewright.cli.bath_texts import Reckoned
from shadewright.cli.commands import SumCommand
from shadewright.cli.dose_words import dose_from_words
from shadewright.cli.lots import Lots
from shadewright.core.baths import (
    AcidWanted,
    BathWanted,
    Dose,
    MeasuredWith,
    SaltWanted,
    bath_sum,
)
from shadewright.core.quantities import (
    Balance,
    MeasuringTool,
    liquor_ratio_ml_per_g,
)
from shadewright.core.tables.dye_classes import DyeClass


@click.command("bath", cls=SumCommand)
@click.option(
    "--fibre",
    type=words.FIBRE,
    required=True,
    help="Weight of the dry yarn, as 100g.",
)
@click.option(
    "--dose",
    "doses",
    type=words.Written(dose_from_words, called="Dose"),
    multiple=True,
    required=True,
    help="NAME=DEPTH[@STRENGTH], as Gorse=0.6%@1%; once for each dye.",
)
@click.option(
    "--ratio",
    "liquor_ratio",
    type=words.Written(liquor_ratio_ml_per_g, called="Liquor ratio"),
    default="30",
    show_default=True,
    help="Litres of bath to a kilogram of yarn.",
)
@click.option(
    "--acid",
    type=words.Written(acid_from_words, called="Acid"),
    help="KIND:AMOUNT, as citric:2% (on weight of fibre), citric:1g/l, vinegar5:30ml.",
)
@click.option(
    "--salt",
    type=words.Written(salt_from_words, called="Salt"),
    help="Glauber’s salt, as glauber-anhydrous:5% or glauber-decahydrate:10%.",
)
@click.option(
    "--dye-class",
    type=words.Written(class_from_words, called="Class of the dyes"),
    help=(
        "Class of the dyes, for the caution on salt: levelling, half-milling, "
        "milling or super-milling."
    ),
)
@click.option(
    "--balance",
    type=words.BALANCE,
    help="Step of the scale, as 0.1g; with its own error, as 0.1g+-0.2g.",
)
@click.option(
    "--measure", type=words.TOOL, help="What stock is measured in, as “syringe 20ml”."
)
@click.option(
    "--wet-yarn",
    "wet",
    type=words.WET_YARN,
    help="Weight of the yarn with the water it was wetted out in, as 200g.",
)
@click.option(
    "--by-weight",
    is_flag=True,
    help="Stock is weighed on the balance, not measured in ml.",
)
@as_json
def bath(  # ruff: ignore[too-many-arguments] - one for each option
    *,
    fibre: float,
    doses: tuple[Dose, ...],
    liquor_ratio: float,
    acid: AcidWanted | None,
    salt: SaltWanted | None,
    dye_class: DyeClass | None,
    balance: Balance | None,
    measure: MeasuringTool | None,
    wet: float | None,
    by_weight: bool,
    as_json: bool,
) -> None:
    """Reckon a bath: doses, fresh water, acid and salt."""
    wanted = BathWanted(
        fibre_mass_g=fibre,
        doses=doses,
        liquor_ratio=liquor_ratio,
        acid=acid,
        salt=salt,
        wet_yarn_g=wet,
        dye_class=dye_class,
        measured_with=MeasuredWith(
            tool=measure, balance=balance, is_by_weight=by_weight
        ),
    )
    answer = Reckoned(
        found=bath_sum(wanted=wanted, generator=Lots()),
        measured_with=wanted.measured_with,
    )
    say(
        answer.as_answer(),
        as_json=as_json,
        rows=answer.rows(),
        warnings=(*answer.advice(), *answer.warnings()),
    )
