"""The words of the bench: what was written, by whom, on what."""

from uuid import uuid5

from django.urls import reverse
from django.utils import timezone

from shadewright.core.quantities import amount_text, number_text
from shadewright.web.bench.pages import Written
from shadewright.workflows.bath_pages import BathAct, BathNow, DoneLine
from shadewright.workflows.bath_shapes import HEARD, MORE, PART
from shadewright.workflows.days.room_clocks import ROOM_TITLES
from shadewright.workflows.rescaling import ACCEPTED, RESCALED


def line_words(bath: BathNow, line: DoneLine) -> str:
    """Return a line as it is said at the pot: what, how much, when."""
    return f"{_what(bath, line)}, {timezone.localtime(line.at):%H:%M}"


def who(line: DoneLine) -> str:
    """Return who wrote a line, and on what."""
    return ", ".join(part for part in (line.by, line.device) if part)


def written(bath: BathNow, line: DoneLine) -> Written:
    """Return a line with the key that takes it back."""
    return Written(
        deed=line.deed,
        undo_key=uuid5(line.deed, "undo"),
        step=line.step,
        words=line_words(bath, line) + (f" ({line.note})" if line.note else ""),
        who=who(line),
        may_undo=line.may_undo,
        photo=_photo(bath, line),
    )


def _photo(bath: BathNow, line: DoneLine) -> str:
    if not line.has_photo:
        return ""
    return reverse("bench-picture", args=[bath.number, line.deed])


def _what(bath: BathNow, line: DoneLine) -> str:
    key = line.step
    for ending in (PART, HEARD, MORE):
        key = key.removesuffix(ending)
    titles = {each.step.key: each.step.title for each in bath.steps}
    title = titles.get(key) or ROOM_TITLES.get(key, key)
    amount = "" if line.value is None else amount_text(line.value, line.unit)
    if line.step.endswith(HEARD):
        return f"Alarm heard: {title}"
    if line.step.endswith(MORE):
        return f"{title}: {amount} more"
    return _of_act(line, title, amount)


def _of_act(line: DoneLine, title: str, amount: str) -> str:
    if line.step.startswith((RESCALED, ACCEPTED)):
        return "Decided"
    if line.act in _SAID:
        return _SAID[line.act].format(title=title, amount=amount)
    if line.act == BathAct.PH and line.value is not None:
        return f"Read pH {number_text(line.value, digits=3)}"
    if line.act == BathAct.HUNG and line.value is not None:
        return f"{line.act.label}, {line.value:.0f} {line.unit}"
    from_another = f" from {line.bottle} {line.dye}" if line.step.endswith(PART) else ""
    return f"{title} {amount}{from_another}".strip()


_PLAIN = (BathAct.NOTE, BathAct.PROBLEM, BathAct.PHOTO, BathAct.RINSED, BathAct.DRY)
_SAID = {
    **{act: act.label for act in _PLAIN},
    BathAct.TEMPERATURE: f"{BathAct.TEMPERATURE.label} {{amount}}",
    BathAct.MISSED: "{title} left out",
    BathAct.LEFTOVER: "About {amount} left in the bath",
}
