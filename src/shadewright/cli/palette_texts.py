"""What ``shadewright palette`` says: the keys of its answers, and their words."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from shadewright.cli.answers import Rows
from shadewright.core.colour.cielab import Lab
from shadewright.core.colour.spectra.lights import Light
from shadewright.core.mixing.asking import Told, lab_under
from shadewright.core.mixing.model.shapes import wavelengths_nm
from shadewright.core.mixing.palette import Learned, Suspect
from shadewright.core.mixing.swatches import Evidence, Mix, Swatch
from shadewright.core.quantities import number_text
from shadewright.exchange.colour_text import on_screen

if TYPE_CHECKING:
    from shadewright.core.mixing.advising import Advised
    from shadewright.exchange.swatch_file import RowProblem

_SHOWN = 12
_MOST_MISTAKEN = 7.0
_PINK = 4.0
_NOT_FORETOLD = "no dye stands in two swatches, so none foretells another"


def doses_list(doses: Sequence[tuple[str, float]]) -> list[dict[str, object]]:
    """Return doses as every answer of these commands writes them."""
    return [{"dye": dye, "depth_percent": depth} for dye, depth in doses]


def doses_text(doses: Sequence[tuple[str, float]]) -> str:
    """Return doses in words."""
    said = [f"{dye} {number_text(depth, digits=3)} %" for dye, depth in doses]
    return ", ".join(said) or "undyed"


def fit_answer(learned: Learned, rejected: Sequence["RowProblem"]) -> dict[str, object]:
    """Return every key of what was learned."""
    found = learned.palette
    return {
        "dyes": [
            {"name": dye, "evidence": str(kind)}
            for dye, kind in zip(found.names.dyes, found.evidence, strict=True)
        ],
        "bases": list(found.names.bases),
        "sessions": list(found.names.sessions),
        "swatches_used": len(learned.used),
        "rejected": [{"line": row.line, "why": row.why} for row in rejected],
        "suspect": [
            {"line": each.swatch.number, "why": suspect_words(each)}
            for each in learned.suspects
        ],
        "leave_one_out": _left_out(found.left_out),
        "warnings": doubts(learned),
    }


def _left_out(found: Sequence[float]) -> dict[str, float | str | None]:
    """Return how well swatches are foretold by the others, where any can be."""
    import numpy as np

    if not found:
        return {"median_de": None, "p90_de": None, "why": _NOT_FORETOLD}
    return {
        "median_de": float(np.median(found)),
        "p90_de": float(np.percentile(found, 90)),
    }


def suspect_words(suspect: Suspect) -> str:
    """Say why a swatch was set aside."""
    return (
        f"{doses_text(suspect.swatch.doses)} on {suspect.swatch.base} lies "
        f"{number_text(suspect.distance, digits=2)} (CIEDE2000) from what the other "
        f"swatches say{_as_dosed(suspect)}: a wrong dose, a swapped tag or a wrong "
        "reading. It was set aside"
    )


def _as_dosed(suspect: Suspect) -> str:
    """Say which dose would explain a swatch, where one would."""
    is_dose = 1.3 < max(suspect.dosed, 1.0 / suspect.dosed) < _MOST_MISTAKEN
    much = number_text(suspect.dosed, digits=2)
    return f", as if dosed {much} times as much" if is_dose else ""


def doubts(learned: Learned) -> list[str]:
    """Say what about the whole table looks amiss."""
    said = []
    if learned.is_other_light:
        said.append(
            "The colours fit better as read under D50 than under D65. Set the meter to "
            "D65 and 10°, or have Lab reckoned anew from its spectra"
        )
    every = [*learned.used, *(each.swatch for each in learned.suspects)]
    pink = [each for each in every if not each.doses and _looks_pink(each)]
    if pink:
        lines = ", ".join(f"{each.number}" for each in pink)
        said.append(
            f"Undyed yarn reads pink and not cream (line {lines}). See whether the "
            "columns a and b are swapped"
        )
    return said


def _looks_pink(swatch: Swatch) -> bool:
    """Tell whether undyed yarn is redder than yellow, and plainly so."""
    if swatch.reading.evidence is Evidence.SPECTRUM:
        return False
    _light, red, yellow = swatch.reading.values[:3]
    return red > max(_PINK, yellow)


def fit_rows(learned: Learned, output: Path) -> Rows:
    """Return the same as rows."""
    found = learned.palette
    most = _left_out(found.left_out)["p90_de"]
    return [
        ("dyes", ", ".join(found.names.dyes)),
        ("on", ", ".join(found.names.bases)),
        ("swatches used", f"{len(learned.used)}"),
        (
            "each by the others",
            f"within {number_text(most, digits=2)} (CIEDE2000) in nine of ten"
            if isinstance(most, float)
            else f"{_NOT_FORETOLD}",
        ),
        ("written to", f"{output}"),
    ]


def fit_warnings(learned: Learned, rejected: Sequence["RowProblem"]) -> list[str]:
    """Return what was left out, and why."""
    said = [f"Line {row.line} was left out: {row.why}." for row in rejected[:_SHOWN]]
    if len(rejected) > _SHOWN:
        said.append(f"{len(rejected) - _SHOWN} more lines were left out.")
    said += [f"{each}." for each in doubts(learned)]
    return said + [
        f"Line {each.swatch.number}: {suspect_words(each)}."
        for each in learned.suspects
    ]


def told_answers(
    mixes: Sequence[Mix], told: Told, lights: Sequence[Light]
) -> list[dict[str, object]]:
    """Return every key of each mix that was foretold."""
    under = {light: lab_under(told.reflectance, light=light) for light in lights}
    answers: list[dict[str, object]] = []
    for place, mix in enumerate(mixes):
        lab = told.lab[place].tolist()
        shown = on_screen(Lab(*lab))
        answer: dict[str, object] = {
            "doses": doses_list(mix.doses),
            "lab": lab,
            "reflectance": told.reflectance[place].tolist(),
            "wavelength_nm": wavelengths_nm().tolist(),
            "hex": shown.hex_code,
            "screen_can_show": shown.is_true,
            "expected_de": float(told.expected[place]),
            "de_90": float(told.de_90[place]),
            "evidence": str(told.evidence[place]),
        }
        if lights:
            answer["lab_by_light"] = {
                str(light): labs[place].tolist() for light, labs in under.items()
            }
        answers.append(answer)
    return answers


def told_rows(answers: Sequence[dict[str, object]]) -> Rows:
    """Return a row for each mix."""
    return [_told_row(answer) for answer in answers]


def _told_row(answer: dict[str, object]) -> tuple[str, str]:
    doses = [(d["dye"], d["depth_percent"]) for d in answer["doses"]]  # type: ignore[attr-defined]
    lab = ", ".join(number_text(part, digits=4) for part in answer["lab"])  # type: ignore[attr-defined]
    sure = number_text(float(str(answer["de_90"])), digits=2)
    beyond = "" if answer["screen_can_show"] else ", more vivid than a screen shows"
    colour = f"Lab {lab}, {answer['hex']}{beyond}"
    known = f"within {sure} in nine of ten (from {answer['evidence']})"
    return doses_text(doses), f"{colour}; {known}"


def next_answer(advised: Sequence["Advised"]) -> dict[str, object]:
    """Return the swatches to dye next."""
    return {
        "swatches": [
            {"doses": doses_list(each.doses), "expected_gain": each.gain}
            for each in advised
        ]
    }


def next_rows(advised: Sequence["Advised"]) -> Rows:
    """Return a row for each swatch."""
    return [
        (f"{place}", f"{doses_text(each.doses)}: {_gain_words(each)}")
        for place, each in enumerate(advised, start=1)
    ]


def _gain_words(advised: "Advised") -> str:
    return f"expected difference falls by {number_text(advised.gain, digits=2)}"
