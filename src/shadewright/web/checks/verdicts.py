"""A check in words: what a verdict says, and what there is to decide."""

from collections.abc import Iterator
from dataclasses import replace

from shadewright.core.quantities.writing import NO_BREAK
from shadewright.web.checks.pages import CheckShown, DecideKey, SpotRow
from shadewright.web.colours import ColourShown, read_colour
from shadewright.web.pairs import pair_of
from shadewright.web.verdicts import difference_words, verdict_chip
from shadewright.workflows.judging.deciding import FITS, Choice
from shadewright.workflows.judging.dry_checks import CheckNow, Decision, Evenness
from shadewright.workflows.judging.standards import StandardNow

_SAYS = {
    Decision.MATCH: "It matches: it may go with the last lot.",
    Decision.ALTERNATE: (
        "Near: sold together, skeins of both are to be knitted in turn."
    ),
    Decision.NEW_LOT: "Off, and good yarn: a lot of its own, not to be mixed.",
    Decision.CORRECT: "Far off and paler: dye can be added.",
    Decision.ONE_OFF: (
        "Far off, and dye cannot be taken out: a one-off, or overdye it deeper."
    ),
    Decision.CANNOT_TELL: "Nobody can tell from this: read more spots.",
}
_KEYS = {
    Choice.WITH_LAST: "With the last lot",
    Choice.ALTERNATE: "Alternate skeins",
    Choice.OWN_LOT: "A lot of its own",
    Choice.CORRECT: "Correct it",
    Choice.ONE_OFF: "One-off",
}


def standard_colour(standard: StandardNow, *, name: str = "") -> ColourShown | None:
    """Return the colour of a standard with its evidence."""
    if standard.lab is None or standard.read_by is None:
        return None
    return read_colour(standard.lab, standard.read_by, sd=standard.u, name=name)


def shown_check(check: CheckNow) -> CheckShown:
    """Return a check as its page shows it."""
    own = read_colour(check.lab, check.read_by, sd=check.u_lab, name=f"Lot {check.lot}")
    target = (
        None
        if check.standard is None
        else standard_colour(check.standard, name="The standard")
    )
    number = difference_words(check)
    pair = None if target is None else pair_of(target, own)
    return CheckShown(
        chip=None if check.verdict is None else verdict_chip(check.verdict),
        says="" if check.verdict is None else _says(check),
        pair=None
        if pair is None
        else replace(
            pair,
            words=check.words,
            difference=number,
            said=f"The standard beside lot {check.lot}: {check.words}, {number}",
        ),
        own=own,
        how=" ".join(_how(check)),
        evenness=_evenness(check),
        spots=tuple(_spots(check)),
        at=check.at,
        by=check.by,
        deed=check.deed,
        may_undo=check.may_undo,
    )


def decide_keys(check: CheckNow) -> tuple[DecideKey, ...]:
    """Return what there is to decide; what the verdict asks for is the first key."""
    fits = None if check.verdict is None else FITS.get(check.verdict)
    return tuple(
        DecideKey(value=choice, words=words, is_first=choice is fits)
        for choice, words in _KEYS.items()
    )


def _says(check: CheckNow) -> str:
    verdict = check.verdict
    if verdict is None:
        return ""
    if verdict is Decision.CANNOT_TELL and len(check.could_be) > 1:
        either = " or ".join(f"“{each}”" for each in check.could_be)
        return f"{_SAYS[verdict]} It may be {either}; the last is the safe one to take."
    return _SAYS[verdict]


def _how(check: CheckNow) -> Iterator[str]:
    spots, skeins = len(check.spots), check.skeins
    label = str(check.read_by.label)
    by = f"{label[:1].upper()}{label[1:]}"
    by += f" ({check.meter})" if check.meter else ""
    yield (
        f"{spots} {'spot' if spots == 1 else 'spots'} on "
        f"{skeins} {'skein' if skeins == 1 else 'skeins'}, dry. {by}."
    )
    if check.u is not None:
        yield "± is one standard uncertainty, of the spots and of the standard."


def _evenness(check: CheckNow) -> str:
    if check.unevenness is None or check.evenness is None:
        return "One spot says nothing of how even it is."
    lies = f"ΔE{NO_BREAK}{check.unevenness:.1f}"
    if check.band is None:
        if check.evenness is Evenness.TOO_UNEVEN:
            return (
                f"Uneven: the spots lie {lies} from their mean. Wanted so? Set its "
                "tone band at the standard."
            )
        return f"Level: the spots lie {lies} from their mean."
    band = f"{check.band.least:g} to {check.band.most:g}"
    return f"Tone {check.evenness}: {lies}, wanted {band}."


def _spots(check: CheckNow) -> Iterator[SpotRow]:
    for skein in sorted({each.skein for each in check.spots}):
        shown = (
            read_colour(each.lab, check.read_by)
            for each in check.spots
            if each.skein == skein
        )
        yield SpotRow(skein=skein, spots=tuple(shown))
