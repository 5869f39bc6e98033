"""A fitted palette as JSON: the same file always foretells the same colours.

Numbers that a person may want to read stand as they are; the long arrays are packed
(little-endian doubles, deflated, base64), so that no digit is lost.
"""

import base64
import json
import zlib
from collections.abc import Mapping
from dataclasses import fields
from typing import TYPE_CHECKING, Any

from shadewright.core.mixing.arranging import Names
from shadewright.core.mixing.model.parameters import Sizes, Structure, sizes_by_name
from shadewright.core.mixing.model.shapes import ShapePrior
from shadewright.core.mixing.palette import METHOD, Palette
from shadewright.core.mixing.posterior.known import Known
from shadewright.core.mixing.posterior.solving import Arrow
from shadewright.core.mixing.swatches import Evidence
from shadewright.errors import UnreadableError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

FORMAT = "shadewright-palette"
VERSION = 1
_STRANGE = (
    ArithmeticError,
    LookupError,
    RecursionError,
    TypeError,
    ValueError,
    zlib.error,
)


def written_palette(palette: Palette) -> str:
    """Return a palette as the text of its file."""
    known, structure = palette.known, palette.known.structure
    return json.dumps(
        {
            "format": FORMAT,
            "version": VERSION,
            "method": palette.method,
            "dyes": [
                {
                    "name": name,
                    "evidence": str(evidence),
                    "least_depth_percent": least,
                    "most_depth_percent": most,
                }
                for name, evidence, (least, most) in zip(
                    palette.names.dyes, palette.evidence, palette.depths, strict=True
                )
            ],
            "bases": list(palette.names.bases),
            "sessions": list(palette.names.sessions),
            "width": palette.width,
            "left_out_de": list(palette.left_out),
            "start_surface": known.start_surface,
            "ground_rank": structure.ground_rank,
            "sizes": sizes_by_name(known.sizes),
            "arrays": {name: _packed(each) for name, each in _arrays(known).items()},
        },
        indent=1,
    )


def read_palette(text: str) -> Palette:
    """Return the palette of a file, or say in one sentence that it is none."""
    try:
        whole = json.loads(text)
        found = dict(whole).get("format"), dict(whole).get("version")
    except _STRANGE:
        raise _unreadable(why="It is no palette that Shadewright wrote.") from None
    if found[0] != FORMAT:
        raise _unreadable(why="It is no palette that Shadewright wrote.")
    if found[1] != VERSION:
        raise _unreadable(why=f"It is of version {found[1]}, not {VERSION}.")
    try:
        return _palette(whole)
    except _STRANGE:
        raise _unreadable(why="It is damaged.") from None


def _unreadable(*, why: str) -> UnreadableError:
    return UnreadableError(
        name="The palette file", why=why, advice="Fit the palette again."
    )


def _arrays(known: Known) -> "dict[str, Floats]":
    prior, arrow = known.structure.prior, known.arrow
    return {
        "prior_mean": prior.mean,
        "prior_factor": prior.factor,
        "prior_gain": prior.gain,
        "parameters": known.parameters,
        "shared": arrow.shared,
        "between": arrow.between,
        "own": arrow.own,
        "mixed": arrow.mixed,
    }


def _palette(whole: Mapping[str, Any]) -> Palette:
    arrays = {name: _unpacked(each) for name, each in whole["arrays"].items()}
    dyes = whole["dyes"]
    names = Names(
        dyes=tuple(str(dye["name"]) for dye in dyes),
        bases=tuple(map(str, whole["bases"])),
        sessions=tuple(map(str, whole["sessions"])),
    )
    return Palette(
        names=names,
        known=_known(whole, names, arrays),
        width=_amount(whole["width"]),
        evidence=tuple(Evidence(dye["evidence"]) for dye in dyes),
        depths=tuple(
            (_amount(dye["least_depth_percent"]), _amount(dye["most_depth_percent"]))
            for dye in dyes
        ),
        left_out=tuple(map(_amount, whole["left_out_de"])),
        method=str(whole.get("method", METHOD)),
    )


def _known(
    whole: Mapping[str, Any], names: Names, arrays: "Mapping[str, Floats]"
) -> Known:
    structure = Structure(
        dyes=len(names.dyes),
        bases=len(names.bases),
        sessions=len(names.sessions),
        prior=ShapePrior(
            mean=arrays["prior_mean"],
            factor=arrays["prior_factor"],
            gain=arrays["prior_gain"],
        ),
        ground_rank=int(whole["ground_rank"]),
    )
    if arrays["parameters"].shape != (structure.total,):
        message = "the parameters do not fit the dyes"
        raise ValueError(message)
    sizes = {field.name: _amount(whole["sizes"][field.name]) for field in fields(Sizes)}
    return Known(
        structure=structure,
        sizes=Sizes(**sizes),
        start_surface=_amount(whole["start_surface"]),
        parameters=arrays["parameters"],
        arrow=Arrow(
            shared=arrays["shared"],
            between=arrays["between"],
            own=arrays["own"],
            mixed=arrays["mixed"],
        ),
    )


def _amount(value: Any) -> float:  # ruff: ignore[any-type]
    """Return a number from 0 up."""
    found = float(value)
    if not 0.0 <= found < float("inf"):
        message = "a number is none that a fit gives"
        raise ValueError(message)
    return found


def _packed(array: "Floats") -> dict[str, object]:
    import numpy as np

    raw = np.ascontiguousarray(array, dtype="<f8").tobytes()
    return {
        "shape": list(array.shape),
        "doubles": base64.b64encode(zlib.compress(raw, 6)).decode("ascii"),
    }


def _unpacked(packed: Mapping[str, Any]) -> "Floats":
    import numpy as np

    raw = zlib.decompress(base64.b64decode(packed["doubles"], validate=True))
    found = np.frombuffer(raw, dtype="<f8").astype(float)
    whole: Floats = found.reshape([int(side) for side in packed["shape"]])
    if not np.isfinite(whole).all():
        message = "a number is not finite"
        raise ValueError(message)
    return whole
