"""Which bottles of a dye a job may use, and what is said of those it may not."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from shadewright.core.baths import Candidate
from shadewright.core.quantities import amount_text
from shadewright.core.solutions.keeping import Purpose, refusal
from shadewright.workflows.shelf import ShelfBottle

_WANTED = {
    Purpose.MUST_REPEAT: "for a colour that must repeat",
    Purpose.USUAL: "as things stand",
    Purpose.PLAY: "even for play",
}


@dataclass(frozen=True, kw_only=True)
class Refused:
    """A bottle with stock in it that a job may not use, and why."""

    code: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Offer:
    """The shelf as one job may draw on it; ``taken_ml`` is what others will take."""

    bottles: Sequence[ShelfBottle]
    purpose: Purpose = Purpose.USUAL
    taken_ml: Mapping[str, float] = field(default_factory=dict)

    def candidates(self, dye_id: int) -> list[Candidate]:
        """Return a dye's bottles as core weighs them."""
        return [
            Candidate(
                code=each.code,
                strength_percent=each.strength_percent,
                usable_ml=max(each.usable_ml - self.taken_ml.get(each.code, 0.0), 0.0),
                age_days=each.age.days,
                days_left=each.keeping.days_left,
                is_good=not (each.is_void or refused_for(each, self.purpose)),
            )
            for each in self.bottles
            if each.dye_id == dye_id
        ]

    def asked_for(self, dye_id: int, *, code: str, dye_g: float) -> list[Candidate]:
        """Return the one bottle that is asked for if it holds the dose, else all."""
        every = self.candidates(dye_id)
        fit = [each for each in every if each.code == code and each.gives(dye_g=dye_g)]
        return fit or every

    def kept_out(self, dye_id: int) -> tuple[Refused, ...]:
        """Return the bottles of a dye that hold stock and may not be used."""
        own = (x for x in self.bottles if x.dye_id == dye_id and not x.is_empty)
        said = ((each.code, refused_for(each, self.purpose)) for each in own)
        return tuple(Refused(code=code, why=why) for code, why in said if why)


def refused_for(bottle: ShelfBottle, purpose: Purpose) -> str:
    """Return why a bottle may not be used for a purpose; empty where it may."""
    return refusal(bottle.keeping.standing, purpose=purpose)


def first_to_expire(bottle: ShelfBottle) -> tuple[bool, int]:
    """Return what sorts the first to expire first, and one of unknown age before."""
    left = bottle.keeping.days_left
    return (left is not None, left or 0)


def short_words(
    *,
    dye_name: str,
    missing_g: float,
    has_some: bool,
    kept_out: Sequence[Refused],
    purpose: Purpose,
) -> str:
    """Return what is said of a dose that the bottles cannot give."""
    lacking = amount_text(missing_g, "g")
    if has_some:
        said = f"{dye_name}: {lacking} more dye is wanted than the good bottles hold."
    elif kept_out:
        said = f"No bottle of {dye_name} may be used {_WANTED[purpose]}."
    else:
        said = f"No good bottle of {dye_name} holds what is wanted: {lacking}."
    return " ".join((said, *_why(kept_out), *_what_to_do(kept_out, purpose)))


def _why(kept_out: Sequence[Refused]) -> tuple[str, ...]:
    named = "; ".join(f"{each.code} is {each.why}" for each in kept_out)
    return (f"{named}.",) if named else ()


def _what_to_do(kept_out: Sequence[Refused], purpose: Purpose) -> tuple[str, ...]:
    if not kept_out:
        return ()
    if all(each.why == "settled" for each in kept_out):
        return ("Re-warm it and look at it, or make a fresh stock.",)
    if purpose is Purpose.PLAY:
        return ("Make a fresh stock.",)
    return ("Make a fresh stock, test one of these, or plan it as play.",)
