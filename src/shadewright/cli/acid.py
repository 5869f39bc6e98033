"""``shadewright acid``: how sour water and acid are, without any fibre."""

import click

from shadewright.cli import words
from shadewright.cli.answers import Rows, as_json, say
from shadewright.cli.auxiliary_words import acid_from_words
from shadewright.cli.commands import SumCommand
from shadewright.core.baths import AcidDose, AcidWanted, acid_cautions, acid_dose
from shadewright.core.baths.acidity import (
    AcidInBath,
    Acidity,
    ph_text,
    require_alkalinity,
    water_ph,
)
from shadewright.core.quantities import amount_text
from shadewright.core.quantities.reading import Asked, written
from shadewright.errors import OutOfRangeError


def _alkalinity(text: str, *, name: str, argument: str) -> float:
    asked = Asked(
        name=name,
        example="a number in mg/l as calcium carbonate, such as 100",
        argument=argument,
    )
    found = written(text, asked=asked)
    if found.unit not in {"", "mg/l"}:
        raise asked.refusal(text)
    return require_alkalinity(found.number, name=name, argument=argument)


@click.command("acid", cls=SumCommand)
@click.option(
    "--acid",
    type=words.Written(acid_from_words, called="Acid"),
    multiple=True,
    required=True,
    help="KIND:AMOUNT, as citric:2g, citric:1g/l or vinegar5:30ml; once for each acid.",
)
@click.option(
    "--water",
    type=words.VOLUME,
    required=True,
    help="All the liquid in the bath, as 3l.",
)
@click.option(
    "--alkalinity",
    type=words.Written(_alkalinity, called="Alkalinity"),
    default="0",
    show_default=True,
    help="Alkalinity of the water in mg/l as calcium carbonate, a plain number.",
)
@click.option(
    "--temperature",
    type=words.TEMPERATURE,
    default="25C",
    show_default=True,
    help="Temperature of the bath.",
)
@as_json
def acid(
    *,
    acid: tuple[AcidWanted, ...],
    water: float,
    alkalinity: float,
    temperature: float,
    as_json: bool,
) -> None:
    """Reckon the pH of water with acid in it, before any yarn."""
    doses = [_dose(each, water) for each in acid]
    _check_poured(doses, water)
    found = water_ph(
        acids=[AcidInBath(acid=dose.acid, pure_g=dose.pure_g) for dose in doses],
        liquor_ml=water,
        alkalinity_mg_per_l=alkalinity,
        temperature_c=temperature,
    )
    say(
        _answer(found, doses),
        as_json=as_json,
        rows=_rows(found, doses),
        warnings=(found.note, *_cautions(doses)),
    )


def _dose(wanted: AcidWanted, water_ml: float) -> AcidDose:
    return acid_dose(
        acid=wanted.acid,
        amount=wanted.amount,
        fibre_mass_g=None,
        liquor_volume_ml=water_ml,
        strength_g_per_100ml=wanted.strength_g_per_100ml,
    )


def _check_poured(doses: list[AcidDose], water_ml: float) -> None:
    """Refuse more acid by volume than all the liquid that it is part of."""
    poured_ml = sum(dose.volume_ml or 0.0 for dose in doses)
    if poured_ml > water_ml:
        raise OutOfRangeError(
            name="Acid that is poured",
            given=amount_text(poured_ml, "ml"),
            allowed=f"at most {amount_text(water_ml, 'ml')}, all the liquid there is",
            argument="acid",
        )


def _answer(found: Acidity, doses: list[AcidDose]) -> dict[str, object]:
    answer: dict[str, object] = {"ph": found.ph, "u_ph": found.u_ph}
    if found.u_ph is None:
        answer["u_why"] = found.why
    answer["note"] = found.note
    answer["acids"] = [
        {"acid": dose.acid.key, "pure_g": dose.pure_g, "volume_ml": dose.volume_ml}
        for dose in doses
    ]
    answer["warnings"] = _cautions(doses)
    return answer


def _rows(found: Acidity, doses: list[AcidDose]) -> Rows:
    acids = [("acid", _acid_text(dose)) for dose in doses]
    return [("pH", ph_text(acidity=found)), *acids]


def _acid_text(dose: AcidDose) -> str:
    weight = amount_text(dose.pure_g, "g")
    if dose.acid.is_solid:
        return f"{weight} of {dose.acid.name}"
    if dose.volume_ml is None:
        return f"{weight} of pure {dose.acid.name}"
    volume = f"{amount_text(dose.volume_ml, 'ml')} of {dose.acid.name}"
    return f"{volume}, {weight} of pure acid"


def _cautions(doses: list[AcidDose]) -> list[str]:
    said = [
        caution
        for dose in doses
        for caution in acid_cautions(
            acid=dose.acid, strength_g_per_100ml=dose.strength_g_per_100ml
        )
    ]
    return list(dict.fromkeys(said))
