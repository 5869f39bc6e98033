"""The round of a bath: every step at the pot, in order, for phone and paper alike.

One list serves the bench page, the printed card and the form that a card is
typed back into, so that the three can never differ in a line.
"""

from collections.abc import Iterator, Sequence

from shadewright.core.baths.programme import (
    HEAVY_KG,
    HOT_BATH,
    HOT_LIFT,
    Programme,
    heat_text,
    on_the_way_min,
)
from shadewright.core.baths.round_shapes import (
    DoseWanted,
    HelperWanted,
    Moment,
    RoundStep,
    RoundWanted,
    StepKind,
)
from shadewright.core.quantities import amount_text, number_text

__all__ = [
    "ACID_CARE",
    "LOOK_AFTER_MIN",
    "TARE_AND_POUR",
    "DoseWanted",
    "HelperWanted",
    "Moment",
    "RoundStep",
    "RoundWanted",
    "StepKind",
    "bath_round",
    "touch_minutes",
]

LOOK_AFTER_MIN = 15.0  # common practice: the first look, while much can be mended

ACID_CARE = (
    "Acid into water, never the reverse; well diluted, with the yarn lifted. "
    "Follow the acid’s safety data sheet and your local rules."
)
FIRST_CUP = "Before it, the first cup: a spoonful of the bath in a white cup."
TARE_AND_POUR = "Put the jug on the scale, press tare, pour to {amount}."
DRY_POWDER = "Dry powder: fitted N95/FFP2 respirator or better, goggles, gloves."


def bath_round(wanted: RoundWanted) -> tuple[RoundStep, ...]:
    """Return the steps of a bath from the empty pot to the finished lot.

    Parameters
    ----------
    wanted : RoundWanted
        Water [mL], doses [mL, g], auxiliaries [g, mL] and heating [°C, min].

    Returns
    -------
    tuple of RoundStep
        Fill, early auxiliaries, doses, yarn, later auxiliaries, heat, look and
        what goes in on the way, top, hold, off, finish. [-]

    Notes
    -----
    The order is common practice: the acid goes in when the recipe says so,
    since sources disagree about when that should be. On the way up the look and
    the additions stand in the order of their minutes; one whose minute the recipe
    does not tell stands after the look.

    Examples
    --------
    >>> gorse = DoseWanted(dye="Gorse", code="G4R", amount=60.0, unit="ml")
    >>> steps = bath_round(
    ...     RoundWanted(
    ...         water_ml=2940.0, doses=[gorse], helpers=[], programme=Programme()
    ...     )
    ... )
    >>> [step.key for step in steps]
    ['fill', 'dose-1', 'yarn', 'heat', 'look', 'top', 'hold', 'off', 'finish']
    """
    return tuple(_steps(wanted))


def _steps(wanted: RoundWanted) -> Iterator[RoundStep]:
    yield _fill(wanted)
    yield from _added(wanted, Moment.START)
    for number, dose in enumerate(wanted.doses, start=1):
        yield _dose(number, dose)
    yield _yarn(wanted)
    yield from _added(wanted, Moment.AFTER_DYE)
    yield from _added(wanted, Moment.TWO_HALVES, half="a")
    yield _heat(wanted)
    yield from _on_the_way(wanted)
    yield _top(wanted.programme)
    yield from _added(wanted, Moment.AT_TOP)
    yield from _added(wanted, Moment.TWO_HALVES, half="b")
    yield _hold(wanted.programme)
    yield _off(wanted)
    yield _finish(wanted)


def _fill(wanted: RoundWanted) -> RoundStep:
    litres = wanted.water_ml / 1000
    return RoundStep(
        key="fill",
        kind=StepKind.FILL,
        title="Fill the pot with water",
        amount=litres,
        unit="l",
        caution=HOT_LIFT if wanted.pot_kg > HEAVY_KG else "",
    )


def touch_minutes(*, steps: Sequence[RoundStep]) -> tuple[float, ...]:
    """Return when hands are wanted in the middle of the rise.

    Parameters
    ----------
    steps : sequence of RoundStep
        The round of a bath. [-]

    Returns
    -------
    tuple of float
        Minutes after the rise begins of all that goes in on the way up, the
        soonest first; what the recipe gives no pace for is left out. [min]

    Notes
    -----
    By the recipe's own pace: a source that cannot keep it reaches each later.

    Examples
    --------
    >>> acid = HelperWanted(
    ...     name="Citric acid",
    ...     amount=2.0,
    ...     unit="g",
    ...     moment=Moment.ON_THE_WAY,
    ...     is_acid=True,
    ...     at_c=60.0,
    ... )
    >>> slow = Programme(start_c=40.0, rise_c_per_min=1.0, top_c=90.0)
    >>> wanted = RoundWanted(water_ml=3e3, doses=[], helpers=[acid], programme=slow)
    >>> touch_minutes(steps=bath_round(wanted))
    (20.0,)
    """
    return tuple(sorted(x.heated_min for x in steps if x.heated_min is not None))


