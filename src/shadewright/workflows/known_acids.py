"""Which acid a thing on the shelf is: told by its name."""

from shadewright.core.tables.acids import (
    ACETIC,
    AMMONIUM_ACETATE,
    AMMONIUM_SULPHATE,
    CITRIC,
    CITRIC_MONO,
    FORMIC,
    SULPHURIC,
    VINEGAR5,
    Acid,
)
from shadewright.records.models import Auxiliary
from shadewright.records.models.catalogue import AuxiliaryKind

_SOUR = {AuxiliaryKind.ACID.value, AuxiliaryKind.ACID_SALT.value}
_NAMES: tuple[tuple[tuple[str, ...], Acid], ...] = (
    (("ammonium", "acetate"), AMMONIUM_ACETATE),
    (("ammonium", "sulphate"), AMMONIUM_SULPHATE),
    (("citric", "monohydrate"), CITRIC_MONO),
    (("citric",), CITRIC),
    (("vinegar",), VINEGAR5),
    (("acetic",), ACETIC),
    (("formic",), FORMIC),
    (("sulphuric",), SULPHURIC),
)


def is_sour(row: Auxiliary) -> bool:
    """Whether it is an acid, or a salt that turns acid."""
    return row.kind in _SOUR


def acid_of(row: Auxiliary) -> Acid | None:
    """Return the acid that a thing on the shelf is by its name, or None."""
    if not is_sour(row):
        return None
    name = row.name.casefold().replace("sulf", "sulph")
    return next(
        (acid for words, acid in _NAMES if all(word in name for word in words)), None
    )
