"""What an address asks of a mix: a base, dyes with depths, a wanted colour, yarn."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from urllib.parse import urlencode

from shadewright.core.mixing.swatches import MOST_DEPTH_PERCENT
from shadewright.core.quantities import percent, require_between
from shadewright.errors import StudioError
from shadewright.web.amounts import some_mass
from shadewright.web.asking import number_asked
from shadewright.web.mix_text import mix_of, mix_text
from shadewright.web.targets import target_asked, target_query
from shadewright.workflows.shades.swatches import DyeDoses
from shadewright.workflows.shades.wanted import Wanted

USUAL_YARN_G = 100.0
FIRST_PERCENT = 0.1
"""Where the slider of a dye that is added stands at first. [%]"""
_DYE_FIELD = re.compile(r"d[0-9]{1,9}")


@dataclass(frozen=True, kw_only=True)
class MixAsked:
    """A mix as an address says it; ``faults`` by the field that they stand beside.

    ``doses`` keeps dyes at 0 %, so that their sliders stay. ``typed`` is what stood in
    the number fields that could not be read.
    """

    base_id: int | None = None
    doses: DyeDoses = ()
    wanted: Wanted | None = None
    yarn_g: float = USUAL_YARN_G
    typed: Mapping[str, str] = field(default_factory=dict)
    faults: Mapping[str, str] = field(default_factory=dict)
    is_sent: bool = False

    @property
    def mix(self) -> DyeDoses:
        """The dyes that are really in it."""
        return tuple(dose for dose in self.doses if dose[1])

    def query(self, **more: str) -> str:
        """Return the same as parts of an address."""
        parts = {} if self.base_id is None else {"base": str(self.base_id)}
        parts |= {"mix": mix_text(self.mix)} if self.mix else {}
        parts |= {} if self.wanted is None else target_query(self.wanted)
        if self.yarn_g != USUAL_YARN_G:
            parts["yarn"] = f"{self.yarn_g:g}"
        return urlencode(parts | more, safe=":,")


def mix_asked(said: Mapping[str, str]) -> MixAsked:
    """Read a mix from an address: ``mix=12:0.6`` or one field a dye, ``d12=0.6``."""
    faults: dict[str, str] = {}
    typed: dict[str, str] = {}
    fields = {key: said[key] for key in said if _DYE_FIELD.fullmatch(key)}
    doses = mix_of(said.get("mix", "")) if not fields else ()
    for key, text in fields.items():
        try:
            doses += ((int(key[1:]), _depth(text, key)),)
        except StudioError as error:
            doses += ((int(key[1:]), 0.0),)
            faults[key], typed[key] = error.sentence, text
    return MixAsked(
        base_id=number_asked(said, "base", kind="base"),
        doses=_without(_with(doses, said), said),
        wanted=target_asked(said),
        yarn_g=_yarn(said, faults, typed),
        typed=typed,
        faults=faults,
        is_sent=bool(fields) or "add" in said,
    )


def allowed_depth(value: float, /, *, name: str, argument: str) -> float:
    """Return a depth that may stand in a mix, 0 to 20 %."""
    return require_between(
        value,
        least=0.0,
        most=MOST_DEPTH_PERCENT,
        unit="%",
        name=name,
        argument=argument,
    )


def _depth(text: str, key: str) -> float:
    if not text.strip():
        return 0.0
    return percent(
        text, name="The depth", default_unit="%", guard=allowed_depth, argument=key
    )


def _with(doses: DyeDoses, said: Mapping[str, str]) -> DyeDoses:
    added = number_asked(said, "add", kind="dye")
    if added is None or added in {dye_id for dye_id, _depth in doses}:
        return doses
    return (*doses, (added, FIRST_PERCENT))


def _without(doses: DyeDoses, said: Mapping[str, str]) -> DyeDoses:
    taken = number_asked(said, "out", kind="dye")
    return tuple(dose for dose in doses if dose[0] != taken)


def _yarn(
    said: Mapping[str, str], faults: dict[str, str], typed: dict[str, str]
) -> float:
    text = said.get("yarn", "").strip()
    if not text:
        return USUAL_YARN_G
    try:
        return some_mass(text, name="The yarn")
    except StudioError as error:
        faults["yarn"], typed["yarn"] = error.sentence, text
        return USUAL_YARN_G
