"""The one question of how well a colour must come out, on every form alike."""

from django import forms

from shadewright.core.solutions.keeping import Purpose

PURPOSE_WORDS = {
    Purpose.MUST_REPEAT: "Must repeat: only fresh or tested bottles",
    Purpose.USUAL: "As usual: bottles that are not past their time",
    Purpose.PLAY: "Play: any bottle that is clear",
}


def purpose_field(*, as_recipe: bool = False) -> forms.TypedChoiceField:
    """Return the field; left out, it is as the recipe says, or as usual."""
    first = [("", "As the recipe says")] if as_recipe else []
    return forms.TypedChoiceField(
        label="The colour",
        choices=first + [(each.value, words) for each, words in PURPOSE_WORDS.items()],
        coerce=Purpose,
        empty_value=None if as_recipe else Purpose.USUAL,
        initial="" if as_recipe else Purpose.USUAL.value,
        required=False,
    )
