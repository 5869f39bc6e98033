"""A spent bath: what makes it neutral before it is poured away."""

from dataclasses import dataclass

from shadewright.core.baths.acidity import SPENT_STEPS, bicarbonate_g
from shadewright.records import recipe_reads
from shadewright.workflows.bath_cautions import METAL
from shadewright.workflows.bath_pages import bath_now
from shadewright.workflows.bath_ph import ph_of_bath

_ONLY_SALT = (
    "An ammonium salt alone leaves a bath nearly neutral once it is cold: measure it "
    "with a strip."
)


@dataclass(frozen=True, kw_only=True)
class SpentBath:
    """The most bicarbonate that a bath can need, how, and what to mind.

    ``bicarbonate_g`` is None where an acid is not known, nothing where there is
    only an ammonium salt; ``why_not`` then says so.
    """

    bicarbonate_g: float | None
    why_not: str
    steps: tuple[str, ...]
    metal: str


def spent_bath(number: str) -> SpentBath:
    """Return how a bath is made neutral."""
    bath = bath_now(number)
    found = ph_of_bath(bath)
    grams = bicarbonate_g(acids=found.acids) if found.acids else None
    version = recipe_reads.version_row(bath.version_id)
    metals = [
        dose.dye.name
        for part in version.parts.all()
        for dose in part.doses.all()
        if dose.dye is not None and dose.dye.is_metal_complex
    ]
    return SpentBath(
        bicarbonate_g=grams or None,
        why_not=found.why_not or ("" if grams else _ONLY_SALT),
        steps=SPENT_STEPS,
        metal=METAL.format(" and ".join(metals)) if metals else "",
    )