def _on_the_way(wanted: RoundWanted) -> Sequence[RoundStep]:
    """Return the first look and all that goes in on the way up, in their order."""
    added = _added(wanted, Moment.ON_THE_WAY)
    return sorted((_look(wanted), *added), key=_minute_of)


def _minute_of(step: RoundStep) -> tuple[float, float]:
    if step.kind is StepKind.LOOK:
        return LOOK_AFTER_MIN, 0.0
    known = step.heated_min
    return (LOOK_AFTER_MIN if known is None else known), step.at_c or 0.0


def _added(wanted: RoundWanted, moment: Moment, half: str = "") -> Iterator[RoundStep]:
    share = 0.5 if half else 1.0
    words = {"a": "First half: ", "b": "Second half: "}.get(half, "")
    for number, helper in enumerate(wanted.helpers, start=1):
        if helper.moment is moment:
            yield RoundStep(
                key=f"add-{number}{half}",
                kind=StepKind.ADD,
                title=f"{words}{helper.name}",
                text=_when_reached(helper),
                amount=helper.amount * share,
                unit=helper.unit,
                at_c=helper.at_c,
                heated_min=on_the_way_min(wanted.programme, at_c=helper.at_c),
                caution=ACID_CARE if helper.is_acid else "",
            )


def _when_reached(helper: HelperWanted) -> str:
    if helper.at_c is None:
        return ""
    return f"On the way up, at {amount_text(helper.at_c, '°C')}."


def _dose(number: int, dose: DoseWanted) -> RoundStep:
    return RoundStep(
        key=f"dose-{number}",
        kind=StepKind.DOSE,
        title=dose.dye,
        code=dose.code,
        amount=dose.amount,
        unit=dose.unit,
        scale_g=dose.scale_g,
        volume_ml=dose.volume_ml,
        text=_tared(dose),
        caution="" if dose.code else DRY_POWDER,
    )


def _tared(dose: DoseWanted) -> str:
    """Say how stock is weighed out; nothing where it is measured, or dry."""
    if not dose.code or dose.unit != "g":
        return ""
    return TARE_AND_POUR.format(amount=amount_text(dose.amount, "g"))


def _yarn(wanted: RoundWanted) -> RoundStep:
    said = (FIRST_CUP, f"Ties: {wanted.ties}." if wanted.ties else "", wanted.stirring)
    return RoundStep(
        key="yarn",
        kind=StepKind.YARN,
        title="Yarn in, wet through",
        text=" ".join(part for part in said if part),
    )


def _heat(wanted: RoundWanted) -> RoundStep:
    programme = wanted.programme
    return RoundStep(
        key="heat",
        kind=StepKind.HEAT,
        title="Heat on",
        text=heat_text(programme, heating=wanted.heating),
        amount=programme.top_c,
        unit="°C" if programme.top_c is not None else "",
        timer_min=programme.rise_min,
        caution=HOT_BATH,
    )


def _look(wanted: RoundWanted) -> RoundStep:
    return RoundStep(
        key="look",
        kind=StepKind.LOOK,
        title=f"Look at {number_text(LOOK_AFTER_MIN, digits=2)} minutes",
        text=wanted.look_at_15 or "What do yarn and bath look like?",
    )


def _top(programme: Programme) -> RoundStep:
    return RoundStep(
        key="top",
        kind=StepKind.TOP,
        title="At temperature",
        amount=programme.top_c,
        unit="°C" if programme.top_c is not None else "",
        timer_min=programme.hold_min,
    )


def _hold(programme: Programme) -> RoundStep:
    held = programme.hold_min
    title = "Hold" if held is None else f"Hold {amount_text(held, 'min')}"
    return RoundStep(
        key="hold",
        kind=StepKind.HOLD,
        title=f"{title}, then look at the bath",
        text="A spoonful in a white cup: is it clear?",
    )


def _off(wanted: RoundWanted) -> RoundStep:
    caution = HOT_LIFT if wanted.pot_kg > HEAVY_KG else ""
    return RoundStep(
        key="off",
        kind=StepKind.OFF,
        title="Heat off, cool in the pot",
        text="No cold water on hot wool.",
        caution=caution,
    )


def _finish(wanted: RoundWanted) -> RoundStep:
    metal = (
        "Metal-complex dye: the spent bath goes only where your sewer authority "
        "allows, never to a storm drain or septic tank; no bleach on residues. "
    )
    return RoundStep(
        key="finish",
        kind=StepKind.FINISH,
        title="Rinse, hang, write the lot",
        caution=(metal if wanted.is_metal_complex else "")
        + "Follow the dye’s safety data sheet and your local rules.",
    )
