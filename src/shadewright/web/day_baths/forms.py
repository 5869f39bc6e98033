"""What is asked to put yarn on a day."""

from collections.abc import Mapping
from contextlib import suppress
from datetime import date
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from shadewright.core.quantities import amount_text, require_between
from shadewright.errors import InputError, NotFoundError
from shadewright.web.amounts import mass_field, ratio_field, some_mass
from shadewright.web.asking import number_said
from shadewright.web.forms import DeedForm, NumberInput
from shadewright.web.purposes import purpose_field
from shadewright.workflows.choices import bases_in_use, lots_in_use, pots_in_use
from shadewright.workflows.days.room import room_now
from shadewright.workflows.days.splitting import SplitWay, SplitWish
from shadewright.workflows.days.waiting import LineWaiting, usual_skein_g
from shadewright.workflows.recipes import recipes, version
from shadewright.workflows.waters import waters

MOST_SKEINS = 400
_MOST_BATHS = 100

WAYS = {
    SplitWay.SIDE_BY_SIDE: "Side by side: each pot filled once, where that will do",
    SplitWay.ALIKE: "Alike: baths of one weight, the largest pot filled again",
}


def usual_way() -> SplitWay:
    """Return how yarn is split where nobody says: by how pots are cooled here."""
    return SplitWay.SIDE_BY_SIDE if room_now().cools_overnight else SplitWay.ALIKE


