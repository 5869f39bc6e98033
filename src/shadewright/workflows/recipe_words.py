"""A recipe in words: what a version says, and what changed from one to another."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from shadewright.core.quantities import amount_text, number_text
from shadewright.core.quantities.writing import NO_BREAK
from shadewright.workflows.recipe_shapes import DoseLine, HelperLine, RecipeText

_HEAT = (
    ("Start", "start_c", "°C"),
    ("Rise", "rise_c_per_min", "°C/min"),
    ("Top", "top_c", "°C"),
    ("Hold", "hold_min", "min"),
)
_NOTES = (
    ("Ties", "ties"),
    ("Stirring", "stirring"),
    ("Look at 15 minutes", "look_at_15"),
    ("Notes", "notes"),
    ("As it was written", "as_written"),
)


@dataclass(frozen=True, kw_only=True)
class Changed:
    """One thing that differs between two versions; empty where it was not there."""

    name: str
    before: str
    after: str

    @property
    def words(self) -> str:
        """The change as a sentence without its stop."""
        if not self.before:
            return f"{self.name}: {self.after}, new"
        if not self.after:
            return f"{self.name}: left out, was {self.before}"
        return f"{self.name}: {self.after}, was {self.before}"


def dose_words(dose: DoseLine) -> str:
    """Return a dose as ``Gorse 0.6 %``, or as it was written."""
    if dose.depth_percent is not None and dose.dye_name:
        return f"{dose.dye_name} {amount_text(dose.depth_percent, '%')}"
    return " ".join(part for part in (dose.dye_name, _quoted(dose.as_written)) if part)


def mix_words(doses: Iterable[tuple[str, float]]) -> str:
    """Return dyes with their depths as ``Gorse 0.6 % + Slate 0.2 %``, or bare yarn."""
    said = (f"{dye} {amount_text(depth, '%')}" for dye, depth in doses)
    return " + ".join(said) or "bare yarn"


def helper_words(helper: HelperLine) -> str:
    """Return how much of an auxiliary, counted how, and when."""
    amount = number_text(helper.amount, digits=4)
    unit = "% on fibre" if helper.unit == helper.unit.ON_FIBRE else "g in a litre"
    return f"{amount}{NO_BREAK}{unit}, {_when(helper)}"


def _when(helper: HelperLine) -> str:
    if helper.at_c is None:
        return str(helper.when.label)
    return f"on the way up, at {amount_text(helper.at_c, '°C')}"


def ratio_words(ratio: float | None) -> str:
    """Return a liquor ratio as ``1:30``; empty where none is said."""
    return "" if ratio is None else f"1:{number_text(ratio, digits=4)}"


def heat_words(text: RecipeText) -> str:
    """Return the temperature programme in one line; empty where none is said."""
    said = (
        (text.start_c, _begun(text), "°C"),
        (text.top_c, "to {}", "°C"),
        (text.rise_c_per_min, ", by {} a minute", "°C"),
        (text.hold_min, ", hold {}", "min"),
    )
    parts = (
        words.format(amount_text(value, unit))
        for value, words, unit in said
        if value is not None
    )
    return "".join(parts).strip(" ,")


def stops_words(text: RecipeText) -> str:
    """Return the stops on the way in one line; empty where there is none."""
    now_c, said = text.start_c, []
    for leg in text.stops:
        held = amount_text(leg.hold_min, "min")
        if leg.to_c == now_c:
            said.append(f"held {held} at {amount_text(leg.to_c, '°C')}")
            continue
        rise = amount_text(leg.rise_c_per_min, "°C")
        hold = f", hold {held}" if leg.hold_min else ""
        said.append(f"to {amount_text(leg.to_c, '°C')}, by {rise} a minute{hold}")
        now_c = leg.to_c
    return "; ".join(said)


def changes(before: RecipeText, after: RecipeText) -> tuple[Changed, ...]:
    """Return everything that differs between two versions, dyes first."""
    return tuple(
        Changed(name=name, before=was, after=now)
        for name, was, now in _pairs(before, after)
        if was != now
    )


def _pairs(before: RecipeText, after: RecipeText) -> Iterator[tuple[str, str, str]]:
    yield from _matched(_doses(before), _doses(after))
    yield (
        "Liquor ratio",
        ratio_words(before.liquor_ratio),
        ratio_words(after.liquor_ratio),
    )
    yield from _matched(_helpers(before), _helpers(after))
    for name, key, unit in _HEAT:
        was, now = getattr(before, key), getattr(after, key)
        yield name, _amount(was, unit), _amount(now, unit)
    yield "The colour", before.purpose.value, after.purpose.value
    yield "Stops on the way", stops_words(before), stops_words(after)
    for name, key in _NOTES:
        yield name, _quoted(getattr(before, key)), _quoted(getattr(after, key))


def _matched(
    before: dict[str, str], after: dict[str, str]
) -> Iterator[tuple[str, str, str]]:
    for name in {**before, **after}:
        yield name, before.get(name, ""), after.get(name, "")


def _doses(text: RecipeText) -> dict[str, str]:
    return {
        dose.dye_name or _quoted(dose.as_written): _amount(dose.depth_percent, "%")
        or _quoted(dose.as_written)
        for dose in text.doses
    }


def _helpers(text: RecipeText) -> dict[str, str]:
    """Return what is said of each auxiliary, one that goes in twice in one line."""
    said: dict[str, str] = {}
    for each in text.helpers:
        words = helper_words(each)
        said[each.name] = f"{said[each.name]}; {words}" if each.name in said else words
    return said


def _begun(text: RecipeText) -> str:
    """Return how a programme's line begins: the start, then the stops on the way."""
    stops = stops_words(text)
    return f"from {{}}; {stops}; " if stops else "from {} "


def _amount(value: float | None, unit: str) -> str:
    return "" if value is None else amount_text(value, unit)


def _quoted(words: str) -> str:
    return f"“{words}”" if words else ""
