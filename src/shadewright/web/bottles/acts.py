"""Every act on a bottle: its words, its form, its verb and what it comes to."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from shadewright.web.bottles import forms, outcomes, words
from shadewright.web.bottles.outcomes import Outcome, Sent
from shadewright.web.bottles.pages import Key
from shadewright.web.jars.words import POWDER
from shadewright.web.parts import Caution
from shadewright.workflows import bottles, mending
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import jars
from shadewright.workflows.ledger_pages import bottle_page
from shadewright.workflows.shelf import ShelfBottle
from shadewright.workflows.stamps import Stamp, today
from shadewright.workflows.weighing_bottles import weigh_bottle

Verb = Callable[[str, Sent, Stamp], ShelfBottle]


@dataclass(frozen=True, kw_only=True)
class Act:
    """One act.

    ``answer`` is the field that working out fills in; where ``is_shown_first``,
    the key appears only beside the outcome; ``other`` names an act that does the
    same in another way.
    """

    title: str
    form: type[forms.BottleForm]
    keys: tuple[Key, ...]
    verb: Verb
    said: str
    advice: str = ""
    caution: Callable[[ShelfBottle], Caution | None] = lambda _: None
    work_out: Callable[[ShelfBottle, Sent], Outcome] | None = None
    answer: str = ""
    is_shown_first: bool = False
    other: str = ""
    other_words: str = ""
    initial: Callable[[ShelfBottle], Sent] = lambda _: {}
    keys_for: Callable[[ShelfBottle], tuple[Key, ...]] | None = None

    def keys_of(self, bottle: ShelfBottle) -> tuple[Key, ...]:
        """Return its keys, the one that comes next first."""
        return self.keys if self.keys_for is None else self.keys_for(bottle)

    def outcome(self, bottle: ShelfBottle, sent: Sent) -> Outcome | None:
        """Return what it would come to, where that can be worked out."""
        return None if self.work_out is None else self.work_out(bottle, sent)


def _given(*names: str) -> Callable[[Sent], Sent]:
    return lambda sent: {name: sent[name] for name in names}


def _verb(does: Callable[..., ShelfBottle], *names: str) -> Verb:
    pick = _given(*names)
    return lambda code, sent, stamp: does(code=code, stamp=stamp, **pick(sent))


def _add_powder(code: str, sent: Sent, stamp: Stamp) -> ShelfBottle:
    return mending.add_powder(
        code=code,
        powder_g=sent["powder_g"],
        jar_id=sent["jar"],
        stamp=stamp,
        note=sent["note"],
        tool_id=sent["tool_id"],
    )


def _dilute(code: str, sent: Sent, stamp: Stamp) -> ShelfBottle:
    about = Particulars(
        made_on=today(), place=sent["place"], discard_by=sent["discard_by"]
    )
    return mending.dilute(
        code=code,
        want_percent=sent["want_percent"],
        volume_ml=sent["volume_ml"],
        stamp=stamp,
        about=about,
        tool_id=sent["tool_id"],
        ware_id=sent["ware_id"],
    )


def _weigh(code: str, sent: Sent, stamp: Stamp) -> ShelfBottle:
    return weigh_bottle(
        code=code,
        gross_g=sent["gross_g"],
        scale_id=sent["scale"],
        stamp=stamp,
        note=sent["note"],
    )


# The acts --------------------------------------------------------------------


def _settled(bottle: ShelfBottle) -> Caution | None:
    return words.SETTLED if bottle.is_settled else None


def _fate(bottle: ShelfBottle) -> Caution | None:
    return words.POUR_METAL if bottle.is_metal_complex else words.POUR


def _dried(bottle: ShelfBottle) -> Sent:
    dried_ml = bottle_page(bottle.code).dried_ml
    return {"volume_ml": round(dried_ml, 1)} if dried_ml else {}


def _first_jar(bottle: ShelfBottle) -> Sent:
    filled = [one.id for one in jars(dye_id=bottle.dye_id) if one.left_g > 0]
    return {"jar": filled[0]} if filled else {}


def _particulars(bottle: ShelfBottle) -> Sent:
    about = bottle_page(bottle.code)
    return {
        "place": bottle.place,
        "water": about.water,
        "discard_by": bottle.discard_by,
        "dead_volume_ml": bottle.dead_volume_ml,
        "notes": about.notes,
    }


def _key(said: str) -> tuple[Key, ...]:
    return (Key(words=said, icon="tick", css="first"),)


_LOOKS = (
    Key(words="Clear", name="look", value="clear", icon="tick"),
    Key(words="Settled", name="look", value="settled", icon="problem"),
    Key(words="Stirred", name="look", value="stirred"),
    Key(words="Re-warmed", name="look", value="rewarmed"),
)


def _looks(bottle: ShelfBottle) -> tuple[Key, ...]:
    """Offer what comes next first; what has settled is re-warmed before it is clear."""
    is_cold = bottle.is_settled is True and not bottle.keeping.is_rewarmed
    first = "rewarmed" if is_cold else "clear"
    offered = [key for key in _LOOKS if not (is_cold and key.value == "clear")]
    offered.sort(key=lambda key: key.value != first)
    return (replace(offered[0], css="first"), *offered[1:])


ACTS: dict[str, Act] = {
    "draw": Act(
        title="Draw from {code}",
        form=forms.DrawForm,
        keys=_key("Drawn"),
        verb=_verb(bottles.draw, "volume_ml", "note"),
        said="Drawn from {code}: {left} left",
        advice="Stir or shake before every draw.",
        caution=_settled,
    ),
    "look": Act(
        title="Look at {code}",
        form=forms.LookForm,
        keys=_LOOKS,
        keys_for=_looks,
        verb=lambda code, sent, stamp: bottles.look_at(
            code=code, look=bottles.Look(sent["look"]), stamp=stamp, note=sent["note"]
        ),
        said="{code} is {look}",
        advice="Hold it against the light and tilt it: grains or a skin at the foot "
        "mean that dye has settled. After re-warming, stir till clear, let it cool "
        "and check the level.",
    ),
    "test": Act(
        title="Strength of {code}",
        form=forms.StrengthForm,
        keys=_key("Tested"),
        verb=_verb(bottles.record_strength, "strength_percent", "note"),
        said="{code} is {strength} as tested",
    ),
    "level": Act(
        title="Level of {code}",
        form=forms.LevelForm,
        keys=_key("Read"),
        verb=_verb(bottles.read_level, "volume_ml", "is_evaporated", "note", "tool_id"),
        said="{code} holds {left} at {strength}",
    ),
    "weigh": Act(
        title="Weigh {code}",
        form=forms.WeighForm,
        keys=_key("Weighed"),
        verb=_weigh,
        said="{code} is weighed: {left} at {strength}",
        advice="What is missing since the last weighing is water: dye does not go "
        "through the cap. Weigh after a draw, and again before the next.",
        work_out=outcomes.weighing,
    ),
    "water": Act(
        title="Water into {code}",
        form=forms.WaterForm,
        keys=_key("Added"),
        verb=_verb(mending.add_water, "volume_ml", "note", "tool_id"),
        said="{code} holds {left} at {strength}",
        advice="Stir, and look against the light.",
        work_out=outcomes.water_wanted,
        answer="volume_ml",
        initial=_dried,
    ),
    "powder": Act(
        title="Powder into {code}",
        form=forms.PowderForm,
        keys=_key("Added"),
        verb=_add_powder,
        said="{code} holds {left} at {strength}",
        advice="Paste it first, then dissolve it in some of the stock, hot; let it "
        "cool before it goes back.",
        caution=lambda _: POWDER,
        work_out=outcomes.powder_wanted,
        answer="powder_g",
        initial=_first_jar,
        other="stock",
        other_words="With a stronger bottle instead",
    ),
    "stock": Act(
        title="Stronger stock into {code}",
        form=forms.StockForm,
        keys=_key("Poured over"),
        verb=_verb(mending.add_stock, "from_code", "volume_ml", "tool_id"),
        said="{code} holds {left} at {strength}",
        work_out=outcomes.stock_wanted,
        answer="volume_ml",
        other="powder",
        other_words="With powder instead",
    ),
    "dilute": Act(
        title="A weaker bottle from {code}",
        form=forms.DiluteForm,
        keys=_key("Bottled"),
        verb=_dilute,
        said="Bottle {code} stands on the shelf: write the code on it",
        work_out=outcomes.thinning,
        caution=_settled,
        initial=lambda bottle: {"discard_by": bottle.discard_by},
    ),
    "merge": Act(
        title="Pour bottles into {code}",
        form=forms.MergeForm,
        keys=_key("Poured together"),
        verb=_verb(mending.merge, "from_codes"),
        said="{code} holds {left} at {strength}",
        advice="Only clear bottles: what has settled is re-warmed first.",
        work_out=outcomes.merging,
        is_shown_first=True,
    ),
    "pour": Act(
        title="Pour {code} away?",
        form=forms.PourForm,
        keys=_key("Poured away"),
        verb=_verb(bottles.pour_away, "note"),
        said="{code} is poured away; its code is never used again",
        caution=_fate,
    ),
    "particulars": Act(
        title="What stands on {code}",
        form=forms.ParticularsForm,
        keys=_key("Write it anew"),
        verb=_verb(
            bottles.change_particulars,
            "place",
            "water",
            "discard_by",
            "dead_volume_ml",
            "notes",
        ),
        said="{code} is written anew; what stood there before is kept",
        initial=_particulars,
    ),
}