class AddForm(DeedForm):
    """Which recipe on which yarn, in what skeins, over which pots."""

    version = forms.TypedChoiceField(label="Recipe", coerce=int)
    base = forms.TypedChoiceField(label="Base", coerce=int)
    mill_lot = forms.TypedChoiceField(label="Mill lot", coerce=int, required=False)
    for_lines = forms.MultipleChoiceField(
        label="For orders", required=False, widget=forms.CheckboxSelectMultiple
    )
    skeins = forms.IntegerField(
        label="Skeins",
        required=False,
        min_value=1,
        max_value=MOST_SKEINS,
        widget=NumberInput(),
    )
    skein_g = mass_field(
        label="One skein",
        required=False,
        help_text="As it should weigh, or as it does.",
    )
    weights = forms.CharField(
        label="What each skein weighs",
        required=False,
        max_length=12 * MOST_SKEINS,
        widget=forms.Textarea(attrs={"rows": 3, "inputmode": "decimal"}),
        help_text="One weight a line, in grams. Doses are reckoned from these.",
    )
    fibre_g = mass_field(
        label="Or loose yarn", required=False, help_text="On a cone, or not counted."
    )
    pots = forms.TypedMultipleChoiceField(
        label="Pots that may be used",
        coerce=int,
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text="None ticked: all of them. Each is filled as often as it takes.",
    )
    way = forms.TypedChoiceField(
        label="How it is split",
        choices=[(each.value, words) for each, words in WAYS.items()],
        coerce=SplitWay,
        initial=usual_way,
        widget=forms.RadioSelect,
    )
    is_whole_pots = forms.BooleanField(
        label="Fill whole pots; the skeins beyond are for the shelf", required=False
    )
    least_baths = forms.IntegerField(
        label="At least so many baths",
        required=False,
        min_value=1,
        max_value=_MOST_BATHS,
        widget=NumberInput(),
    )
    liquor_ratio = ratio_field(
        label="Liquor ratio", help_text="Empty: as the recipe says."
    )
    purpose = purpose_field(as_recipe=True)
    water = forms.TypedChoiceField(label="Water", coerce=int, required=False)
    notes = forms.CharField(
        max_length=2000, required=False, widget=forms.Textarea(attrs={"rows": 2})
    )

    def __init__(
        self,
        data: Mapping[str, Any] | None = None,
        *,
        initial: Mapping[str, Any] | None = None,
        waiting: tuple[LineWaiting, ...] = (),
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        said = data if data is not None else initial or {}
        asked, base = number_said(said, "version"), number_said(said, "base")
        self._offer("version", _versions(asked), "Choose a recipe")
        bases = [(each.id, each.words) for each in bases_in_use()]
        self._offer("base", bases, "Choose a base")
        lots = [(x.id, x.words) for x in lots_in_use() if base in {None, x.base_id}]
        self._offer("mill_lot", lots, "Not known")
        self._offer("pots", [(each.id, each.words) for each in pots_in_use()])
        self._offer("water", [(each.id, each.words) for each in waters()], "Not known")
        lines = _lines_for(waiting, asked, base)
        self.fields["for_lines"].choices = lines  # type: ignore[attr-defined]

    @property
    def has_lots(self) -> bool:
        """Whether there is a delivery to choose."""
        return len(self.fields["mill_lot"].choices) > 1  # type: ignore[attr-defined]

    @property
    def has_orders(self) -> bool:
        """Whether an order waits for this colourway on this base."""
        return bool(self.fields["for_lines"].choices)  # type: ignore[attr-defined]

    @property
    def says_yarn(self) -> bool:
        """Whether the yarn is said by each skein, or loose."""
        return self._says("weights", "fibre_g")

    @property
    def says_pots(self) -> bool:
        """Whether pots are chosen, or a way to split that is not the usual."""
        return self._says("pots") or self["way"].value() not in {None, usual_way()}

    @property
    def says_more(self) -> bool:
        """Whether something is said of what is seldom asked."""
        return self._says("liquor_ratio", "least_baths", "purpose", "notes")

    def _says(self, *names: str) -> bool:
        return any(self[name].value() or self[name].errors for name in names)

    def clean_weights(self) -> tuple[float, ...]:
        """Return the weights, one a line; a line that is none is named."""
        lines = [x.strip() for x in self.cleaned_data["weights"].splitlines()]
        said = [x for x in lines if x]
        try:
            require_between(
                len(said),
                least=0,
                most=MOST_SKEINS,
                unit="",
                name="The number of skeins",
            )
            return tuple(
                some_mass(text, name=f"Skein {place}")
                for place, text in enumerate(said, start=1)
            )
        except InputError as error:
            raise ValidationError(error.sentence) from error

    def clean(self) -> dict[str, Any]:
        """Let the yarn be said in one way, and say what each skein weighs."""
        sent: dict[str, Any] = super().clean() or self.cleaned_data
        weights, skeins = sent.get("weights", ()), sent.get("skeins")
        if self.errors:
            return sent
        if sent["fibre_g"] and (weights or skeins):
            self.add_error("fibre_g", "Say skeins or loose yarn, not both.")
        elif weights and skeins not in {None, len(weights)}:
            said = f"{skeins} skeins are said above, and {len(weights)} weights here."
            self.add_error("weights", said)
        elif skeins and not weights and self._skein_g is None:
            self.add_error("skein_g", "Say what one skein weighs.")
        return sent

    def wish(self, day: date) -> SplitWish:
        """Return what the form says."""
        sent = self.cleaned_data
        one = (self._skein_g or 0.0,) * (sent["skeins"] or 0)
        return SplitWish(
            version_id=sent["version"],
            base_id=sent["base"],
            dyed_on=day,
            skeins_g=sent["weights"] or one,
            loose_g=sent["fibre_g"],
            pots=tuple(sent["pots"]),
            liquor_ratio=sent["liquor_ratio"],
            way=sent["way"],
            least_baths=sent["least_baths"] or 1,
            is_whole_pots=sent["is_whole_pots"],
            mill_lot_id=sent["mill_lot"] or None,
            water_id=sent["water"] or None,
            purpose=sent["purpose"],
            notes=sent["notes"],
            for_lines=tuple(map(_line_of, sent["for_lines"])),
        )

    @property
    def _skein_g(self) -> float | None:
        sent = self.cleaned_data
        said: float | None = sent.get("skein_g")
        return said or usual_skein_g(sent.get("base") or 0)

    def _offer(self, name: str, known: list[tuple[int, str]], none: str = "") -> None:
        offered = [(str(key), words) for key, words in known]
        first = [("", none)] if none else []
        self.fields[name].choices = [*first, *offered]  # type: ignore[attr-defined]


def line_key(line: LineWaiting) -> str:
    """Return a line with its skeins, as the form sends it back."""
    return f"{line.line_id}:{line.skeins}"


def _line_of(key: str) -> tuple[int, int]:
    line_id, _, skeins = key.partition(":")
    return int(line_id), int(skeins)


def _lines_for(
    waiting: tuple[LineWaiting, ...], version_id: int | None, base_id: int | None
) -> list[tuple[str, str]]:
    if version_id is None or base_id is None or not waiting:
        return []
    recipe_id = None
    with suppress(NotFoundError):
        recipe_id = version(version_id).recipe_id
    return [
        (line_key(x), f"Order {x.order_number}, {x.for_whom}: {_skeins(x)}")
        for x in waiting
        if (x.recipe_id, x.base_id) == (recipe_id, base_id)
    ]


def _skeins(line: LineWaiting) -> str:
    return f"{line.skeins} of {amount_text(line.skein_g, 'g')}"


def _versions(asked: int | None) -> list[tuple[int, str]]:
    """Return the newest complete versions, and the one that is asked for."""
    known = {x.newest.id: x.newest for x in recipes() if x.newest.is_complete}
    if asked is not None and asked not in known:
        with suppress(NotFoundError):  # the field then says that it is not offered
            known[asked] = version(asked)
    return [(x.id, f"{x.recipe_name}, version {x.number}") for x in known.values()]
