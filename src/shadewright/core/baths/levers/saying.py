"""Advice in one sentence, with the figures that a dyer can check."""

from shadewright.core.baths.levers.pulled import (
    DoseAdvice,
    Lever,
    Proposal,
    scales_to_check,
)
from shadewright.core.baths.levers.ways import Scale, Wanted, Way, dose_g, dose_ml
from shadewright.core.quantities import amount_text, rounded_to_step
from shadewright.core.quantities.writing import NO_BREAK, spread_text
from shadewright.core.uncertainty import budget

_MOST_ALIKE = 2

LABELLED = "label "
"""How the source of a strength as labelled begins: see ``labelled_strength``."""


def share_words(share: float) -> str:
    """Return a spread as people read it.

    Parameters
    ----------
    share : float
        Half of an interval as a share of the value. [-]

    Returns
    -------
    str
        The sign, the percentage, a no-break space before the unit. [-]

    Examples
    --------
    >>> share_words(0.0213).replace(NO_BREAK, " ")
    '± 2.1 %'
    """
    return f"±{NO_BREAK}{spread_text(100.0 * share)}{NO_BREAK}%"


def advice_sentence(*, advice: DoseAdvice) -> str:
    """Return what to do about a dose, in one sentence or two.

    Parameters
    ----------
    advice : DoseAdvice
        Its spread and its levers. [-]

    Returns
    -------
    str
        The strongest lever with figures before and after, and what does as much; or
        that there is nothing to gain, and why.

    Examples
    --------
    See ``dose_levers`` for an advice.
    """
    first = advice.strongest
    if first is None:
        return _nothing(advice)
    words = proposal_sentence(advice=advice, proposal=first)
    after = spread_text(100.0 * first.after)
    alike = [
        _short(each)
        for each in advice.proposals[1:]
        if spread_text(100.0 * each.after) == after
    ]
    if not alike:
        return words
    verb = "does" if len(alike) == 1 else "do"
    also = " and ".join(alike[:_MOST_ALIKE])
    return f"{words} {also[0].upper()}{also[1:]} {verb} as much."


def proposal_sentence(*, advice: DoseAdvice, proposal: Proposal) -> str:
    """Return one lever as a sentence.

    Parameters
    ----------
    advice : DoseAdvice
        The dose as it is. [-]
    proposal : Proposal
        One of its levers. [-]

    Returns
    -------
    str
        What to do, the new figure and the old, the spread before and after.
    """
    act = _ACTS[proposal.lever](advice, proposal)
    spread = f"{share_words(advice.now)} becomes {share_words(proposal.after)}"
    if proposal.lever is Lever.CHECK:
        return f"{act}: if it is right, {spread}."
    return f"{act}; {spread}."


def _bottle(advice: DoseAdvice, proposal: Proposal) -> str:
    stock = proposal.way.stock
    strength = amount_text(stock.strength.value, "%")
    said = f"Take {stock.name}, {strength}: "
    return said + _instead(advice, proposal) + _in_what(advice, proposal)


def _make(advice: DoseAdvice, proposal: Proposal) -> str:
    stock = proposal.way.stock
    strength = amount_text(stock.strength.value, "%")
    said = f"Make a {strength} stock ({stock.how}): "
    return said + _instead(advice, proposal) + _in_what(advice, proposal)


def _tool(advice: DoseAdvice, proposal: Proposal) -> str:
    new, old = proposal.way.device.name, advice.way.device.name
    amount = _amount(proposal.wanted, proposal.way)
    verb = "Weigh" if proposal.way.is_by_weight else "Measure"
    return f"{verb} the {amount} with the {new} instead of the {old}"


def _weight(advice: DoseAdvice, proposal: Proposal) -> str:
    new = proposal.way.device.name
    return f"Weigh the dose on the {new}: {_instead(advice, proposal)}"


def _yarn(advice: DoseAdvice, proposal: Proposal) -> str:
    new, old = proposal.wanted.yarn_scale, advice.wanted.yarn_scale
    names = [scale.name for scale in (new, old) if scale is not None]
    return f"Weigh the yarn on the {', not on the '.join(names)}"


def _check(advice: DoseAdvice, proposal: Proposal) -> str:
    names = (scale.name for scale in scales_to_check(advice, proposal))
    return f"Check the {' and the '.join(names)} with a check weight"


def _batch(advice: DoseAdvice, proposal: Proposal) -> str:
    more = amount_text(proposal.wanted.yarn_g, "g")
    now = amount_text(advice.wanted.yarn_g, "g")
    return f"Dye {more} of yarn at once, not {now}: {_instead(advice, proposal)}"


_ACTS = {
    Lever.TOOL: _tool,
    Lever.BOTTLE: _bottle,
    Lever.YARN: _yarn,
    Lever.WEIGHT: _weight,
    Lever.CHECK: _check,
    Lever.MAKE: _make,
    Lever.BATCH: _batch,
}

_SHORT = {
    Lever.TOOL: "the {device}",
    Lever.BOTTLE: "{stock}",
    Lever.YARN: "the yarn on another scale",
    Lever.WEIGHT: "weighing the dose",
    Lever.CHECK: "a check that finds the scale right",
    Lever.MAKE: "a {stock}",
    Lever.BATCH: "a larger batch",
}


def _short(proposal: Proposal) -> str:
    way = proposal.way
    return _SHORT[proposal.lever].format(device=way.device.name, stock=way.stock.name)


def _instead(advice: DoseAdvice, proposal: Proposal) -> str:
    new = _amount(proposal.wanted, proposal.way)
    old = _amount(advice.wanted, advice.way)
    return f"{new} as before" if new == old else f"{new} instead of {old}"


def _in_what(advice: DoseAdvice, proposal: Proposal) -> str:
    new = proposal.way.device
    if new == advice.way.device:
        return ""
    return f", {'on' if proposal.way.is_by_weight else 'in'} the {new.name}"


def _amount(wanted: Wanted, way: Way) -> str:
    if isinstance(way.device, Scale):
        exact_g = dose_g(wanted=wanted, stock=way.stock)
        shown_g = rounded_to_step(exact_g, step=way.device.balance.step_g)
        return amount_text(shown_g, "g")
    return amount_text(dose_ml(wanted=wanted, stock=way.stock), "ml")


def _nothing(advice: DoseAdvice) -> str:
    lines = budget(advice.depth)
    if not lines:
        return "No error of this dose is known, so there is nothing to advise."
    said = f"Nothing to gain: {share_words(advice.now)} is as sure as it gets"
    words = f"{said} with what is at hand. Most of it: {lines[0].name}."
    if lines[0].source.startswith(LABELLED):
        return f"{words} Test its strength, or make it fresh from weighed powder."
    return words
