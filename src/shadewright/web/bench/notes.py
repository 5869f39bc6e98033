"""What stands above a step: a dose that went differently, the cup, the acid."""

from shadewright.core.baths.exhaustion import NextAct
from shadewright.core.quantities import amount_text, number_text
from shadewright.web.bench import after_keys, keys
from shadewright.web.bench.pages import CupNote, DeviationNote
from shadewright.web.parts import Caution
from shadewright.workflows.bath_pages import BathAct, BathNow, BathStatus, DoneLine
from shadewright.workflows.bath_ph import late_advice, measured_ph, ph_of_bath
from shadewright.workflows.bath_shapes import MORE
from shadewright.workflows.cup_looks import CupNow, cup_now
from shadewright.workflows.deviations import Deviation, deviations
from shadewright.workflows.rescaling import is_settled
from shadewright.workflows.shades.colour_shifts import ColourShift, colour_shift

OVER_AND_DONE = {BathStatus.FINISHED, BathStatus.GIVEN_UP}


def deviation_note(bath: BathNow) -> DeviationNote | None:
    """Return what the newest dose did, if it went differently."""
    acts = {BathAct.DOSED, BathAct.MISSED}
    last = next((x for x in bath.standing if x.act in acts), None)
    if last is None:
        return None
    key = last.step.partition("/")[0]
    if last.note == keys.WRONG_BOTTLE:
        return DeviationNote(note=_mistaken(bath, last, key), top_up=None)
    found = next((x for x in deviations(bath) if x.step == key), None)
    if found is None or is_settled(bath.standing, key):
        return None
    each = next(x for x in bath.steps if x.step.key == key)
    top_up = None
    if found.missing_ml:
        top_up = keys.rest_key(each, found.missing_ml, each.step.code)
    colour = _colour_words(bath, found)
    return DeviationNote(
        note=Caution(title=found.words, text=colour or found.advice),
        top_up=top_up,
        decide=keys.decide_keys(found),
        advice=found.advice if colour and found.factor is None else "",
    )


def _colour_words(bath: BathNow, found: Deviation) -> str:
    """Return what it does to the colour; nothing where no palette can tell."""
    shift = colour_shift(bath, factor=found.factor or 1.0)
    if shift is None:
        return ""
    said = f"Colour: {_shift_words(shift)}."
    if shift.rest is not None and found.factor is not None:
        said += f" Rest rescaled: {_shift_words(shift.rest)}."
    return said


def _shift_words(shift: ColourShift) -> str:
    return f"{shift.words}, ΔE {number_text(shift.difference, digits=2)}"


def cup_note(bath: BathNow) -> CupNote | None:
    """Return what the newest look in the cup asks for."""
    cup = _cup(bath)
    if cup is None:
        return None
    minutes = None if _is_given(bath) else cup.advice.minutes
    return CupNote(
        words=cup.advice.words,
        steps=(cup.on_yarn, *cup.advice.steps),
        asks=cup.advice.act is NextAct.READ,
        longer=None if minutes is None else after_keys.longer_key(bath, minutes),
    )


def _is_given(bath: BathNow) -> bool:
    """Whether the hold was made longer since the newest look in the cup."""
    asked = (x for x in bath.standing if x.act == BathAct.LEFTOVER or _is_more(x))
    newest = next(asked, None)
    return newest is not None and _is_more(newest)


def _is_more(line: DoneLine) -> bool:
    return line.step.endswith(MORE)


def late_acid(bath: BathNow) -> tuple[str, ...]:
    """Return what to do about the pH that was read; nothing where it is right.

    Where the cup asks for acid it says so itself.
    """
    if bath.status in OVER_AND_DONE or measured_ph(bath) is None:
        return ()
    cup = _cup(bath)
    if cup is not None and cup.is_acid:
        return ()
    return late_advice(bath, ph_of_bath(bath))


def _cup(bath: BathNow) -> CupNow | None:
    return None if bath.status in OVER_AND_DONE else cup_now(bath)


def _mistaken(bath: BathNow, line: DoneLine, key: str) -> Caution:
    """Return what another bottle did in place of a dose."""
    wanted = next((x.dose for x in bath.steps if x.step.key == key and x.dose), None)
    poured = "" if line.value is None else f"{amount_text(line.value, line.unit)} of "
    title = f"{poured}{line.bottle} {line.dye} went in."
    if wanted is not None and wanted.dye_name == line.dye:
        text = "It is the same dye: only what is still missing is asked for now."
    else:
        text = (
            "Another dye cannot be taken out again. If it is on this card, give that "
            "much less of it; its own step still asks for the whole."
        )
    return Caution(title=title, text=text)
