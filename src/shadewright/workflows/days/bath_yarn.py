"""The yarn of a bath in words, as a helper looks for it."""

from shadewright.core.quantities import amount_text, counted
from shadewright.records import recipe_reads, selling_reads
from shadewright.workflows.bath_shapes import BathNow


def yarn_of_bath(bath: BathNow) -> str:
    """Return what yarn is dyed: its base, its delivery, skeins and grams."""
    skeins = counted(bath.skeins, "skein") if bath.skeins else ""
    said = (base_of_bath(bath), skeins, amount_text(bath.fibre_g, "g"))
    return ", ".join(part for part in said if part)


def base_of_bath(bath: BathNow) -> str:
    """Return the base with its delivery; a lot that is dyed again by its number.

    Undyed yarn in its place would be spoilt: the doses are what the lot lacks.
    """
    lot = selling_reads.lot_corrected_by(recipe_reads.bath_row(bath.number))
    if lot:
        return f"lot {lot}, dyed already, on {bath.base_name}"
    return f"{bath.base_name}{f', mill lot {bath.mill_lot}' if bath.mill_lot else ''}"
