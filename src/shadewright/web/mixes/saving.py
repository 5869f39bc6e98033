"""A mix written down as a recipe."""

from collections.abc import Mapping

from django import forms
from django.http import HttpRequest

from shadewright.web.forms import DeedForm
from shadewright.web.frame import person_id
from shadewright.web.mixes.asking import MixAsked, mix_asked
from shadewright.web.targets import NAME
from shadewright.workflows.recipe_shapes import DoseLine, RecipeText, Version
from shadewright.workflows.recipes import write_recipe
from shadewright.workflows.shades.mixing_page import MixNow
from shadewright.workflows.stamps import stamp_now


class SaveForm(DeedForm):
    """The name under which a mix is kept."""

    called = forms.CharField(label="The name", max_length=60)

    def save(self, request: HttpRequest, now: MixNow) -> Version:
        """Write the recipe."""
        sent = self.cleaned_data
        lines = tuple(
            DoseLine(dye_id=dye.id, dye_name=dye.name, depth_percent=dye.depth_percent)
            for dye in now.dyes
            if dye.depth_percent
        )
        return write_recipe(
            name=sent["called"],
            text=RecipeText(
                doses=lines, notes=f"Mixed by slider for {now.base.words}."
            ),
            stamp=stamp_now(by=person_id(request), deed=sent["deed"]),
        )


def save_asked(sent: Mapping[str, str]) -> MixAsked:
    """Read the mix that goes with the name."""
    said = {key: value for key, value in sent.items() if key != NAME}
    return mix_asked(said | {NAME: sent.get("wanted_name", "")})
